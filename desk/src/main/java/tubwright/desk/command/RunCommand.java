// SPDX-License-Identifier: Apache-2.0
package tubwright.desk.command;

import java.io.IOException;
import java.nio.file.Path;
import java.time.Instant;
import java.time.temporal.ChronoUnit;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.concurrent.Callable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;
import tubwright.desk.answer.RunAnswer;
import tubwright.desk.console.Progress;
import tubwright.desk.console.RunSummary;
import tubwright.desk.console.Terminal;
import tubwright.desk.export.CalibrationFile;
import tubwright.desk.export.RunFolder;
import tubwright.desk.work.RunFiles;
import tubwright.desk.work.UserMistake;
import tubwright.desk.work.Workbench;
import tubwright.engine.quantity.NearestName;
import tubwright.engine.rig.explain.Calibration;

/** {@code tubwright run}: computes a design and writes its run folder. */
@Command(
        name = "run",
        description = {
            "Compute a design: torsional and bending stiffness with their mesh error, twist along the tub, where the"
                    + " flexibility lives, mass by piece; every variant beside the others."
        },
        synopsisHeading = "Usage: ",
        parameterListHeading = "%n",
        optionListHeading = "%n",
        footer = {
            "",
            "Writes DIR/runs/latest (report.html, answer.json, fields/*.vtu, inputs/), replacing the run before; use"
                    + " --name to keep several.",
            "",
            "Examples:",
            "  tubwright run examples/larkspur",
            "  tubwright run mytub --variant aluminium --name sheet-1.2",
            "  tubwright run mytub --quick --json"
        })
final class RunCommand implements Callable<Integer> {
    private final Terminal terminal;
    private final Workbench bench;

    @Parameters(paramLabel = "DIR", description = "Folder of the design, or its file.")
    private Path place;

    @Option(
            names = "--variant",
            paramLabel = "NAME",
            description = "Compute this variant only; may be given several times. The first named leads the report. The"
                    + " design as written is called \"as designed\".")
    private List<String> variants = new ArrayList<>();

    @Option(names = "--case", paramLabel = "NAME", description = "Compute this case only; may be given several times.")
    private List<String> cases = new ArrayList<>();

    @Option(
            names = "--mesh",
            paramLabel = "SIZE",
            description = "Finest mesh size with its unit, e.g. \"12 mm\", instead of the design's own.")
    private Optional<String> mesh = Optional.empty();

    @Option(names = "--quick", description = "Coarser meshes: an answer in a moment, with a wider error.")
    private boolean quick;

    @Option(
            names = "--stability",
            description =
                    "Also buckling factors of every case and natural frequencies, even where the design does not ask.")
    private boolean stability;

    @Mixin
    private CalibrationOption calibrated;

    @Option(
            names = "--name",
            paramLabel = "NAME",
            description = "Name of the run folder below DIR/runs; default: latest.")
    private String name = "latest";

    @Option(names = "--out", paramLabel = "DIR", description = "Write the run folder here instead.")
    private Optional<Path> out = Optional.empty();

    @Mixin
    private AnswerOptions printing;

    RunCommand(Terminal terminal, Workbench bench) {
        this.terminal = terminal;
        this.bench = bench;
    }

    @Override
    public Integer call() throws IOException {
        OptionalDouble size = MeshSize.of(mesh);
        Path target = target();
        Optional<Calibration> learnt = calibrated.read(folder());
        try (Progress progress = new Progress(terminal)) {
            progress.stage("reading " + place);
            Workbench.Draft draft = bench.read(place);
            checkNames(draft);
            // Begun before computing, so that a place that cannot be written to is found out now and not at the end.
            try (RunFolder folder = RunFolder.begin(target)) {
                RunAnswer answer = draft.run(
                        new Workbench.Request(variants, cases, size, quick, stability, learnt, stamp(), Version.text()),
                        progress::stage);
                progress.stage("writing the report");
                String document = RunFiles.write(folder, answer);
                List<Path> files = new ArrayList<>(draft.files());
                if (!files.isEmpty()) {
                    Path home = files.getFirst().toAbsolutePath().getParent();
                    if (learnt.isPresent()) {
                        files.add(CalibrationFile.of(folder()));
                    }
                    folder.copy(home, files, "inputs");
                }
                folder.finish();
                progress.done();
                if (printing.json()) {
                    terminal.out().print(document);
                } else {
                    RunSummary.lines(terminal, answer).forEach(terminal::print);
                    Written.tell(terminal, folder.target().resolve("report.html"), progress);
                }
            }
        }
        return ExitCode.DONE;
    }

    private Path folder() {
        return PlaceOption.folder(place);
    }

    private Path target() {
        if (!name.matches("[\\p{L}\\p{Nd}][\\p{L}\\p{Nd}._ -]*")) {
            throw new UserMistake("--name " + name + ": use letters, digits, points, hyphens and blanks");
        }
        return out.orElse(folder().resolve("runs").resolve(name));
    }

    private void checkNames(Workbench.Draft draft) {
        known("variant", variants, draft.variants(), draft.tub());
        known("case", cases, draft.cases(), draft.tub());
    }

    private static void known(String what, List<String> wanted, List<String> names, String tub) {
        for (String name : wanted) {
            if (!names.contains(name)) {
                String nearest = NearestName.of(name, names)
                        .map(n -> "; did you mean \"" + n + "\"?")
                        .orElse("");
                throw new UserMistake("there is no " + what + " \"" + name + "\"" + nearest + "\n    " + tub + " has: "
                        + String.join(", ", names));
            }
        }
    }

    /** Now, or the time of SOURCE_DATE_EPOCH (reproducible-builds.org) where set. */
    static String stamp() {
        String epoch = System.getenv("SOURCE_DATE_EPOCH");
        Instant now = epoch != null && epoch.matches("\\d{1,12}")
                ? Instant.ofEpochSecond(Long.parseLong(epoch))
                : Instant.now();
        return now.truncatedTo(ChronoUnit.SECONDS).toString();
    }
}
