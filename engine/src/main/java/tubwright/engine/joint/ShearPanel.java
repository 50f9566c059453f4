// SPDX-License-Identifier: Apache-2.0
package tubwright.engine.joint;

import java.util.List;
import java.util.Locale;
import tubwright.engine.material.Metal;
import tubwright.engine.material.Property;
import tubwright.engine.strength.Check;

/**
 * A panel of thin metal sheet in shear between walls and corners, before and after it buckles (incomplete diagonal tension,
 * {@link ShearWeb}). Taken flat and simply supported, which is to the safe side of a curved one; the walls at its ends are
 * taken as uprights that do not shorten, bars and a strip of neighbouring sheet as its flanges, whose bending is left out.
 *
 * @param length d between walls, m
 * @param width h between corners, m
 * @param thickness t, m
 * @param metal of the sheet
 * @param flangeArea AF of either long edge, m²
 */
public record ShearPanel(double length, double width, double thickness, Metal metal, double flangeArea) {

    private ShearWeb web(double d, double h) {
        return new ShearWeb(
                thickness,
                d,
                d,
                h,
                h,
                metal.youngsModulus(),
                metal.elasticity().nu12(),
                new ShearWeb.Upright(Double.POSITIVE_INFINITY, 0, 1, h),
                flangeArea);
    }

    /** Shear stress at which it buckles, Pa. */
    public double bucklingStress() {
        ShearWeb web = web(Math.min(length, width), Math.max(length, width));
        return web.bucklingStress(web.bucklingCoefficient(), 1, 1);
    }

    /** The sheet under a mean shear stress, Pa. */
    public DiagonalTension under(double shearStress) {
        return web(length, width).under(Math.abs(shearStress), bucklingStress());
    }

    /** Shear modulus left of the sheet under a mean shear stress (secant), over that of the flat one. */
    public double stiffnessLeft(double shearStress) {
        return Math.abs(shearStress) > bucklingStress() ? under(shearStress).stiffnessRatio() : 1;
    }

    /** When it buckles, which is no failure, and when it fails in shear along its edges. */
    public List<Check> checks(double shearStress) {
        double tau = Math.abs(shearStress);
        Check buckle = Check.proportional(
                "first shear buckle of the sheet, which goes on bearing",
                tau,
                bucklingStress(),
                String.format(
                        Locale.ROOT,
                        "panel %.0f x %.0f mm taken flat (curved sheet buckles later), simply supported; NACA TN 2661",
                        length * 1e3,
                        width * 1e3));
        String mode = "shear of the buckled sheet";
        var ultimate = metal.properties().si(Property.S12);
        if (ultimate.isEmpty()) {
            return List.of(
                    buckle,
                    new Check.NotChecked(
                            mode, List.of("S12 of " + metal.name() + " (" + Property.S12.meaning() + ")")));
        }
        double allowable = ultimate.getAsDouble();
        double factor = LoadFactor.of(f -> largest(f * tau) / allowable);
        return List.of(
                buckle,
                new Check.Reserve(
                        mode,
                        factor,
                        largest(tau),
                        allowable,
                        "incomplete diagonal tension, tau (1 + k^2 C1); Kuhn, Peterson and Levin 1952, NACA TN 2661;"
                                + " taken flat"));
    }

    private double largest(double tau) {
        return tau > 0 ? under(tau).largestShear(0) : 0;
    }
}
