// SPDX-License-Identifier: Apache-2.0
package tubwright.desk.command;

import java.io.IOException;
import java.nio.file.Path;
import java.time.LocalDate;
import java.util.Optional;
import java.util.concurrent.Callable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;
import tubwright.desk.answer.KitAnswer;
import tubwright.desk.console.KitSummary;
import tubwright.desk.console.Progress;
import tubwright.desk.console.Terminal;
import tubwright.desk.export.KitJson;
import tubwright.desk.export.RunFolder;
import tubwright.desk.report.KitPage;
import tubwright.desk.work.KitWork;
import tubwright.desk.work.UserMistake;
import tubwright.engine.design.Design;
import tubwright.engine.make.data.DataException;
import tubwright.engine.make.lay.PlyLayer;
import tubwright.engine.make.nest.NestException;
import tubwright.engine.quantity.Dimension;
import tubwright.engine.shape.ShapeException;
import tubwright.engine.structure.StructureException;

/** {@code tubwright kit}: what a tub takes to make. */
@Command(
        name = "kit",
        description = {
            "What a tub takes to make: mass ply by ply, every pattern nested on its roll, material bought against used,"
                    + " hours and costs by step from stated rates, and a run of tubs from pattern to delivery with its longest"
                    + " path."
        },
        synopsisHeading = "Usage: ",
        parameterListHeading = "%n",
        optionListHeading = "%n",
        footer = {
            "",
            "Reads shop.yaml beside the design, if there is one, for rolls, rates, working days and prices of your own. Writes DIR/runs/kit (kit.html,"
                    + " answer.json, inputs/), replacing the one before.",
            "",
            "Examples:",
            "  tubwright kit mytub",
            "  tubwright kit mytub --tubs 4 --begin 2030-05-20",
            "  tubwright kit mytub --moves 50000 --json"
        })
final class KitCommand implements Callable<Integer> {
    private final Terminal terminal;

    @Mixin
    private DesignOptions options;

    @Option(
            names = "--moves",
            paramLabel = "N",
            description = "Moves of single patterns the search for each nest may make; default: 3000.")
    private long moves = 3000;

    @Option(
            names = "--mesh",
            paramLabel = "LENGTH",
            description = "Size of the mesh plies are laid on; default: 15 mm.")
    private Optional<String> mesh = Optional.empty();

    @Mixin
    private RunOfTubs run = new RunOfTubs();

    @Mixin
    private AnswerOptions printing;

    KitCommand(Terminal terminal) {
        this.terminal = terminal;
    }

    @Override
    public Integer call() throws IOException {
        if (moves < 0) {
            throw new UserMistake("--moves " + moves + ": a search makes no fewer than none");
        }
        Design design = Design.read(options.place());
        Path folder = design.file().toAbsolutePath().getParent();
        String name = options.variant().orElse(Design.AS_DESIGNED);
        Design.Variant chosen = design.variant(name)
                .orElseThrow(() ->
                        new UserMistake("no variant is called \"" + name + "\"; there are " + design.variantNames()));
        double size = mesh.map(m -> OptionText.positive("--mesh", m, Dimension.LENGTH, "write for instance \"15 mm\""))
                .orElse(PlyLayer.USUAL_SIZE);
        try (Progress progress = new Progress(terminal)) {
            ShopFile shop = ShopFile.beside(design.file());
            progress.stage("laying plies");
            KitAnswer answer = KitWork.kit(
                    chosen.tub(),
                    chosen.laying(),
                    shop.data(),
                    run.request(shop.build(), LocalDate.now().toString()),
                    size,
                    moves,
                    RunCommand.stamp(),
                    Version.text(),
                    progress::stage,
                    Thread.currentThread()::isInterrupted);
            progress.stage("writing the page");
            try (RunFolder out = RunFolder.begin(folder.resolve("runs").resolve("kit"))) {
                String document = KitJson.write(answer);
                out.text(RunFolder.ANSWER, document);
                out.text("kit.html", KitPage.write(answer));
                out.copy(design.file().toAbsolutePath().getParent(), shop.inputs(), "inputs");
                out.finish();
                progress.done();
                if (printing.json()) {
                    terminal.out().print(document);
                } else {
                    KitSummary.lines(terminal, answer).forEach(terminal::print);
                    Written.tell(terminal, out.target().resolve("kit.html"), progress);
                }
            }
        } catch (DataException | NestException e) {
            throw new UserMistake(e.getMessage());
        } catch (StructureException | ShapeException fault) {
            throw design.explain(chosen, fault);
        }
        return ExitCode.DONE;
    }
}
