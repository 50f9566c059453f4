// SPDX-License-Identifier: Apache-2.0
package tubwright.engine.strength;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import tubwright.engine.material.Material;
import tubwright.engine.material.Ply;
import tubwright.engine.material.Property;

/**
 * Strengths of a ply in its own plane, positive, Pa.
 *
 * @param xt tension along 1
 * @param xc compression along 1
 * @param yt tension along 2
 * @param yc compression along 2
 * @param s12 in-plane shear
 * @param woven true if fibres lie along 2 as well, so that failure along 2 is fibre failure
 */
public record PlyStrengths(double xt, double xc, double yt, double yc, double s12, boolean woven) {
    private static final List<Property> NEEDED =
            List.of(Property.XT, Property.XC, Property.YT, Property.YC, Property.S12);

    public PlyStrengths {
        if (!(xt > 0 && xc > 0 && yt > 0 && yc > 0 && s12 > 0)) {
            throw new IllegalArgumentException("strengths must be greater than zero: XT " + xt + ", XC " + xc + ", YT "
                    + yt + ", YC " + yc + ", S12 " + s12 + " Pa");
        }
    }

    /** Of a unidirectional ply. */
    public static PlyStrengths unidirectional(double xt, double xc, double yt, double yc, double s12) {
        return new PlyStrengths(xt, xc, yt, yc, s12, false);
    }

    /** Of a material, empty unless all five are known; see {@link #missing}. */
    public static Optional<PlyStrengths> of(Material material) {
        if (!missing(material).isEmpty()) {
            return Optional.empty();
        }
        var table = material.properties();
        boolean woven = material instanceof Ply ply && ply.form() == Ply.Form.CLOTH;
        return Optional.of(new PlyStrengths(
                table.require(Property.XT),
                table.require(Property.XC),
                table.require(Property.YT),
                table.require(Property.YC),
                table.require(Property.S12),
                woven));
    }

    /** What a material lacks, in words. */
    public static List<String> missing(Material material) {
        List<String> missing = new ArrayList<>();
        for (Property property : NEEDED) {
            if (!material.properties().has(property)) {
                missing.add(property.key() + " of " + material.name() + " (" + property.meaning() + ")");
            }
        }
        return missing;
    }

    /** After a knock-down; properties it does not name stay. */
    public PlyStrengths reducedBy(KnockDown knockDown) {
        return new PlyStrengths(
                xt * knockDown.factor(Property.XT),
                xc * knockDown.factor(Property.XC),
                yt * knockDown.factor(Property.YT),
                yc * knockDown.factor(Property.YC),
                s12 * knockDown.factor(Property.S12),
                woven);
    }

    /** With other strengths across the fibres and in shear, as in an embedded ply. */
    public PlyStrengths withInSitu(double yt, double s12) {
        return new PlyStrengths(xt, xc, yt, yc, s12, woven);
    }

    /** The mode whose stress ratio is largest. */
    FailureMode largestRatio(double s1, double s2, double s12) {
        double along = s1 > 0 ? s1 / xt : -s1 / xc;
        double across = s2 > 0 ? s2 / yt : -s2 / yc;
        double shear = Math.abs(s12) / this.s12;
        if (along >= across && along >= shear) {
            return s1 > 0 ? FailureMode.FIBRE_TENSION : FailureMode.FIBRE_COMPRESSION;
        }
        return across >= shear ? across(s2) : FailureMode.IN_PLANE_SHEAR;
    }

    /** The mode of failure along 2. */
    FailureMode across(double s2) {
        if (woven) {
            return s2 > 0 ? FailureMode.WEFT_TENSION : FailureMode.WEFT_COMPRESSION;
        }
        return s2 > 0 ? FailureMode.MATRIX_TENSION : FailureMode.MATRIX_COMPRESSION;
    }
}
