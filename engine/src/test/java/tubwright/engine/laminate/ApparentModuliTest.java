// SPDX-License-Identifier: Apache-2.0
package tubwright.engine.laminate;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;

import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import tubwright.engine.material.MaterialLibrary;
import tubwright.engine.material.Ply;
import tubwright.engine.verification.ladder.Family;
import tubwright.engine.verification.ladder.Ladder;
import tubwright.engine.verification.ladder.Mark;

/** T300/5208 (Tsai and Hahn 1980). Invariants and Q as printed there (from memory); laminate values computed apart. */
class ApparentModuliTest {
    private static final Ladder LADDER = Ladder.of(Family.LAMINATES, "Tsai and Hahn 1980", Mark.MEMORY_CONFIRMED);
    private static final Ladder APART = Ladder.of(Family.LAMINATES, "Independent laminate program", Mark.COMPUTED);
    private static final Ladder CLIMATE = Ladder.of(Family.CLIMATE, "Independent laminate program", Mark.COMPUTED);

    private static final Ply PLY = TextbookPlies.T300_5208;

    @Test
    void reducedStiffnessAndInvariantsAreAsPrinted() {
        var e = PLY.elasticity();
        LADDER.equal("T300/5208, Q11 (Pa)", 181.811e9, e.q11(), 0.0005e9);
        LADDER.equal("T300/5208, Q22 (Pa)", 10.3462e9, e.q22(), 0.00005e9);
        LADDER.equal("T300/5208, Q12 (Pa)", 2.8969e9, e.q12(), 0.00005e9);
        Invariants u = Invariants.of(e);
        LADDER.equal("T300/5208, U1 (Pa)", 76.368e9, u.u1(), 0.0005e9);
        LADDER.equal("T300/5208, U2 (Pa)", 85.732e9, u.u2(), 0.0005e9);
        LADDER.equal("T300/5208, U3 (Pa)", 19.710e9, u.u3(), 0.0005e9);
        LADDER.equal("T300/5208, U4 (Pa)", 22.607e9, u.u4(), 0.0005e9);
        LADDER.equal("T300/5208, U5 (Pa)", 26.880e9, u.u5(), 0.0005e9);
        LADDER.equal("T300/5208, trace (Pa)", 206.50e9, u.trace(), 0.005e9);
        double[] q30 = PlaneStress.transformed(e, Math.toRadians(30));
        assertArrayEquals(new double[] {109.38e9, 32.46e9, 54.19e9, 23.65e9, 20.05e9, 36.74e9}, q30, 0.005e9);
        double[] q45 = PlaneStress.transformed(e, Math.toRadians(45));
        assertArrayEquals(new double[] {56.66e9, 42.32e9, 42.87e9, 56.66e9, 42.87e9, 46.59e9}, q45, 0.005e9);
    }

    @ParameterizedTest
    @CsvSource({
        "ud-as4-3501-6, 63.489, 68.701, 15.565, 18.360, 22.565",
        "ud-as4-8552, 54.650, 59.412, 14.063, 16.872, 18.889",
        "ud-im7-8552, 66.216, 75.198, 17.997, 20.845, 22.685",
        "ud-e-glass-1002, 20.450, 15.388, 3.329, 5.511, 7.469",
        "ud-aramid49-epoxy-tsai, 32.442, 35.547, 8.652, 10.538, 10.952",
    })
    void invariantsOfShippedPliesAreThoseComputedApart(
            String name, double u1, double u2, double u3, double u4, double u5) {
        Invariants u = Invariants.of(MaterialLibrary.shipped().get(name).elasticity());
        // The inch-pound rows were rounded to SI before that computation, hence 3 in 10 000.
        APART.equal(name + ", U1 (GPa)", u1, u.u1() / 1e9, 3e-4 * u1);
        APART.equal(name + ", U2 (GPa)", u2, u.u2() / 1e9, 3e-4 * u2);
        APART.equal(name + ", U3 (GPa)", u3, u.u3() / 1e9, 5e-4 * u3);
        APART.equal(name + ", U4 (GPa)", u4, u.u4() / 1e9, 5e-4 * u4);
        APART.equal(name + ", U5 (GPa)", u5, u.u5() / 1e9, 3e-4 * u5);
    }

