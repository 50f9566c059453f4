// SPDX-License-Identifier: Apache-2.0
package tubwright.engine.mesh;

import java.util.Arrays;

/**
 * The background mesh of a chart: the base grid, cells split in four where a size function asks for it, neighbours never
 * more than one split apart, and cells beside finer ones cut by templates so that edges match.
 */
final class GridBuilder {
    /** Finest split: cells of 1/32 of the base. */
    static final int DEEPEST = 5;

    private static final int UNIT = 1 << DEEPEST;

    /** Wanted edge length at a place. */
    interface SizeField {
        /** Wanted edge length in m at a point of the chart with a position in space. */
        double size(double a, double b, double[] xyz);
    }

    private final Chart chart;
    private int[] cellA = new int[1024];
    private int[] cellB = new int[1024];
    private byte[] level = new byte[1024];
    private int[] child = new int[1024];
    private int cells;

    private GridBuilder(Chart chart) {
        this.chart = chart;
    }

    static PlaneMesh build(Chart chart, SizeField sizes) {
        GridBuilder grid = new GridBuilder(chart);
        grid.refine(sizes);
        grid.balance();
        return grid.mesh();
    }

    private int add(int ca, int cb, int lv) {
        if (cells == cellA.length) {
            int n = 2 * cells;
            cellA = Arrays.copyOf(cellA, n);
            cellB = Arrays.copyOf(cellB, n);
            level = Arrays.copyOf(level, n);
            child = Arrays.copyOf(child, n);
        }
        cellA[cells] = ca;
        cellB[cells] = cb;
        level[cells] = (byte) lv;
        child[cells] = -1;
        return cells++;
    }

    private void split(int c) {
        int half = UNIT >> (level[c] + 1);
        int first = add(cellA[c], cellB[c], level[c] + 1);
        add(cellA[c] + half, cellB[c], level[c] + 1);
        add(cellA[c], cellB[c] + half, level[c] + 1);
        add(cellA[c] + half, cellB[c] + half, level[c] + 1);
        child[c] = first;
    }

    private void refine(SizeField sizes) {
        int na = chart.cellsA();
        int nb = chart.cellsB();
        double[] p = new double[3];
        double[] grid = new double[3 * (na + 1) * (nb + 1)];
        for (int i = 0; i <= na; i++) {
            for (int j = 0; j <= nb; j++) {
                chart.position(i, j, p);
                System.arraycopy(p, 0, grid, 3 * (i * (nb + 1) + j), 3);
                if (i < na && j < nb) {
                    add(i * UNIT, j * UNIT, 0);
                }
            }
        }
        for (int c = 0; c < cells; c++) {
            if (level[c] < DEEPEST) {
                int i = cellA[c] / UNIT;
                int j = cellB[c] / UNIT;
                int at = 3 * (i * (nb + 1) + j);
                double edge =
                        Math.max(distance(grid, at, at + 3), distance(grid, at, at + 3 * (nb + 1))) / (1 << level[c]);
                double half = 0.5 * (UNIT >> level[c]) / UNIT;
                double a = (double) cellA[c] / UNIT + half;
                double b = (double) cellB[c] / UNIT + half;
                chart.position(a, b, p);
                if (edge > 1.3 * sizes.size(a, b, p)) {
                    split(c);
                }
            }
        }
    }

    private static double distance(double[] g, int i, int j) {
        double dx = g[i] - g[j];
        double dy = g[i + 1] - g[j + 1];
        double dz = g[i + 2] - g[j + 2];
        return Math.sqrt(dx * dx + dy * dy + dz * dz);
    }

    /** The leaf that holds a lattice point strictly inside it, -1 outside. */
    private int leaf(int ca, int cb) {
        if (ca < 0 || cb < 0 || ca >= chart.cellsA() * UNIT || cb >= chart.cellsB() * UNIT) {
            return -1;
        }
        int c = ca / UNIT * chart.cellsB() + cb / UNIT;
        while (child[c] >= 0) {
            int half = UNIT >> (level[c] + 1);
            c = child[c] + (ca >= cellA[c] + half ? 1 : 0) + (cb >= cellB[c] + half ? 2 : 0);
        }
        return c;
    }

    private void balance() {
        for (int c = 0; c < cells; c++) {
            balance(c);
        }
    }

    private void balance(int c) {
        if (child[c] >= 0 || level[c] < 2) {
            return;
        }
        int w = UNIT >> level[c];
        int[] da = {-1, w, 0, 0};
        int[] db = {0, 0, -1, w};
        for (int s = 0; s < 4; s++) {
            int n = leaf(cellA[c] + da[s], cellB[c] + db[s]);
            while (n >= 0 && level[n] < level[c] - 1) {
                split(n);
                for (int k = 0; k < 4; k++) {
                    balance(child[n] + k);
                }
                n = leaf(cellA[c] + da[s], cellB[c] + db[s]);
            }
        }
    }

