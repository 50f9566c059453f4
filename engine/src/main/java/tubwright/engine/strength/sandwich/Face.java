// SPDX-License-Identifier: Apache-2.0
package tubwright.engine.strength.sandwich;

import java.util.List;
import tubwright.engine.laminate.EngineeringConstants;
import tubwright.engine.laminate.Laminate;
import tubwright.engine.laminate.Layer;
import tubwright.engine.laminate.Reference;

/**
 * One face of a sandwich by itself.
 *
 * @param layers from outside inward, films included
 */
record Face(List<Layer> layers) {
    double thickness() {
        return layers.stream().mapToDouble(Layer::thickness).sum();
    }

    /** Modulus in bending along a direction (radians from the laminate's axis), which is what resists wrinkling, Pa. */
    double flexuralModulus(double direction) {
        return EngineeringConstants.flexural(seenFrom(direction)).ex();
    }

    /** D about the face's own middle, 1 along a direction, N·m. */
    double[] bending(double direction) {
        return seenFrom(direction).stiffness().bending();
    }

    private Laminate seenFrom(double direction) {
        return new Laminate(
                layers.stream()
                        .map(l -> new Layer(l.material(), l.thickness(), l.angle() - direction, l.role()))
                        .toList(),
                Reference.MIDDLE);
    }
}