    @ParameterizedTest
    @CsvSource({
        "10, 107.84, 10.49, 7.38, .2733",
        "30, 28.78, 12.42, 8.76, .2267",
        "45, 16.74, 16.74, 9.46, .1672",
        "60, 12.42, 28.78, 8.76, .0978"
    })
    void anOffAxisPlyHasTheModuliComputedApart(double degrees, double ex, double ey, double gxy, double nuxy) {
        EngineeringConstants c = EngineeringConstants.membrane(TextbookPlies.stack(PLY, 1e-3, degrees));
        APART.equal(degrees + "° ply, Ex (GPa)", ex, c.ex() / 1e9, 0.00501);
        APART.equal(degrees + "° ply, Ey (GPa)", ey, c.ey() / 1e9, 0.00501);
        APART.equal(degrees + "° ply, Gxy (GPa)", gxy, c.gxy() / 1e9, 0.00501);
        APART.equal(degrees + "° ply, νxy", nuxy, c.nuxy(), 0.0000501);
    }

    @ParameterizedTest
    @CsvSource({
        "0/45/-45/90, 69.68, 69.68, 26.88, .296, 1.524, 1.524, .0401, .0401, 116.55, 26.98",
        "45/0/-45/90, 69.68, 69.68, 26.88, .296, 1.524, 1.524, .0401, .0401, 71.28, 29.00",
        "0/60/-60, 69.68, 69.68, 26.88, .296, 1.524, 1.524, .0401, .0401, 131.45, 30.07",
        "0/90, 95.99, 95.99, 7.17, .0302, 1.524, 1.524, .0401, .0401, 160.11, 31.73",
        "45/-45, 25.05, 25.05, 46.59, .7469, 1.524, 1.524, .0401, .0401, 22.71, 22.71",
        "0/45/-45, 77.72, 32.57, 33.45, .7078, -.034, 4.346, -.0014, .1155, 134.96, 18.57",
        "30/-30, 64.81, 14.01, 36.74, 1.373, -2.369, 11.365, -.0638, .3028, 50.10, 13.60",
        "0/0/45/-45, 103.98, 29.22, 26.88, .6748, -.189, 5.854, -.0056, .1557, 161.99, 14.54",
    })
    void symmetricLaminatesHaveTheConstantsComputedApart(
            String half,
            double ex,
            double ey,
            double gxy,
            double nuxy,
            double alphaX,
            double alphaY,
            double betaX,
            double betaY,
            double flexuralX,
            double flexuralY) {
        Laminate laminate = TextbookPlies.symmetric(PLY, 1.25e-4, angles(half));
        EngineeringConstants m = EngineeringConstants.membrane(laminate);
        APART.equal("[" + half + "]s, Ex (GPa)", ex, m.ex() / 1e9, 0.00501);
        APART.equal("[" + half + "]s, Ey (GPa)", ey, m.ey() / 1e9, 0.00501);
        APART.equal("[" + half + "]s, Gxy (GPa)", gxy, m.gxy() / 1e9, 0.00501);
        APART.equal("[" + half + "]s, νxy", nuxy, m.nuxy(), nuxy > 1 ? 0.000501 : 0.0000501);
        FreeExpansion heat = FreeExpansion.of(laminate, new Climate(1, 0));
        CLIMATE.equal("[" + half + "]s, αx (1e-6/K)", alphaX, heat.strains()[0] * 1e6, 0.000501);
        CLIMATE.equal("[" + half + "]s, αy (1e-6/K)", alphaY, heat.strains()[1] * 1e6, 0.000501);
        FreeExpansion water = FreeExpansion.of(laminate, new Climate(0, 1));
        CLIMATE.equal("[" + half + "]s, βx", betaX, water.strains()[0], 0.0000501);
        CLIMATE.equal("[" + half + "]s, βy", betaY, water.strains()[1], 0.0000501);
        EngineeringConstants f = EngineeringConstants.flexural(laminate);
        APART.equal("[" + half + "]s, flexural Ex (GPa)", flexuralX, f.ex() / 1e9, 0.00501);
        APART.equal("[" + half + "]s, flexural Ey (GPa)", flexuralY, f.ey() / 1e9, 0.00501);
    }

