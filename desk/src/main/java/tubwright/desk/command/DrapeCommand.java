// SPDX-License-Identifier: Apache-2.0
package tubwright.desk.command;

import java.io.IOException;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.concurrent.Callable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;
import tubwright.desk.answer.DrapeAnswer;
import tubwright.desk.console.DrapeSummary;
import tubwright.desk.console.Progress;
import tubwright.desk.console.Terminal;
import tubwright.desk.export.DrapeCsv;
import tubwright.desk.export.DrapeJson;
import tubwright.desk.export.FlatDxf;
import tubwright.desk.export.FlatSvg;
import tubwright.desk.export.RunFolder;
import tubwright.desk.report.DrapePage;
import tubwright.desk.work.DrapeWork;
import tubwright.desk.work.TrimWork;
import tubwright.engine.design.Design;
import tubwright.engine.make.flat.FlatPattern;

/** {@code tubwright drape}: every ply laid on its mould, with its pattern. */
@Command(
        name = "drape",
        description = {
            "Lays every ply of every piece on its mould: how far cloth shears and where it locks, how far fibres turn from"
                    + " their nominal direction, the flat pattern to cut, and what all that costs in torsional stiffness."
        },
        synopsisHeading = "Usage: ",
        parameterListHeading = "%n",
        optionListHeading = "%n",
        footer = {
            "",
            "Writes DIR/runs/drape (drape.html, plies.csv, answer.json, a DXF and an SVG file with the patterns of each"
                    + " piece, inputs/), replacing the one before.",
            "",
            "Examples:",
            "  tubwright drape mytub",
            "  tubwright drape mytub --all --plies-only",
            "  tubwright drape mytub --json"
        })
final class DrapeCommand implements Callable<Integer> {
    private final Terminal terminal;

    @Mixin
    private DesignOptions options;

    @Option(names = "--all", description = "List every ply, not only those that pass a limit.")
    private boolean all;

    @Option(
            names = "--plies-only",
            description = "Leave out what draping does to the torsional stiffness: an answer sooner.")
    private boolean pliesOnly;

    @Option(names = "--out", paramLabel = "DIR", description = "Write the folder here instead.")
    private Optional<Path> out = Optional.empty();

    @Mixin
    private AnswerOptions printing;

    DrapeCommand(Terminal terminal) {
        this.terminal = terminal;
    }

    @Override
    public Integer call() throws IOException {
        try (Progress progress = new Progress(terminal)) {
            progress.stage("reading " + options.place());
            Design design = TrimWork.read(options.place());
            try (RunFolder folder =
                    RunFolder.begin(out.orElse(options.folder().resolve("runs").resolve("drape")))) {
                DrapeAnswer answer = DrapeWork.drape(
                        design, options.request(), !pliesOnly, RunCommand.stamp(), Version.text(), progress::stage);
                progress.stage("drawing");
                String document = DrapeJson.write(answer);
                folder.text(RunFolder.ANSWER, document);
                folder.text("plies.csv", DrapeCsv.write(answer));
                folder.text("drape.html", DrapePage.write(answer));
                for (Map.Entry<String, List<FlatPattern>> piece :
                        byPiece(answer).entrySet()) {
                    folder.text(piece.getKey() + ".dxf", FlatDxf.write(piece.getValue()));
                    folder.text(piece.getKey() + ".svg", FlatSvg.write(piece.getValue()));
                }
                folder.copy(design.file().toAbsolutePath().getParent(), List.of(design.file()), "inputs");
                folder.finish();
                progress.done();
                if (printing.json()) {
                    terminal.out().print(document);
                } else {
                    DrapeSummary.lines(terminal, answer, all).forEach(terminal::print);
                    Written.tell(terminal, folder.target().resolve("drape.html"), progress);
                }
            }
        }
        return ExitCode.DONE;
    }

    /** Patterns of each piece that can be cut, under a name a file can have. */
    private static Map<String, List<FlatPattern>> byPiece(DrapeAnswer answer) {
        Map<String, List<FlatPattern>> byPiece = new LinkedHashMap<>();
        answer.laid().plies().stream()
                .filter(p -> !p.flat().outlines().isEmpty())
                .forEach(p -> byPiece.computeIfAbsent(
                                p.ply().piece().replaceAll("[^\\p{L}\\p{N}]+", "-"), k -> new ArrayList<>())
                        .add(p.flat()));
        return byPiece;
    }
}
