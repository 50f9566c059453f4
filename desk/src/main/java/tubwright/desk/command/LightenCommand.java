// SPDX-License-Identifier: Apache-2.0
package tubwright.desk.command;

import java.io.IOException;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.OptionalInt;
import java.util.concurrent.Callable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;
import tubwright.desk.answer.KeptChoice;
import tubwright.desk.answer.LightenAnswer;
import tubwright.desk.console.KeptSummary;
import tubwright.desk.console.LightenSummary;
import tubwright.desk.console.Progress;
import tubwright.desk.console.Terminal;
import tubwright.desk.export.RunFolder;
import tubwright.desk.export.TrimJson;
import tubwright.desk.report.LightenPage;
import tubwright.desk.work.ChoiceWork;
import tubwright.desk.work.LightenWork;
import tubwright.desk.work.TrimWork;
import tubwright.desk.work.UserMistake;
import tubwright.engine.design.Design;
import tubwright.engine.quantity.Dimension;
import tubwright.engine.trim.Lightened;

/** {@code tubwright lighten}: the lightest layup that keeps the stiffness, with a proved bound. */
@Command(
        name = "lighten",
        description = {
            "The lightest layup that keeps the stiffness: plies taken out of each zone's stack, symmetry, balance and outer"
                    + " plies kept, and the mass below which no such layup exists. The design file is left alone unless you say"
                    + " --write or --as-variant."
        },
        synopsisHeading = "Usage: ",
        parameterListHeading = "%n",
        optionListHeading = "%n",
        footer = {
            "",
            "Stiffness is proved; reserve factors, buckling and frequency are checked of what is found where the design's"
                    + " targets ask for them. Ctrl-C ends it with the best so far. Writes DIR/runs/lighten (lighten.html,"
                    + " answer.json, inputs/), replacing the one before.",
            "",
            "Examples:",
            "  tubwright lighten examples/larkspur --quick --keep \"85 %\"",
            "  tubwright lighten mytub --also \"bending=90 %\" --cores \"10 mm, 15 mm\" --time \"3 min\"",
            "  tubwright lighten mytub --as-variant light"
        })
final class LightenCommand implements Callable<Integer> {
    private final Terminal terminal;

    @Mixin
    private TrimOptions options;

    @Option(
            names = "--keep",
            paramLabel = "SHARE",
            description =
                    "Share of the present stiffness to keep, e.g. \"90 %%\"; default: what the design's target asks.")
    private Optional<String> keep = Optional.empty();

    @Option(
            names = "--also",
            paramLabel = "CASE=SHARE",
            description = "Keep a share of another case's stiffness too; may be given several times.")
    private List<String> also = new ArrayList<>();

    @Option(
            names = "--fewest",
            paramLabel = "N",
            description = "Plies each skin keeps at least; default: what the design's layup rules say, or 2.")
    private Optional<Integer> fewest = Optional.empty();

    @Option(
            names = "--cores",
            paramLabel = "LIST",
            description = "Core thicknesses in stock besides the designed, e.g. \"10 mm, 15 mm\".")
    private String cores = "";

    @Option(
            names = "--margin",
            paramLabel = "SHARE",
            description = "Pass every target by this share of it, e.g. \"3 %%\", for the scatter of materials.")
    private Optional<String> margin = Optional.empty();

    @Option(names = "--time", paramLabel = "TIME", description = "Time to spend, e.g. \"3 min\"; default: 60 s.")
    private String time = "60 s";

    @Option(names = "--watch", description = "Print every better mass or bound as it is found, on standard error.")
    private boolean watch;

    @Option(
            names = "--scatter",
            paramLabel = "SHARE",
            description = "Also say which choices hang on the material data, were all stiffness lower or higher by this"
                    + " share; takes three fifths of the time.")
    private Optional<String> scatter = Optional.empty();

    @Option(names = "--solves", paramLabel = "N", description = "Exact solutions to spend at most; default: 40.")
    private Optional<Integer> solves = Optional.empty();

    @Mixin
    private CalibrationOption calibrated;

    @Mixin
    private WriteOptions write;

    @Option(names = "--out", paramLabel = "DIR", description = "Write the folder here instead.")
    private Optional<Path> out = Optional.empty();

    @Mixin
    private AnswerOptions printing;

