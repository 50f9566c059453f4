// SPDX-License-Identifier: Apache-2.0
package tubwright.engine.strength.sandwich;

import static org.junit.jupiter.api.Assertions.assertEquals;

import org.junit.jupiter.api.Test;
import tubwright.engine.verification.ladder.Family;
import tubwright.engine.verification.ladder.Ladder;
import tubwright.engine.verification.ladder.Mark;

/**
 * A worked example: faces of 60 GPa (ν .3), 0.6 mm, on aluminium honeycomb of 3.1 lb/ft³, 20 mm. Formulas of the handbooks
 * (NASA CR-1457, MIL-HDBK-23A, Allen 1969), values computed apart.
 */
class SandwichFormulasTest {
    private static final Ladder LADDER =
            Ladder.of(Family.SANDWICH, "NASA CR-1457, MIL-HDBK-23A, Allen 1969; independent program", Mark.COMPUTED);
    private static final Ladder BAR = Ladder.of(Family.SANDWICH, "Timoshenko and Goodier 1951, art. 29", Mark.EXACT);

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
        LADDER.equal(
                "Wrinkling on an isotropic core, design (MPa)",
                838,
                Wrinkling.onIsotropicCore(Wrinkling.DESIGN_ISOTROPIC, EF, EC, GW) / MPA,
                0.5);
        LADDER.equal(
                "Wrinkling on a thin isotropic core, design (MPa)",
                1056,
                Wrinkling.onIsotropicCore(Wrinkling.DESIGN_THIN_ISOTROPIC, EF, EC, GW) / MPA,
                0.5);
        LADDER.equal(
                "Wrinkling, Winkler core (MPa)",
                1274,
                Wrinkling.onIsotropicCore(Wrinkling.WINKLER, EF, EC, GW) / MPA,
                0.5);
        LADDER.equal(
                "Wrinkling on an isotropic core, theory (MPa)",
                1526,
                Wrinkling.onIsotropicCore(Wrinkling.THEORY_ISOTROPIC, EF, EC, GW) / MPA,
                0.5);
        LADDER.equal("Least depth of a thick core (mm)", 12.0, Wrinkling.thickCoreLimit(TF, EF, EC, GW) / MM, 0.05);
    }

    @Test
    void wrinklingOnHoneycombGoverns() {
        LADDER.equal(
                "Wrinkling on honeycomb, theory (MPa)",
                791,
                Wrinkling.onHoneycomb(Wrinkling.THEORY_HONEYCOMB, EF, TF, EC, TC) / MPA,
                0.5);
        LADDER.equal(
                "Wrinkling on honeycomb, design (MPa)",
                318,
                Wrinkling.onHoneycomb(Wrinkling.DESIGN_HONEYCOMB, EF, TF, EC, TC) / MPA,
                0.5);
        // √(2/3)/√(1 − ν²), the isotropic case of the orthotropic formula
        LADDER.equal(
                "Wrinkling of an orthotropic face on honeycomb (MPa)",
                826,
                Wrinkling.orthotropicOnHoneycomb(EF, EF, 0.3, TF, EC, TC) / MPA,
                0.5);
        double theory = Wrinkling.onHoneycomb(Wrinkling.THEORY_HONEYCOMB, EF, TF, EC, TC);
        LADDER.equal(
                "Wrinkling with waves of .05 mm (MPa)",
                560,
                theory * Wrinkling.wavinessFactor(0.05 * MM, EC, TC, 2 * MPA) / MPA,
                0.5);
        LADDER.equal(
                "Wrinkling with waves of .10 mm (MPa)",
                433,
                theory * Wrinkling.wavinessFactor(0.10 * MM, EC, TC, 2 * MPA) / MPA,
                0.5);
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
        LADDER.equal("Dimpling (MPa)", 2095, Dimpling.stress(EF, 0.3, TF, 4.76 * MM) / MPA, 0.5);
        // The orthotropic formula of an isotropic face: .6 · 3.29 = 1.974 for 2.0.
        double d = EF * TF * TF * TF / (12 * 0.91);
        double[] bending = {d, 0.3 * d, 0, 0.3 * d, d, 0, 0, 0, 0.35 * d};
        LADDER.equal(
                "Dimpling by the orthotropic formula (MPa)",
                2095 * 0.6 * 3.29 / 2.0,
                Dimpling.stress(bending, TF, 4.76 * MM) / MPA,
                2);
    }

    @Test
    void crimpingAcrossTheRibbon() {
        double n = ShearCrimping.compression(GW, D, TC);
        LADDER.equal("Shear crimping across the ribbon (N/mm)", 3225, n * MM, 0.5);
        LADDER.equal("Shear crimping across the ribbon, face stress (MPa)", 2688, n / (2 * TF) / MPA, 0.5);
    }

    @Test
    void threePointBending() {
        CoreBeam beam = new CoreBeam(EF, TF, 310 * MPA, TC, 60 * MM);
        LADDER.equal("Sandwich beam, bending stiffness (N·m²/m)", 7638, beam.bendingStiffness(), 0.5);
        LADDER.equal(
                "Sandwich strip, bending stiffness with ν (N·m²/m)",
                8394,
                beam.bendingStiffness() / (1 - 0.3 * 0.3),
                0.5);
        LADDER.equal("Sandwich beam, shear stiffness (N/mm)", 6577.6, beam.shearStiffness() * MM, 0.05);
        LADDER.equal("Three-point bending, face stress (MPa)", 404.5, beam.faceStress(3000, 400 * MM) / MPA, 0.05);
        LADDER.equal("Three-point bending, core shear (MPa)", 1.214, beam.coreShear(3000) / MPA, 0.0005);
        LADDER.equal(
                "Three-point bending, deflection by bending (mm)",
                8.728,
                beam.deflectionByBending(3000, 400 * MM) / MM,
                0.0005);
        LADDER.equal(
                "Three-point bending, deflection by shear (mm)",
                0.760,
                beam.deflectionByShear(3000, 400 * MM) / MM,
                0.0005);
    }

    @Test
    void facesPressOnTheCore() {
        double force = 200 * MPA * TF;
        LADDER.equal(
                "Core pressure by bending (MPa)", 0.0388, CorePressure.byBending(force * D, EF, TF, D) / MPA, 0.00005);
        LADDER.equal("Core pressure by curvature (MPa)", 0.060, CorePressure.byCurvature(force, 2) / MPA, 0.0005);
    }

    @Test
    void aBluntEdgeIndentsTheFace() {
        double lambda = Indentation.decay(EC, TC, EF * TF * TF * TF / 12);
        LADDER.equal("Indentation, decay (1/mm)", 0.278, lambda * MM, 0.0005);
        LADDER.equal("Indentation, first crushing (N/mm)", 14.4, Indentation.firstCrushing(2 * MPA, lambda) * MM, 0.05);
        LADDER.equal("Indentation, plastic (N/mm)", 37.9, Indentation.plastic(TF, 2 * MPA, 500 * MPA) * MM, 0.1);
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
        BAR.equal("Bend of an L, radial stress at r/t = 5/3", largest, Corner.radialStress(1, ri, t), 0.02 * largest);
    }
}
