// SPDX-License-Identifier: Apache-2.0
package tubwright.engine.mesh;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.TreeMap;
import tubwright.engine.shape.Frame;
import tubwright.engine.shape.Opening;
import tubwright.engine.shape.PlacedWall;
import tubwright.engine.shape.SkinPoint;
import tubwright.engine.shape.TubShape;

/** Meshes the right half of the skin and sets it, and its mirror image, into the whole. */
final class SkinMesher {
    private final TubShape shape;
    private final LayoutIndex index;
    private final MeshBuilder out;
    private final Curves curves;
    private final SkinChart chart;
    private final PlaneMesh m;

    SkinMesher(TubShape shape, LayoutIndex index, MeshSettings settings, MeshBuilder out) {
        this.shape = shape;
        this.index = index;
        this.out = out;
        curves = new Curves(shape, index, settings);
        chart = new SkinChart(shape, settings, lines());
        m = HalfMesher.mesh(chart, curves.skin(chart), settings);
    }

    /** Stations that must be grid lines. */
    private TreeMap<Double, Chart.Hold> lines() {
        TreeMap<Double, Chart.Hold> lines = new TreeMap<>();
        boolean creased = shape.loft() == tubwright.engine.shape.Loft.RULED;
        for (Frame frame : shape.frames()) {
            lines.put(frame.x(), creased ? Chart.Hold.HARD : Chart.Hold.SOFT);
        }
        for (double x : index.stations) {
            near(lines, x, Chart.Hold.HARD);
        }
        for (PlacedWall wall : shape.placedWalls()) {
            if (station(wall)) {
                near(lines, wall.position(0, 0)[0], Chart.Hold.SOFT);
            }
        }
        return lines;
    }

    private static boolean station(PlacedWall wall) {
        return wall.across() && wall.alongB()[0] == 0;
    }

    /** Adds a line, or strengthens one that is less than a micrometre away. */
    private static void near(TreeMap<Double, Chart.Hold> lines, double x, Chart.Hold hold) {
        for (Double there : new Double[] {lines.floorKey(x), lines.ceilingKey(x)}) {
            if (there != null && Math.abs(there - x) < 1e-6) {
                lines.merge(there, hold, (p, q) -> p.compareTo(q) > 0 ? p : q);
                return;
            }
        }
        lines.put(x, hold);
    }

    void emit() {
        int[] right = new int[m.nodes];
        int[] left = new int[m.nodes];
        boolean[][] keep = {kept(false), kept(true)};
        boolean[][] used = new boolean[2][m.nodes];
        for (int side = 0; side < 2; side++) {
            for (int e = 0; e < m.elements; e++) {
                for (int i = 0; keep[side][e] && i < m.cornerCount(e); i++) {
                    used[side][m.corners[4 * e + i]] = true;
                }
            }
        }
        for (int n = 0; n < m.nodes; n++) {
            boolean centre = m.onEdgeB(n);
            if (used[0][n] || centre && used[1][n]) {
                right[n] = out.addNode(m.xyz[3 * n], m.xyz[3 * n + 1], m.xyz[3 * n + 2]);
            }
        }
        for (int n = 0; n < m.nodes; n++) {
            if (used[1][n]) {
                left[n] = m.onEdgeB(n) ? right[n] : out.addNode(m.xyz[3 * n], -m.xyz[3 * n + 1], m.xyz[3 * n + 2]);
            }
        }
        normals();
        emit(false, keep[0], right);
        emit(true, keep[1], left);
        List<String> order = new ArrayList<>(
                index.layout.pieces().stream().map(SurfaceLayout.Piece::name).toList());
        order.add(SurfaceLayout.DEFAULT_PIECE);
        out.seams(order);
    }

    /** Elements that no opening of this side takes away. */
    private boolean[] kept(boolean left) {
        boolean[] keep = new boolean[m.elements];
        java.util.Arrays.fill(keep, true);
        for (Opening o : shape.openings()) {
            if (!o.side().covers(left)) {
                continue;
            }
            CutCurve.Level level = folded(Curves.opening(o, left), left);
            for (int e = 0; e < m.elements; e++) {
                if (keep[e] && o.strips().contains(shape.strips().get(chart.strip(m.centreB(e))))) {
                    keep[e] = CurveCutter.inside(m, e, level) > 0;
                }
            }
        }
        return keep;
    }