    LightenCommand(Terminal terminal) {
        this.terminal = terminal;
    }

    @Override
    public Integer call() throws IOException {
        LightenWork.Request request = request();
        try (Interruption interruption = new Interruption();
                Progress progress = new Progress(terminal)) {
            progress.endsByItself();
            progress.stage("reading " + options.place());
            Design design = TrimWork.read(options.place());
            LightenAnswer answer =
                    LightenWork.lighten(design, request, Version.text(), watcher(progress, interruption));
            // Only now: a folder begun before the process was told to stop would be swept away.
            try (RunFolder folder =
                    RunFolder.begin(out.orElse(options.folder().resolve("runs").resolve("lighten")))) {
                String document = TrimJson.write(answer);
                Written.keep(folder, design, document, Map.of("lighten.html", LightenPage.write(answer)));
                ChoiceWork.Wanted wanted = write.wanted();
                Optional<KeptChoice> kept = wanted.any()
                        ? Optional.of(ChoiceWork.write(
                                design, request.on(), answer.found().layup(), wanted, progress::stage))
                        : Optional.empty();
                progress.done();
                if (printing.json()) {
                    terminal.out().print(document);
                } else {
                    LightenSummary.lines(terminal, answer).forEach(terminal::print);
                    kept.ifPresent(k -> KeptSummary.lines(k).forEach(terminal::print));
                    Written.tell(terminal, folder.target().resolve("lighten.html"), progress);
                }
                terminal.out().flush();
            }
        }
        return ExitCode.DONE;
    }

    private LightenWork.Watcher watcher(Progress progress, Interruption interruption) {
        return new LightenWork.Watcher() {
            private String doing = "";

            @Override
            public void stage(String words) {
                doing = words;
                progress.stage(words);
            }

            @Override
            public void step(Lightened.Step step) {
                String words = String.format(
                        java.util.Locale.ROOT,
                        "%.3f kg, nothing below %.3f kg (%.1f %%)",
                        step.mass(),
                        step.bound(),
                        100 * (1 - step.bound() / step.mass()));
                if (watch) {
                    terminal.say(words);
                }
                progress.stage(doing + ": " + words);
            }

            @Override
            public boolean stop() {
                return interruption.asked();
            }
        };
    }

    private LightenWork.Request request() throws IOException {
        if (fewest.filter(n -> n < 1).isPresent()) {
            throw new UserMistake("--fewest " + fewest.get() + ": a skin keeps at least one ply");
        }
        List<Double> thicknesses = new ArrayList<>();
        for (String each : cores.split(",")) {
            if (!each.isBlank()) {
                thicknesses.add(quantity("--cores", each.strip(), Dimension.LENGTH));
            }
        }
        if (solves.filter(n -> n < 2).isPresent()) {
            throw new UserMistake("--solves " + solves.get() + ": a first design and a second are the least");
        }
        Map<String, Double> others = new LinkedHashMap<>();
        for (String each : also) {
            int equals = each.indexOf('=');
            if (equals < 1) {
                throw new UserMistake("--also " + each + ": write it like \"bending=90 %\"");
            }
            others.put(each.substring(0, equals).strip(), share("--also", each.substring(equals + 1)));
        }
        return new LightenWork.Request(
                options.request(),
                keep.map(k -> share("--keep", k)),
                others,
                fewest.map(OptionalInt::of).orElse(OptionalInt.empty()),
                thicknesses,
                margin.map(m -> share("--margin", m)).orElse(0.0),
                scatter.map(m -> OptionalDouble.of(share("--scatter", m))).orElse(OptionalDouble.empty()),
                solves.map(OptionalInt::of).orElse(OptionalInt.empty()),
                quantity("--time", time, Dimension.TIME),
                calibrated.read(options.folder()));
    }

    private static double quantity(String option, String text, Dimension dimension) {
        return OptionText.positive(option, text, dimension, "must be greater than zero");
    }

    private static double share(String option, String text) {
        try {
            double share = Double.parseDouble(text.replace("%", "").strip()) / (text.contains("%") ? 100 : 1);
            if (share > 0 && share <= 10) {
                return share;
            }
        } catch (NumberFormatException e) {
            // Told below together with what is out of range.
        }
        throw new UserMistake(option + " " + text + ": write a share such as \"90 %\"");
    }
}
