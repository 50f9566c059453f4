// SPDX-License-Identifier: Apache-2.0
package tubwright.engine.joint;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertInstanceOf;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import tubwright.engine.laminate.Laminate;
import tubwright.engine.laminate.Layer;
import tubwright.engine.material.Adhesive;
import tubwright.engine.material.MaterialLibrary;
import tubwright.engine.material.Ply;
import tubwright.engine.material.Property;
import tubwright.engine.material.PropertyTable;
import tubwright.engine.material.PropertyValue;
import tubwright.engine.material.Provenance;
import tubwright.engine.strength.Check;
import tubwright.engine.strength.KnockDown;

/** The single lap of {@link BondedJointTest} with an adhesive that has strengths, or has not. */
class BondChecksTest {
    private static final Adherend SHEET = new Adherend(1.6e-3, 70e9, 0.33);

    private static Adhesive adhesive(Map<Property, Double> strengths) {
        Map<Property, PropertyValue> values = new EnumMap<>(Property.class);
        values.put(Property.E1, new PropertyValue(2.2e9, Provenance.STATED));
        values.put(Property.NU12, new PropertyValue(0.375, Provenance.STATED));
        values.put(Property.THICKNESS, new PropertyValue(0.2e-3, Provenance.STATED));
        values.put(Property.DENSITY, new PropertyValue(1200, Provenance.STATED));
        strengths.forEach((p, v) -> values.put(p, new PropertyValue(v, Provenance.STATED)));
        return Adhesive.of("paste", "a paste", Adhesive.Form.PASTE, new PropertyTable(values));
    }

    private static List<Check> check(Adhesive adhesive, double load) {
        return BondChecks.singleLap(SHEET, adhesive, 0.2e-3, 25e-3, load, KnockDown.NONE);
    }

    @Test
    void theScaledLoadJustReachesTheStrength() {
        // 62.11 MPa of shear at 400 N/mm (computed apart): a strength of that much leaves a factor of four at 100 N/mm,
        // though the stress at 100 N/mm is not a quarter of it.
        Adhesive adhesive = adhesive(Map.of(Property.S12, 62.11e6, Property.ZT, 1e9));
        var shear = assertInstanceOf(Check.Reserve.class, check(adhesive, 100e3).getFirst());
        assertEquals(4, shear.reserveFactor(), 0.001);
        assertEquals(18.84e6, shear.applied(), 0.01e6);
        assertTrue(shear.allowable() / shear.applied() < 3.4, "the index upside down is another number");
    }

    @Test
    void anAdhesiveWithoutPeelStrengthIsNotPassed() {
        var peel = assertInstanceOf(
                Check.NotChecked.class,
                check(adhesive(Map.of(Property.S12, 40e6)), 100e3).getLast());
        assertTrue(peel.toString().startsWith("peel at the end of the bond line not checked: needs ZT of paste"));
    }

    @Test
    void theUsualOverlapsAreThoseOfPractice() {
        assertEquals(0.128, OverlapRules.singleLap(1.6e-3), 1e-12);
        assertEquals(0.048, OverlapRules.doubleLap(1.6e-3), 1e-12);
        assertEquals(0.080, OverlapRules.scarf(1.6e-3), 1e-12);
    }

    /** A tape of the library with a strength through its thickness, as a design may give it. */
    private static Sheet tape(double strength) {
        Ply known = MaterialLibrary.shipped().get("ud-as4-3502", Ply.class);
        PropertyTable values = known.properties().with(Property.ZT, strength, Provenance.STATED);
        Layer layer = Layer.ofDegrees(Ply.of("tape", "", known.form(), values), 0);
        return Sheet.of(Laminate.of(layer, layer, layer), 0);
    }

    @Test
    void thePlyBesideAnAdhesiveOfUnknownStrengthIsStillCheckedForPeel() {
        Adhesive unknown = adhesive(Map.of(Property.S12, 40e6));
        Adhesive strong = adhesive(Map.of(Property.S12, 40e6, Property.ZT, 80e6));
        List<Double> factors = new ArrayList<>();
        for (Adhesive adhesive : List.of(unknown, strong)) {
            var bond = new JointDetail.Bond(JointDetail.Lie.SINGLE_LAP, adhesive, 0.2e-3, 25e-3, Optional.empty());
            List<Check> peel =
                    BondChecks.of(bond, tape(20e6), tape(20e6), new LineLoad(50e3, 0, 0, 0), KnockDown.NONE).stream()
                            .filter(c -> c.toString().contains("peel"))
                            .toList();
            boolean listed = peel.stream().anyMatch(Check.NotChecked.class::isInstance);
            assertEquals(adhesive == unknown, listed, "the adhesive itself is no pass");
            peel.stream()
                    .filter(Check.Reserve.class::isInstance)
                    .forEach(c -> factors.add(((Check.Reserve) c).reserveFactor()));
        }
        assertEquals(2, factors.size());
        assertEquals(factors.get(0), factors.get(1), 1e-12);
        assertTrue(factors.getFirst() > 0 && factors.getFirst() < 100, "factor " + factors.getFirst());
    }
}