    private static CutCurve.Level folded(CutCurve.Level level, boolean left) {
        return left ? (x, y, z) -> level.at(x, -y, z) : level;
    }

    private double[] nodeNormal;

    private void normals() {
        nodeNormal = new double[3 * m.nodes];
        SkinPoint p = new SkinPoint();
        for (int n = 0; n < m.nodes; n++) {
            if (!special(n)) {
                chart.evaluate(m.a[n], m.b[n], chart.strip(m.b[n]), chart.bay(m.a[n]), p);
                nodeNormal[3 * n] = p.normalX;
                nodeNormal[3 * n + 1] = p.normalY;
                nodeNormal[3 * n + 2] = p.normalZ;
            }
        }
    }

    /** Nodes where neighbouring elements may see different normals. */
    private boolean special(int n) {
        return m.holdB[n] != 0 || chart.creased() && m.holdA[n] != 0 || m.curve[n] != -1;
    }

    private void emit(boolean left, boolean[] keep, int[] global) {
        double sign = left ? -1 : 1;
        SkinPoint p = new SkinPoint();
        double[] normal = new double[12];
        double[] direction = new double[3];
        int[] c = new int[4];
        List<CutCurve.Level> extents = new ArrayList<>();
        for (SurfaceLayout.Patch patch : index.layout.patches()) {
            extents.add(folded(curves.extent(patch, left, Optional.empty()), left));
        }
        int[] owner = new int[m.elements];
        RegionFinder finder = new RegionFinder(out);
        for (int e = 0; e < m.elements; e++) {
            if (!keep[e]) {
                continue;
            }
            int count = m.cornerCount(e);
            double ca = m.centreA(e);
            double cb = m.centreB(e);
            int strip = chart.strip(cb);
            int bay = chart.bay(ca);
            chart.evaluate(ca, cb, strip, bay, p);
            direction[0] = p.aftX;
            direction[1] = sign * p.aftY;
            direction[2] = p.aftZ;
            double x = p.x;
            long patches = 0;
            for (int i = 0; i < extents.size(); i++) {
                if (index.patchCovers(i, strip, x, left) && CurveCutter.inside(m, e, extents.get(i)) < 0) {
                    patches |= 1L << i;
                }
            }
            c[3] = -1;
            for (int i = 0; i < count; i++) {
                // The chart is anticlockwise seen from inside on the right, from outside on the left.
                int n = m.corners[4 * e + (left ? i : (count - i) % count)];
                c[i] = global[n];
                if (special(n)) {
                    chart.evaluate(m.a[n], m.b[n], strip, bay, p);
                    normal[3 * i] = p.normalX;
                    normal[3 * i + 1] = sign * p.normalY;
                    normal[3 * i + 2] = p.normalZ;
                } else {
                    normal[3 * i] = nodeNormal[3 * n];
                    normal[3 * i + 1] = sign * nodeNormal[3 * n + 1];
                    normal[3 * i + 2] = nodeNormal[3 * n + 2];
                }
            }
            if (count == 3) {
                normal[9] = 0;
                normal[10] = 0;
                normal[11] = 0;
            }
            String piece = index.piece(strip, x, left);
            int region = finder.region(
                    shape.strips().get(strip),
                    Region.Surface.SKIN,
                    index.zone(strip, x, left),
                    patches,
                    index.layout.patches(),
                    piece,
                    left);
            owner[e] = out.piece(piece);
            out.addElement(c, normal, direction, region, owner[e]);
        }
        lines(left, keep, global, owner);
    }

