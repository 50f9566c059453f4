// SPDX-License-Identifier: Apache-2.0
package tubwright.numerics.ordering;

/**
 * Minimum-degree order (Tinney and Walker 1967) of a small graph, exact, on an adjacency matrix of bits. Vertices on the
 * rim take part in the degrees but are not ordered: they will be eliminated later.
 */
final class MinimumDegree {
    private MinimumDegree() {}

    /**
     * @param bits adjacency, one row of {@code words} longs for each vertex, symmetric, no loops; overwritten
     * @param inner vertices 0 to {@code inner - 1} are ordered, the others are the rim
     * @return the inner vertices in order of elimination
     */
    static int[] order(long[] bits, int words, int inner) {
        int[] order = new int[inner];
        boolean[] gone = new boolean[inner];
        int[] degree = new int[inner];
        for (int v = 0; v < inner; v++) {
            degree[v] = count(bits, v * words, words);
        }
        int size = 0;
        while (size < inner) {
            int v = -1;
            for (int u = 0; u < inner; u++) {
                if (!gone[u] && (v < 0 || degree[u] < degree[v])) {
                    v = u;
                }
            }
            gone[v] = true;
            order[size++] = v;
            int row = v * words;
            for (int q = 0; q < words; q++) {
                for (long left = bits[row + q]; left != 0; left &= left - 1) {
                    int u = 64 * q + Long.numberOfTrailingZeros(left);
                    int other = u * words;
                    for (int k = 0; k < words; k++) {
                        bits[other + k] |= bits[row + k];
                    }
                    bits[other + (u >> 6)] &= ~(1L << u);
                    bits[other + (v >> 6)] &= ~(1L << v);
                    if (u < inner) {
                        degree[u] = count(bits, other, words);
                    }
                }
            }
        }
        return order;
    }

    private static int count(long[] bits, int from, int words) {
        int count = 0;
        for (int k = 0; k < words; k++) {
            count += Long.bitCount(bits[from + k]);
        }
        return count;
    }
}
