// SPDX-License-Identifier: Apache-2.0
package tubwright.engine.verification;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;
import static tubwright.engine.verification.ObstacleCourse.near;

import java.util.Arrays;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import tubwright.engine.verification.ladder.Family;
import tubwright.engine.verification.ladder.Ladder;
import tubwright.engine.verification.ladder.Mark;

/** Buckling of isotropic, orthotropic and sandwich plates against closed forms (sources at each check). */
class PlateBucklingTest {
    private static final Ladder SERIES =
            Ladder.of(Family.BUCKLING, "Navier's series of first-order theory", Mark.EXACT);
    private static final Ladder TABLED =
            Ladder.of(Family.BUCKLING, "Timoshenko and Gere 1961, Bulson 1970", Mark.MEMORY);
    private static final Ladder FLANGE = Ladder.of(Family.BUCKLING, "12 D66/b² + π² D11/a²", Mark.MEMORY);
    private static final Ladder ORTHOTROPIC =
            Ladder.of(Family.BUCKLING, "Closed form of the specially orthotropic plate", Mark.EXACT);
    private static final Ladder SANDWICH =
            Ladder.of(Family.BUCKLING, "First-order series with S = G d²/c; independent program", Mark.COMPUTED);
    private static final Ladder CRIMPING = Ladder.of(Family.BUCKLING, "P = PE/(1 + PE/S)", Mark.EXACT);

    private static final double NU = 0.3;

    /** Edges x = 0, x = a, y = 0, y = b: S held, C built in, F free; in-plane motion is held. */
    private static StabilityModel plate(
            ObstacleCourse.Kind kind, double[] laminate, double a, double b, int nx, int ny, String edges) {
        StabilityModel m = Plates.flat(kind, laminate, a, b, nx, ny);
        for (int i = 0; i < m.nodes.size(); i++) {
            m.hold(i, 0, 1, 5);
            double[] x = m.nodes.get(i);
            boolean[] on = {near(x[0], 0), near(x[0], a), near(x[1], 0), near(x[1], b)};
            for (int side = 0; side < 4; side++) {
                if (on[side] && edges.charAt(side) == 'C') {
                    m.hold(i, 2, 3, 4);
                } else if (on[side] && edges.charAt(side) == 'S') {
                    m.hold(i, 2, side < 2 ? 3 : 4);
                }
            }
        }
        return m;
    }

    @ParameterizedTest
    @CsvSource({"QUADS", "TRIANGLES"})
    void aSquarePlateBucklesWithTheOrderOfItsElement(ObstacleCourse.Kind kind) {
        // a/h = 100; first-order theory gives N b²/E h³ = 3.6132 (computed here by the series).
        double[] c = Laminates.isotropic(1, NU, 0.01);
        double exact = new Navier(c, 1, 1, false).buckling(0);
        assertEquals(3.6132, exact / 1e-6, 1e-4);
        double[] n = new double[3];
        for (int k = 0; k < 3; k++) {
            n[k] = plate(kind, c, 1, 1, 6 << k, 6 << k, "SSSS").uniformBuckling(1, -1, 0, 0)[0];
        }
        SERIES.converges(
                "Square plate, a/h = 100, uniaxial",
                ObstacleCourseTest.label(kind),
                new int[] {6, 12, 24},
                size -> n[Integer.numberOfTrailingZeros(size / 3) - 1],
                exact,
                kind == ObstacleCourse.Kind.QUADS ? 7e-3 : 1.2e-2,
                1.8);
        Plates.Limit limit = Plates.Limit.of(n[0], n[1], n[2]);
        assertEquals(2, limit.order(), kind == ObstacleCourse.Kind.QUADS ? 0.1 : 0.2);
        assertEquals(1, limit.value() / exact, 2e-3);
    }

    @ParameterizedTest
    @CsvSource({
        "CCCC, 1, 1, 0, 0, 10.07",
        "CCCC, 1, 1, 1, 0, 5.30",
        "SSSS, 1, 0, 0, 1, 9.34",
        "CCCC, 1, 0, 0, 1, 14.71",
        "SSSS, 3, 1, 0, 0, 4.00",
        // Long plates in shear: 5.34 + 4.00 (b/a)² and 8.98 + 5.60 (b/a)².
        "SSSS, 5, 0, 0, 1, 5.50",
        "CCCC, 5, 0, 0, 1, 9.204"
    })
    void isotropicPlatesBuckleAtTheirTabledFactors(
            String edges, double aspect, double nx, double ny, double nxy, double k) {
        // N = k π² D/b² (Timoshenko and Gere 1961, Bulson 1970; from memory, to their digits); thin.
        double t = 1e-3;
        double[] c = Laminates.isotropic(1, NU, t);
        double unit = Math.PI * Math.PI * t * t * t / (12 * (1 - NU * NU));
        int rows = aspect == 3 ? 12 : 24;
        double coarse = plate(ObstacleCourse.Kind.QUADS, c, aspect, 1, (int) (rows * aspect) / 2, rows / 2, edges)
                .uniformBuckling(1, -nx, -ny, -nxy)[0];
        double fine = plate(ObstacleCourse.Kind.QUADS, c, aspect, 1, (int) (rows * aspect), rows, edges)
                .uniformBuckling(1, -nx, -ny, -nxy)[0];
        TABLED.within(
                .015,
                "Plate " + aspect + " : 1, " + edges + ", Nx : Ny : Nxy = " + nx + " : " + ny + " : " + nxy + ", k",
                "quads, carried to size zero",
                k,
                (fine + (fine - coarse) / 3) / unit);
    }

