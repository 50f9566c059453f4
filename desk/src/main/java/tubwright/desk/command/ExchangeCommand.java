// SPDX-License-Identifier: Apache-2.0
package tubwright.desk.command;

import java.io.IOException;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalInt;
import java.util.concurrent.Callable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;
import tubwright.desk.answer.ExchangeAnswer;
import tubwright.desk.answer.KeptChoice;
import tubwright.desk.console.ExchangeSummary;
import tubwright.desk.console.KeptSummary;
import tubwright.desk.console.Progress;
import tubwright.desk.console.Terminal;
import tubwright.desk.export.ExchangeCsv;
import tubwright.desk.export.ExchangeJson;
import tubwright.desk.export.RunFolder;
import tubwright.desk.report.ExchangePage;
import tubwright.desk.work.ChoiceWork;
import tubwright.desk.work.ExchangeWork;
import tubwright.desk.work.TrimWork;
import tubwright.desk.work.UserMistake;
import tubwright.engine.design.Design;
import tubwright.engine.quantity.Dimension;

/** {@code tubwright exchange}: mass against stiffness, each point with its proved bound. */
@Command(
        name = "exchange",
        description = {
            "Mass against stiffness: the lightest layup for a row of stiffness targets and the stiffest for a row of masses,"
                    + " each with what is proved of it; the design, its variants and the choice marked on the curve."
        },
        synopsisHeading = "Usage: ",
        parameterListHeading = "%n",
        optionListHeading = "%n",
        footer = {
            "",
            "Writes DIR/runs/exchange (exchange.html, exchange.svg, exchange.csv, answer.json, inputs/), replacing the curve"
                    + " before. Looks at stiffness only: check strength and stability of what it proposes.",
            "",
            "Examples:",
            "  tubwright exchange examples/larkspur --quick --time \"2 min\"",
            "  tubwright exchange mytub --from \"70 %\" --to \"100 %\" --choose \"85 %\" --as-variant lighter"
        })
final class ExchangeCommand implements Callable<Integer> {
    private final Terminal terminal;

    @Mixin
    private TrimOptions options;

    @Option(
            names = "--from",
            paramLabel = "SHARE",
            description = "Least share of the present stiffness; default: 60 %%.")
    private String from = "60 %";

    @Option(names = "--to", paramLabel = "SHARE", description = "Most; default: 100 %%.")
    private String to = "100 %";

    @Option(names = "--points", paramLabel = "N", description = "Points of the curve; default: 9.")
    private int points = 9;

    @Option(
            names = "--choose",
            paramLabel = "SHARE",
            description =
                    "Mark the lightest tub with this share of the present stiffness, for --write and --as-variant.")
    private Optional<String> choose = Optional.empty();

    @Option(
            names = "--fewest",
            paramLabel = "N",
            description = "Plies each skin keeps at least; default: what the design's rules say.")
    private Optional<Integer> fewest = Optional.empty();

    @Option(names = "--time", paramLabel = "TIME", description = "Time to spend on all points; default: 3 min.")
    private String time = "3 min";

    @Mixin
    private CalibrationOption calibrated;

    @Mixin
    private WriteOptions write;

    @Option(names = "--out", paramLabel = "DIR", description = "Write the folder here instead.")
    private Optional<Path> out = Optional.empty();

    @Mixin
    private AnswerOptions printing;

    ExchangeCommand(Terminal terminal) {
        this.terminal = terminal;
    }

    @Override
    public Integer call() throws IOException {
        ExchangeWork.Request request = request();
        ChoiceWork.Wanted wanted = write.wanted();
        if (wanted.any() && choose.isEmpty()) {
            throw new UserMistake("which point of the curve is to be written?\n    --choose \"85 %\" says so");
        }
        try (Progress progress = new Progress(terminal)) {
            progress.stage("reading " + options.place());
            Design design = TrimWork.read(options.place());
            try (RunFolder folder =
                    RunFolder.begin(out.orElse(options.folder().resolve("runs").resolve("exchange")))) {
                ExchangeAnswer answer = ExchangeWork.exchange(
                        design,
                        request,
                        RunCommand.stamp(),
                        Version.text(),
                        progress::stage,
                        Thread.currentThread()::isInterrupted);
                progress.stage("writing the curve");
                String document = ExchangeJson.write(answer);
                Written.keep(
                        folder,
                        design,
                        document,
                        Map.of(
                                "exchange.csv",
                                ExchangeCsv.write(answer),
                                "exchange.html",
                                ExchangePage.write(answer),
                                "exchange.svg",
                                ExchangePage.picture(answer)));
                Optional<KeptChoice> kept = wanted.any()
                        ? answer.chosen()
                                .map(k -> ChoiceWork.write(
                                        design,
                                        request.on(),
                                        answer.curve().points().get(k).found().layup(),
                                        wanted,
                                        progress::stage))
                        : Optional.empty();
                List<String> lines = new ArrayList<>(ExchangeSummary.lines(terminal, answer));
                kept.ifPresent(k -> lines.addAll(KeptSummary.lines(k)));
                Written.tell(
                        terminal,
                        progress,
                        printing,
                        document,
                        lines,
                        folder.target().resolve("exchange.html"));
            }
        }
        return ExitCode.DONE;
    }

    private ExchangeWork.Request request() throws IOException {
        double low = share("--from", from);
        double high = share("--to", to);
        if (!(low < high)) {
            throw new UserMistake("--from " + from + " --to " + to + ": the first is the smaller share");
        }
        if (points < 2 || points > 100) {
            throw new UserMistake("--points " + points + ": a curve has 2 to 100 points");
        }
        if (fewest.isPresent() && fewest.get() < 1) {
            throw new UserMistake("--fewest " + fewest.get() + ": a skin keeps at least one ply");
        }
        double seconds = OptionText.quantity("--time", time, Dimension.TIME);
        return new ExchangeWork.Request(
                options.request(),
                low,
                high,
                points,
                choose.map(c -> share("--choose", c)),
                fewest.map(OptionalInt::of).orElseGet(OptionalInt::empty),
                seconds,
                calibrated.read(options.folder()));
    }

    private static double share(String option, String text) {
        try {
            double share = Double.parseDouble(text.replace("%", "").strip()) / (text.contains("%") ? 100 : 1);
            if (share >= 0.05 && share <= 1.5) {
                return share;
            }
        } catch (NumberFormatException e) {
            // Told below together with what is out of range.
        }
        throw new UserMistake(option + " " + text + ": write a share between 5 % and 150 %, for instance \"85 %\"");
    }
}
