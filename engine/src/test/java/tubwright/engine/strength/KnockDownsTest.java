// SPDX-License-Identifier: Apache-2.0
package tubwright.engine.strength;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.Map;
import org.junit.jupiter.api.Test;
import tubwright.engine.material.Property;
import tubwright.engine.material.Provenance;
import tubwright.engine.material.Trust;

/** The factors are quotients of the public tables they cite (ksi and Msi, from a transcription), to two digits. */
class KnockDownsTest {
    @Test
    void hotAndWetOverRoomTemperature() {
        KnockDown k = KnockDowns.HOT_WET_121;
        assertEquals(333.50 / 362.69, k.factor(Property.XT), 0.005);
        assertEquals(173.00 / 248.94, k.factor(Property.XC), 0.006);
        assertEquals(3.49 / 9.29, k.factor(Property.YT), 0.005);
        assertEquals(19.02 / 41.44, k.factor(Property.YC), 0.005);
        assertEquals(5.54 / 13.22, k.factor(Property.S12), 0.005);
        assertEquals(0.31 / 0.68, k.factor(Property.G12), 0.005);
        assertEquals(8.25 / 17.13, k.factor(Property.S13), 0.005);
    }

    @Test
    void basisOverMean() {
        assertEquals(323.09 / 362.69, KnockDowns.B_BASIS_IM7.factor(Property.XT), 0.005);
        assertEquals(7.59 / 9.29, KnockDowns.B_BASIS_IM7.factor(Property.YT), 0.005);
        assertEquals(36.45 / 41.44, KnockDowns.B_BASIS_IM7.factor(Property.YC), 0.005);
        assertEquals(205.0 / 258, KnockDowns.B_BASIS_AS4.factor(Property.XT), 0.005);
        assertEquals(171.0 / 204, KnockDowns.B_BASIS_AS4.factor(Property.XC), 0.005);
        assertEquals(6.28 / 7.76, KnockDowns.B_BASIS_AS4.factor(Property.YT), 0.005);
        assertEquals(26.6 / 34.6, KnockDowns.B_BASIS_AS4.factor(Property.YC), 0.005);
        assertEquals(13.4 / 14.8, KnockDowns.B_BASIS_AS4.factor(Property.S12), 0.005);
    }

    @Test
    void holesBlowsAndLaminates() {
        assertEquals(
                OpenHole.pointStress(3.175e-3, OpenHole.USUAL_POINT_DISTANCE, 3),
                KnockDowns.OPEN_HOLE.factor(Property.XT),
                0.005);
        // 171 to 182 MPa after impact over 81.32 ksi unnotched
        double lowest = 171 / (81.32 * 6.894757);
        assertEquals(lowest, KnockDowns.BARELY_VISIBLE_DAMAGE.factor(Property.XC), 0.006);
    }

    @Test
    void twoReasonsMultiplyAndTheWeakerTrustStays() {
        KnockDown both = KnockDowns.HOT_WET_121.and(KnockDowns.OPEN_HOLE);
        assertEquals(0.92 * 0.56, both.factor(Property.XT), 1e-12);
        assertEquals(0.70, both.factor(Property.XC), 1e-12);
        assertEquals(1, both.factor(Property.E1));
        assertEquals(Trust.COMPUTED, both.provenance().trust());
        assertTrue(both.provenance().source().contains("NCP-RP-2009-028"));
        assertEquals(KnockDowns.OPEN_HOLE, KnockDown.NONE.and(KnockDowns.OPEN_HOLE));
    }

    @Test
    void strengthsAndTablesShrinkAlike() {
        PlyStrengths s = Plies.strengths(Plies.T300_5208).reducedBy(KnockDowns.HOT_WET_121);
        var table = KnockDowns.HOT_WET_121.applyTo(Plies.T300_5208.properties());
        assertEquals(table.require(Property.XC), s.xc(), 1e-6);
        assertEquals(table.require(Property.S12), s.s12(), 1e-6);
        assertTrue(table.find(Property.XC).orElseThrow().provenance().source().contains("hot-wet"));
        assertFalse(table.find(Property.E1).orElseThrow().provenance().source().contains("hot-wet"));
    }

    @Test
    void aFactorThatTakesEverythingIsRefused() {
        assertThrows(
                IllegalArgumentException.class,
                () -> new KnockDown("all gone", Map.of(Property.XT, 0.0), Provenance.STATED));
    }

    @Test
    void everyKnockDownHasASource() {
        for (KnockDown each : KnockDowns.all()) {
            assertTrue(each.provenance().source().length() > 20, each.name());
            each.factors().forEach((property, factor) -> assertTrue(factor < 1, each.name() + " " + property));
        }
    }

    /** One-sided fractiles of the normal distribution: 90 % at 1.2816, 99 % at 2.3263 deviations (any statistics table). */
    @Test
    void aBasisFollowsFromBBasisByTheNormalDistribution() {
        KnockDowns.A_BASIS_AS4.factors().forEach((property, a) -> {
            double deviation = (1 - KnockDowns.B_BASIS_AS4.factor(property)) / 1.2816;
            assertEquals(1 - 2.3263 * deviation, a, 0.0051, property.key());
        });
    }
}
