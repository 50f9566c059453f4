// SPDX-License-Identifier: Apache-2.0
package tubwright.numerics;

/**
 * Adds dense symmetric element matrices into a sparse one, on all cores, to the same last bit every time.
 *
 * <p>Element matrices are computed in parallel, a batch at a time, and then added in parallel: each task owns a range of
 * rows and goes through the batch in the order of the elements, so every entry is summed in element order whatever the
 * threads do.
 */
public final class Assembler {
    private static final int BATCH_DOUBLES = 1 << 20;
    private static final int GROUP = 32;

    private final SymmetricPattern pattern;
    private final int[] elementStart;
    private final int[] elementNodes;
    private final int[] cuts;

    /** Computes one element's matrix; called once for each element, from several threads at a time. */
    @FunctionalInterface
    public interface ElementMatrices {
        /**
         * Writes the dense matrix of an element, row-major, (m·b)² numbers for m nodes with b unknowns each: row
         * {@code b * localNode + component}. The target is not zeroed beforehand.
         */
        void compute(int element, double[] target, int offset);
    }

    /**
     * @param pattern holds every pair of nodes that meet in an element
     * @param elementStart start of each element's nodes, length elements + 1
     * @param elementNodes nodes of all elements, one after the other
     */
    public Assembler(SymmetricPattern pattern, int[] elementStart, int[] elementNodes) {
        this.pattern = pattern;
        this.elementStart = elementStart;
        this.elementNodes = elementNodes;
        this.cuts = cuts(pattern, 2 * Parallel.threads());
    }

    private static int[] cuts(SymmetricPattern pattern, int parts) {
        int[] cuts = new int[parts + 1];
        int node = 0;
        for (int part = 1; part < parts; part++) {
            long target = (long) pattern.entries() * part / parts;
            while (node < pattern.nodes() && pattern.valueStart()[node] < target) {
                node++;
            }
            cuts[part] = node;
        }
        cuts[parts] = pattern.nodes();
        return cuts;
    }

    /** Number of elements. */
    public int elements() {
        return elementStart.length - 1;
    }

    /** Length of an element's matrix as an array: (m·b)². */
    public int matrixLength(int element) {
        int n = (elementStart[element + 1] - elementStart[element]) * pattern.blockSize();
        return Math.multiplyExact(n, n);
    }

    /** A new matrix: the sum of all element matrices. */
    public SymmetricMatrix assemble(ElementMatrices source) {
        SymmetricMatrix matrix = new SymmetricMatrix(pattern);
        add(matrix, source);
        return matrix;
    }

    /** A new matrix: the sum of ready-made element matrices, each of length {@link #matrixLength}. */
    public SymmetricMatrix assemble(double[][] matrices) {
        SymmetricMatrix matrix = new SymmetricMatrix(pattern);
        Parallel.run(cuts.length - 1, part -> {
            for (int e = 0; e < elements(); e++) {
                scatter(matrix.values(), e, matrices[e], 0, cuts[part], cuts[part + 1]);
            }
        });
        return matrix;
    }

    /** Adds all element matrices to {@code matrix}, which must be on this assembler's pattern. */
    public void add(SymmetricMatrix matrix, ElementMatrices source) {
        if (matrix.pattern() != pattern) {
            throw new IllegalArgumentException("The matrix must be on the assembler's own pattern");
        }
        int[] offset = new int[elements() + 1];
        double[] buffer = new double[0];
        int first = 0;
        while (first < elements()) {
            int last = first;
            int length = 0;
            do {
                offset[last] = length;
                length = Math.addExact(length, matrixLength(last));
                last++;
            } while (last < elements() && length + (long) matrixLength(last) <= BATCH_DOUBLES);
            if (buffer.length < length) {
                buffer = new double[length];
            }
            addBatch(matrix.values(), source, buffer, offset, first, last);
            first = last;
        }
    }

    private void addBatch(double[] values, ElementMatrices source, double[] buffer, int[] offset, int first, int last) {
        int groups = (last - first + GROUP - 1) / GROUP;
        Parallel.run(groups, group -> {
            int to = Math.min(last, first + (group + 1) * GROUP);
            for (int e = first + group * GROUP; e < to; e++) {
                source.compute(e, buffer, offset[e]);
            }
        });
        Parallel.run(cuts.length - 1, part -> {
            for (int e = first; e < last; e++) {
                scatter(values, e, buffer, offset[e], cuts[part], cuts[part + 1]);
            }
        });
    }

    /** Adds the rows of one element matrix that belong to nodes in [fromNode, toNode). */
    private void scatter(double[] values, int element, double[] data, int offset, int fromNode, int toNode) {
        int b = pattern.blockSize();
        int begin = elementStart[element];
        int m = elementStart[element + 1] - begin;
        int n = m * b;
        for (int a = 0; a < m; a++) {
            int i = elementNodes[begin + a];
            if (i < fromNode || i >= toNode) {
                continue;
            }
            int width = (pattern.nodeStart()[i + 1] - pattern.nodeStart()[i]) * b;
            for (int c = 0; c < m; c++) {
                int j = elementNodes[begin + c];
                if (j < i) {
                    continue;
                }
                int p = pattern.find(i, j);
                if (p < 0) {
                    throw new IllegalArgumentException(
                            "Element " + element + " couples nodes " + i + " and " + j + ", the pattern does not");
                }
                int from = offset + a * b * n + c * b;
                int to = pattern.valueStart()[i] + (p - pattern.nodeStart()[i]) * b;
                for (int r = 0; r < b; r++) {
                    for (int s = i == j ? r : 0; s < b; s++) {
                        values[to + s] += data[from + s];
                    }
                    from += n;
                    to += width - r - 1;
                }
            }
        }
    }
}
