// SPDX-License-Identifier: Apache-2.0
package tubwright.numerics;

import java.util.Arrays;

/**
 * Where a symmetric matrix may hold entries: the upper triangle in compressed rows, kept per node. All {@code blockSize}
 * unknowns of a node share one pattern; unknown {@code blockSize * node + component} belongs to {@code node}. The
 * diagonal is always present.
 *
 * <p>Values of a matrix on this pattern lie row by row in one array: row {@code (node, r)} holds columns
 * {@code (node, r..b-1)}, then {@code (j, 0..b-1)} for each neighbour {@code j > node} in rising order.
 *
 * <p>Immutable. Arrays handed out are the live ones and must not be modified.
 */
public final class SymmetricPattern {
    private final int nodes;
    private final int blockSize;
    private final int[] nodeStart;
    private final int[] nodeColumns;
    private final int[] valueStart;

    /**
     * @param blockSize unknowns per node, at least 1
     * @param nodeStart start of each node's columns in {@code nodeColumns}, length nodes + 1
     * @param nodeColumns for each node: itself, then its neighbours of higher number in rising order
     * @throws IllegalArgumentException if the lists are not so
     * @throws ArithmeticException if the matrix would have more entries than an array can hold
     */
    public SymmetricPattern(int blockSize, int[] nodeStart, int[] nodeColumns) {
        this.nodes = nodeStart.length - 1;
        this.blockSize = blockSize;
        this.nodeStart = nodeStart;
        this.nodeColumns = nodeColumns;
        this.valueStart = new int[nodes + 1];
        if (blockSize < 1) {
            throw new IllegalArgumentException("A node needs at least one unknown, not " + blockSize);
        }
        Math.multiplyExact(nodes, blockSize);
        long b = blockSize;
        long total = 0;
        for (int i = 0; i < nodes; i++) {
            int from = nodeStart[i];
            int to = nodeStart[i + 1];
            if (to <= from || nodeColumns[from] != i) {
                throw new IllegalArgumentException("The columns of node " + i + " must start with the node itself");
            }
            for (int p = from + 1; p < to; p++) {
                if (nodeColumns[p] <= nodeColumns[p - 1] || nodeColumns[p] >= nodes) {
                    throw new IllegalArgumentException(
                            "The columns of node " + i + " must rise and stay below " + nodes);
                }
            }
            total += b * b * (to - from) - b * (b - 1) / 2;
            valueStart[i + 1] = Math.toIntExact(total);
        }
    }

    /** Number of nodes. */
    public int nodes() {
        return nodes;
    }

    /** Unknowns per node. */
    public int blockSize() {
        return blockSize;
    }

    /** Number of unknowns: rows and columns of the matrix. */
    public int order() {
        return nodes * blockSize;
    }

    /** Number of stored entries: the upper triangle with the diagonal. */
    public int entries() {
        return valueStart[nodes];
    }

    /** Start of each node's columns, length nodes + 1; not to be modified. */
    public int[] nodeStart() {
        return nodeStart;
    }

    /** Column nodes: the node itself, then neighbours of higher number; not to be modified. */
    public int[] nodeColumns() {
        return nodeColumns;
    }

    /** Place of the first value of each node's rows in the value array, length nodes + 1; not to be modified. */
    public int[] valueStart() {
        return valueStart;
    }

    /** Place in the value array of the first entry (the diagonal) of row {@code (node, component)}. */
    public int rowStart(int node, int component) {
        int width = (nodeStart[node + 1] - nodeStart[node]) * blockSize;
        return valueStart[node] + component * width - component * (component - 1) / 2;
    }

    /** Place in the value array of the diagonal entry of {@code unknown}. */
    public int diagonalPosition(int unknown) {
        return rowStart(unknown / blockSize, unknown % blockSize);
    }

    /** Index into {@link #nodeColumns()} of the pair (row, column) with row ≤ column, negative if it is not there. */
    public int find(int rowNode, int columnNode) {
        int from = nodeStart[rowNode];
        int to = nodeStart[rowNode + 1];
        if (to - from < 12) {
            for (int p = from; p < to; p++) {
                if (nodeColumns[p] == columnNode) {
                    return p;
                }
            }
            return -1;
        }
        return Arrays.binarySearch(nodeColumns, from, to, columnNode);
    }

    /**
     * Place in the value array of entry (row, column), which may be given in either order.
     *
     * @return the place, or -1 if the pattern has no such entry
     */
    public int position(int row, int column) {
        int i = Math.min(row, column);
        int j = Math.max(row, column);
        int node = i / blockSize;
        int p = find(node, j / blockSize);
        if (p < 0) {
            return -1;
        }
        int r = i % blockSize;
        return rowStart(node, r) + (p - nodeStart[node]) * blockSize + j % blockSize - r;
    }

    /** Whether both describe the same places in the same order. */
    public boolean sameAs(SymmetricPattern other) {
        return this == other
                || blockSize == other.blockSize
                        && Arrays.equals(nodeStart, other.nodeStart)
                        && Arrays.equals(nodeColumns, other.nodeColumns);
    }
}
