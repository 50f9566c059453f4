// SPDX-License-Identifier: Apache-2.0
package tubwright.engine.structure;

import java.util.Map;

/**
 * What damage takes out of a structure's stiffness.
 *
 * @param elements damaged, rising
 * @param nodes that the damage touches, rising: those of the elements, and of what was fixed to them
 * @param stiffness taken, between the unknowns of the nodes, both triangles
 * @param dead one flag an unknown of the nodes: nothing else held it
 * @param parts share of its ties and bars that each joint, hardpoint or stiffener loses
 */
public record Torn(int[] elements, int[] nodes, double[][] stiffness, boolean[] dead, Map<Part, Double> parts) {
    public Torn {
        parts = Map.copyOf(parts);
    }
}