    private void lines(boolean left, boolean[] keep, int[] global, int[] owner) {
        String suffix = left ? " L" : " R";
        String[] stationName = new String[chart.cellsA() + 1];
        for (int i = 0; i < shape.frames().size(); i++) {
            int a = (int) Math.rint(chart.a(shape.frames().get(i).x()));
            stationName[a] = "frame " + (i + 1);
        }
        List<int[]> more = new ArrayList<>();
        List<String> moreNames = new ArrayList<>();
        for (PlacedWall wall : shape.placedWalls()) {
            if (station(wall)) {
                more.add(new int[] {(int) Math.rint(chart.a(wall.position(0, 0)[0]))});
                moreNames.add("skin at " + wall.wall().name());
            }
        }
        List<CutCurve.Level> levels = new ArrayList<>();
        for (Opening o : shape.openings()) {
            levels.add(folded(Curves.opening(o, left), left));
        }
        KeyMap sides = new KeyMap(2 * m.elements);
        for (int e = 0; e < m.elements; e++) {
            for (int i = 0, c = m.cornerCount(e); keep[e] && i < c; i++) {
                long key = KeyMap.pair(m.corners[4 * e + i], m.corners[4 * e + (i + 1) % c]);
                sides.put(key, Math.max(0, sides.get(key)) + 1);
            }
        }
        for (int e = 0; e < m.elements; e++) {
            if (!keep[e]) {
                continue;
            }
            int c = m.cornerCount(e);
            for (int i = 0; i < c; i++) {
                int p = m.corners[4 * e + i];
                int q = m.corners[4 * e + (i + 1) % c];
                boolean lone = sides.get(KeyMap.pair(p, q)) == 1;
                if (m.holdA[p] != 0 && m.holdA[q] != 0 && m.a[p] == m.a[q]) {
                    int at = (int) m.a[p];
                    if (m.centreA(e) < at || lone) {
                        if (stationName[at] != null) {
                            edge(stationName[at], MeshLine.Kind.STATION, "", global, p, q, owner[e]);
                        }
                        for (int w = 0; w < more.size(); w++) {
                            if (more.get(w)[0] == at) {
                                edge(moreNames.get(w), MeshLine.Kind.STATION, "", global, p, q, owner[e]);
                            }
                        }
                    }
                }
                if (m.holdB[p] != 0 && m.holdB[q] != 0 && m.b[p] == m.b[q]) {
                    int at = (int) m.b[p];
                    int k = java.util.Arrays.binarySearch(chart.stripStart, at);
                    boolean centre = at == 0 || at == chart.cellsB();
                    if (k >= 0 && (centre ? !left : m.centreB(e) < at || lone)) {
                        String name = centre
                                ? at == 0 ? "bottom centre" : "top centre"
                                : shape.strips().get(k - 1) + "/"
                                        + shape.strips().get(k) + suffix;
                        edge(name, MeshLine.Kind.CORNER, "", global, p, q, owner[e]);
                    }
                }
                boolean chartEdge = m.onEdgeA(p) && m.onEdgeA(q) && m.a[p] == m.a[q]
                        || m.onEdgeB(p) && m.onEdgeB(q) && m.b[p] == m.b[q];
                if (lone && !chartEdge) {
                    opening(left, levels, global, p, q, owner[e]);
                }
            }
        }
    }

    private void opening(boolean left, List<CutCurve.Level> levels, int[] global, int p, int q, int piece) {
        int best = -1;
        double least = Double.POSITIVE_INFINITY;
        for (int k = 0; k < levels.size(); k++) {
            double d = Math.abs(levels.get(k).at(m.xyz[3 * p], m.xyz[3 * p + 1], m.xyz[3 * p + 2]))
                    + Math.abs(levels.get(k).at(m.xyz[3 * q], m.xyz[3 * q + 1], m.xyz[3 * q + 2]));
            if (shape.openings().get(k).side().covers(left) && d < least) {
                least = d;
                best = k;
            }
        }
        if (best >= 0) {
            Opening o = shape.openings().get(best);
            boolean both = o.side() == tubwright.engine.shape.Side.BOTH;
            edge(o.name() + (both ? left ? " L" : " R" : ""), MeshLine.Kind.OPENING_EDGE, "", global, p, q, piece);
        }
    }

    private void edge(String name, MeshLine.Kind kind, String from, int[] global, int p, int q, int piece) {
        out.addEdge(name, kind, from, "", global[p], global[q], piece);
    }
}
