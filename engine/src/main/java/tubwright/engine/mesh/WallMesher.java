// SPDX-License-Identifier: Apache-2.0
package tubwright.engine.mesh;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import tubwright.engine.shape.Opening;
import tubwright.engine.shape.PlacedWall;
import tubwright.engine.shape.Section;
import tubwright.engine.shape.Side;
import tubwright.engine.shape.SkinPoint;
import tubwright.engine.shape.TubShape;
import tubwright.engine.shape.Wall;

/** Meshes one wall in its own plane and sets it into the whole. */
final class WallMesher {
    private final TubShape shape;
    private final LayoutIndex index;
    private final MeshBuilder out;
    private final PlacedWall wall;
    private final Curves curves;
    private final PlaneMesh m;
    private final String label;

    WallMesher(TubShape shape, LayoutIndex index, MeshSettings settings, MeshBuilder out, PlacedWall wall) {
        this.shape = shape;
        this.index = index;
        this.out = out;
        this.wall = wall;
        curves = new Curves(shape, index, settings);
        WallChart chart = new WallChart(wall, settings.size());
        m = HalfMesher.mesh(chart, curves.wall(chart), settings);
        boolean twin = wall.wall() instanceof Wall.Along along && along.side() == Side.BOTH;
        label = twin ? wall.left() ? " L" : " R" : "";
    }

    void emit() {
        boolean halves = wall.across();
        boolean[][] keep = {kept(false), halves ? kept(true) : new boolean[m.elements]};
        int[][] global = new int[2][m.nodes];
        boolean[][] used = new boolean[2][m.nodes];
        for (int side = 0; side < 2; side++) {
            for (int e = 0; e < m.elements; e++) {
                for (int i = 0; keep[side][e] && i < m.cornerCount(e); i++) {
                    used[side][m.corners[4 * e + i]] = true;
                }
            }
            for (int n = 0; n < m.nodes; n++) {
                boolean centre = halves && m.a[n] == 0;
                if (side == 1 && centre) {
                    global[1][n] = used[0][n]
                            ? global[0][n]
                            : used[1][n] ? out.addNode(m.xyz[3 * n], 0, m.xyz[3 * n + 2]) : -1;
                } else if (used[side][n]) {
                    double y = m.xyz[3 * n + 1];
                    global[side][n] = out.addNode(m.xyz[3 * n], side == 1 ? -y : y, m.xyz[3 * n + 2]);
                }
            }
        }
        emit(false, keep[0], global[0]);
        if (halves) {
            emit(true, keep[1], global[1]);
        }
    }

    private boolean[] kept(boolean left) {
        boolean[] keep = new boolean[m.elements];
        Arrays.fill(keep, true);
        for (CutCurve.Level level : holes(left)) {
            for (int e = 0; e < m.elements; e++) {
                keep[e] &= CurveCutter.inside(m, e, level) > 0;
            }
        }
        return keep;
    }

    /** Levels of the holes, for chart points of the right half folded to a side. */
    private List<CutCurve.Level> holes(boolean left) {
        double sign = left ? -1 : 1;
        List<CutCurve.Level> levels = new ArrayList<>();
        for (Wall.Hole hole : wall.wall().holes()) {
            levels.add(
                    switch (wall.wall().holeView()) {
                        case FRONT -> (x, y, z) -> hole.contour().distance(sign * y, z);
                        case PLAN -> (x, y, z) -> hole.contour().distance(x, sign * y);
                        case SIDE -> (x, y, z) -> hole.contour().distance(x, z);
                    });
        }
        return levels;
    }

    private void emit(boolean left, boolean[] keep, int[] global) {
        double[] n = wall.normal();
        double[] normal = new double[12];
        double[] direction = wall.alongA();
        double[] alongB = wall.alongB();
        int[] c = new int[4];
        RegionFinder finder = new RegionFinder(out);
        List<CutCurve.Level> extents = new ArrayList<>();
        for (SurfaceLayout.Patch patch : index.layout.patches()) {
            CutCurve.Level level = curves.extent(patch, left, Optional.of(wall));
            extents.add(left && wall.across() ? (x, y, z) -> level.at(x, -y, z) : level);
        }
        String zone = index.zone(wall.wall());
        String piece = index.piece(wall.wall());
        int owner = out.piece(piece);
        // a x b against the normal: then the chart is clockwise seen from the normal's side; mirroring turns it round.
        double cross = n[0] * (direction[1] * alongB[2] - direction[2] * alongB[1])
                + n[1] * (direction[2] * alongB[0] - direction[0] * alongB[2])
                + n[2] * (direction[0] * alongB[1] - direction[1] * alongB[0]);
        boolean straight = cross > 0 != (left && wall.across());
        for (int e = 0; e < m.elements; e++) {
            if (!keep[e]) {
                continue;
            }
            int count = m.cornerCount(e);
            long patches = 0;
            for (int i = 0; i < extents.size(); i++) {
                if (index.patchCovers(i, wall.wall()) && CurveCutter.inside(m, e, extents.get(i)) < 0) {
                    patches |= 1L << i;
                }
            }
            Arrays.fill(normal, 0);
            c[3] = -1;
            for (int i = 0; i < count; i++) {
                c[i] = global[m.corners[4 * e + (straight ? i : (count - i) % count)]];
                System.arraycopy(n, 0, normal, 3 * i, 3);
            }
            int region = finder.region(
                    wall.wall().name(), Region.Surface.WALL, zone, patches, index.layout.patches(), piece, wall.left());
            out.addElement(c, normal, direction, region, owner);
        }
        lines(left, keep, global, owner, piece);
    }