    @Test
    void aPlateWithOneFreeEdgeBucklesAsAFlange() {
        // N = 12 D66/b² + π² D11/a² (from memory; the isotropic long plate gives k = .4256), ν = .3 corrects it by 1 %.
        double t = 1e-3;
        double[] c = Laminates.isotropic(1, NU, t);
        double d = c[27];
        double exact = 12 * c[45] + Math.PI * Math.PI * d / 16;
        double n = plate(ObstacleCourse.Kind.QUADS, c, 4, 1, 32, 8, "SSSF").uniformBuckling(1, -1, 0, 0)[0];
        FLANGE.within(.02, "Plate with one free edge (N/m)", "32 × 8 quads", exact, n);
    }

    @ParameterizedTest
    @CsvSource({"1, 0", "2.5, 0", "1, 1"})
    void speciallyOrthotropicPlatesBuckleAsTheirClosedFormSays(double aspect, double ratio) {
        // N = π²[D11 (m/a)⁴ + 2(D12 + 2 D66)(mn/ab)² + D22 (n/b)⁴]/[(m/a)² + r (n/b)²], least over m and n.
        double[] c = Laminates.stack(140e3, 9e3, 0.3, 5e3, 3e3, 0.25e-3, 0, 0, 90, 0, 0, 90, 0);
        double least = Double.POSITIVE_INFINITY;
        for (int m = 1; m < 6; m++) {
            for (int n = 1; n < 4; n++) {
                double p = m / aspect * m / aspect;
                double q = (double) n * n;
                double up = c[27] * p * p + 2 * (c[28] + 2 * c[45]) * p * q + c[36] * q * q;
                least = Math.min(least, Math.PI * Math.PI * up / (p + ratio * q));
            }
        }
        double coarse = plate(ObstacleCourse.Kind.QUADS, c, aspect, 1, (int) (8 * aspect), 8, "SSSS")
                .uniformBuckling(1, -1, -ratio, 0)[0];
        double fine = plate(ObstacleCourse.Kind.QUADS, c, aspect, 1, (int) (16 * aspect), 16, "SSSS")
                .uniformBuckling(1, -1, -ratio, 0)[0];
        ORTHOTROPIC.within(
                3e-3,
                "[0/0/90/0/0/90/0], " + aspect + " : 1, Ny/Nx = " + ratio + " (N/m)",
                "quads, carried to size zero",
                least,
                fine + (fine - coarse) / 3);
    }

    @ParameterizedTest
    @CsvSource({"SSSS", "SSCC"})
    void longOrthotropicPlatesBuckleAtTheLoadsOfTheirWaves(String edges) {
        // Sides held: N = 2π²/b² [√(D11 D22) + D12 + 2 D66]; sides built in: 24/b² [1.871 √(D11 D22) + D12 + 2 D66]
        // (from
        // memory; the isotropic plate gives k = 6.98 for 6.97).
        double[] c = Laminates.stack(140e3, 9e3, 0.3, 5e3, 3e3, 0.25e-3, 0, 0, 90, 0, 0, 90, 0);
        double root = Math.sqrt(c[27] * c[36]);
        double mixed = c[28] + 2 * c[45];
        boolean held = edges.equals("SSSS");
        double exact = held ? 2 * Math.PI * Math.PI * (root + mixed) : 24 * (1.871 * root + mixed);
        // The wave that minimises it fits the length three times.
        double wave = (held ? 1 : 0.67) * Math.pow(c[27] / c[36], 0.25);
        double coarse =
                plate(ObstacleCourse.Kind.QUADS, c, 3 * wave, 1, 24, 8, edges).uniformBuckling(1, -1, 0, 0)[0];
        double fine =
                plate(ObstacleCourse.Kind.QUADS, c, 3 * wave, 1, 48, 16, edges).uniformBuckling(1, -1, 0, 0)[0];
        assertEquals(1, (fine + (fine - coarse) / 3) / exact, 6e-3);
    }

