// SPDX-License-Identifier: Apache-2.0
package tubwright.engine.strength.sandwich;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertInstanceOf;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.Test;
import tubwright.engine.laminate.Laminate;
import tubwright.engine.laminate.Layer;
import tubwright.engine.laminate.Reference;
import tubwright.engine.material.Core;
import tubwright.engine.material.Metal;
import tubwright.engine.material.Property;
import tubwright.engine.material.PropertyTable;
import tubwright.engine.material.PropertyValue;
import tubwright.engine.material.Provenance;
import tubwright.engine.strength.Check;
import tubwright.engine.strength.KnockDown;

/** The worked example of {@link SandwichFormulasTest} as a laminate under load. */
class SandwichChecksTest {
    private static final double MPA = 1e6;
    private static final Metal FACE =
            Metal.of("face", "60 GPa", table(Map.of(Property.DENSITY, 1600.0, Property.E1, 60e9, Property.NU12, 0.3)));
    private static final Map<Property, Double> CORE = Map.of(
            Property.DENSITY, 50.0,
            Property.CELL_SIZE, 4.76e-3,
            Property.E3, 517 * MPA,
            Property.G13, 310 * MPA,
            Property.G23, 152 * MPA,
            Property.S13, 1.07 * MPA,
            Property.S23, 0.62 * MPA,
            Property.ZC, 2 * MPA);

    private static PropertyTable table(Map<Property, Double> values) {
        Map<Property, PropertyValue> map = new EnumMap<>(Property.class);
        values.forEach((p, v) -> map.put(p, new PropertyValue(v, Provenance.STATED)));
        return new PropertyTable(map);
    }

    private static Sandwich sandwich(Map<Property, Double> core, double ribbonDegrees) {
        Core material = Core.of("core", "a core", Core.Form.HONEYCOMB, table(core));
        return Sandwich.of(new Laminate(
                        List.of(
                                new Layer(FACE, 0.6e-3, 0),
                                new Layer(material, 20e-3, Math.toRadians(ribbonDegrees)),
                                new Layer(FACE, 0.6e-3, 0)),
                        Reference.MIDDLE))
                .orElseThrow();
    }

    private static Check.Reserve reserve(List<Check> checks, String mode) {
        return (Check.Reserve) checks.stream()
                .filter(c -> c.mode().equals(mode))
                .findFirst()
                .orElseThrow(() -> new AssertionError(mode + " is not among " + checks));
    }

    private static PanelLoad compressed(double along, double across, double shear) {
        return PanelLoad.flat(new double[] {along, across, shear, 0, 0, 0}, new double[2]);
    }

    @Test
    void compressionWrinklesDimplesAndCrimps() {
        // 100 MPa in both faces
        var checks = SandwichChecks.of(sandwich(CORE, 0), compressed(-120e3, 0, 0), KnockDown.NONE);
        assertEquals(
                3.18,
                reserve(checks, "wrinkling of the outer face, design value").reserveFactor(),
                0.02);
        assertEquals(
                7.91, reserve(checks, "wrinkling of the inner face, theory").reserveFactor(), 0.04);
        assertEquals(
                20.95 * 0.987, reserve(checks, "dimpling of the outer face").reserveFactor(), 0.1);
        assertEquals(310.0 / 152 * 3225 / 120, reserve(checks, "shear crimping").reserveFactor(), 0.02);
    }

    @Test
    void theRibbonDecidesOverCrimpingAndCoreShear() {
        var along = SandwichChecks.of(sandwich(CORE, 0), compressed(-120e3, 0, 0), KnockDown.NONE);
        var across = SandwichChecks.of(sandwich(CORE, 90), compressed(-120e3, 0, 0), KnockDown.NONE);
        assertEquals(
                310.0 / 152,
                reserve(along, "shear crimping").reserveFactor()
                        / reserve(across, "shear crimping").reserveFactor(),
                1e-9);
        PanelLoad shear = PanelLoad.flat(new double[6], new double[] {10e3, 0});
        assertEquals(
                1.07e6 * 20.6e-3 / 10e3,
                reserve(SandwichChecks.of(sandwich(CORE, 0), shear, KnockDown.NONE), "shear of the core")
                        .reserveFactor(),
                1e-9);
        assertEquals(
                0.62e6 * 20.6e-3 / 10e3,
                reserve(SandwichChecks.of(sandwich(CORE, 90), shear, KnockDown.NONE), "shear of the core")
                        .reserveFactor(),
                1e-9);
    }

