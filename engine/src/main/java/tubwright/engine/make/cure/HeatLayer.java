// SPDX-License-Identifier: Apache-2.0
package tubwright.engine.make.cure;

import java.util.Optional;

/**
 * One layer of what lies in the autoclave.
 *
 * @param name for a reader
 * @param thickness m
 * @param properties for conduction
 * @param reaction what it cures like, if it does
 */
public record HeatLayer(String name, double thickness, HeatProperties properties, Optional<Reaction> reaction) {
    /**
     * Resin in a layer.
     *
     * @param law how fast it cures
     * @param heat of the whole reaction per volume of the layer, J/m³
     * @param start degree of cure at the beginning
     */
    public record Reaction(CureLaw law, double heat, double start) {}

    /** Refuses a layer without thickness. */
    public HeatLayer {
        if (!(thickness > 0)) {
            throw new CureException("the layer " + name + " has thickness " + thickness + " m");
        }
    }

    /** A layer that only conducts. */
    public static HeatLayer inert(String name, double thickness, HeatProperties properties) {
        return new HeatLayer(name, thickness, properties, Optional.empty());
    }

    /** Temperature rise if all heat of reaction stayed where it arises, K. */
    public double adiabaticRise() {
        return reaction.map(r -> r.heat * (1 - r.start) / (properties.density() * properties.specificHeat()))
                .orElse(0.0);
    }
}
