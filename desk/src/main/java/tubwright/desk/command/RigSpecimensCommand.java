// SPDX-License-Identifier: Apache-2.0
package tubwright.desk.command;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.NoSuchFileException;
import java.nio.file.Path;
import java.util.Optional;
import java.util.concurrent.Callable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Parameters;
import tubwright.desk.answer.SpecimenAnswer;
import tubwright.desk.console.SpecimenSummary;
import tubwright.desk.console.Terminal;
import tubwright.desk.export.SpecimenJson;
import tubwright.desk.work.RigWork;
import tubwright.desk.work.UserMistake;
import tubwright.engine.laminate.Laminate;
import tubwright.engine.rig.specimen.CouponReport;
import tubwright.engine.rig.specimen.PanelReport;
import tubwright.engine.rig.specimen.SpecimenReader;
import tubwright.engine.rig.specimen.SpecimenTest;

/** {@code tubwright rig specimens}: panels bent, coupons pulled, skins punched. */
@Command(
        name = "specimens",
        description = {
            "Reduce tests of specimens: sandwich panels in three- or four-point bending (rig taken out, bending and shear"
                    + " told apart on several spans, predicted over measured), coupons in tension (modulus, strength, B"
                    + " basis), skins punched through."
        },
        synopsisHeading = "Usage: ",
        parameterListHeading = "%n",
        optionListHeading = "%n",
        footer = {
            "",
            "How a file of readings is written: docs/how-to/test-panels-and-coupons.md",
            "",
            "Examples:",
            "  tubwright rig specimens mytub panels.csv",
            "  tubwright rig specimens mytub coupons.csv --json"
        })
final class RigSpecimensCommand implements Callable<Integer> {
    private final Terminal terminal;

    @Parameters(index = "0", paramLabel = "DIR", description = "Folder of the design, or its file.")
    private Path place;

    @Parameters(index = "1", paramLabel = "FILE", description = "Readings.")
    private Path file;

    @Mixin
    private AnswerOptions printing;

    RigSpecimensCommand(Terminal terminal) {
        this.terminal = terminal;
    }

    @Override
    public Integer call() throws IOException {
        if (!Files.exists(place)) {
            throw new UserMistake(place + ": there is no such folder; the first word is the folder of the design, the"
                    + " readings follow");
        }
        Path folder = Files.isDirectory(place) ? place : place.toAbsolutePath().getParent();
        Path there = Files.exists(file) ? file : folder.resolve(file);
        if (!Files.exists(there)) {
            throw new NoSuchFileException(file.toString());
        }
        SpecimenTest test = SpecimenReader.read(file.toString(), RigReadCommand.text(there));
        boolean bend = test.kind() == SpecimenTest.Kind.PANEL_BEND;
        Optional<Laminate> laminate = test.zone().map(name -> layup(file, name));
        SpecimenAnswer answer = new SpecimenAnswer(
                test,
                bend ? Optional.of(PanelReport.of(test, laminate)) : Optional.empty(),
                bend ? Optional.empty() : Optional.of(CouponReport.of(test)),
                Version.text());
        if (printing.json()) {
            terminal.out().print(SpecimenJson.write(answer));
        } else {
            SpecimenSummary.lines(terminal, answer).forEach(terminal::print);
        }
        return ExitCode.DONE;
    }

    private Laminate layup(Path readings, String zone) {
        try {
            return RigWork.layupOf(place, zone);
        } catch (UserMistake e) {
            throw new UserMistake(readings + ": " + e.getMessage());
        }
    }
}
