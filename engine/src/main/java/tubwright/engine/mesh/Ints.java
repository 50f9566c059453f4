// SPDX-License-Identifier: Apache-2.0
package tubwright.engine.mesh;

import java.util.Arrays;

/** A growing list of ints. */
final class Ints {
    int[] at = new int[64];
    int size;

    void add(int value) {
        if (size == at.length) {
            at = Arrays.copyOf(at, 2 * size);
        }
        at[size++] = value;
    }

    int[] toArray() {
        return Arrays.copyOf(at, size);
    }
}
