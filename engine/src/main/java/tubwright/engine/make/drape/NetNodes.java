// SPDX-License-Identifier: Apache-2.0
package tubwright.engine.make.drape;

import java.util.Arrays;

/**
 * The crossings of a net while it grows: where each lies on the surface and in which directions its four threads leave.
 * Plain arrays, for the net's maker alone.
 */
final class NetNodes {
    /** Steps in the lattice towards +warp, +weft, −warp, −weft; the opposite of k is k ^ 2. */
    static final int[] STEP_I = {1, 0, -1, 0};

    static final int[] STEP_J = {0, 1, 0, -1};

    int count;
    int[] i = new int[256];
    int[] j = new int[256];
    int[] triangle = new int[256];
    double[] x = new double[256];
    double[] y = new double[256];
    /** Direction of thread k in the node's triangle, rad; not a number where no thread runs. */
    double[] toward = new double[4 * 256];

    private int reach = 64;
    private int[] lattice = empty(reach);

    private static int[] empty(int reach) {
        int[] grid = new int[(2 * reach + 1) * (2 * reach + 1)];
        Arrays.fill(grid, -1);
        return grid;
    }

    /** The node at a place of the lattice, or −1. */
    int at(int atI, int atJ) {
        if (Math.abs(atI) > reach || Math.abs(atJ) > reach) {
            return -1;
        }
        return lattice[(atI + reach) * (2 * reach + 1) + atJ + reach];
    }

    int add(int atI, int atJ, int atTriangle, double atX, double atY) {
        if (count == i.length) {
            int n = 2 * count;
            i = Arrays.copyOf(i, n);
            j = Arrays.copyOf(j, n);
            triangle = Arrays.copyOf(triangle, n);
            x = Arrays.copyOf(x, n);
            y = Arrays.copyOf(y, n);
            toward = Arrays.copyOf(toward, 4 * n);
        }
        while (Math.abs(atI) > reach || Math.abs(atJ) > reach) {
            reach *= 2;
            lattice = empty(reach);
            for (int n = 0; n < count; n++) {
                lattice[(i[n] + reach) * (2 * reach + 1) + j[n] + reach] = n;
            }
        }
        lattice[(atI + reach) * (2 * reach + 1) + atJ + reach] = count;
        i[count] = atI;
        j[count] = atJ;
        triangle[count] = atTriangle;
        x[count] = atX;
        y[count] = atY;
        Arrays.fill(toward, 4 * count, 4 * count + 4, Double.NaN);
        return count++;
    }

    boolean linked(int node, int k) {
        return !Double.isNaN(toward[4 * node + k]);
    }
}
