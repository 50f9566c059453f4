// SPDX-License-Identifier: Apache-2.0
package tubwright.desk.command;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.concurrent.Callable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;
import tubwright.desk.answer.LightenAnswer;
import tubwright.desk.console.LightenSummary;
import tubwright.desk.console.Progress;
import tubwright.desk.console.Terminal;
import tubwright.desk.export.TrimJson;
import tubwright.desk.text.Figures;
import tubwright.desk.work.LightenWork;
import tubwright.desk.work.TrimWork;
import tubwright.desk.work.UserMistake;
import tubwright.engine.quantity.Dimension;
import tubwright.engine.quantity.Quantity;
import tubwright.engine.quantity.QuantityException;
import tubwright.engine.trim.LayupRules;

/** {@code tubwright lighten}: the lightest layup that keeps the stiffness, with a proved bound. */
@Command(
        name = "lighten",
        description = {
            "The lightest layup that keeps the stiffness: plies taken out of each zone's stack, symmetry, balance and outer"
                    + " plies kept, and the mass below which no such layup exists. The design file is left alone."
        },
        synopsisHeading = "Usage: ",
        parameterListHeading = "%n",
        optionListHeading = "%n",
        footer = {
            "",
            "Looks at stiffness only: check strength and stability of what it proposes.",
            "",
            "Examples:",
            "  tubwright lighten examples/larkspur --quick --keep \"85 %\"",
            "  tubwright lighten mytub --also \"bending=90 %\" --cores \"10 mm, 15 mm\" --time \"3 min\""
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

    @Option(names = "--fewest", paramLabel = "N", description = "Plies each skin keeps at least; default: 2.")
    private int fewest = LayupRules.USUAL.fewestPlies();

    @Option(
            names = "--cores",
            paramLabel = "LIST",
            description = "Core thicknesses in stock besides the designed, e.g. \"10 mm, 15 mm\".")
    private String cores = "";

    @Option(names = "--time", paramLabel = "TIME", description = "Time to spend, e.g. \"3 min\"; default: 60 s.")
    private String time = "60 s";

    @Option(names = "--json", description = "Print one JSON document and nothing else on standard output.")
    private boolean json;

    @Option(
            names = {"-h", "--help"},
            usageHelp = true,
            description = "Print this help.")
    private boolean help;

    LightenCommand(Terminal terminal) {
        this.terminal = terminal;
    }

    @Override
    public Integer call() {
        LightenWork.Request request = request();
        try (Progress progress = new Progress(terminal)) {
            progress.stage("reading " + options.place());
            LightenAnswer answer =
                    LightenWork.lighten(TrimWork.read(options.place()), request, Version.text(), progress::stage);
            progress.done();
            if (json) {
                terminal.out().print(TrimJson.write(answer));
            } else {
                LightenSummary.lines(terminal, answer).forEach(terminal::print);
                terminal.print("");
                terminal.print("  computed in " + Figures.elapsed(progress.seconds()));
            }
        }
        return ExitCode.DONE;
    }

    private LightenWork.Request request() {
        if (fewest < 1) {
            throw new UserMistake("--fewest " + fewest + ": a skin keeps at least one ply");
        }
        List<Double> thicknesses = new ArrayList<>();
        for (String each : cores.split(",")) {
            if (!each.isBlank()) {
                thicknesses.add(quantity("--cores", each.strip(), Dimension.LENGTH));
            }
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
                new LayupRules(fewest, thicknesses),
                quantity("--time", time, Dimension.TIME));
    }

    private static double quantity(String option, String text, Dimension dimension) {
        try {
            double value = Quantity.parse(text, dimension).si();
            if (value > 0) {
                return value;
            }
        } catch (QuantityException e) {
            throw new UserMistake(option + ": " + e.getMessage());
        }
        throw new UserMistake(option + " " + text + ": must be greater than zero");
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
