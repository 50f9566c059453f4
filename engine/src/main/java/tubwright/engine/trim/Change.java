// SPDX-License-Identifier: Apache-2.0
package tubwright.engine.trim;

import java.util.SortedMap;
import java.util.TreeMap;

/**
 * A change of stiffness against the nominal tub.
 *
 * @param laminates new stiffness of the blocks that change, 41 numbers each
 * @param joints factor on the stiffness of the parts that change, by part index
 */
record Change(SortedMap<Integer, double[]> laminates, SortedMap<Integer, Double> joints) {
    Change {
        laminates = new TreeMap<>(laminates);
        joints = new TreeMap<>(joints);
    }

    boolean isNothing() {
        return laminates.isEmpty() && joints.isEmpty();
    }
}
