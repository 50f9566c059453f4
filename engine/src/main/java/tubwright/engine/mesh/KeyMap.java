// SPDX-License-Identifier: Apache-2.0
package tubwright.engine.mesh;

import java.util.Arrays;

/** Open-addressing map from non-negative longs to ints, without boxing. */
final class KeyMap {
    private long[] keys;
    private int[] values;
    private int size;
    private int mask;

    KeyMap(int expected) {
        int capacity = Integer.highestOneBit(Math.max(16, expected * 2)) * 2;
        keys = new long[capacity];
        Arrays.fill(keys, -1);
        values = new int[capacity];
        mask = capacity - 1;
    }

    static long pair(int i, int j) {
        return i < j ? (long) i << 32 | j : (long) j << 32 | i;
    }

    private int slot(long key) {
        long h = key * 0x9E3779B97F4A7C15L;
        int i = (int) (h >>> 32) & mask;
        while (keys[i] != -1 && keys[i] != key) {
            i = (i + 1) & mask;
        }
        return i;
    }

    /** The value of a key, -1 where there is none. */
    int get(long key) {
        int i = slot(key);
        return keys[i] == key ? values[i] : -1;
    }

    void put(long key, int value) {
        int i = slot(key);
        if (keys[i] == -1) {
            keys[i] = key;
            size++;
        }
        values[i] = value;
        if (size * 2 > mask) {
            grow();
        }
    }

    private void grow() {
        long[] oldKeys = keys;
        int[] oldValues = values;
        keys = new long[oldKeys.length * 2];
        Arrays.fill(keys, -1);
        values = new int[keys.length];
        mask = keys.length - 1;
        for (int i = 0; i < oldKeys.length; i++) {
            if (oldKeys[i] != -1) {
                int s = slot(oldKeys[i]);
                keys[s] = oldKeys[i];
                values[s] = oldValues[i];
            }
        }
    }
}
