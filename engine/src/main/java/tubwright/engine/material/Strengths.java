// SPDX-License-Identifier: Apache-2.0
package tubwright.engine.material;

import java.util.Optional;

/**
 * In-plane strengths of a ply, all positive, Pa.
 *
 * @param xt tension along 1
 * @param xc compression along 1
 * @param yt tension along 2
 * @param yc compression along 2
 * @param s12 shear in the plane
 */
public record Strengths(double xt, double xc, double yt, double yc, double s12) {
    public Strengths {
        if (!(xt > 0 && xc > 0 && yt > 0 && yc > 0 && s12 > 0)) {
            throw new MaterialException("strengths must be greater than zero");
        }
    }

    /** Of a table; empty unless all five are known. */
    public static Optional<Strengths> of(PropertyTable table) {
        for (Property p : new Property[] {Property.XT, Property.XC, Property.YT, Property.YC, Property.S12}) {
            if (!table.has(p)) {
                return Optional.empty();
            }
        }
        return Optional.of(new Strengths(
                table.require(Property.XT),
                table.require(Property.XC),
                table.require(Property.YT),
                table.require(Property.YC),
                table.require(Property.S12)));
    }
}
