// SPDX-License-Identifier: Apache-2.0
package tubwright.engine.strength;

import tubwright.engine.material.Adhesive;
import tubwright.engine.material.Core;
import tubwright.engine.material.Elasticity;
import tubwright.engine.material.Material;
import tubwright.engine.material.Metal;
import tubwright.engine.material.Ply;

/** How a failed ply is softened. */
public enum Discount {
    /** Any failure takes the whole ply out (the full discount of the textbooks; Kaw 2006, section 5.2). */
    WHOLE_PLY,
    /** A crack takes stiffness across the fibres and in shear; fibre failure takes the rest. */
    MATRIX_FIRST;

    /** What stays, so that the laminate remains solvable. */
    private static final double REMAINDER = 1e-6;

    /** The material of a ply of which nothing is left. */
    public static Material gone(Material material) {
        Elasticity e = material.elasticity();
        return with(
                material,
                new Elasticity(
                        REMAINDER * e.e1(),
                        REMAINDER * e.e2(),
                        e.nu12(),
                        REMAINDER * e.g12(),
                        REMAINDER * e.g13(),
                        REMAINDER * e.g23()));
    }

    /** The material of a ply whose fibres only are left. */
    static Material cracked(Material material) {
        Elasticity e = material.elasticity();
        return with(
                material,
                new Elasticity(
                        e.e1(), REMAINDER * e.e2(), REMAINDER * e.nu12(), REMAINDER * e.g12(), e.g13(), e.g23()));
    }

    private static Material with(Material material, Elasticity e) {
        return switch (material) {
            case Ply p -> new Ply(p.name(), p.description(), p.form(), p.properties(), e);
            case Core c -> new Core(c.name(), c.description(), c.form(), c.properties(), e);
            case Adhesive a -> new Adhesive(a.name(), a.description(), a.form(), a.properties(), e);
            case Metal m -> new Metal(m.name(), m.description(), m.properties(), e);
        };
    }
}
