// SPDX-License-Identifier: Apache-2.0
package tubwright.engine.strength.sandwich;

import static org.junit.jupiter.api.Assertions.assertEquals;

import org.junit.jupiter.api.Test;

/**
 * A worked example: faces of 60 GPa (ν .3), 0.6 mm, on aluminium honeycomb of 3.1 lb/ft³, 20 mm. Formulas of the handbooks
 * (NASA CR-1457, MIL-HDBK-23A, Allen 1969), values computed apart.
 */
class SandwichFormulasTest {
    private static final double MPA = 1e6;
    private static final double MM = 1e-3;
    private static final double EF = 60e9;
    private static final double TF = 0.6 * MM;
    private static final double TC = 20 * MM;
    private static final double EC = 517 * MPA;
    private static final double GW = 152 * MPA;
    private static final double D = TC + TF;

    @Test
    void wrinklingAsOnAnIsotropicCore() {
        assertEquals(838, Wrinkling.onIsotropicCore(Wrinkling.DESIGN_ISOTROPIC, EF, EC, GW) / MPA, 0.5);
        assertEquals(1056, Wrinkling.onIsotropicCore(Wrinkling.DESIGN_THIN_ISOTROPIC, EF, EC, GW) / MPA, 0.5);
        assertEquals(1274, Wrinkling.onIsotropicCore(Wrinkling.WINKLER, EF, EC, GW) / MPA, 0.5);
        assertEquals(1526, Wrinkling.onIsotropicCore(Wrinkling.THEORY_ISOTROPIC, EF, EC, GW) / MPA, 0.5);
        assertEquals(12.0, Wrinkling.thickCoreLimit(TF, EF, EC, GW) / MM, 0.05);
    }

    @Test
    void wrinklingOnHoneycombGoverns() {
        assertEquals(791, Wrinkling.onHoneycomb(Wrinkling.THEORY_HONEYCOMB, EF, TF, EC, TC) / MPA, 0.5);
        assertEquals(318, Wrinkling.onHoneycomb(Wrinkling.DESIGN_HONEYCOMB, EF, TF, EC, TC) / MPA, 0.5);
        // √(2/3)/√(1 − ν²), the isotropic case of the orthotropic formula
        assertEquals(826, Wrinkling.orthotropicOnHoneycomb(EF, EF, 0.3, TF, EC, TC) / MPA, 0.5);
        double theory = Wrinkling.onHoneycomb(Wrinkling.THEORY_HONEYCOMB, EF, TF, EC, TC);
        assertEquals(560, theory * Wrinkling.wavinessFactor(0.05 * MM, EC, TC, 2 * MPA) / MPA, 0.5);
        assertEquals(433, theory * Wrinkling.wavinessFactor(0.10 * MM, EC, TC, 2 * MPA) / MPA, 0.5);
    }

    @Test
    void compressionAcrossAndShearTakeTheirShare() {
        assertEquals(1, Wrinkling.biaxialFactor(0));
        assertEquals(Math.pow(2, -1.0 / 3), Wrinkling.biaxialFactor(1), 1e-12);
        double factor = Wrinkling.reserveWithShear(0.4, 0.3);
        assertEquals(1, factor * 0.4 + factor * factor * 0.09, 1e-12);
    }

    @Test
    void dimplingNeedsALargerCell() {
        assertEquals(2095, Dimpling.stress(EF, 0.3, TF, 4.76 * MM) / MPA, 0.5);
        // The orthotropic formula of an isotropic face: .6 · 3.29 = 1.974 for 2.0.
        double d = EF * TF * TF * TF / (12 * 0.91);
        double[] bending = {d, 0.3 * d, 0, 0.3 * d, d, 0, 0, 0, 0.35 * d};
        assertEquals(2095 * 0.6 * 3.29 / 2.0, Dimpling.stress(bending, TF, 4.76 * MM) / MPA, 2);
    }

    @Test
    void crimpingAcrossTheRibbon() {
        double n = ShearCrimping.compression(GW, D, TC);
        assertEquals(3225, n * MM, 0.5);
        assertEquals(2688, n / (2 * TF) / MPA, 0.5);
    }

    @Test
    void threePointBending() {
        CoreBeam beam = new CoreBeam(EF, TF, 310 * MPA, TC, 60 * MM);
        assertEquals(7638, beam.bendingStiffness(), 0.5);
        assertEquals(8394, beam.bendingStiffness() / (1 - 0.3 * 0.3), 0.5);
        assertEquals(6577.6, beam.shearStiffness() * MM, 0.05);
        assertEquals(404.5, beam.faceStress(3000, 400 * MM) / MPA, 0.05);
        assertEquals(1.214, beam.coreShear(3000) / MPA, 0.0005);
        assertEquals(8.728, beam.deflectionByBending(3000, 400 * MM) / MM, 0.0005);
        assertEquals(0.760, beam.deflectionByShear(3000, 400 * MM) / MM, 0.0005);
    }

    @Test
    void facesPressOnTheCore() {
        double force = 200 * MPA * TF;
        assertEquals(0.0388, CorePressure.byBending(force * D, EF, TF, D) / MPA, 0.00005);
        assertEquals(0.060, CorePressure.byCurvature(force, 2) / MPA, 0.0005);
    }

    @Test
    void aBluntEdgeIndentsTheFace() {
        double lambda = Indentation.decay(EC, TC, EF * TF * TF * TF / 12);
        assertEquals(0.278, lambda * MM, 0.0005);
        assertEquals(14.4, Indentation.firstCrushing(2 * MPA, lambda) * MM, 0.05);
        assertEquals(37.9, Indentation.plastic(TF, 2 * MPA, 500 * MPA) * MM, 0.1);
    }

    /** Exact stresses of a curved isotropic bar in pure bending (Timoshenko and Goodier 1951, art. 29). */
    @Test
    void aBendOpensAsElasticityTheorySaysWithinTwoPercent() {
        double ri = 5 * MM;
        double t = 3 * MM;
        double ro = ri + t;
        double log = Math.log(ro / ri);
        double n = Math.pow(ro * ro - ri * ri, 2) - 4 * ri * ri * ro * ro * log * log;
        double largest = 0;
        for (double r = ri; r < ro; r += t / 2000) {
            double s = 4
                    / n
                    * (ri * ri * ro * ro / (r * r) * log + ro * ro * Math.log(r / ro) + ri * ri * Math.log(ri / r));
            largest = Math.max(largest, Math.abs(s));
        }
        assertEquals(largest, Corner.radialStress(1, ri, t), 0.02 * largest);
    }
}