    private PlaneMesh mesh() {
        PlaneMesh m = new PlaneMesh(chart);
        KeyMap map = new KeyMap(cells + chart.cellsA() + chart.cellsB());
        int[] corner = new int[4 * cells];
        for (int c = 0; c < cells; c++) {
            if (child[c] < 0) {
                int w = UNIT >> level[c];
                corner[4 * c] = node(m, map, cellA[c], cellB[c]);
                corner[4 * c + 1] = node(m, map, cellA[c] + w, cellB[c]);
                corner[4 * c + 2] = node(m, map, cellA[c] + w, cellB[c] + w);
                corner[4 * c + 3] = node(m, map, cellA[c], cellB[c] + w);
            }
        }
        for (int c = 0; c < cells; c++) {
            if (child[c] < 0) {
                int w = UNIT >> level[c];
                int h = w / 2;
                int[] mid = {-1, -1, -1, -1};
                if (h > 0) {
                    mid[0] = map.get(key(cellA[c] + h, cellB[c]));
                    mid[1] = map.get(key(cellA[c] + w, cellB[c] + h));
                    mid[2] = map.get(key(cellA[c] + h, cellB[c] + w));
                    mid[3] = map.get(key(cellA[c], cellB[c] + h));
                }
                emit(m, corner, 4 * c, mid, cellA[c] + h, cellB[c] + h);
            }
        }
        return m;
    }

    private static long key(int ca, int cb) {
        return (long) ca << 32 | cb;
    }

    private int node(PlaneMesh m, KeyMap map, int ca, int cb) {
        long key = key(ca, cb);
        int n = map.get(key);
        if (n < 0) {
            n = m.addNode((double) ca / UNIT, (double) cb / UNIT);
            if (ca % UNIT == 0) {
                m.holdA[n] = (byte) chart.holdA(ca / UNIT).ordinal();
            }
            if (cb % UNIT == 0) {
                m.holdB[n] = (byte) chart.holdB(cb / UNIT).ordinal();
            }
            map.put(key, n);
        }
        return n;
    }

    /** A cell with nodes in the middle of some of its edges. */
    private static void emit(PlaneMesh m, int[] corner, int at, int[] mid, int ca, int cb) {
        int hanging = 0;
        for (int i : mid) {
            hanging += i >= 0 ? 1 : 0;
        }
        int[] c = {corner[at], corner[at + 1], corner[at + 2], corner[at + 3]};
        if (hanging == 0) {
            m.addElement(c[0], c[1], c[2], c[3]);
            return;
        }
        if (hanging == 2 && mid[0] >= 0 && mid[2] >= 0) {
            m.addElement(c[0], mid[0], mid[2], c[3]);
            m.addElement(mid[0], c[1], c[2], mid[2]);
            return;
        }
        if (hanging == 2 && mid[1] >= 0 && mid[3] >= 0) {
            m.addElement(c[0], c[1], mid[1], mid[3]);
            m.addElement(mid[3], mid[1], c[2], c[3]);
            return;
        }
        // Otherwise round a node in the middle: from each midside node to the next, through the corners between.
        int o = m.addNode((double) ca / UNIT, (double) cb / UNIT);
        for (int s = 0; s < 4; s++) {
            if (mid[s] < 0) {
                continue;
            }
            int corners = 1;
            while (mid[(s + corners) % 4] < 0) {
                corners++;
            }
            int first = c[(s + 1) % 4];
            if (corners == 1) {
                m.addElement(o, mid[s], first, mid[(s + 1) % 4]);
            } else if (corners == 2) {
                int second = c[(s + 2) % 4];
                int end = mid[(s + 2) % 4];
                m.addElement(o, mid[s], first, -1);
                m.addElement(o, first, second, -1);
                m.addElement(o, second, end, -1);
            } else if (corners == 3) {
                m.addElement(o, mid[s], first, c[(s + 2) % 4]);
                m.addElement(o, c[(s + 2) % 4], c[(s + 3) % 4], mid[(s + 3) % 4]);
            } else {
                m.addElement(o, mid[s], first, c[(s + 2) % 4]);
                m.addElement(o, c[(s + 2) % 4], c[(s + 3) % 4], -1);
                m.addElement(o, c[(s + 3) % 4], c[s], mid[s]);
            }
        }
    }
}
