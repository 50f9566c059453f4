// SPDX-License-Identifier: Apache-2.0
package tubwright.engine.safety.damage;

import java.util.ArrayList;
import java.util.List;
import java.util.stream.IntStream;
import tubwright.engine.laminate.Laminate;
import tubwright.engine.laminate.Layer;
import tubwright.engine.laminate.LayerRole;
import tubwright.engine.laminate.Reference;
import tubwright.engine.strength.Discount;

/**
 * A laminate after a visible hit: what lies inside its (outermost) core is left; of one without a core the inner half of its
 * layers, of a single layer the inner half of its thickness.
 *
 * @param stiffness 8 × 8 about the whole laminate's reference surface, row-major
 * @param layers the whole laminate with what is gone made of nothing, for the stresses of what is left
 */
record Weakened(double[] stiffness, Laminate layers) {
    static Weakened of(Laminate whole) {
        List<Layer> layers = whole.layers();
        if (layers.size() == 1) {
            Layer half = halved(layers.getFirst());
            return cut(new Laminate(List.of(half, half), whole.reference()), 1);
        }
        int core = IntStream.range(0, layers.size())
                .filter(i -> layers.get(i).role() == LayerRole.CORE)
                .findFirst()
                .orElse(-1);
        return cut(whole, core < 0 || core + 1 == layers.size() ? layers.size() / 2 : core + 1);
    }

    private static Layer halved(Layer layer) {
        return new Layer(layer.material(), 0.5 * layer.thickness(), layer.angle(), layer.role());
    }

    /** Keeps the layers from a place on. */
    private static Weakened cut(Laminate whole, int from) {
        List<Layer> left = whole.layers().subList(from, whole.layers().size());
        double[] z = whole.surfaces();
        // The part's own z is nought at its inner surface; the whole's reference lies so much further along the normal.
        double[] stiffness = new Laminate(left, Reference.INNER)
                .stiffness()
                .withReferenceMovedBy(-z[z.length - 1])
                .matrix();
        List<Layer> layers = new ArrayList<>();
        for (int i = 0; i < whole.layers().size(); i++) {
            Layer layer = whole.layers().get(i);
            layers.add(
                    i < from
                            ? new Layer(Discount.gone(layer.material()), layer.thickness(), layer.angle(), layer.role())
                            : layer);
        }
        return new Weakened(stiffness, new Laminate(layers, whole.reference()));
    }
}