    @ParameterizedTest
    @CsvSource({"90 0 90 90 0 90, true", "45 -45 -45 45 -45 45 45 -45, false"})
    void aLongOrthotropicPlateBucklesInShearAsSeydelSays(String angles, boolean overOne) {
        // N = (4/b²)(D11 D22³)^¼ (8.125 + 5.045/θ) where θ = √(D11 D22)/(D12 + 2 D66) ≥ 1, else
        // (4/b²) √(D22 (D12 + 2 D66)) (11.7 + .532 θ + .938 θ²) (Seydel 1933, from memory); a/b = 8: the ends add a
        // little.
        double[] plies = Arrays.stream(angles.split(" "))
                .mapToDouble(Double::parseDouble)
                .toArray();
        double[] c = Laminates.stack(140e3, 9e3, 0.3, 5e3, 3e3, 0.25e-3, 0, plies);
        double mixed = c[28] + 2 * c[45];
        double theta = Math.sqrt(c[27] * c[36]) / mixed;
        assertEquals(overOne, theta >= 1);
        double exact = overOne
                ? 4 * Math.pow(c[27] * Math.pow(c[36], 3), 0.25) * (8.125 + 5.045 / theta)
                : 4 * Math.sqrt(c[36] * mixed) * (11.7 + 0.532 * theta + 0.938 * theta * theta);
        double coarse = plate(ObstacleCourse.Kind.QUADS, c, 8, 1, 48, 8, "SSSS").uniformBuckling(1, 0, 0, -1)[0];
        double fine = plate(ObstacleCourse.Kind.QUADS, c, 8, 1, 96, 16, "SSSS").uniformBuckling(1, 0, 0, -1)[0];
        double limit = (fine + (fine - coarse) / 3) / exact;
        assertTrue(limit > 0.995 && limit < 1.03, "ratio " + limit);
    }

    @ParameterizedTest
    @CsvSource({"50, 50, 275.8248315", "50, 30, 257.1845"})
    void sandwichPanelsBuckleWithTheShearOfTheirCores(double gxz, double gyz, double expected) {
        // 600 × 400 mm, faces 0.5 mm of 50 GPa, core 10 mm; S = G d²/c; N/mm (computed for the reference sheet).
        double t = 0.5;
        double core = 10;
        double d = core + t;
        double[] c = Laminates.isotropic(50e3, NU, 2 * t);
        double face = 50e3 * t / (1 - NU * NU);
        double bend = face * (d * d / 2 + t * t / 6);
        c[27] = bend;
        c[36] = bend;
        c[28] = NU * bend;
        c[35] = NU * bend;
        c[45] = (1 - NU) / 2 * bend;
        c[54] = gxz * d * d / core;
        c[63] = gyz * d * d / core;
        double exact = new Navier(c, 600, 400, false).buckling(0);
        assertEquals(expected, exact, 1e-3);
        // A core that does not shear gives the thin plate's 405.76.
        double[] rigid = c.clone();
        rigid[54] *= 1e6;
        rigid[63] *= 1e6;
        assertEquals(405.76, new Navier(rigid, 600, 400, false).buckling(0), 5e-3);
        if (gxz == gyz) {
            // N = D(α² + β²)²/(1 + D(α² + β²)/S)/α², two half waves along.
            double sum = Math.PI * Math.PI * (4 / 36e4 + 1 / 16e4);
            double closed = bend * sum * sum / (1 + bend * sum / c[54]) / (Math.PI * Math.PI * 4 / 36e4);
            assertEquals(1, closed / exact, 1e-9);
        }
        double coarse =
                plate(ObstacleCourse.Kind.QUADS, c, 600, 400, 12, 8, "SSSS").uniformBuckling(1, -1, 0, 0)[0];
        double fine =
                plate(ObstacleCourse.Kind.QUADS, c, 600, 400, 24, 16, "SSSS").uniformBuckling(1, -1, 0, 0)[0];
        SANDWICH.within(
                2e-3,
                "Sandwich 600 × 400 mm, core G " + gxz + "/" + gyz + " MPa (N/mm)",
                "quads, carried to size zero",
                exact,
                fine + (fine - coarse) / 3);
    }

    @Test
    void aShortSandwichStripCrimpsAtTheShearStiffnessOfItsCore() {
        // N towards S as the length goes to zero: N = P_E/(1 + P_E/S).
        double[] c = Laminates.isotropic(50e3, 0, 1);
        double bend = 50e3 * 0.5 * 10.5 * 10.5 / 2;
        c[27] = bend;
        c[54] = 550;
        double length = 20;
        StabilityModel m = plate(ObstacleCourse.Kind.QUADS, c, length, 5, 24, 1, "SSFF");
        for (int i = 0; i < m.nodes.size(); i++) {
            m.hold(i, 3);
        }
        double euler = Math.PI * Math.PI * bend / (length * length);
        CRIMPING.within(
                5e-3,
                "Short sandwich strip crimping (N/mm)",
                "24 quads",
                euler / (1 + euler / 550),
                m.uniformBuckling(1, -1, 0, 0)[0]);
    }
}
