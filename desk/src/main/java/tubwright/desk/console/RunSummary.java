// SPDX-License-Identifier: Apache-2.0
package tubwright.desk.console;

import static tubwright.desk.text.Conversions.perDegree;
import static tubwright.desk.text.Conversions.poundFeetPerDegree;
import static tubwright.desk.text.Figures.fixed;
import static tubwright.desk.text.Figures.percent;
import static tubwright.desk.text.Figures.plusMinus;
import static tubwright.desk.text.Figures.significant;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import tubwright.desk.answer.CalibratedWords;
import tubwright.desk.answer.Reading;
import tubwright.desk.answer.ReserveTwins;
import tubwright.desk.answer.ReserveWords;
import tubwright.desk.answer.RunAnswer;
import tubwright.desk.answer.StabilityWords;
import tubwright.desk.console.Terminal.Look;
import tubwright.desk.text.Conversions;
import tubwright.engine.response.CaseAnswer;
import tubwright.engine.response.EnergyShare;
import tubwright.engine.response.MassAnswer;
import tubwright.engine.response.Reserve;
import tubwright.engine.response.ReserveTable;
import tubwright.engine.response.SheetState;
import tubwright.engine.response.VariantAnswer;

/** The answer of a run in one screenful. */
public final class RunSummary {
    private static final int WIDTH = 78;
    private static final int SHARES = 8;
    private static final int RESERVES = 8;
    private static final int BAR = 24;
    private static final String GAP = " ";

    private final Terminal terminal;
    private final RunAnswer answer;
    private final List<String> lines = new ArrayList<>();

    private RunSummary(Terminal terminal, RunAnswer answer) {
        this.terminal = terminal;
        this.answer = answer;
    }

    /** Lines to print, without the place of the files, which {@code run} adds. */
    public static List<String> lines(Terminal terminal, RunAnswer answer) {
        RunSummary summary = new RunSummary(terminal, answer);
        summary.heads();
        answer.calibrated().ifPresent(c -> {
            summary.lines.add("");
            summary.quiet(CalibratedWords.of(c));
        });
        summary.targets();
        summary.flexibility();
        answer.main().installed().ifPresent(i -> InstalledSummary.add(terminal, i, summary.lines, summary::quiet));
        summary.reserves();
        summary.lines.addAll(StabilitySummary.lines(terminal, answer.main().stability()));
        summary.mass();
        summary.comparison();
        summary.warnings();
        return summary.lines;
    }

    private void heads() {
        VariantAnswer main = answer.main();
        lines.add("");
        lines.add(terminal.look(Look.STRONG, answer.tub()) + "  " + main.variant() + ", " + main.construction());
        lines.add("");
        List<String> texts = new ArrayList<>();
        TextTable table = new TextTable(true, true, true);
        Reading.torsion(main).ifPresent(t -> {
            double k = t.stiffness().value();
            double e = t.stiffness().error();
            table.row(
                    "torsional stiffness",
                    plusMinus(perDegree(k), perDegree(e), GAP) + " N·m/deg",
                    plusMinus(poundFeetPerDegree(k), poundFeetPerDegree(e), GAP) + " lbf·ft/deg");
            if (t.stiffnessAtHardpoints() > 0) {
                double at = t.stiffnessAtHardpoints();
                table.row(
                        "  at the hardpoints",
                        significant(perDegree(at), 3, GAP) + " N·m/deg",
                        significant(poundFeetPerDegree(at), 3, GAP) + " lbf·ft/deg");
            }
            texts.add(
                    "Torsion is read between x = " + fixed(1000 * t.frontStation(), 0, GAP) + " and "
                            + fixed(1000 * t.rearStation(), 0, GAP) + " mm and includes " + t.includes()
                            + ". ± is the mesh error. At the hardpoints: twist of the loaded against the held ones, with that give.");
        });
        Reading.bending(main)
                .ifPresent(b -> table.row(
                        "bending stiffness",
                        plusMinus(b.stiffness().value() / 1e6, b.stiffness().error() / 1e6, GAP) + " kN/mm",
                        "at x = " + fixed(1000 * b.frontStation(), 0, GAP) + " mm"));
        double mass = main.mass().whole().mass();
        table.row("mass", significant(mass, 4, GAP) + " kg", significant(mass / Conversions.POUND, 4, GAP) + " lb");
        Reading.torsionPerMass(main)
                .ifPresent(k -> table.row("torsion per mass", significant(perDegree(k), 3, GAP) + " N·m/deg/kg", ""));
        List<String> rows = table.lines(terminal);
        for (int i = 0; i < rows.size(); i++) {
            lines.add(i == 0 ? terminal.look(Look.STRONG, rows.get(i)) : rows.get(i));
        }
        texts.forEach(text -> quiet(text));
    }

