// SPDX-License-Identifier: Apache-2.0
package tubwright.engine.material;

/** Sheet, plate or tube; isotropic. Needed: density, E1, and nu12 or G12. */
public record Metal(String name, String description, PropertyTable properties, Elasticity elasticity)
        implements Material {

    /** Fills what is missing and checks that it can be used. */
    public static Metal of(String name, String description, PropertyTable given) {
        Materials.checkName(name);
        return Materials.inMaterial(name, () -> {
            PropertyTable full = Estimates.isotropic(given);
            full.require(Property.DENSITY);
            return new Metal(name, description, full, Materials.elasticity(full));
        });
    }

    /** Young's modulus, Pa. */
    public double youngsModulus() {
        return properties.require(Property.E1);
    }
}
