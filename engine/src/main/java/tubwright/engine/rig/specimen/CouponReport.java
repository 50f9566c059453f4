// SPDX-License-Identifier: Apache-2.0
package tubwright.engine.rig.specimen;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import tubwright.engine.rig.statistics.LinearFit;
import tubwright.engine.rig.statistics.Sample;

/**
 * Coupons in tension, or skins punched through: one value or two of each specimen and their scatter.
 *
 * @param coupons one a specimen
 * @param modulus of all; empty where none was read or there is one specimen only
 * @param strength of all; empty with one specimen
 */
public record CouponReport(List<Coupon> coupons, Optional<Sample> modulus, Optional<Sample> strength) {
    /** Chord of the modulus: strains of 0.1 and 0.3 % (ASTM D3039, from memory). */
    private static final double LOW = 1e-3;

    private static final double HIGH = 3e-3;

    /** Fewer specimens of a batch than this make no allowable, whatever the factor (CMH-17 vol. 1, ch. 8, from memory). */
    public static final int ALLOWABLE = 18;

    public CouponReport {
        coupons = List.copyOf(coupons);
    }

    /**
     * One specimen.
     *
     * @param name its name
     * @param modulus Pa; NaN where the test has none
     * @param modulusError standard error of its line, Pa
     * @param strength greatest stress, Pa; for a punch the shear stress of the first skin to give way
     * @param last for a punch the shear stress at the greatest load, Pa; else the same as {@code strength}
     */
    public record Coupon(String name, double modulus, double modulusError, double strength, double last) {}

    /** Reduces a tension or a punch test. */
    public static CouponReport of(SpecimenTest test) {
        List<Coupon> coupons = new ArrayList<>();
        for (Curve curve : test.curves()) {
            if (test.kind() == SpecimenTest.Kind.COUPON_TENSION) {
                double area = curve.sizes()[0] * curve.sizes()[1];
                LinearFit line = curve.slopeBetweenMovements(LOW, HIGH);
                double strength = curve.greatestLoad() / area;
                coupons.add(new Coupon(
                        curve.name(),
                        line.coefficients()[1] / area,
                        line.standardErrors()[1] / area,
                        strength,
                        strength));
            } else {
                double area = Math.PI * curve.sizes()[0] * curve.sizes()[1];
                coupons.add(new Coupon(
                        curve.name(), Double.NaN, Double.NaN, curve.firstPeak() / area, curve.greatestLoad() / area));
            }
        }
        boolean several = coupons.size() > 1;
        return new CouponReport(
                coupons,
                several && test.kind() == SpecimenTest.Kind.COUPON_TENSION
                        ? Optional.of(new Sample(
                                coupons.stream().mapToDouble(Coupon::modulus).toArray()))
                        : Optional.empty(),
                several
                        ? Optional.of(new Sample(
                                coupons.stream().mapToDouble(Coupon::strength).toArray()))
                        : Optional.empty());
    }
}
