// SPDX-License-Identifier: Apache-2.0
package tubwright.engine.mesh;

import java.util.Arrays;

/**
 * A mesh in a chart while it is being made: nodes with chart coordinates, positions and what holds them; quadrilaterals
 * and triangles, anticlockwise in (a, b).
 */
final class PlaneMesh {
    final Chart chart;
    double[] a = new double[1024];
    double[] b = new double[1024];
    double[] xyz = new double[3072];
    /** Hold on the line a = const and b = const a node lies on, as {@link Chart.Hold} ordinals. */
    byte[] holdA = new byte[1024];

    byte[] holdB = new byte[1024];
    /** Curve a node lies on, -1 for none, -2 for the crossing of two or a sharp corner. */
    int[] curve = new int[1024];
    /** Second curve of a node that lies on two. */
    int[] otherCurve = new int[1024];

    int nodes;
    int[] corners = new int[4096];
    int elements;
    private final double[] point = new double[3];

    PlaneMesh(Chart chart) {
        this.chart = chart;
    }

    int addNode(double na, double nb) {
        if (nodes == a.length) {
            int n = 2 * nodes;
            a = Arrays.copyOf(a, n);
            b = Arrays.copyOf(b, n);
            xyz = Arrays.copyOf(xyz, 3 * n);
            holdA = Arrays.copyOf(holdA, n);
            holdB = Arrays.copyOf(holdB, n);
            curve = Arrays.copyOf(curve, n);
            otherCurve = Arrays.copyOf(otherCurve, n);
        }
        curve[nodes] = -1;
        otherCurve[nodes] = -1;
        holdA[nodes] = 0;
        holdB[nodes] = 0;
        move(nodes, na, nb);
        return nodes++;
    }

    void move(int node, double na, double nb) {
        a[node] = na;
        b[node] = nb;
        chart.position(na, nb, point);
        System.arraycopy(point, 0, xyz, 3 * node, 3);
    }

    void addElement(int p, int q, int r, int s) {
        if (4 * elements == corners.length) {
            corners = Arrays.copyOf(corners, 2 * corners.length);
        }
        int e = 4 * elements++;
        corners[e] = p;
        corners[e + 1] = q;
        corners[e + 2] = r;
        corners[e + 3] = s;
    }

    int cornerCount(int e) {
        return corners[4 * e + 3] < 0 ? 3 : 4;
    }

    double centreA(int e) {
        int n = cornerCount(e);
        double sum = 0;
        for (int i = 0; i < n; i++) {
            sum += a[corners[4 * e + i]];
        }
        return sum / n;
    }

    double centreB(int e) {
        int n = cornerCount(e);
        double sum = 0;
        for (int i = 0; i < n; i++) {
            sum += b[corners[4 * e + i]];
        }
        return sum / n;
    }

    /** Keeps the elements that are marked, and the nodes they use, in order. */
    void keep(boolean[] keep) {
        int[] newNode = new int[nodes];
        Arrays.fill(newNode, -1);
        int m = 0;
        for (int e = 0; e < elements; e++) {
            if (keep[e]) {
                for (int i = 0; i < 4; i++) {
                    int c = corners[4 * e + i];
                    corners[4 * m + i] = c;
                    if (c >= 0) {
                        newNode[c] = 0;
                    }
                }
                m++;
            }
        }
        elements = m;
        int k = 0;
        for (int i = 0; i < nodes; i++) {
            if (newNode[i] == 0) {
                newNode[i] = k;
                a[k] = a[i];
                b[k] = b[i];
                System.arraycopy(xyz, 3 * i, xyz, 3 * k, 3);
                holdA[k] = holdA[i];
                holdB[k] = holdB[i];
                curve[k] = curve[i];
                otherCurve[k] = otherCurve[i];
                k++;
            }
        }
        nodes = k;
        for (int i = 0; i < 4 * elements; i++) {
            corners[i] = corners[i] < 0 ? -1 : newNode[corners[i]];
        }
    }

    /** Elements round every node: start offsets, then element numbers. */
    int[][] elementsOfNodes() {
        int[] start = new int[nodes + 1];
        for (int i = 0; i < 4 * elements; i++) {
            if (corners[i] >= 0) {
                start[corners[i] + 1]++;
            }
        }
        for (int i = 0; i < nodes; i++) {
            start[i + 1] += start[i];
        }
        int[] fill = Arrays.copyOf(start, nodes);
        int[] list = new int[start[nodes]];
        for (int i = 0; i < 4 * elements; i++) {
            if (corners[i] >= 0) {
                list[fill[corners[i]]++] = i / 4;
            }
        }
        return new int[][] {start, list};
    }

    boolean onEdgeA(int node) {
        return holdA[node] == Chart.Hold.EDGE.ordinal();
    }

    boolean onEdgeB(int node) {
        return holdB[node] == Chart.Hold.EDGE.ordinal();
    }
}
