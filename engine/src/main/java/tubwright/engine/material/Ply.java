// SPDX-License-Identifier: Apache-2.0
package tubwright.engine.material;

/**
 * One layer of fibres in resin, cured.
 *
 * <p>Needed: E1, G12, two of thickness, density and areal mass; for unidirectional plies also E2 and nu12. What else is
 * missing is filled by stated rules (see {@link PropertyTable#values()} for which).
 *
 * @param form how the fibres lie
 */
public record Ply(String name, String description, Form form, PropertyTable properties, Elasticity elasticity)
        implements Material {

    /** How the fibres of a ply lie. */
    public enum Form {
        /** All along 1. */
        UNIDIRECTIONAL("ud"),
        /** Woven, along 1 (warp) and 2 (weft). */
        CLOTH("cloth");

        private final String word;

        Form(String word) {
            this.word = word;
        }

        /** As written in material files. */
        public String word() {
            return word;
        }
    }

    /** Fills what is missing and checks that a laminate can be computed with it. */
    public static Ply of(String name, String description, Form form, PropertyTable given) {
        Materials.checkName(name);
        return Materials.inMaterial(name, () -> {
            PropertyTable full = Estimates.ply(given, form);
            full.require(Property.THICKNESS);
            full.require(Property.DENSITY);
            return new Ply(name, description, form, full, Materials.elasticity(full));
        });
    }

    /** Cured ply thickness, m. */
    public double thickness() {
        return properties.require(Property.THICKNESS);
    }
}
