// SPDX-License-Identifier: Apache-2.0
package tubwright.engine.material;

/**
 * What holds a core to its skins or one piece to another; isotropic.
 *
 * <p>Needed: E1 (or G12), and two of thickness, density and areal mass.
 *
 * @param form film or paste
 */
public record Adhesive(String name, String description, Form form, PropertyTable properties, Elasticity elasticity)
        implements Material {

    /** Kinds of adhesive. */
    public enum Form {
        /** A film of known mass per area. */
        FILM("film"),
        /** Spread or injected. */
        PASTE("paste");

        private final String word;

        Form(String word) {
            this.word = word;
        }

        /** As written in material files. */
        public String word() {
            return word;
        }
    }

    /** Fills what is missing and checks that it can be used. */
    public static Adhesive of(String name, String description, Form form, PropertyTable given) {
        Materials.checkName(name);
        return Materials.inMaterial(name, () -> {
            PropertyTable full = Estimates.isotropic(Estimates.massAndThickness(given));
            full.require(Property.THICKNESS);
            full.require(Property.DENSITY);
            return new Adhesive(name, description, form, full, Materials.elasticity(full));
        });
    }

    /** Shear modulus, Pa. */
    public double shearModulus() {
        return properties.require(Property.G12);
    }
}
