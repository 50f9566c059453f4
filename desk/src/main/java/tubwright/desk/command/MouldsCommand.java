// SPDX-License-Identifier: Apache-2.0
package tubwright.desk.command;

import java.io.IOException;
import java.nio.file.Files;
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
import tubwright.desk.answer.MouldAnswer;
import tubwright.desk.console.MouldSummary;
import tubwright.desk.console.Progress;
import tubwright.desk.console.Terminal;
import tubwright.desk.export.MouldJson;
import tubwright.desk.export.PieceSurfaces;
import tubwright.desk.export.RunFolder;
import tubwright.desk.report.MouldPage;
import tubwright.desk.work.MouldWork;
import tubwright.desk.work.UserMistake;
import tubwright.engine.design.Design;
import tubwright.engine.design.text.YamlReader;
import tubwright.engine.make.cure.CureException;
import tubwright.engine.make.cure.CureLibrary;
import tubwright.engine.make.mould.Draft;
import tubwright.engine.quantity.Dimension;

/** {@code tubwright moulds}: the pieces and what they come out of. */
@Command(
        name = "moulds",
        description = {
            "Every piece and its mould: split lines, draft along the pull and where the mould would reach over the piece,"
                    + " developed areas, cold sizes, by how much to open every bend, what tooling has to be made."
        },
        synopsisHeading = "Usage: ",
        parameterListHeading = "%n",
        optionListHeading = "%n",
        footer = {
            "",
            "Reads cure.yaml beside the design, if there is one. Writes DIR/runs/moulds (moulds.html, answer.json, surfaces/"
                    + " with an STL file of each piece and frames.dxf, inputs/), replacing the one before.",
            "",
            "Examples:",
            "  tubwright moulds mytub",
            "  tubwright moulds mytub --pull \"lower shell: 0, 0, 1\" --draft \"3 deg\" --mould steel"
        })
final class MouldsCommand implements Callable<Integer> {
    /** Data of the user's own, beside the design. */
    private static final String OWN = "cure.yaml";

    private final Terminal terminal;

    @Mixin
    private DesignOptions options;

    @Option(
            names = "--pull",
            paramLabel = "\"PIECE: X, Y, Z\"",
            description =
                    "Direction a piece is taken out along; default: the best is found. May be given for each piece.")
    private List<String> pulls = new ArrayList<>();

    @Option(names = "--draft", paramLabel = "ANGLE", description = "Draft asked for; default: 2 deg.")
    private Optional<String> draft = Optional.empty();

    @Option(names = "--mould", paramLabel = "MATERIAL", description = "What moulds are made of; default: carbon-epoxy.")
    private String mould = "carbon-epoxy";

    @Option(names = "--cycle", paramLabel = "NAME", description = "Of cure, in which parts freeze; default: solid-180.")
    private String cycle = "solid-180";

    @Option(names = "--out", paramLabel = "DIR", description = "Write the folder here instead.")
    private Optional<Path> out = Optional.empty();

    @Mixin
    private AnswerOptions printing;

    MouldsCommand(Terminal terminal) {
        this.terminal = terminal;
    }

    @Override
    public Integer call() throws IOException {
        try (Progress progress = new Progress(terminal)) {
            progress.stage("reading " + options.place());
            Design design = Design.read(options.place());
            Path folder = design.file().toAbsolutePath().getParent();
            List<Path> inputs = new ArrayList<>(List.of(design.file()));
            CureLibrary library = CureLibrary.shipped();
            Path own = folder.resolve(OWN);
            if (Files.exists(own)) {
                library = library.with(own.toString(), YamlReader.contents(own));
                inputs.add(own);
            }
            String name = options.variant().orElse(Design.AS_DESIGNED);
            Design.Variant variant = design.variant(name)
                    .orElseThrow(() -> new UserMistake(
                            "no variant is called \"" + name + "\"; there are " + design.variantNames()));
            MouldAnswer answer = MouldWork.moulds(
                    variant.tub(),
                    variant.name(),
                    new MouldWork.Request(library, mould, cycle, directions(), wanted()),
                    RunCommand.stamp(),
                    Version.text(),
                    progress::stage);
            progress.stage("drawing");
            try (RunFolder run =
                    RunFolder.begin(out.orElse(options.folder().resolve("runs").resolve("moulds")))) {
                String document = MouldJson.write(answer);
                run.text(RunFolder.ANSWER, document);
                run.text("moulds.html", MouldPage.write(answer));
                PieceSurfaces.write(run, answer.mesh(), variant.tub(), answer.tub() + ", " + answer.variant());
                run.copy(folder, inputs, "inputs");
                run.finish();
                progress.done();
                if (printing.json()) {
                    terminal.out().print(document);
                } else {
                    MouldSummary.lines(terminal, answer).forEach(terminal::print);
                    Written.tell(terminal, run.target().resolve("moulds.html"), progress);
                }
            }
            return ExitCode.DONE;
        } catch (CureException e) {
            throw new UserMistake(e.getMessage());
        }
    }

    private double wanted() {
        double angle = draft.map(d -> OptionText.quantity("--draft", d, Dimension.ANGLE))
                .orElse(Draft.USUAL);
        if (!(angle >= 0) || angle > Math.toRadians(45)) {
            throw new UserMistake("--draft " + draft.orElse("") + ": a draft lies between 0 and 45 deg");
        }
        return angle;
    }

    private Map<String, double[]> directions() {
        Map<String, double[]> directions = new LinkedHashMap<>();
        for (String pull : pulls) {
            int colon = pull.indexOf(':');
            String[] parts =
                    colon < 0 ? new String[0] : pull.substring(colon + 1).split(",");
            double[] d = new double[3];
            double sum = 0;
            try {
                for (int i = 0; i < 3; i++) {
                    d[i] = Double.parseDouble(parts[i].strip());
                    sum += d[i] * d[i];
                }
            } catch (NumberFormatException | ArrayIndexOutOfBoundsException e) {
                sum = 0;
            }
            if (parts.length != 3 || !(sum > 0) || !Double.isFinite(sum)) {
                throw new UserMistake(
                        "--pull \"" + pull + "\": write the piece and a direction, as in \"lower shell: 0, 0, 1\"");
            }
            for (int i = 0; i < 3; i++) {
                d[i] /= Math.sqrt(sum);
            }
            directions.put(pull.substring(0, colon).strip(), d);
        }
        return directions;
    }
}