    private void targets() {
        if (answer.targets().isEmpty()) {
            return;
        }
        lines.add("");
        lines.add("Targets");
        for (RunAnswer.Target target : answer.targets()) {
            String limit = target.what()
                    + (target.atLeast() ? " at least " : " at most ")
                    + (significant(target.limit(), 4, GAP) + " " + target.unit()).strip();
            lines.add("  "
                    + switch (target.standing()) {
                        case MET -> terminal.look(Look.GOOD, "● met   ") + "  " + limit;
                        case MISSED -> terminal.look(Look.BAD, "○ missed") + "  " + limit;
                        case TOO_CLOSE_TO_CALL ->
                            terminal.look(Look.CAREFUL, "◐ close ") + "  " + limit + " lies inside the error";
                    });
        }
    }

    private void flexibility() {
        Reading.torsion(answer.main()).ifPresent(torsion -> {
            List<EnergyShare> shares = Reading.largest(torsion, SHARES);
            if (!shares.isEmpty()) {
                lines.add("");
                lines.add("Where the flexibility lives (share of strain energy in torsion)");
                double most =
                        shares.stream().mapToDouble(EnergyShare::share).max().orElse(1);
                TextTable table = new TextTable(true, true, false, true);
                for (EnergyShare share : shares) {
                    boolean rest = share.name().equals("everything else");
                    String bar = rest ? "" : "█".repeat((int) Math.round(BAR * share.share() / most));
                    table.row(share.name(), rest ? "" : Reading.words(share.kind()), percent(share.share()), bar);
                }
                lines.addAll(table.lines(terminal));
            }
            List<String> sketch = TwistSketch.lines(torsion, answer.landmarks());
            if (!sketch.isEmpty()) {
                lines.add("");
                lines.addAll(sketch);
            }
        });
    }

    private void reserves() {
        ReserveTable reserves = answer.main().reserves();
        if (reserves.loads().isEmpty()) {
            return;
        }
        lines.add("");
        lines.add("What fails first (factor on the loads of the case)");
        TextTable table = new TextTable(true, true, true, true);
        List<Reserve> rows = ReserveTwins.joined(reserves.envelope());
        for (Reserve row : rows.subList(0, Math.min(RESERVES, rows.size()))) {
            table.row(ReserveWords.value(row), row.load(), row.zone(), ReserveWords.what(row));
        }
        lines.addAll(table.lines(terminal));
        quiet("* where stress depends on the mesh" + finer(rows) + ". " + reserves.strengths() + " "
                + reserves.notChecked().size()
                + " checks were not made for want of data: see the report.");
    }

    /** The mesh that would settle the rows shown, if one would. */
    private static String finer(List<Reserve> rows) {
        double size = rows.stream()
                .limit(RESERVES)
                .mapToDouble(Reserve::settledBy)
                .filter(s -> s > 0)
                .min()
                .orElse(0);
        return size > 0
                ? ": elements of " + fixed(1000 * size, 0, GAP) + " mm there, or a test, would settle it"
                : ": a test would settle it";
    }

    private void mass() {
        lines.add("");
        lines.add("Mass by piece");
        TextTable table = new TextTable(true, false, false);
        MassAnswer mass = answer.main().mass();
        for (MassAnswer.Body piece : mass.pieces()) {
            double share = piece.mass() / mass.whole().mass();
            table.row(piece.name(), significant(piece.mass(), 3, GAP) + " kg", percent(share));
        }
        double[] centre = mass.whole().centre();
        table.row("whole tub", significant(mass.whole().mass(), 4, GAP) + " kg", "");
        lines.addAll(table.lines(terminal));
        quiet("Centre of mass at x " + fixed(1000 * centre[0], 0, GAP) + ", y " + fixed(1000 * centre[1], 0, GAP)
                + ", z " + fixed(1000 * centre[2], 0, GAP) + " mm.");
    }

