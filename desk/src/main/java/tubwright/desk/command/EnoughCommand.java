// SPDX-License-Identifier: Apache-2.0
package tubwright.desk.command;

import java.io.IOException;
import java.nio.file.Path;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.concurrent.Callable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;
import tubwright.desk.answer.EnoughAnswer;
import tubwright.desk.console.EnoughSummary;
import tubwright.desk.console.Terminal;
import tubwright.desk.export.EnoughJson;
import tubwright.desk.export.LastRun;
import tubwright.desk.export.RunFolder;
import tubwright.desk.report.EnoughPage;
import tubwright.desk.work.UserMistake;
import tubwright.engine.design.Design;
import tubwright.engine.design.DesignFile;
import tubwright.engine.load.Car;
import tubwright.engine.load.LoadException;
import tubwright.engine.load.RollBalance;
import tubwright.engine.load.Vehicle;
import tubwright.engine.quantity.Dimension;

/** {@code tubwright enough}: how stiff the tub must be for the balance of the car to obey its springs. */
@Command(
        name = "enough",
        description = {
            "How stiff is enough: what of a change of roll stiffness from axle to axle arrives at the tyres, against the"
                    + " torsional stiffness between the axles; what the last run has, and what the tub would need."
        },
        synopsisHeading = "Usage: ",
        parameterListHeading = "%n",
        optionListHeading = "%n",
        footer = {
            "",
            "Reads \"car\" of the design. Writes DIR/runs/enough (enough.html, answer.json, inputs/), replacing the one before.",
            "",
            "Examples:",
            "  tubwright enough mytub",
            "  tubwright enough mytub --share \"95 %%\" --store"
        })
final class EnoughCommand implements Callable<Integer> {
    private final Terminal terminal;

    @Parameters(paramLabel = "DIR", description = "Folder of the design, or its file.")
    private Path place;

    @Option(names = "--share", paramLabel = "SHARE", description = "What is to arrive; default: 90 %%.")
    private String share = "90 %";

    @Option(
            names = "--roll-stiffness",
            paramLabel = "STIFFNESS",
            description = "Of both axles together, instead of the design's, e.g. \"800 N·m/deg\".")
    private Optional<String> roll = Optional.empty();

    @Option(
            names = "--store",
            description = "Write what the tub needs into the design as its target, all else kept as it is.")
    private boolean store;

    @Mixin
    private AnswerOptions printing;

    EnoughCommand(Terminal terminal) {
        this.terminal = terminal;
    }

    @Override
    public Integer call() throws IOException {
        Design design = Design.read(place);
        double asked = OptionText.quantity("--share", share, Dimension.DIMENSIONLESS);
        Car car = design.asDesigned()
                .tub()
                .fittings()
                .vehicle()
                .map(Vehicle::car)
                .orElseThrow(() -> new UserMistake(design.file() + ": there is no car"
                        + "\n    write mass, axles and centre of mass under \"car\""));
        double stiffness = roll.map(r -> OptionText.quantity("--roll-stiffness", r, Dimension.TORSIONAL_STIFFNESS))
                .or(car::rollStiffness)
                .orElseThrow(() -> new UserMistake(design.file() + ": the roll stiffness of the axles is not known"
                        + "\n    write it under \"car\" (roll stiffness: 800 N·m/deg), or say --roll-stiffness"));
        EnoughAnswer answer;
        Path folder = design.file().toAbsolutePath().getParent();
        try {
            RollBalance balance = RollBalance.of(car, stiffness);
            answer = new EnoughAnswer(
                    design.name(), balance, asked, balance.needed(asked), LastRun.betweenAxles(folder, design.file()));
        } catch (LoadException e) {
            throw new UserMistake(e.getMessage());
        }
        try (RunFolder out = RunFolder.begin(folder.resolve("runs").resolve("enough"))) {
            String document = EnoughJson.write(answer);
            out.text(RunFolder.ANSWER, document);
            out.text("enough.html", EnoughPage.write(answer));
            out.copy(folder, List.of(design.file()), "inputs");
            out.finish();
            if (printing.json()) {
                terminal.out().print(document);
            } else {
                EnoughSummary.lines(terminal, answer).forEach(terminal::print);
                terminal.print("");
                terminal.print("  " + Written.shown(out.target().resolve("enough.html")));
            }
        }
        if (store) {
            keep(design, answer);
        }
        return ExitCode.DONE;
    }

    private void keep(Design design, EnoughAnswer answer) {
        double needed = answer.tubNeeded()
                .orElseThrow(() -> new UserMistake(
                        answer.now().isEmpty()
                                ? "nothing stored: what the tub needs follows from a run\n    tubwright run "
                                        + design.file().getParent() + " first"
                                : "nothing stored: no tub reaches it\n    stiffen inserts, hoops or engine first"));
        String limit = String.format(Locale.ROOT, "at least %.3g kN·m/deg", needed * Math.PI / 180 * 1e-3);
        DesignFile.of(design)
                .withTarget(Design.AS_DESIGNED, "torsional stiffness", limit)
                .save();
        terminal.say("  Stored in " + design.file() + ": torsional stiffness: " + limit);
    }
}
