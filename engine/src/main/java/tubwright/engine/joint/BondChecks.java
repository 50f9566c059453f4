// SPDX-License-Identifier: Apache-2.0
package tubwright.engine.joint;

import java.util.ArrayList;
import java.util.List;
import tubwright.engine.material.Adhesive;
import tubwright.engine.material.Property;
import tubwright.engine.strength.Check;
import tubwright.engine.strength.KnockDown;

/** Reserve of a single-lap bond line, elastic: no stress may reach the adhesive's strength. */
public final class BondChecks {
    private BondChecks() {}

    /**
     * Shear and peel at the ends of a lap of two like sheets, with Hart-Smith's moment factor.
     *
     * <p>The stresses do not quite grow with the load (the joint straightens), so the reserve is found on the load itself.
     *
     * @param loadPerWidth tension across the joint, N/m
     * @param thickness of the bond line, m
     */
    public static List<Check> singleLap(
            Adherend sheet,
            Adhesive adhesive,
            double thickness,
            double overlap,
            double loadPerWidth,
            KnockDown knockDown) {
        var bond = new BondLine(
                thickness, adhesive.shearModulus(), adhesive.properties().require(Property.E1));
        var lap = new SingleLap(sheet, bond, overlap);
        List<Check> checks = new ArrayList<>();
        checks.add(check(
                "shear at the end of the bond line",
                adhesive,
                Property.S12,
                knockDown,
                loadPerWidth,
                p -> lap.peakShear(p, lap.momentFactorHartSmith(p)),
                "Goland and Reissner 1944, moment factor Hart-Smith 1973"));
        checks.add(check(
                "peel at the end of the bond line",
                adhesive,
                Property.ZT,
                knockDown,
                loadPerWidth,
                p -> lap.peakPeel(p, lap.momentFactorHartSmith(p)),
                "Goland and Reissner 1944, moment factor Hart-Smith 1973"));
        return List.copyOf(checks);
    }

    private static Check check(
            String mode,
            Adhesive adhesive,
            Property property,
            KnockDown knockDown,
            double load,
            java.util.function.DoubleUnaryOperator stress,
            String basis) {
        var strength = adhesive.properties().si(property);
        if (strength.isEmpty()) {
            return new Check.NotChecked(
                    mode, List.of(property.key() + " of " + adhesive.name() + " (" + property.meaning() + ")"));
        }
        double allowable = strength.getAsDouble() * knockDown.factor(property);
        if (!(load > 0)) {
            return new Check.Reserve(mode, Double.POSITIVE_INFINITY, 0, allowable, basis);
        }
        return new Check.Reserve(
                mode,
                factor(p -> stress.applyAsDouble(p) - allowable, load),
                stress.applyAsDouble(load),
                allowable,
                basis);
    }

    /** Factor on the load at which the excess, which grows with it, becomes zero. */
    private static double factor(java.util.function.DoubleUnaryOperator excess, double load) {
        double low = 0;
        double high = 1;
        while (excess.applyAsDouble(high * load) < 0) {
            low = high;
            high *= 2;
            if (high > 1e12) {
                return Double.POSITIVE_INFINITY;
            }
        }
        while (high - low > 1e-12 * high) {
            double middle = 0.5 * (low + high);
            if (excess.applyAsDouble(middle * load) < 0) {
                low = middle;
            } else {
                high = middle;
            }
        }
        return 0.5 * (low + high);
    }
}
