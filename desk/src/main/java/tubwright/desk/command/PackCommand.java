// SPDX-License-Identifier: Apache-2.0
package tubwright.desk.command;

import java.io.IOException;
import java.io.OutputStream;
import java.nio.file.Path;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.EnumMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.concurrent.Callable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;
import tubwright.desk.answer.CureAnswer;
import tubwright.desk.answer.MouldAnswer;
import tubwright.desk.answer.PackAnswer;
import tubwright.desk.console.PackSummary;
import tubwright.desk.console.Progress;
import tubwright.desk.console.Terminal;
import tubwright.desk.export.FlatDxf;
import tubwright.desk.export.FlatSvg;
import tubwright.desk.export.NestSvg;
import tubwright.desk.export.PackJson;
import tubwright.desk.export.PackLists;
import tubwright.desk.export.PieceSurfaces;
import tubwright.desk.export.RunFolder;
import tubwright.desk.sheet.BuildSheet;
import tubwright.desk.sheet.CureSheets;
import tubwright.desk.sheet.MouldSheets;
import tubwright.desk.sheet.PlyBook;
import tubwright.desk.work.CureWork;
import tubwright.desk.work.MouldWork;
import tubwright.desk.work.PackWork;
import tubwright.desk.work.TrimWork;
import tubwright.desk.work.UserMistake;
import tubwright.engine.design.Design;
import tubwright.engine.make.cure.CureException;
import tubwright.engine.make.cure.CureLibrary;
import tubwright.engine.make.cure.CureShop;
import tubwright.engine.make.flat.FlatPattern;
import tubwright.engine.make.kit.KitNest;
import tubwright.engine.make.kit.ShopData;
import tubwright.engine.make.kit.Stock;
import tubwright.engine.make.nest.Roll;
import tubwright.engine.quantity.Dimension;

/** {@code tubwright pack}: what an outside shop needs to quote and to build. */
@Command(
        name = "pack",
        description = {
            "Gathers what an outside shop needs to quote for the parts and to lay them up: a ply book with a page a step,"
                    + " patterns for the cutter, where they lie on the roll, kits, materials, holes and inserts, bonding, test"
                    + " panels, limits, and a letter that asks for a price."
        },
        synopsisHeading = "Usage: ",
        parameterListHeading = "%n",
        optionListHeading = "%n",
        footer = {
            "",
            "Reads shop.yaml beside the design, if there is one, for rolls of your own. Writes DIR/runs/pack, replacing the"
                    + " one before. The same design, issue and date give the same bytes.",
            "",
            "Examples:",
            "  tubwright pack mytub",
            "  tubwright pack mytub --issue B --date 2030-05-17 --roll \"1270 mm\""
        })
final class PackCommand implements Callable<Integer> {
    private final Terminal terminal;

    @Mixin
    private DesignOptions options;

    @Option(names = "--issue", paramLabel = "X", description = "Issue on every sheet; default: A.")
    private String issue = "A";

    @Option(names = "--date", paramLabel = "DATE", description = "Date on every sheet; default: today.")
    private String date = LocalDate.now().toString();

    @Option(
            names = "--roll",
            paramLabel = "WIDTH",
            description = "Usable width of cloth; default: as the shop's data say.")
    private Optional<String> roll = Optional.empty();

    @Option(
            names = "--moves",
            paramLabel = "N",
            description = "Moves of patterns to spend on each kit, some thousand a second; default: 2000.")
    private long moves = 2_000;

    @Option(names = "--out", paramLabel = "DIR", description = "Write the folder here instead.")
    private Optional<Path> out = Optional.empty();

    @Mixin
    private RunOfTubs run = new RunOfTubs();

    @Mixin
    private AnswerOptions printing;

    PackCommand(Terminal terminal) {
        this.terminal = terminal;
    }

