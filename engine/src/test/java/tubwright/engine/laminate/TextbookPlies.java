// SPDX-License-Identifier: Apache-2.0
package tubwright.engine.laminate;

import java.util.ArrayList;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import tubwright.engine.material.Ply;
import tubwright.engine.material.Property;
import tubwright.engine.material.PropertyTable;
import tubwright.engine.material.PropertyValue;
import tubwright.engine.material.Provenance;
import tubwright.engine.material.Trust;

/** Plies and stacks of the textbooks used as checks. */
final class TextbookPlies {
    private TextbookPlies() {}

    /** Tsai and Hahn 1980, as in Kaw 2006 table 2.1 (from memory, reproduced by computation); moduli in Pa. */
    static final Ply T300_5208 = tape(181e9, 10.3e9, 0.28, 7.17e9, 0.02e-6, 22.5e-6, 0, 0.6);

    /** Daniel and Ishai table A.4 (from memory). */
    static final Ply AS4_3501_6 = tape(147e9, 10.3e9, 0.27, 7.0e9, -0.9e-6, 27e-6, 0.01, 0.20);

    static Ply tape(double e1, double e2, double nu12, double g12, double a1, double a2, double b1, double b2) {
        return tape(e1, e2, nu12, g12, g12, e2 / 2.8, a1, a2, b1, b2);
    }

    /** A ply with all three shear moduli and no expansion. */
    static Ply tape(double e1, double e2, double nu12, double g12, double g13, double g23) {
        return tape(e1, e2, nu12, g12, g13, g23, 0, 0, 0, 0);
    }

    private static Ply tape(
            double e1,
            double e2,
            double nu12,
            double g12,
            double g13,
            double g23,
            double a1,
            double a2,
            double b1,
            double b2) {
        Map<Property, PropertyValue> values = new EnumMap<>(Property.class);
        Provenance book = new Provenance("textbook", Trust.FROM_MEMORY);
        values.put(Property.E1, new PropertyValue(e1, book));
        values.put(Property.E2, new PropertyValue(e2, book));
        values.put(Property.NU12, new PropertyValue(nu12, book));
        values.put(Property.G12, new PropertyValue(g12, book));
        values.put(Property.G13, new PropertyValue(g13, book));
        values.put(Property.G23, new PropertyValue(g23, book));
        values.put(Property.ALPHA1, new PropertyValue(a1, book));
        values.put(Property.ALPHA2, new PropertyValue(a2, book));
        values.put(Property.BETA1, new PropertyValue(b1, book));
        values.put(Property.BETA2, new PropertyValue(b2, book));
        values.put(Property.THICKNESS, new PropertyValue(1.25e-4, book));
        values.put(Property.DENSITY, new PropertyValue(1600, book));
        return Ply.of("textbook", "a ply from a textbook", Ply.Form.UNIDIRECTIONAL, new PropertyTable(values));
    }

    /** Layers of equal thickness about the middle, from the outer surface inward, angles in degrees. */
    static Laminate stack(Ply ply, double thickness, double... degrees) {
        List<Layer> layers = new ArrayList<>();
        for (double angle : degrees) {
            layers.add(new Layer(ply, thickness, Math.toRadians(angle)));
        }
        return new Laminate(layers, Reference.MIDDLE);
    }

    /** The same, mirrored about the inner surface of the last. */
    static Laminate symmetric(Ply ply, double thickness, double... half) {
        double[] all = new double[2 * half.length];
        for (int i = 0; i < half.length; i++) {
            all[i] = half[i];
            all[all.length - 1 - i] = half[i];
        }
        return stack(ply, thickness, all);
    }
}
