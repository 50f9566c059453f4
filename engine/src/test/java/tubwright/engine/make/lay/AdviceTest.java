// SPDX-License-Identifier: Apache-2.0
package tubwright.engine.make.lay;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import tubwright.engine.design.BoxText;
import tubwright.engine.make.flat.FlatPattern;
import tubwright.engine.make.flat.Mark;
import tubwright.engine.make.kit.Splices;
import tubwright.engine.make.nest.NestException;
import tubwright.engine.structure.Tub;
import tubwright.numerics.solver.Solvers;

/** What is said where a ply cannot be laid, and what is cut or marked on patterns for it. */
class AdviceTest {
    private static final String BOX = BoxText.rounded() + """
            laminates:
              skin: {stack: "[0c/core/0c]", plies: {c: pw-t650-976}, core: al-honeycomb-3.1, core thickness: 10 mm}
              heavy: {stack: "[0c/core/0c]", plies: {c: pw-t650-976}, core: al-honeycomb-6.1, core thickness: 10 mm}
            zones:
              all: {on: [floor, flank, deck], laminate: skin}
              rear: {on: [floor, flank], x: 300 .. 500 mm, laminate: heavy}
            hardpoints:
              bracket: {on: floor, x: 150 mm, y: 60 mm, footprint: 40 mm}
            """ + BoxText.trayAndLid();

    private static LaidTub laid(Path folder) throws IOException {
        Tub tub = BoxText.read(folder, BOX).asDesigned().tub();
        return PlyLayer.lay(tub, 0.025, Solvers.pureJava(), (ply, done, all) -> {});
    }

    private static DrapedPly find(LaidTub tub, String name) {
        return tub.plies().stream()
                .filter(p -> p.ply().name().equals(name))
                .findFirst()
                .orElseThrow();
    }

    /**
     * The ramp of a core 10 mm thick at 30° is 17.3 mm long. It runs along the open edges: at the front, at both split
     * lines, but not at the rear, where another core follows.
     */
    @Test
    void coresHaveRampsAtOpenEdgesAndCirclesOfTheirInserts(@TempDir Path folder) throws IOException {
        LaidTub box = laid(folder);
        DrapedPly core = box.plies().stream()
                .filter(p -> p.ply().material().name().equals("al-honeycomb-3.1")
                        && p.ply().piece().equals("tray"))
                .findFirst()
                .orElseThrow();
        double ramp = 0.010 / Math.tan(Math.toRadians(30));
        double[] edges = core.flat().box();
        List<double[]> lines = core.flat().marks(Mark.Kind.CHAMFER);
        assertTrue(!lines.isEmpty());
        double length = 0;
        for (double[] line : lines) {
            for (int i = 0; i + 3 < line.length; i += 2) {
                length += Math.hypot(line[i + 2] - line[i], line[i + 3] - line[i + 1]);
                double inside = Math.min(
                        Math.min(line[i] - edges[0], edges[2] - line[i]),
                        Math.min(line[i + 1] - edges[1], edges[3] - line[i + 1]));
                assertTrue(inside > 0.9 * ramp || line[i] > edges[2] - 2 * ramp || line[i] < edges[0] + 2 * ramp);
            }
        }
        // Two split lines of 300 mm, less the front ramp, and the front between them.
        double width = core.flat().width();
        assertEquals(2 * (0.3 - ramp) + width - 2 * ramp, length, 0.03 * length);
        List<double[]> circles = core.flat().marks(Mark.Kind.POTTING);
        assertEquals(2, circles.size());
        double[] circle = circles.getFirst();
        assertEquals(0.020, Math.hypot(circle[0] - circle[32], circle[1] - circle[33]) / 2, 1e-9);
        assertTrue(core.flat().marks(Mark.Kind.NOTCH).size() >= 2);
    }

