// SPDX-License-Identifier: Apache-2.0
package tubwright.desk.command;

import java.io.IOException;
import java.nio.file.Path;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.concurrent.Callable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;
import tubwright.desk.answer.SpreadStory;
import tubwright.desk.console.Progress;
import tubwright.desk.console.SpreadSummary;
import tubwright.desk.console.Terminal;
import tubwright.desk.export.RunFolder;
import tubwright.desk.export.SpreadJson;
import tubwright.desk.report.SpreadPage;
import tubwright.desk.work.SpreadWork;
import tubwright.desk.work.TrimWork;
import tubwright.desk.work.UserMistake;
import tubwright.engine.design.Design;
import tubwright.engine.quantity.Dimension;
import tubwright.engine.safety.spread.Energies;

/** {@code tubwright spread}: a load followed past its peak. */
@Command(
        name = "spread",
        description = {
            "Lets a load grow until little is left: plies break and soften, cores shear and crush, bonds unzip, each with its"
                    + " fracture energy. Load against movement, energy, and what failed in which order. On a panel of one of"
                    + " the design's laminates (--panel), or round a place on the tub in one of its cases (--at, --case)."
        },
        synopsisHeading = "Usage: ",
        parameterListHeading = "%n",
        optionListHeading = "%n",
        footer = {
            "",
            "Writes DIR/runs/spread (spread.html, answer.json, inputs/), replacing the one before. Fracture energies come from"
                    + " the materials (GIc, GIIc, GfT, GfC); what is missing is said, or assumed by the options.",
            "",
            "Examples:",
            "  tubwright spread mytub --panel \"side skin\" --fibres \"60 kJ/m2\" --core \"5 kJ/m2\"",
            "  tubwright spread mytub --at \"upper front leg R\" --case kerb --size \"300 mm\""
        })
final class SpreadCommand implements Callable<Integer> {
    private final Terminal terminal;

    @Mixin
    private DesignOptions where;

    @Option(names = "--panel", paramLabel = "LAMINATE", description = "Push a flat panel of this laminate.")
    private Optional<String> panel = Optional.empty();

    @Option(
            names = "--length",
            paramLabel = "SIZE",
            description = "Length of the panel, along its 0°; default: 400 mm.")
    private String length = "400 mm";

    @Option(names = "--width", paramLabel = "SIZE", description = "Width of the panel; default: as long as it is.")
    private Optional<String> width = Optional.empty();

    @Option(
            names = "--span",
            paramLabel = "SIZE",
            description = "Bend it over two supports so far apart; without, all four edges hold it.")
    private Optional<String> span = Optional.empty();

    @Option(names = "--pad", paramLabel = "SIZE", description = "Length of what pushes; default: 100 mm.")
    private String pad = "100 mm";

    @Option(names = "--elements", paramLabel = "N", description = "Elements along and across the panel; default: 40.")
    private int elements = 40;

    @Option(
            names = "--at",
            paramLabel = "WHERE",
            description = "A place on the tub: a point \"x, y, z mm\", a hardpoint, a zone or a wall.")
    private Optional<String> at = Optional.empty();

    @Option(names = "--case", paramLabel = "NAME", description = "The case whose load grows, with --at.")
    private Optional<String> loading = Optional.empty();

    @Option(
            names = "--size",
            paramLabel = "SIZE",
            description = "How large the place is in which things may fail, with --at; default: 300 mm.")
    private String size = "300 mm";

    @Option(names = "--hole", paramLabel = "SIZE", description = "Tear out a patch so large first, with --at.")
    private Optional<String> hole = Optional.empty();

    @Option(
            names = "--fibres",
            paramLabel = "ENERGY",
            description = "Assume this fracture energy of fibres where a ply gives none, e.g. \"60 kJ/m2\".")
    private Optional<String> fibres = Optional.empty();

    @Option(names = "--matrix", paramLabel = "ENERGY", description = "The same of cracks between fibres.")
    private Optional<String> matrix = Optional.empty();