    @Test
    void pureShearWrinklesAtFortyFiveDegreesAsCompressionDoes() {
        var sheared = SandwichChecks.of(sandwich(CORE, 0), compressed(0, 0, 120e3), KnockDown.NONE);
        var pressed = SandwichChecks.of(sandwich(CORE, 0), compressed(-120e3, 0, 0), KnockDown.NONE);
        String mode = "wrinkling of the outer face, design value";
        assertEquals(
                reserve(pressed, mode).reserveFactor(), reserve(sheared, mode).reserveFactor(), 1e-3);
    }

    @Test
    void equalCompressionBothWaysTakesAFifth() {
        String mode = "wrinkling of the outer face, design value";
        var one = SandwichChecks.of(sandwich(CORE, 0), compressed(-120e3, 0, 0), KnockDown.NONE);
        var both = SandwichChecks.of(sandwich(CORE, 0), compressed(-120e3, -120e3, 0), KnockDown.NONE);
        assertEquals(
                Math.pow(2, -1.0 / 3),
                reserve(both, mode).reserveFactor() / reserve(one, mode).reserveFactor(),
                1e-3);
    }

    @Test
    void tensionNeitherWrinklesNorCrimps() {
        var checks = SandwichChecks.of(sandwich(CORE, 0), compressed(120e3, 60e3, 0), KnockDown.NONE);
        for (String mode : List.of("wrinkling of the outer face, design value", "shear crimping")) {
            assertEquals(Double.POSITIVE_INFINITY, reserve(checks, mode).reserveFactor());
        }
    }

    @Test
    void bendingCrushesTheCoreByTheSquareOfTheLoad() {
        double moment = 200 * MPA * 0.6e-3 * 20.6e-3;
        PanelLoad bent = PanelLoad.flat(new double[] {0, 0, 0, moment, 0, 0}, new double[2]);
        var crush = reserve(
                SandwichChecks.of(sandwich(CORE, 0), bent, KnockDown.NONE), "crushing of the core by curvature");
        assertEquals(0.0388, crush.applied() / MPA, 0.0003);
        assertEquals(Math.sqrt(2 * MPA / crush.applied()), crush.reserveFactor(), 1e-9);
    }

    @Test
    void aCurvedPanelIsCrushedOneWayAndOpenedTheOther() {
        Map<Property, Double> bonded = new EnumMap<>(CORE);
        bonded.put(Property.ZT, 1 * MPA);
        double moment = 200 * MPA * 0.6e-3 * 20.6e-3;
        double[] curvature = {0.5, 0, 0};
        var closing = SandwichChecks.of(
                sandwich(bonded, 0),
                new PanelLoad(new double[] {0, 0, 0, moment, 0, 0}, new double[2], curvature),
                KnockDown.NONE);
        assertEquals(
                0.060 + 0.0388,
                reserve(closing, "crushing of the core by curvature").applied() / MPA,
                0.0005);
        var opening = SandwichChecks.of(
                sandwich(bonded, 0),
                new PanelLoad(new double[] {0, 0, 0, -moment, 0, 0}, new double[2], curvature),
                KnockDown.NONE);
        assertEquals(
                0.060 - 0.0388,
                reserve(opening, "flatwise tension by curvature").applied() / MPA,
                0.0005);
    }

    @Test
    void whatTheCoreDoesNotSayIsNotChecked() {
        for (Property property : List.of(Property.E3, Property.CELL_SIZE, Property.S13, Property.S23, Property.ZC)) {
            Map<Property, Double> lacking = new EnumMap<>(CORE);
            lacking.remove(property);
            var checks = SandwichChecks.of(sandwich(lacking, 0), compressed(-1e5, 0, 0), KnockDown.NONE);
            assertTrue(
                    checks.stream()
                            .filter(Check.NotChecked.class::isInstance)
                            .anyMatch(c -> c.toString().contains("needs " + property.key() + " of core")),
                    property + ": " + checks);
        }
        // The example gives no flatwise tension strength.
        assertInstanceOf(
                Check.NotChecked.class,
                SandwichChecks.of(sandwich(CORE, 0), compressed(-1e5, 0, 0), KnockDown.NONE)
                        .getLast());
    }

    @Test
    void aSolidLaminateIsNoSandwich() {
        assertTrue(Sandwich.of(new Laminate(List.of(new Layer(FACE, 1e-3, 0)), Reference.MIDDLE))
                .isEmpty());
    }
}