    @ParameterizedTest
    @CsvSource({
        "0/45/-45/90, 0, 0, .5625, .1875, .1875, 0",
        "45/0/-45/90, 0, 0, .28125, -.375, .46875, 0",
        "0/90, 0, 1, .75, 1, 0, 0",
        "45/-45, 0, -1, 0, -1, .75, 0",
        "30/-30, .5, -.5, .5, -.5, .6495, .6495",
        "0/0/45/-45, .5, 0, .875, .75, .09375, 0",
    })
    void laminationParametersAreThoseComputedApart(
            String half, double a1, double a2, double d1, double d2, double d3, double d4) {
        LaminationParameters p = LaminationParameters.of(TextbookPlies.symmetric(PLY, 1.25e-4, angles(half)));
        assertArrayEquals(new double[] {a1, a2, 0, 0}, p.membrane(), 1e-12);
        assertArrayEquals(new double[4], p.coupling(), 1e-12);
        assertArrayEquals(new double[] {d1, d2, d3, d4}, p.bending(), 5.1e-5);
    }

    /** Share of 0, ±45 and 90 degree plies in percent against Ex, Ey, Gxy (GPa) and νxy. */
    @ParameterizedTest
    @CsvSource({
        "70, 20, 10, 136.5, 35.9, 15.1, .293",
        "60, 30, 10, 121.9, 39.7, 19.0, .356",
        "50, 40, 10, 107.0, 43.0, 22.9, .406",
        "40, 50, 10, 92.0, 45.6, 26.9, .446",
        "25, 50, 25, 69.7, 69.7, 26.9, .296",
        "10, 80, 10, 46.2, 46.2, 38.7, .534",
        "0, 100, 0, 25.1, 25.1, 46.6, .747",
    })
    void carpetPlotPointsAreThoseComputedApart(
            int share0, int share45, int share90, double ex, double ey, double gxy, double nuxy) {
        double[] half = new double[40];
        int at = 0;
        for (int i = 0; i < share0 * 40 / 100; i++) {
            half[at++] = 0;
        }
        for (int i = 0; i < share90 * 40 / 100; i++) {
            half[at++] = 90;
        }
        for (; at < 40; at++) {
            half[at] = at % 2 == 0 ? 45 : -45;
        }
        EngineeringConstants c = EngineeringConstants.membrane(TextbookPlies.symmetric(PLY, 1.25e-4, half));
        APART.equal(share0 + "/" + share45 + "/" + share90 + " % of 0/±45/90, Ex (GPa)", ex, c.ex() / 1e9, 0.0501);
        APART.equal(share0 + "/" + share45 + "/" + share90 + " % of 0/±45/90, Ey (GPa)", ey, c.ey() / 1e9, 0.0501);
        APART.equal(share0 + "/" + share45 + "/" + share90 + " % of 0/±45/90, Gxy (GPa)", gxy, c.gxy() / 1e9, 0.0501);
        APART.equal(share0 + "/" + share45 + "/" + share90 + " % of 0/±45/90, νxy", nuxy, c.nuxy(), 0.000501);
    }

    static double[] angles(String half) {
        String[] parts = half.split("/");
        double[] angles = new double[parts.length];
        for (int i = 0; i < angles.length; i++) {
            angles[i] = Double.parseDouble(parts[i]);
        }
        return angles;
    }
}
