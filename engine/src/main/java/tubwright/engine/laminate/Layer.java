// SPDX-License-Identifier: Apache-2.0
package tubwright.engine.laminate;

import tubwright.engine.material.Material;

/**
 * One layer of a laminate.
 *
 * @param material what it is made of
 * @param thickness m, greater than zero
 * @param angle from the reference direction e1 to the material's direction 1, towards e2, radians; for a honeycomb core
 *     the direction of its ribbon
 * @param role what it is there for
 */
public record Layer(Material material, double thickness, double angle, LayerRole role) {
    public Layer {
        if (!(thickness > 0) || !Double.isFinite(thickness)) {
            throw new IllegalArgumentException("a layer of " + material.name() + " has thickness " + thickness
                    + " m; it must be greater than zero and finite");
        }
        if (!Double.isFinite(angle)) {
            throw new IllegalArgumentException("a layer of " + material.name() + " has no finite angle");
        }
    }

    /** A layer in the usual role of its material. */
    public Layer(Material material, double thickness, double angle) {
        this(material, thickness, angle, LayerRole.of(material));
    }

    /** One ply or film at its own cured thickness, angle in degrees. */
    public static Layer ofDegrees(Material material, double degrees) {
        double thickness = material.layerThickness()
                .orElseThrow(() -> new IllegalArgumentException(
                        "'" + material.name() + "' has no thickness of its own; say how thick the layer is"));
        return new Layer(material, thickness, Math.toRadians(degrees));
    }

    /** The layer on the other side of the car. */
    public Layer mirrored() {
        return new Layer(material, thickness, angle == 0 ? 0 : -angle, role);
    }

    /** Mass per area, kg/m². */
    public double arealMass() {
        return material.density() * thickness;
    }

    /** Angle in degrees, brought into (−90, 90]: a layer turned by half a turn is the same layer. */
    public double degrees() {
        return Angles.normalisedDegrees(Math.toDegrees(angle));
    }
}