    private void lines(boolean left, boolean[] keep, int[] global, int owner, String piece) {
        KeyMap sides = new KeyMap(2 * m.elements);
        for (int e = 0; e < m.elements; e++) {
            for (int i = 0, c = m.cornerCount(e); keep[e] && i < c; i++) {
                long key = KeyMap.pair(m.corners[4 * e + i], m.corners[4 * e + (i + 1) % c]);
                sides.put(key, Math.max(0, sides.get(key)) + 1);
            }
        }
        List<CutCurve.Level> holes = holes(left);
        for (int e = 0; e < m.elements; e++) {
            int c = m.cornerCount(e);
            for (int i = 0; keep[e] && i < c; i++) {
                int p = m.corners[4 * e + i];
                int q = m.corners[4 * e + (i + 1) % c];
                boolean centre = wall.across() && m.a[p] == 0 && m.a[q] == 0;
                if (sides.get(KeyMap.pair(p, q)) != 1 || centre) {
                    continue;
                }
                edge(left, holes, global, p, q, owner, piece);
            }
        }
    }

    private void edge(boolean left, List<CutCurve.Level> holes, int[] global, int p, int q, int owner, String piece) {
        double[] mid = new double[3];
        for (int i = 0; i < 3; i++) {
            mid[i] = (m.xyz[3 * p + i] + m.xyz[3 * q + i]) / 2;
        }
        for (int k = 0; k < holes.size(); k++) {
            double d = Math.abs(holes.get(k).at(m.xyz[3 * p], m.xyz[3 * p + 1], m.xyz[3 * p + 2]))
                    + Math.abs(holes.get(k).at(m.xyz[3 * q], m.xyz[3 * q + 1], m.xyz[3 * q + 2]));
            if (d < 1e-4) {
                String name =
                        wall.wall().name() + "/" + wall.wall().holes().get(k).name() + label;
                out.addEdge(name, MeshLine.Kind.OPENING_EDGE, piece, "", global[p], global[q], owner);
                return;
            }
        }
        double off = Math.abs(shape.distance(m.xyz[3 * p], m.xyz[3 * p + 1], m.xyz[3 * p + 2]))
                + Math.abs(shape.distance(m.xyz[3 * q], m.xyz[3 * q + 1], m.xyz[3 * q + 2]));
        boolean onSkin = off < 1e-4 && !inOpening(left, mid);
        if (onSkin || onWall(left, mid)) {
            String name = wall.wall().name() + label + " edge";
            out.addEdge(name, MeshLine.Kind.WALL_EDGE, piece, "", global[p], global[q], owner);
        }
    }

    /** Whether the skin at a point of its right half is cut away on a side. */
    private boolean inOpening(boolean left, double[] at) {
        boolean onLeft = left || wall.left();
        for (Opening o : shape.openings()) {
            double sign = o.side() == Side.CENTRE && onLeft ? -1 : 1;
            double y = sign * Math.abs(at[1]);
            if (o.side().covers(onLeft)
                    && o.contour()
                                    .distance(
                                            o.view().u(at[0], y, at[2]),
                                            o.view().v(at[0], y, at[2]))
                            < 0
                    && o.strips().contains(nearestStrip(at))) {
                return true;
            }
        }
        return false;
    }

    private String nearestStrip(double[] at) {
        Section s = shape.section(at[0]);
        SkinPoint p = new SkinPoint();
        int best = 0;
        double least = Double.POSITIVE_INFINITY;
        for (int k = 0; k < s.stripCount(); k++) {
            for (int i = 0; i <= 60; i++) {
                s.at(k, i / 60.0, p);
                double d = Math.hypot(p.y - Math.abs(at[1]), p.z - at[2]);
                if (d < least) {
                    least = d;
                    best = k;
                }
            }
        }
        return shape.strips().get(best);
    }

    /** Whether a point lies on another wall. */
    private boolean onWall(boolean left, double[] at) {
        double y = left ? -at[1] : at[1];
        for (PlacedWall other : shape.placedWalls()) {
            if (other != wall) {
                double[] o = other.position(0, 0);
                double[] r = {at[0] - o[0], y - o[1], at[2] - o[2]};
                double off = dot(r, other.normal());
                if (Math.abs(off) < 1e-4 && other.contains(dot(r, other.alongA()), dot(r, other.alongB()), -1e-4)) {
                    return true;
                }
            }
        }
        return false;
    }

    private static double dot(double[] u, double[] v) {
        return u[0] * v[0] + u[1] * v[1] + u[2] * v[2];
    }
}
