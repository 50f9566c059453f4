// SPDX-License-Identifier: Apache-2.0
package tubwright.engine.strength;

import java.util.ArrayList;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import tubwright.engine.laminate.Laminate;
import tubwright.engine.laminate.Layer;
import tubwright.engine.laminate.Reference;
import tubwright.engine.material.Ply;
import tubwright.engine.material.Property;
import tubwright.engine.material.PropertyTable;
import tubwright.engine.material.PropertyValue;
import tubwright.engine.material.Provenance;
import tubwright.engine.material.Trust;

/** Plies with strengths from the literature, from memory; and stacks of them. */
final class Plies {
    static final double MPA = 1e6;

    /** Tsai and Hahn 1980; Kaw 2006 table 2.1. */
    static final Ply T300_5208 = tape(181, 10.3, 0.28, 7.17, 0.02, 22.5, 1500, 1500, 40, 246, 68);

    /** Soden, Hinton and Kaddour 1998, tables 1 to 3. */
    static final Ply AS4_3501_6 = tape(126, 11, 0.28, 6.6, -1, 26, 1950, 1480, 48, 200, 79);

    /** As before. */
    static final Ply T300_914C = tape(138, 11, 0.28, 5.5, -1, 26, 1500, 900, 27, 200, 80);

    /** As before, glass. */
    static final Ply GLASS_LY556 = tape(53.48, 17.7, 0.278, 5.83, 8.6, 26.4, 1140, 570, 35, 114, 72);

    /** As before, glass. */
    static final Ply GLASS_MY750 = tape(45.6, 16.2, 0.278, 5.83, 8.6, 26.4, 1280, 800, 40, 145, 73);

    private Plies() {}

    static PlyStrengths strengths(Ply ply) {
        return PlyStrengths.of(ply).orElseThrow();
    }

    /** Moduli in GPa, expansion in 1e-6/K, strengths in MPa. */
    static Ply tape(
            double e1,
            double e2,
            double nu12,
            double g12,
            double alpha1,
            double alpha2,
            double xt,
            double xc,
            double yt,
            double yc,
            double s12) {
        Map<Property, PropertyValue> values = new EnumMap<>(Property.class);
        put(values, Property.E1, e1 * 1e9);
        put(values, Property.E2, e2 * 1e9);
        put(values, Property.NU12, nu12);
        put(values, Property.G12, g12 * 1e9);
        put(values, Property.ALPHA1, alpha1 * 1e-6);
        put(values, Property.ALPHA2, alpha2 * 1e-6);
        put(values, Property.XT, xt * MPA);
        put(values, Property.XC, xc * MPA);
        put(values, Property.YT, yt * MPA);
        put(values, Property.YC, yc * MPA);
        put(values, Property.S12, s12 * MPA);
        put(values, Property.THICKNESS, 1.25e-4);
        put(values, Property.DENSITY, 1600);
        return Ply.of("textbook", "a ply from the literature", Ply.Form.UNIDIRECTIONAL, new PropertyTable(values));
    }

    static void put(Map<Property, PropertyValue> values, Property property, double si) {
        values.put(property, new PropertyValue(si, new Provenance("literature", Trust.FROM_MEMORY)));
    }

    static Laminate stack(Ply ply, double thickness, double... degrees) {
        List<Layer> layers = new ArrayList<>();
        for (double angle : degrees) {
            layers.add(new Layer(ply, thickness, Math.toRadians(angle)));
        }
        return new Laminate(layers, Reference.MIDDLE);
    }
}
