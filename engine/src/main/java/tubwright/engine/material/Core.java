// SPDX-License-Identifier: Apache-2.0
package tubwright.engine.material;

/**
 * What keeps two skins apart. Direction 1 of a honeycomb is its ribbon (L), 2 is across (W).
 *
 * <p>Needed: density; for honeycomb G13 (L) and G23 (W), better also E3; for foam E1 and better G12.
 *
 * @param form honeycomb or foam
 */
public record Core(String name, String description, Form form, PropertyTable properties, Elasticity elasticity)
        implements Material {

    /** Kinds of core. */
    public enum Form {
        /** Hexagonal cells, no stiffness in the plane to speak of. */
        HONEYCOMB("honeycomb"),
        /** Foam or balsa, taken as isotropic in the plane. */
        FOAM("foam");

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
    public static Core of(String name, String description, Form form, PropertyTable given) {
        Materials.checkName(name);
        return Materials.inMaterial(name, () -> {
            PropertyTable full = Estimates.core(given, form);
            full.require(Property.DENSITY);
            return new Core(name, description, form, full, Materials.elasticity(full));
        });
    }
}