    @Option(names = "--core", paramLabel = "ENERGY", description = "The same of cores in shear.")
    private Optional<String> core = Optional.empty();

    @Option(names = "--bond", paramLabel = "ENERGY", description = "The same of bond lines.")
    private Optional<String> bond = Optional.empty();

    @Mixin
    private MeshOptions mesh;

    @Option(names = "--out", paramLabel = "DIR", description = "Write the folder here instead.")
    private Optional<Path> out = Optional.empty();

    @Mixin
    private AnswerOptions printing;

    SpreadCommand(Terminal terminal) {
        this.terminal = terminal;
    }

    @Override
    public Integer call() throws IOException {
        SpreadWork.Request request = request();
        try (Interruption interruption = new Interruption();
                Progress progress = new Progress(terminal)) {
            progress.endsByItself();
            progress.stage("reading " + where.place());
            Design design = TrimWork.read(where.place());
            Path target = out.orElse(where.folder().resolve("runs").resolve("spread"));
            // What cannot be written to is refused before the work, not after it.
            RunFolder.begin(target).close();
            SpreadStory story = SpreadWork.spread(
                    design, request, RunCommand.stamp(), Version.text(), progress::stage, interruption::asked);
            progress.stage("writing the page");
            // Only now: a folder begun before the process was told to stop would be swept away.
            try (RunFolder folder = RunFolder.begin(target)) {
                String document = SpreadJson.write(story);
                Written.keep(folder, design, document, Map.of("spread.html", SpreadPage.write(story)));
                Written.tell(
                        terminal,
                        progress,
                        printing,
                        document,
                        SpreadSummary.lines(terminal, story),
                        folder.target().resolve("spread.html"));
                terminal.out().flush();
            }
        }
        return ExitCode.DONE;
    }

    private SpreadWork.Request request() {
        if (panel.isPresent() == at.isPresent()) {
            throw new UserMistake("say what is loaded: --panel with a laminate, or --at with a place on the tub");
        }
        if (at.isPresent() && loading.isEmpty()) {
            throw new UserMistake("--at wants --case: the load that grows");
        }
        if (elements < 4 || elements > 120 || elements % 2 != 0) {
            throw new UserMistake("--elements " + elements + ": an even number from 4 to 120");
        }
        TrimWork.Request on = new TrimWork.Request(where.variant(), Optional.empty(), mesh.size(), mesh.quick());
        Energies energies = new Energies(
                energy("--fibres", fibres), energy("--matrix", matrix), energy("--core", core), energy("--bond", bond));
        double along = size("--length", length);
        double between = span.map(s -> size("--span", s)).orElse(0.0);
        if (between > along) {
            throw new UserMistake(
                    "--span " + span.get() + ": the supports of a panel of " + length + " cannot stand farther apart");
        }
        double pushed = size("--pad", pad);
        double least = span.isPresent()
                ? between
                : Math.min(along, width.map(w -> size("--width", w)).orElse(along));
        if (panel.isPresent() && pushed >= least) {
            throw new UserMistake("--pad " + pad + ": a pad is smaller than the panel between what holds it");
        }
        return new SpreadWork.Request(
                on,
                panel.map(p -> new SpreadWork.OnPanel(
                        p, along, width.map(w -> size("--width", w)).orElse(along), between, pushed, elements)),
                at.map(a -> new SpreadWork.OnTub(
                        a,
                        loading.orElseThrow(),
                        size("--size", size),
                        hole.map(h -> size("--hole", h)).orElse(0.0))),
                energies);
    }

    private static double size(String option, String text) {
        return OptionText.positive(option, text, Dimension.LENGTH, "a length greater than zero is wanted");
    }

    private static OptionalDouble energy(String option, Optional<String> text) {
        return text.isEmpty()
                ? OptionalDouble.empty()
                : OptionalDouble.of(OptionText.positive(
                        option, text.get(), Dimension.TOUGHNESS, "a fracture energy is greater than zero"));
    }
}
