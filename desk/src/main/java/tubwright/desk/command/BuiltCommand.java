// SPDX-License-Identifier: Apache-2.0
package tubwright.desk.command;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.NoSuchFileException;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.concurrent.Callable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;
import tubwright.desk.answer.BuiltAnswer;
import tubwright.desk.console.BuiltSummary;
import tubwright.desk.console.Terminal;
import tubwright.desk.console.Terminal.Look;
import tubwright.desk.export.BuiltJson;
import tubwright.desk.export.RunFolder;
import tubwright.desk.logbook.BuiltShelf;
import tubwright.desk.logbook.Logbook;
import tubwright.desk.work.UserMistake;
import tubwright.engine.design.Design;
import tubwright.engine.make.built.BuiltComparison;
import tubwright.engine.make.built.BuiltReader;
import tubwright.engine.make.built.BuiltTub;
import tubwright.engine.make.data.DataException;
import tubwright.engine.quantity.NearestName;

/** {@code tubwright built}: a tub as it was built, against the plan. */
@Command(
        name = "built",
        description = {
            "A tub as it was built: weights, batches, deviations and concessions from the form that goes out with the pack, held"
                    + " against the plan and kept in the project's logbook. Without a file: all tubs entered so far."
        },
        synopsisHeading = "Usage: ",
        parameterListHeading = "%n",
        optionListHeading = "%n",
        footer = {
            "",
            "The form is DIR/runs/pack/as-built.csv, which is also the plan. Writes DIR/built/tub-N (answer.json, inputs/) and"
                    + " the logbook. \"rig explain --built N\" and \"rig predict --built N\" then take the tub as it was weighed.",
            "",
            "Examples:",
            "  tubwright built mytub as-built-1.csv --tub 1",
            "  tubwright built mytub                    tubs entered so far",
            "  tubwright built mytub --batch P1-0412    what a batch went into"
        })
final class BuiltCommand implements Callable<Integer> {
    private final Terminal terminal;

    @Parameters(index = "0", paramLabel = "DIR", description = "Folder of the design, or its file.")
    private Path place;

    @Parameters(index = "1", arity = "0..1", paramLabel = "FILE", description = "The form, filled in.")
    private Optional<Path> file = Optional.empty();

    @Option(names = "--tub", paramLabel = "N", description = "Number of the tub; default: 1.")
    private int number = 1;

    @Option(names = "--pack", paramLabel = "DIR", description = "The pack it was built from; default: DIR/runs/pack.")
    private Optional<Path> pack = Optional.empty();

    @Option(names = "--batch", paramLabel = "NAME", description = "Tell what was cut from a batch.")
    private Optional<String> batch = Optional.empty();

    @Mixin
    private AnswerOptions printing;

    BuiltCommand(Terminal terminal) {
        this.terminal = terminal;
    }

    @Override
    public Integer call() throws IOException {
        Path home = TrimOptions.folder(place);
        if (!Files.isDirectory(home)) {
            throw new UserMistake(home + ": there is no such folder");
        }
        if (number < 1) {
            throw new UserMistake("--tub " + number + ": tubs are counted from 1");
        }
        try {
            if (file.isPresent()) {
                enter(home, file.get());
            } else {
                tell(home);
            }
        } catch (DataException e) {
            throw new UserMistake(e.getMessage());
        }
        return ExitCode.DONE;
    }

    private void enter(Path home, Path given) throws IOException {
        Design design = Design.read(place);
        Path there = Files.exists(given) ? given : home.resolve(given);
        if (!Files.exists(there)) {
            throw new NoSuchFileException(given.toString());
        }
        Path form = pack.orElse(home.resolve("runs").resolve("pack")).resolve("as-built.csv");
        if (!Files.exists(form)) {
            throw new UserMistake(
                    form + " is not there, which is the plan to compare with; make it with\n    tubwright pack " + home
                            + "\n    or say with --pack where the pack lies that the tub was built from");
        }
        String planned = Files.readString(form);
        String content = RigReadCommand.text(there);
        BuiltTub plan = BuiltReader.read(form.toString(), planned);
        BuiltTub built = BuiltReader.read(given.toString(), content);
        BuiltAnswer answer = new BuiltAnswer(
                design.name(),
                number,
                built,
                BuiltComparison.of(built, plan),
                warnings(built, plan, RigLog.revision(design.file())),
                Version.text(),
                RunCommand.stamp());
        try (Logbook book = BuiltOption.open(home);
                RunFolder folder = RunFolder.begin(home.resolve("built").resolve("tub-" + number))) {
            String document = BuiltJson.write(answer);
            folder.text(RunFolder.ANSWER, document);
            folder.copy(there.toAbsolutePath().getParent(), List.of(there), "inputs");
            folder.copy(form.toAbsolutePath().getParent(), List.of(form), "plan");
            book.keep(
                    new BuiltShelf.Kept(
                            number,
                            answer.stamp(),
                            BuiltSummary.line(answer),
                            plan.issue(),
                            plan.design(),
                            planned,
                            content),
                    parts(built, plan),
                    RigLog.revision(design.file()));
            folder.finish();
            if (printing.json()) {
                terminal.out().print(document);
            } else {
                BuiltSummary.lines(terminal, answer).forEach(terminal::print);
                terminal.print("");
                terminal.print("  " + terminal.look(Look.STRONG, Written.shown(folder.target())));
            }
        }
    }

    private static List<String> warnings(BuiltTub built, BuiltTub plan, String now) {
        List<String> warnings = new ArrayList<>();
        if (!built.design().isEmpty() && !built.design().equals(plan.design())) {
            warnings.add("The form is of issue " + built.issue() + " of design " + built.design()
                    + ", the pack of issue " + plan.issue() + " of design " + plan.design()
                    + ": say with --pack which pack it was built from.");
        }
        if (!plan.design().isEmpty() && !plan.design().equals(now)) {
            warnings.add("The design has changed since the pack was made; what was built is held against the pack.");
        }
        return warnings;
    }

    private List<BuiltShelf.Part> parts(BuiltTub built, BuiltTub plan) {
        return built.of(BuiltTub.Kind.PLY).stream()
                .filter(l -> !l.batch().isEmpty())
                .map(l -> {
                    BuiltTub.Line planned = plan.of(BuiltTub.Kind.PLY).stream()
                            .filter(p -> p.pattern().equals(l.pattern()))
                            .findFirst()
                            .orElse(l);
                    return new BuiltShelf.Part(number, planned.piece(), l.pattern(), planned.material(), l.batch());
                })
                .toList();
    }

    private void tell(Path home) {
        try (Logbook book = BuiltOption.open(home)) {
            if (batch.isPresent()) {
                List<BuiltShelf.Part> parts = book.built().from(batch.get());
                if (parts.isEmpty()) {
                    throw new UserMistake("no batch is called \"" + batch.get() + "\""
                            + NearestName.of(batch.get(), book.built().batches())
                                    .map(n -> "; did you mean \"" + n + "\"?")
                                    .orElse(""));
                }
                parts.forEach(p -> terminal.print(
                        "  tub " + p.number() + "  " + p.piece() + "  " + p.pattern() + "  " + p.material()));
            } else if (book.built().all().isEmpty()) {
                terminal.print("  No tub has been entered as built; fill in runs/pack/as-built.csv and say");
                terminal.print("  tubwright built " + place + " FILE --tub 1");
            } else {
                book.built()
                        .all()
                        .forEach(k -> terminal.print("  " + k.stamp() + "  " + k.words() + "; issue " + k.issue()
                                + ", design " + k.design()));
            }
        }
    }
}
