// SPDX-License-Identifier: Apache-2.0
package tubwright.desk.command;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.concurrent.Callable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;
import tubwright.desk.answer.KeptChoice;
import tubwright.desk.answer.WhatIfAnswer;
import tubwright.desk.console.KeptSummary;
import tubwright.desk.console.Progress;
import tubwright.desk.console.Terminal;
import tubwright.desk.console.WhatIfSummary;
import tubwright.desk.export.TrimJson;
import tubwright.desk.text.Figures;
import tubwright.desk.work.ChoiceWork;
import tubwright.desk.work.TrimWork;
import tubwright.desk.work.UserMistake;
import tubwright.engine.design.Design;

/** {@code tubwright what-if}: a change of layup answered with its proved error. */
@Command(
        name = "what-if",
        description = {
            "What a change of layup does to stiffness and mass, with an error that is proved for the mesh. The design file"
                    + " is left alone unless asked to be written."
        },
        synopsisHeading = "Usage: ",
        parameterListHeading = "%n",
        optionListHeading = "%n",
        footer = {
            "",
            "NAME is a zone or a patch; layers count from the outer face, as the ledger lists them. In a stack c marks cloth"
                    + " and no letter tape, each as the zone (or else the tub) has it; a core brings its film.",
            "",
            "Examples:",
            "  tubwright what-if mytub --drop \"flank=3,5\" --core \"floor=15 mm\"",
            "  tubwright what-if mytub --set \"deck=[45c/0c/core/0c/45c]\"",
            "  tubwright what-if mytub --drop \"flank=3\" --as-variant lighter",
            "  tubwright what-if mytub --joint \"lower shell / upper shell=50 %\" --exact"
        })
final class WhatIfCommand implements Callable<Integer> {
    /** Width of an ordinary answer and of an exact one, relative to the stiffness. */
    private static final double USUAL_WIDTH = 5e-3;

    private static final double EXACT_WIDTH = 1e-8;

    private final Terminal terminal;

    @Mixin
    private TrimOptions options;

    @Option(names = "--set", paramLabel = "NAME=STACK", description = "Another stack.")
    private List<String> sets = new ArrayList<>();

    @Option(names = "--drop", paramLabel = "NAME=LAYERS", description = "Leave layers out, by number.")
    private List<String> drops = new ArrayList<>();

    @Option(names = "--core", paramLabel = "NAME=THICKNESS", description = "Another core thickness.")
    private List<String> cores = new ArrayList<>();

    @Option(
            names = "--joint",
            paramLabel = "NAME=SHARE",
            description = "A share of a joint's stiffness, e.g. \"50 %%\".")
    private List<String> joints = new ArrayList<>();

    @Option(
            names = "--within",
            paramLabel = "SHARE",
            description = "Widest answer accepted, e.g. \"0.1 %%\"; default: 0.5 %%. The narrower the longer it takes.")
    private String within = "";

    @Option(names = "--exact", description = "Solve until the error is nothing to speak of.")
    private boolean exact;

    @Mixin
    private WriteOptions write;

    @Mixin
    private AnswerOptions printing;

    WhatIfCommand(Terminal terminal) {
        this.terminal = terminal;
    }

    @Override
    public Integer call() {
        TrimWork.Edits edits = new TrimWork.Edits(sets, drops, cores, joints);
        if (edits.isEmpty()) {
            throw new UserMistake(
                    "what-if needs a change: --set, --drop, --core or --joint\n    tubwright what-if --help"
                            + " shows how to write one");
        }
        TrimWork.Request request = options.request();
        double width = width();
        try (Progress progress = new Progress(terminal)) {
            progress.stage("reading " + options.place());
            Design design = TrimWork.read(options.place());
            WhatIfAnswer answer = TrimWork.whatIf(design, request, edits, width, Version.text(), progress::stage);
            ChoiceWork.Wanted wanted = write.wanted();
            Optional<KeptChoice> kept = wanted.any()
                    ? Optional.of(ChoiceWork.write(design, request, answer.layup(), wanted, progress::stage))
                    : Optional.empty();
            progress.done();
            if (printing.json()) {
                terminal.out().print(TrimJson.write(answer));
            } else {
                WhatIfSummary.lines(terminal, answer).forEach(terminal::print);
                kept.ifPresent(k -> KeptSummary.lines(k).forEach(terminal::print));
                terminal.print("");
                terminal.print("  computed in " + Figures.elapsed(progress.seconds()) + "; asked again it takes "
                        + String.format(Locale.ROOT, "%.1f", 1e3 * answer.answerSeconds()) + " ms");
            }
        }
        return ExitCode.DONE;
    }

    private double width() {
        if (exact) {
            return EXACT_WIDTH;
        }
        if (within.isEmpty()) {
            return USUAL_WIDTH;
        }
        try {
            double share = Double.parseDouble(within.replace("%", "").strip()) / (within.contains("%") ? 100 : 1);
            if (share >= EXACT_WIDTH && share <= 1) {
                return share;
            }
        } catch (NumberFormatException e) {
            // Told below together with what is out of range.
        }
        throw new UserMistake("--within " + within + ": write a share between 1e-8 and 1, for instance \"0.1 %\"");
    }
}
