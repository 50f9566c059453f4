// SPDX-License-Identifier: Apache-2.0
package tubwright.engine.strength;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static tubwright.engine.strength.Plies.MPA;

import org.junit.jupiter.api.Test;
import tubwright.engine.material.Elasticity;
import tubwright.engine.strength.InSituStrengths.Position;
import tubwright.engine.strength.InSituStrengths.Toughness;
import tubwright.engine.verification.ladder.Family;
import tubwright.engine.verification.ladder.Ladder;
import tubwright.engine.verification.ladder.Mark;

/**
 * IM7/8552 of Camanho, Maimí and Dávila 2007 (from memory; the published in-situ strengths reproduced by computation at a
 * ply thickness of 0.125 mm; with toughness rounded to 0.277 N/mm they come out 0.1 per cent low), and the fracture plane of LaRC03 (computed apart).
 */
class InSituStrengthTest {
    private static final Ladder LADDER = Ladder.of(
            Family.CRITERIA,
            "Camanho, Dávila, Pinho, Iannucci and Robinson 2006; Camanho, Maimí and Dávila 2007",
            Mark.MEMORY_CONFIRMED);
    private static final Ladder APART = Ladder.of(Family.CRITERIA, "Independent program", Mark.COMPUTED);
    private static final Ladder PLANE =
            Ladder.of(Family.CRITERIA, "Dávila and Camanho 2003, NASA/TM-2003-212663", Mark.COMPUTED);

    private static final Elasticity IM7_8552 = new Elasticity(171.42e9, 9.08e9, 0.32, 5.29e9, 5.29e9, 3.2e9);
    private static final Toughness TOUGHNESS = new Toughness(277.4, 787.9, 2.98e-8 / 1e18, 62.3 * MPA, 92.3 * MPA);

    @Test
    void anEmbeddedThinPlyIsAsStrongAsPublished() {
        InSituStrengths s = InSituStrengths.of(IM7_8552, TOUGHNESS, 0.125e-3, Position.THIN_EMBEDDED);
        LADDER.equal(
                "IM7/8552, embedded ply of .125 mm, transverse tension (MPa)",
                160.2,
                s.transverseTension() / MPA,
                0.05);
        LADDER.equal("IM7/8552, embedded ply of .125 mm, shear (MPa)", 130.2, s.shear() / MPA, 0.05);
    }

    @Test
    void anOuterPlyIsAsStrongAsPublished() {
        InSituStrengths s = InSituStrengths.of(IM7_8552, TOUGHNESS, 0.125e-3, Position.OUTER);
        LADDER.equal(
                "IM7/8552, outer ply of .125 mm, transverse tension (MPa)", 101.4, s.transverseTension() / MPA, 0.05);
        LADDER.equal("IM7/8552, outer ply of .125 mm, shear (MPa)", 107.0, s.shear() / MPA, 0.05);
    }

    @Test
    void aThickerPlyIsWeaker() {
        InSituStrengths thin = InSituStrengths.of(IM7_8552, TOUGHNESS, 0.131e-3, Position.THIN_EMBEDDED);
        APART.equal(
                "IM7/8552, embedded ply of .131 mm, transverse tension (MPa)",
                156.5,
                thin.transverseTension() / MPA,
                0.05);
        APART.equal("IM7/8552, embedded ply of .131 mm, shear (MPa)", 128.5, thin.shear() / MPA, 0.05);
        InSituStrengths outer = InSituStrengths.of(IM7_8552, TOUGHNESS, 0.131e-3, Position.OUTER);
        APART.equal(
                "IM7/8552, outer ply of .131 mm, transverse tension (MPa)",
                99.0,
                outer.transverseTension() / MPA,
                0.05);
        APART.equal("IM7/8552, outer ply of .131 mm, shear (MPa)", 105.6, outer.shear() / MPA, 0.05);
    }

    @Test
    void aThickPlyOfLinearShearGainsTheRootOfTwo() {
        // 12 S²/G in S² = φG/6 gives S √2: own limit of the formula.
        Toughness linear = new Toughness(277.4, 787.9, 0, 62.3 * MPA, 92.3 * MPA);
        InSituStrengths s = InSituStrengths.of(IM7_8552, linear, 1, Position.THICK_EMBEDDED);
        assertEquals(92.3 * Math.sqrt(2), s.shear() / MPA, 1e-9);
    }

    @Test
    void theFracturePlaneAtFiftyThreeDegreesComputedApart() {
        FracturePlane im7 = FracturePlane.of(199.8 * MPA, 92.3 * MPA, FracturePlane.USUAL_ANGLE);
        PLANE.equal("IM7/8552, transverse friction", 0.2867, im7.transverseFriction(), 0.00005);
        PLANE.equal(
                "Transverse shear strength over transverse compressive strength",
                0.3767,
                im7.transverseShearStrength() / (199.8 * MPA),
                0.0001); // cut after its last digit, not rounded
        PLANE.equal("IM7/8552, transverse shear strength (MPa)", 75.28, im7.transverseShearStrength() / MPA, 0.005);
        PLANE.equal("IM7/8552, longitudinal friction", 0.3516, im7.longitudinalFriction(), 0.00005);
        FracturePlane ly556 = FracturePlane.of(114 * MPA, 72 * MPA, FracturePlane.USUAL_ANGLE);
        PLANE.equal("LY556, transverse shear strength (MPa)", 42.95, ly556.transverseShearStrength() / MPA, 0.005);
        PLANE.equal("LY556, longitudinal friction", 0.4807, ly556.longitudinalFriction(), 0.00005);
        FracturePlane as4 = FracturePlane.of(200 * MPA, 79 * MPA, FracturePlane.USUAL_ANGLE);
        PLANE.equal("AS4/3501-6, transverse shear strength (MPa)", 75.36, as4.transverseShearStrength() / MPA, 0.005);
        PLANE.equal("AS4/3501-6, longitudinal friction", 0.3006, as4.longitudinalFriction(), 0.00005);
    }
}
