// SPDX-License-Identifier: Apache-2.0
package tubwright.engine.strength.sandwich;

import java.util.List;
import tubwright.engine.laminate.Laminate;
import tubwright.engine.laminate.Layer;
import tubwright.engine.laminate.Reference;
import tubwright.engine.laminate.ShellStiffness;

/** One face of a sandwich by itself. Its stiffness is made once and turned to the direction asked for. */
final class Face {
    private final double thickness;
    /** D about the face's own middle, N·m. */
    private final double[] bending;
    /** Curvature per moment with the face free to stretch, 1/(N·m). */
    private final double[] flexibility = new double[9];

    /** @param layers from outside inward, films included */
    Face(List<Layer> layers) {
        thickness = layers.stream().mapToDouble(Layer::thickness).sum();
        ShellStiffness stiffness = new Laminate(layers, Reference.MIDDLE).stiffness();
        bending = stiffness.bending();
        double[] compliance = stiffness.compliance();
        for (int i = 0; i < 3; i++) {
            System.arraycopy(compliance, 8 * (3 + i) + 3, flexibility, 3 * i, 3);
        }
    }

    double thickness() {
        return thickness;
    }

    /** Modulus in bending along a direction (radians from the laminate's axis), which is what resists wrinkling, Pa. */
    double flexuralModulus(double direction) {
        // κ' = R⁻¹ κ and M = R⁻ᵀ M', so the flexibility seen from there is R⁻¹ d R⁻ᵀ.
        double[] back = strainTurn(-direction);
        double along = 0;
        for (int i = 0; i < 3; i++) {
            for (int j = 0; j < 3; j++) {
                along += back[i] * flexibility[3 * i + j] * back[j];
            }
        }
        return 12 / (thickness * thickness * thickness * along);
    }

    /** D about the face's own middle, 1 along a direction, N·m. */
    double[] bending(double direction) {
        double[] turn = strainTurn(direction);
        double[] seen = new double[9];
        for (int i = 0; i < 3; i++) {
            for (int j = 0; j < 3; j++) {
                for (int k = 0; k < 3; k++) {
                    for (int l = 0; l < 3; l++) {
                        seen[3 * i + j] += turn[3 * k + i] * bending[3 * k + l] * turn[3 * l + j];
                    }
                }
            }
        }
        return seen;
    }

    /** R: strains or curvatures (x, y, xy) in the laminate's axes from those in axes turned by an angle, row-major. */
    private static double[] strainTurn(double angle) {
        double c = Math.cos(angle);
        double s = Math.sin(angle);
        return new double[] {c * c, s * s, -s * c, s * s, c * c, s * c, 2 * s * c, -2 * s * c, c * c - s * s};
    }
}
