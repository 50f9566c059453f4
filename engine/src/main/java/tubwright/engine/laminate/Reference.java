// SPDX-License-Identifier: Apache-2.0
package tubwright.engine.laminate;

/** The surface z = 0 to which strains, curvatures and resultants of a laminate refer. */
public enum Reference {
    /** The outer (tool) surface: the laminate fills z from −h to 0. Usual for skins, whose mould gives this surface. */
    OUTER(0.0),
    /** Half way: z from −h/2 to h/2. Usual for flat panels. */
    MIDDLE(0.5),
    /** The inner surface: z from 0 to h. */
    INNER(1.0);

    private final double share;

    Reference(double share) {
        this.share = share;
    }

    /** z of the outer surface of a laminate of thickness {@code h}. */
    public double zOfOuterSurface(double h) {
        return share * h;
    }
}