    private void comparison() {
        List<VariantAnswer> variants = answer.variants();
        if (variants.size() < 2) {
            return;
        }
        lines.add("");
        lines.add("Side by side");
        boolean[] left = new boolean[1 + variants.size()];
        left[0] = true;
        TextTable table = new TextTable(left);
        table.row(cells("", v -> v.variant()));
        for (CaseAnswer each : answer.main().cases()) {
            boolean torsion = each.kind() == CaseAnswer.Kind.TORSION;
            table.row(cells(
                    each.name() + (torsion ? ", N·m/deg" : ", kN/mm"),
                    v -> Reading.named(v, each.name())
                            .map(c -> torsion
                                    ? fixed(perDegree(c.stiffness().value()), 0, GAP)
                                    : significant(c.stiffness().value() / 1e6, 3, GAP))
                            .orElse("–")));
        }
        Reading.torsion(answer.main())
                .ifPresent(t -> table.row(cells(
                        "at the hardpoints, N·m/deg",
                        v -> Reading.named(v, t.name())
                                .map(CaseAnswer::stiffnessAtHardpoints)
                                .filter(k -> k > 0)
                                .map(k -> significant(perDegree(k), 3, GAP))
                                .orElse("–"))));
        Reading.torsion(answer.main()).ifPresent(t -> {
            if (answer.variants().stream().anyMatch(v -> sheet(v, t.name()).isPresent())) {
                table.row(cells(
                        "sheet first buckles in shear at, N·m",
                        v -> sheet(v, t.name())
                                .map(s -> significant(
                                        s.firstFactor()
                                                * Reading.named(v, t.name())
                                                        .orElseThrow()
                                                        .load(),
                                        2,
                                        GAP))
                                .orElse("–")));
            }
            if (answer.variants().stream()
                    .anyMatch(
                            v -> sheet(v, t.name()).filter(s -> s.buckled() > 0).isPresent())) {
                table.row(cells(
                        "torsion with the sheet buckled by " + fixed(t.load(), 0, GAP) + " N·m",
                        v -> Reading.named(v, t.name())
                                .map(c -> fixed(perDegree(c.stiffnessUnderLoad()), 0, GAP))
                                .orElse("–")));
            }
        });
        table.row(cells("mass, kg", v -> significant(v.mass().whole().mass(), 4, GAP)));
        if (variants.stream().anyMatch(v -> Reading.torsionPerMass(v).isPresent())) {
            table.row(cells(
                    "torsion per mass, N·m/deg/kg",
                    v -> Reading.torsionPerMass(v)
                            .map(k -> significant(perDegree(k), 3, GAP))
                            .orElse("–")));
        }
        if (variants.stream().noneMatch(v -> v.stability().none())) {
            table.row(cells("buckling factor", v -> StabilityWords.lowest(v.stability(), GAP)));
            table.row(cells("first torsion, Hz", v -> StabilityWords.torsion(v.stability(), GAP)));
        }
        table.row(cells("pieces", v -> Integer.toString(v.pieceCount())));
        table.row(cells("parts to make", v -> Integer.toString(v.partCount())));
        table.row(cells("fasteners", v -> Integer.toString(v.fastenerCount())));
        lines.addAll(table.lines(terminal));
        ratio();
    }

    private static Optional<SheetState> sheet(VariantAnswer variant, String name) {
        return Reading.named(variant, name).flatMap(CaseAnswer::sheet);
    }

    private void ratio() {
        VariantAnswer main = answer.main();
        for (VariantAnswer other :
                answer.variants().subList(1, answer.variants().size())) {
            var ours = Reading.torsion(main);
            var theirs = Reading.torsion(other);
            if (ours.isPresent() && theirs.isPresent()) {
                double stiffer = ours.get().stiffness().value()
                        / theirs.get().stiffness().value();
                double heavier =
                        main.mass().whole().mass() / other.mass().whole().mass();
                lines.add("  " + main.variant() + " is " + significant(stiffer, 2, GAP) + " times as stiff as "
                        + other.variant() + " at " + significant(heavier, 2, GAP) + " times the mass");
            }
        }
    }

    private String[] cells(String first, java.util.function.Function<VariantAnswer, String> read) {
        List<String> cells = new ArrayList<>();
        cells.add(first);
        answer.variants().forEach(v -> cells.add(read.apply(v)));
        return cells.toArray(String[]::new);
    }

    private void warnings() {
        if (!answer.warnings().isEmpty()) {
            lines.add("");
            for (String warning : answer.warnings()) {
                for (String line : Wrap.lines(warning, "  ! ", WIDTH)) {
                    lines.add(terminal.look(Look.CAREFUL, line));
                }
            }
        }
        lines.add("");
        quiet(RunAnswer.CAUTION);
    }

    private void quiet(String text) {
        for (String line : Wrap.lines(text, "  ", WIDTH)) {
            lines.add(terminal.look(Look.QUIET, line));
        }
    }
}
