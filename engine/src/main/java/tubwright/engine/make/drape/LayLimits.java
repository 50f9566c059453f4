// SPDX-License-Identifier: Apache-2.0
package tubwright.engine.make.drape;

import java.util.ArrayList;
import java.util.List;
import tubwright.engine.material.Material;
import tubwright.engine.material.Property;
import tubwright.engine.material.PropertyValue;
import tubwright.engine.material.Provenance;
import tubwright.engine.material.Trust;

/**
 * What a material bears when it is laid over a curved surface: its own data where it has them, placeholders otherwise.
 *
 * @param warning shear of a cloth from which it wants care, rad
 * @param locking shear at which it locks, rad
 * @param strain edge strain a steered tape bears
 * @param tapeWidth in which tape is laid, m
 * @param provenance where each comes from, in this order
 */
public record LayLimits(double warning, double locking, double strain, double tapeWidth, List<Provenance> provenance) {
    private static final Provenance HAND_LAID = new Provenance(
            "placeholder: hand-laid tacky prepreg wants care from 20 to 25 degrees and is cut anew beyond 30 to 35;"
                    + " measure the cloth",
            Trust.FROM_MEMORY);
    private static final Provenance STEERED = new Provenance(
            "6.35 mm tow steered to a radius of 1350 mm without defects (Smith, Qureshi, Scaife & El-Dessouky 2016)",
            Trust.COMPUTED);
    private static final Provenance BY_HAND = new Provenance("common practice, no source", Trust.ASSUMED);

    public LayLimits {
        provenance = List.copyOf(provenance);
    }

    /** The limits of a material. */
    public static LayLimits of(Material material) {
        List<Provenance> from = new ArrayList<>();
        return new LayLimits(
                take(material, Property.SHEAR_WARNING, Math.toRadians(25), HAND_LAID, from),
                take(material, Property.LOCKING_ANGLE, Math.toRadians(35), HAND_LAID, from),
                take(material, Property.STEERING_STRAIN, 0.00635 / (2 * 1.350), STEERED, from),
                take(material, Property.TAPE_WIDTH, 0.150, BY_HAND, from),
                from);
    }

    private static double take(
            Material material, Property property, double otherwise, Provenance placeholder, List<Provenance> from) {
        PropertyValue given =
                material.properties().find(property).orElseGet(() -> new PropertyValue(otherwise, placeholder));
        from.add(given.provenance());
        return given.si();
    }

    /** Least in-plane radius to which tape of a width may be steered: strain = width / 2 radius. */
    public double leastRadius(double width) {
        return width / (2 * strain);
    }

    /** Widest tape that may be steered to a radius. */
    public double widestTape(double radius) {
        return 2 * strain * radius;
    }
}