    @Test
    void whatTheNetDoesNotReachIsNamedWithThePlaceAndWhereToStartAnew(@TempDir Path folder) throws IOException {
        LaidTub box = laid(folder);
        DrapedPly outer = find(box, "tray 01");
        double[] warp = outer.fibres().warp().clone();
        for (int i = 0; i < warp.length; i++) {
            double x = Mould.centre(box.mesh(), outer.ply().elements()[i])[0];
            warp[i] = x > 0.4 ? Double.NaN : warp[i];
        }
        DrapedPly bare = with(outer, new DrapedPly.Fibres(warp, outer.fibres().weft()), outer.flat());
        String advice = String.join("\n", Advice.on(box.mesh(), bare).advice());
        assertTrue(advice.contains("it cannot reach floor"), advice);
        assertTrue(advice.contains("split the ply at x = 450 mm and lay that part from a start of its own"), advice);
    }

    @Test
    void aPatternThatOverlapsItselfIsToldWhere(@TempDir Path folder) throws IOException {
        LaidTub box = laid(folder);
        DrapedPly outer = find(box, "tray 01");
        FlatPattern bow = outer.flat().withOutlines(List.of(new double[] {0, 0, 0.2, 0.2, 0.2, 0, 0, 0.2}));
        String advice = String.join(
                "\n", Advice.on(box.mesh(), with(outer, outer.fibres(), bow)).advice());
        assertTrue(
                advice.contains("its pattern overlaps itself 100 mm along and 100 mm across from its start"), advice);
    }

    @Test
    void aRollTooNarrowToSpliceFromIsNamedWithThePlyAndWhatWouldDo(@TempDir Path folder) throws IOException {
        DrapedPly outer = find(laid(folder), "tray 01");
        String refused = assertThrows(
                        NestException.class, () -> Splices.usual(0.06).of(outer))
                .getMessage();
        assertTrue(refused.matches("'tray 01' is 62[0-3] mm wide across its fibres.*"), refused);
        assertTrue(refused.contains("the 60 mm that are cut from the roll are too few"), refused);
        assertTrue(refused.contains("more than 115 mm are due"), refused);
        assertTrue(Splices.usual(0.3).of(outer).stream()
                .allMatch(c -> c.pattern().marks(Mark.Kind.NOTCH).size() >= 2));
    }

    private static DrapedPly with(DrapedPly p, DrapedPly.Fibres fibres, FlatPattern flat) {
        return new DrapedPly(p.ply(), p.limits(), p.start(), p.turned(), fibres, p.figures(), flat, List.of());
    }

    /** 45° of shear where the cloth locks at 35°: 10° too much and 2° to spare, over a depth of 50 mm. */
    @Test
    void aDartTakesOffTheShearThatIsTooMuch() {
        List<Double> outline = new ArrayList<>();
        for (int side = 0; side < 4; side++) {
            for (int i = 0; i < 40; i++) {
                double t = -0.2 + 0.4 * i / 40;
                double[][] at = {{t, -0.2}, {0.2, t}, {-t, 0.2}, {-0.2, -t}};
                outline.add(at[side][0]);
                outline.add(at[side][1]);
            }
        }
        FlatPattern flat = new FlatPattern(
                "dome",
                List.of(outline.stream().mapToDouble(Double::doubleValue).toArray()),
                List.of(),
                new double[2],
                0,
                ClothLayer.NONE,
                0);
        double[][] places = {{0.10, -0.15}, {0.10, -0.18}};
        double[] shears = {Math.toRadians(40), Math.toRadians(45)};
        Advice.Spot spot = new Advice.Spot("floor R", 0, 0.1, 1e-3, List.of(0, 1));
        double locking = Math.toRadians(35);
        Darts.Cut dome = Darts.into(flat, List.of(spot), e -> new double[] {shears[e]}, e -> places[e], locking);
        double angle = Math.toRadians(45) - locking + Math.toRadians(2);
        double open = 2 * 0.05 * Math.tan(angle / 2);
        assertEquals(flat.area() - 0.05 * open / 2, dome.flat().area(), 2e-6);
        assertTrue(
                dome.words().getFirst().startsWith("a dart 50 mm deep and 11 mm wide"),
                dome.words().toString());
        // Sheared the other way the same place is a saddle: nothing is taken out, the slit opens.
        Darts.Cut saddle = Darts.into(flat, List.of(spot), e -> new double[] {-shears[e]}, e -> places[e], locking);
        assertEquals(flat.area(), saddle.flat().area(), 3e-5);
        assertTrue(
                saddle.words().getFirst().contains("opens by 11 mm, to be filled"),
                saddle.words().toString());
    }
}
