// SPDX-License-Identifier: Apache-2.0
package tubwright.engine.design;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Path;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import tubwright.engine.design.text.DesignError;
import tubwright.engine.response.Buckle;
import tubwright.engine.response.CaseBuckling;
import tubwright.engine.response.Progress;
import tubwright.engine.response.Stability;
import tubwright.engine.response.Study;
import tubwright.engine.response.Vibrations;
import tubwright.engine.structure.Mode;
import tubwright.engine.structure.StructureException;
import tubwright.numerics.solver.Solvers;

/** Prismatic tubs whose buckling loads and frequencies are known by hand, from design text to answer. */
class StabilityOfATubTest {
    private static final double E = 70e9;
    private static final double NU = 0.33;
    private static final double DENSITY = 2700;

    /** A square tube of sheet, 200 mm wide and 2 m long, pushed or pulled at stiff ends. */
    private static final String TUBE = BoxText.shape(200, 200, 2000) + """
            materials:
              sheet-metal:
                kind: metal
                properties: {density: 2700 kg/m³, E1: 70 GPa, nu12: 0.33}
              stiff-metal:
                kind: metal
                properties: {density: 2700 kg/m³, E1: 7000 GPa, nu12: 0.33}
            laminates:
              skin: {sheet: sheet-metal, thickness: 1 mm, reference: middle}
              plate: {sheet: stiff-metal, thickness: 40 mm}
            zones:
              skin: {on: [floor, side, deck], laminate: skin}
              ends: {on: [front, rear], laminate: plate}
            joints:
              edges:
                walls: all
                bonded: {overlap: 20 mm, adhesive: paste-epoxy, bond line: 0.01 mm}
            hardpoints:
              push: {on: front, y: 60 mm, z: 100 mm, footprint: 40 mm}
              mount: {on: rear, y: 60 mm, z: 100 mm, footprint: 40 mm}
            cases:
              pushed:
                hold: {mount: "x, y, z, ry"}
                forces: {push: "5000, 0, 0 N"}
                source: made up
              pulled:
                hold: {mount: "x, y, z, ry"}
                forces: {push: "-5000, 0, 0 N"}
                source: made up
              torsion:
                hold: {mount: "x, y, z, ry"}
                load at: push
                couple: 100 N·m
                front station: 300 mm
                rear station: 1700 mm
            stability: {buckling factors: 2, vibration: no}
            mesh: {size: 20 mm}
            """;

    @TempDir
    Path folder;

    private Design design(String text) throws IOException {
        return BoxText.read(folder, text);
    }

    private Stability answer(String text) throws IOException {
        Design.Variant variant = design(text).asDesigned();
        return new Study(Solvers.best(), List.of(Math.sqrt(2), 1.0), Progress.silent(), variant.stability())
                .answer(List.of(variant.tub()))
                .getFirst()
                .stability();
    }

    private static CaseBuckling named(Stability stability, String load) {
        return stability.buckling().stream()
                .filter(b -> b.load().equals(load))
                .findFirst()
                .orElseThrow();
    }

    /**
     * Four equal plates hold each other's edges neither more nor less than hinges would: k = 4, σ = k π² E/(12(1 - ν²))
     * (t/b)² (Bryan 1891; Timoshenko and Gere 1961, §9.2). Stiff ends raise it a little over ten half-waves
     * (by about one per cent), ten elements to a half-wave by another.
     */
    @Test
    void aSquareTubeOfSheetBucklesWhereItsPanelsWould() throws IOException {
        Stability stability = answer(TUBE);
        double line = 4 * Math.PI * Math.PI * E * Math.pow(0.001, 3) / (12 * (1 - NU * NU)) / (0.2 * 0.2);
        CaseBuckling pushed = named(stability, "pushed");
        Buckle lowest = pushed.lowest().orElseThrow();
        double load = lowest.factor() * 2 * 5000;
        assertEquals(1, load / (4 * 0.2 * line), 0.03);
        assertEquals("skin", lowest.zone());
        assertTrue(lowest.share() > 0.9);
        assertTrue(pushed.count().complete() && pushed.count().counted() >= 2);
        assertTrue(pushed.meshError() > 0 && pushed.meshError() < 0.05 * lowest.factor());
        assertTrue(named(stability, "pulled").lowest().isEmpty());
        assertEquals("pushed", stability.first().orElseThrow().load());
    }

    /** A long box free in space, 80 wide, 120 high, 2 m long, of 4 mm sheet, kept in shape by walls that weigh nothing. */
    private static final String BOX = """
            tub: long box
            shape:
              loft: ruled
              strips: [floor, side, deck]
              frames:
                - {station: 0 mm, outline: "(0, 0) (40, 0) (40, 120) (0, 120) mm"}
                - {station: 2000 mm, outline: "(0, 0) (40, 0) (40, 120) (0, 120) mm"}
              walls:
                one: {station: 0 mm}
                two: {station: 250 mm}
                three: {station: 500 mm}
                four: {station: 750 mm}
                five: {station: 1000 mm}
                six: {station: 1250 mm}
                seven: {station: 1500 mm}
                eight: {station: 1750 mm}
                nine: {station: 2000 mm}
            materials:
              weightless:
                kind: metal
                properties: {density: 1 kg/m³, E1: 70 GPa, nu12: 0.33}
              sheet-metal:
                kind: metal
                properties: {density: 2700 kg/m³, E1: 70 GPa, nu12: 0.33}
            laminates:
              skin: {sheet: sheet-metal, thickness: 4 mm, reference: middle}
              wall: {sheet: weightless, thickness: 1 mm}
            zones:
              skin: {on: [floor, side, deck], laminate: skin}
              walls: {on: [one, two, three, four, five, six, seven, eight, nine], laminate: wall}
            joints:
              edges:
                walls: all
                bonded: {overlap: 10 mm, adhesive: paste-epoxy, bond line: 0.1 mm}
            hardpoints:
              front: {on: side, x: 100 mm, z: 60 mm, mass: 0.1 g}
              rear: {on: side, x: 1900 mm, z: 60 mm, mass: 0.1 g}
              top: {on: deck, x: 1900 mm, y: 20 mm, mass: 0.1 g}
            cases:
              torsion:
                hold: {rear: "x, y, z", top: "x, y, z"}
                load at: front
                couple: 100 N·m
                front station: 500 mm
                rear station: 1500 mm
            targets:
              first torsion frequency: at least 40 Hz
            mesh: {size: 40 mm}
            """;

