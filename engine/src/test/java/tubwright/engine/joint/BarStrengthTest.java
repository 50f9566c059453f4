// SPDX-License-Identifier: Apache-2.0
package tubwright.engine.joint;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertInstanceOf;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import tubwright.engine.material.MaterialLibrary;
import tubwright.engine.material.Metal;
import tubwright.engine.material.Property;
import tubwright.engine.strength.Check;

/** Bars against formulas of mechanics worked here: von Mises 1913, Euler 1744, Johnson 1893, NACA TN 2661. */
class BarStrengthTest {
    private static final Metal STEEL = MaterialLibrary.shipped().get("steel-4130", Metal.class);
    private static final double R = 0.019;
    private static final double I = Math.PI / 4 * (Math.pow(R, 4) - Math.pow(0.0165, 4));
    private static final double A = Math.PI * (R * R - 0.0165 * 0.0165);

    /** A tube 38 x 2.5 mm. */
    private static BarStrength tube(Metal metal) {
        return new BarStrength(metal, A, new double[] {I, I}, new double[] {R, R}, 2 * I / R, 0.0025);
    }

    private static double least(Metal metal) {
        return Math.min(
                metal.properties().require(Property.TENSILE_YIELD),
                metal.properties().require(Property.COMPRESSIVE_YIELD));
    }

    private static Check.Reserve only(List<Check> checks, String mode) {
        return checks.stream()
                .filter(Check.Reserve.class::isInstance)
                .map(Check.Reserve.class::cast)
                .filter(c -> c.mode().equals(mode))
                .findFirst()
                .orElseThrow();
    }

    @Test
    void pullBendingAndTorqueAddAsVonMisesSays() {
        var load = new BarStrength.Load(20e3, 300, 0, 400);
        double direct = 20e3 / A + 300 * R / I;
        double shear = 400 * R / (2 * I);
        Check.Reserve found = only(tube(STEEL).checks(load, Optional.of(0.5)), "yield of the bar");
        assertEquals(least(STEEL), found.reserveFactor() * Math.sqrt(direct * direct + 3 * shear * shear), 1e-6 * 1e9);
    }

    @Test
    void aPressedTubeYieldsWhereItsGrownBendingReachesTheYieldStress() {
        double length = 1.2;
        var load = new BarStrength.Load(-30e3, 200, 0, 0);
        double f = only(tube(STEEL).checks(load, Optional.of(length)), "yield of the bar")
                .reserveFactor();
        double euler = Math.PI * Math.PI * STEEL.youngsModulus() * I / (length * length);
        double stress = f * 30e3 / A + f * 200 * R / I / (1 - f * 30e3 / euler);
        assertEquals(least(STEEL), stress, 1e-5 * stress);
        double held = only(tube(STEEL).checks(load, Optional.empty()), "yield of the bar")
                .reserveFactor();
        assertTrue(held > f, "sheet that holds a bar along its length keeps it straight");
    }

    @Test
    void aSlenderTubeIsEulersColumnAndAStockyOneJohnsons() {
        double y = STEEL.properties().require(Property.COMPRESSIVE_YIELD);
        double e = STEEL.youngsModulus();
        double radius = Math.sqrt(I / A);
        double border = Math.PI * Math.sqrt(2 * e / y) * radius;
        for (double length : new double[] {2 * border, 4 * border}) {
            double expected = Math.PI * Math.PI * e * radius * radius / (length * length);
            assertEquals(expected, tube(STEEL).columnStress(length, Optional.of(y)), 1e-9 * expected);
        }
        for (double length : new double[] {0.05, 0.5 * border}) {
            double slender = length / radius;
            double expected = y * (1 - y * slender * slender / (4 * Math.PI * Math.PI * e));
            assertEquals(expected, tube(STEEL).columnStress(length, Optional.of(y)), 1e-9 * expected);
        }
        assertEquals(
                y / 2, tube(STEEL).columnStress(border, Optional.of(y)), 1e-6 * y, "the curves meet at half yield");
    }

    @Test
    void aPulledTubeIsNoColumn() {
        List<Check> checks = tube(STEEL).checks(new BarStrength.Load(1e3, 0, 0, 0), Optional.of(1.0));
        assertEquals(1, checks.size());
    }

    /** tU/t = 1.5: C k^⅔ 1.5^⅓ is reached by the stress from the folds, both at the load times the factor. */
    @Test
    void foldsCrippleALegWhereTheirStressReachesTheAllowableOfTheReport() {
        Metal metal = MaterialLibrary.shipped().get("al-2024-t3", Metal.class);
        var panel = new ShearPanel(0.5, 0.25, 0.0008, metal, 60e-6);
        var bar = new BarStrength(metal, 60e-6, new double[] {1e-9, 1e-9}, new double[] {1e-2, 1e-2}, 1e-8, 0.0012);
        double tau = 40e6;
        double f =
                assertInstanceOf(Check.Reserve.class, bar.crippling(panel, tau)).reserveFactor();
        DiagonalTension state = panel.under(f * tau);
        double c = 26 * 6.894757e6;
        double allowable = c * Math.pow(state.factor(), 2.0 / 3) * Math.cbrt(1.5);
        assertEquals(allowable, -state.flangeStress(), 1e-6 * allowable);
    }

    @Test
    void anAlloyTheReportDidNotTestIsNotChecked() {
        Metal metal = MaterialLibrary.shipped().get("al-6061-t6", Metal.class);
        var panel = new ShearPanel(0.5, 0.25, 0.0008, metal, 60e-6);
        var bar = new BarStrength(metal, 60e-6, new double[] {1e-9, 1e-9}, new double[] {1e-2, 1e-2}, 1e-8, 0.0012);
        assertInstanceOf(Check.NotChecked.class, bar.crippling(panel, 40e6));
    }
}
