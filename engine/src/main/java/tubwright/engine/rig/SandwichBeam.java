// SPDX-License-Identifier: Apache-2.0
package tubwright.engine.rig;

import tubwright.engine.laminate.Laminate;

/**
 * A strip of sandwich panel bent as a beam: skins stretch, core shears. Skins by laminate theory with the strain across
 * free, E = (A11 − A12²/A22)/t; deflection as bending plus shear (Allen 1969, ch. 2), the core's shear stiffness over the
 * distance d between the middles of the skins.
 *
 * @param outer skin of one side
 * @param inner skin of the other
 * @param core thickness of the core, m
 * @param coreShear shear modulus of the core along the span, Pa
 * @param width m
 */
public record SandwichBeam(Skin outer, Skin inner, double core, double coreShear, double width) {
    /**
     * One skin.
     *
     * @param stretch stiffness along the span per width, N/m
     * @param thickness m
     */
    public record Skin(double stretch, double thickness) {
        /** A laminate whose reference direction lies along the span. */
        public static Skin of(Laminate laminate) {
            double[] a = laminate.stiffness().membrane();
            return new Skin(a[0] - a[1] * a[1] / a[4], laminate.thickness());
        }
    }

    /** Distance between the middles of the skins, m. */
    public double depth() {
        return core + (outer.thickness + inner.thickness) / 2;
    }

    /** Bending stiffness, N·m²: skins about the common neutral line and about their own. */
    public double bending() {
        double sum = outer.stretch + inner.stretch;
        double d = depth();
        return width
                * (outer.stretch * inner.stretch / sum * d * d
                        + outer.stretch * outer.thickness * outer.thickness / 12
                        + inner.stretch * inner.thickness * inner.thickness / 12);
    }

    /** Shear stiffness, N: G b d²/c. */
    public double shear() {
        return coreShear * width * depth() * depth() / core;
    }

    /** Deflection under a middle load on a span, over the load, m/N. */
    public double flexibility(double span) {
        return bendingFlexibility(span) + span / (4 * shear());
    }

    /** Load in the middle over deflection there, N/m. */
    public double stiffness(double span) {
        return 1 / flexibility(span);
    }

    /** Share of the deflection that is shear of the core. */
    public double shearShare(double span) {
        return span / (4 * shear()) / flexibility(span);
    }

    private double bendingFlexibility(double span) {
        return span * span * span / (48 * bending());
    }
}