    @Override
    public Integer call() throws IOException {
        try (Progress progress = new Progress(terminal)) {
            progress.stage("reading " + options.place());
            Design design = TrimWork.read(options.place());
            ShopFile shop = ShopFile.beside(design.file());
            try (RunFolder folder =
                    RunFolder.begin(out.orElse(options.folder().resolve("runs").resolve("pack")))) {
                PackAnswer answer = PackWork.pack(
                        design,
                        new PackWork.Request(
                                options.request(),
                                issue,
                                date,
                                wide(shop.data()),
                                run.request(shop.build(), date),
                                moves),
                        Version.text(),
                        progress::stage);
                progress.stage("writing the ply book");
                String document = PackJson.write(answer);
                CureLibrary library =
                        CureCommand.library(design.file().toAbsolutePath().getParent());
                progress.stage("cures");
                CureAnswer cures = CureWork.cure(
                        answer.laid().tub(),
                        library,
                        CureShop.usual(library),
                        date,
                        Version.text(),
                        progress::stage,
                        Thread.currentThread()::isInterrupted);
                try (OutputStream sheets = folder.open("cures.pdf")) {
                    sheets.write(CureSheets.write(cures, answer.foot()));
                }
                write(folder, answer, document, library);
                folder.copy(design.file().toAbsolutePath().getParent(), shop.inputs(), "inputs");
                folder.finish();
                progress.done();
                if (printing.json()) {
                    terminal.out().print(document);
                } else {
                    PackSummary.lines(terminal, answer).forEach(terminal::print);
                    Written.tell(terminal, folder.target().resolve("ply-book.pdf"), progress);
                }
            }
        } catch (CureException missing) {
            throw new UserMistake(missing.getMessage());
        }
        return ExitCode.DONE;
    }

    /** Rolls and times with cloth as wide as asked. */
    private ShopData wide(ShopData own) {
        if (roll.isEmpty()) {
            return own;
        }
        double width = OptionText.positive("--roll", roll.get(), Dimension.LENGTH, "give a length, as in \"1250 mm\"");
        Map<Stock, Roll> rolls = new EnumMap<>(own.rolls());
        rolls.computeIfPresent(Stock.CLOTH, (stock, usual) -> new Roll(width, usual.gap()));
        return new ShopData(rolls, own.times());
    }

    private static void write(RunFolder folder, PackAnswer answer, String document, CureLibrary library)
            throws IOException {
        folder.text(RunFolder.ANSWER, document);
        try (OutputStream book = folder.open("ply-book.pdf")) {
            book.write(PlyBook.write(answer));
        }
        try (OutputStream calendar = folder.open("calendar.pdf")) {
            calendar.write(BuildSheet.write(answer));
        }
        try (OutputStream lists = folder.open("lists.xlsx")) {
            lists.write(PackLists.workbook(answer));
        }
        folder.text("calendar.csv", PackLists.calendar(answer));
        folder.text("as-built.csv", PackLists.form(answer));
        MouldAnswer moulds = MouldWork.on(
                answer.laid().mesh(),
                answer.laid().tub(),
                answer.variant(),
                MouldWork.Request.usual(library),
                answer.date(),
                answer.version(),
                _ -> {});
        try (OutputStream sheets = folder.open("pieces-and-moulds.pdf")) {
            sheets.write(MouldSheets.write(moulds, answer.foot()));
        }
        PieceSurfaces.write(folder, moulds.mesh(), answer.laid().tub(), answer.foot());
        folder.text("kits.csv", PackLists.kits(answer));
        folder.text("materials.csv", PackLists.materials(answer));
        folder.text("hardpoints.csv", PackLists.hardpoints(answer));
        folder.text("request-for-quotation.txt", PackLists.letter(answer));
        Map<String, List<FlatPattern>> patterns = new LinkedHashMap<>();
        answer.byPiece()
                .forEach((piece, plies) -> plies.stream()
                        .flatMap(p -> answer.cut(p).stream())
                        .forEach(c -> patterns.computeIfAbsent(fileName(piece), k -> new ArrayList<>())
                                .add(c.pattern())));
        for (Map.Entry<String, List<FlatPattern>> piece : patterns.entrySet()) {
            folder.text("patterns/" + piece.getKey() + ".dxf", FlatDxf.write(piece.getValue(), answer.foot()));
            folder.text("patterns/" + piece.getKey() + ".svg", FlatSvg.write(piece.getValue(), answer.foot()));
        }
        for (KitNest kit : answer.kits()) {
            if (kit.nest().isPresent()) {
                folder.text(
                        "nests/"
                                + fileName(kit.piece() + " " + kit.material().name() + " "
                                        + Math.round(1e6
                                                * kit.areal()
                                                / kit.material().density()) + "um")
                                + ".svg",
                        NestSvg.write(kit.nest().get(), answer.foot()));
            }
        }
    }

    private static String fileName(String name) {
        return name.replaceAll("[^\\p{L}\\p{N}]+", "-");
    }
}
