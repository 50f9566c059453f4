// SPDX-License-Identifier: Apache-2.0
package tubwright.engine.safety.spread;

import java.util.OptionalDouble;
import tubwright.engine.material.Material;
import tubwright.engine.material.Property;

/**
 * Fracture energies to assume where a material gives none, J/m².
 *
 * @param fibres of fibres, in tension and in compression
 * @param matrix of cracks between fibres, both modes
 * @param core of cores in shear
 * @param bond of adhesives, both modes
 */
public record Energies(OptionalDouble fibres, OptionalDouble matrix, OptionalDouble core, OptionalDouble bond) {
    /** Nothing is assumed. */
    public static final Energies NONE = new Energies(
            OptionalDouble.empty(), OptionalDouble.empty(), OptionalDouble.empty(), OptionalDouble.empty());

    /** Of a material, else what is assumed, else not a number. */
    static double of(Material material, Property property, OptionalDouble assumed) {
        return material.properties().si(property).orElse(assumed.orElse(Double.NaN));
    }
}