    /**
     * Bending after Timoshenko, the frequency equation of free ends by Huang (1961, J. Appl. Mech. 28:579; from memory), the
     * shear coefficient of thin-walled boxes by Cowper (1966, J. Appl. Mech. 33:335; from memory); torsion with Bredt's
     * rigidity, f = √(GJ/ρI_p)/2L.
     */
    @Test
    void aLongBoxFreeInSpaceRingsAsABeamAndAsAShaft() throws IOException {
        double b = 0.08;
        double h = 0.12;
        double t = 0.004;
        double length = 2;
        Vibrations free = answer(BOX).free().orElseThrow();
        double upright = timoshenko(b, h, t, length);
        double flat = timoshenko(h, b, t, length);
        double shear = E / (2 * (1 + NU));
        double rigidity = 4 * Math.pow(b * h, 2) * shear * t / (2 * (b + h));
        double polar = second(b, h, t) + second(h, b, t);
        double torsion = Math.sqrt(rigidity / (DENSITY * polar)) / (2 * length);
        double v = free.first(Mode.Motion.VERTICAL).orElseThrow().frequency();
        double s = free.first(Mode.Motion.SIDEWAYS).orElseThrow().frequency();
        double w = free.first(Mode.Motion.TORSION).orElseThrow().frequency();
        assertEquals(1, v / upright, 0.005);
        assertEquals(1, s / flat, 0.005);
        assertEquals(1, w / torsion, 0.005);
        assertTrue(free.modes().count().complete());
    }

    /** Second moment of area of a thin box about the axis along its width. */
    private static double second(double width, double depth, double t) {
        return 2 * width * t * depth * depth / 4 + 2 * t * Math.pow(depth, 3) / 12;
    }

    /** First frequency, Hz, of a thin box with free ends, bending in the direction of its depth. */
    private static double timoshenko(double width, double depth, double t, double length) {
        double area = 2 * (width + depth) * t;
        double inertia = second(width, depth, t);
        double m = width / depth;
        double n = width / depth;
        double k = 10
                * (1 + NU)
                * Math.pow(1 + 3 * m, 2)
                / (12
                        + 72 * m
                        + 150 * m * m
                        + 90 * m * m * m
                        + NU * (11 + 66 * m + 135 * m * m + 90 * m * m * m)
                        + 10 * n * n * ((3 + NU) * m + 3 * m * m));
        double shear = E / (2 * (1 + NU));
        double r2 = inertia / (area * length * length);
        double s2 = E * inertia / (k * area * shear * length * length);
        double low = 15;
        double high = 22.6;
        for (int i = 0; i < 60; i++) {
            double middle = 0.5 * (low + high);
            if (huang(low, r2, s2) * huang(middle, r2, s2) <= 0) {
                high = middle;
            } else {
                low = middle;
            }
        }
        return low * Math.sqrt(E * inertia / (DENSITY * area)) / (length * length) / (2 * Math.PI);
    }

    private static double huang(double b, double r2, double s2) {
        double root = Math.sqrt(Math.pow(r2 - s2, 2) + 4 / (b * b));
        double alpha = Math.sqrt(0.5 * (root - (r2 + s2)));
        double beta = Math.sqrt(0.5 * (root + (r2 + s2)));
        return 2
                - 2 * Math.cosh(b * alpha) * Math.cos(b * beta)
                + b
                        / Math.sqrt(1 - b * b * r2 * s2)
                        * (b * b * r2 * Math.pow(r2 - s2, 2) + (3 * r2 - s2))
                        * Math.sinh(b * alpha)
                        * Math.sin(b * beta);
    }

    @Test
    void targetsAskForWhatTheyNeedAndNoMore() throws IOException {
        assertEquals(10, design(BOX).asDesigned().stability().frequencies());
        assertEquals(0, design(BOX).asDesigned().stability().factors());
        String none = BOX.replace("targets:\n  first torsion frequency: at least 40 Hz\n", "");
        assertTrue(!design(none).asDesigned().stability().any());
        assertEquals(2, design(TUBE).asDesigned().stability().factors());
    }

    @Test
    void nonsenseIsPointedAt() {
        assertTrue(assertThrows(
                        DesignError.class, () -> design(TUBE.replace("buckling factors: 2", "buckling factors: 500")))
                .getMessage()
                .contains("too many"));
        assertThrows(DesignError.class, () -> design(TUBE.replace("vibration: no}", "hold: {nowhere: \"x\"}}")));
        StructureException loose = assertThrows(
                StructureException.class,
                () -> answer(TUBE.replace(
                        "  pushed:\n    hold: {mount: \"x, y, z, ry\"}", "  pushed:\n    hold: {mount: \"x, y\"}")));
        assertTrue(loose.getMessage().contains("translation along z"), loose.getMessage());
    }
}
