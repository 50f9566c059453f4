// SPDX-License-Identifier: Apache-2.0
package tubwright.desk;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import tubwright.engine.mesh.Mesh;
import tubwright.engine.mesh.MeshLine;
import tubwright.engine.mesh.Region;

/**
 * A make-believe tub mesh for trying the desk without an engine: tapering nose, chines, cockpit, three walls. Its
 * answers are invented and mean nothing.
 */
public final class FakeTub {
    private static final double[] STATIONS = {0, 0.45, 0.9, 1.35, 1.8, 2.15};
    private static final String[] STRIPS = {"floor", "chine", "flank", "shoulder", "deck"};
    /** Half outlines, mm: y and z of six corners from bottom centre to top centre. */
    private static final double[][] OUTLINES = {
        {0, 150, 95, 150, 135, 185, 140, 300, 100, 345, 0, 352},
        {0, 110, 145, 110, 190, 155, 195, 360, 140, 420, 0, 430},
        {0, 90, 190, 90, 245, 145, 255, 420, 190, 500, 0, 515},
        {0, 85, 215, 85, 285, 145, 300, 430, 235, 490, 0, 495},
        {0, 85, 210, 85, 280, 145, 295, 470, 215, 560, 0, 580},
        {0, 95, 180, 95, 240, 150, 250, 460, 180, 540, 0, 555}
    };

    public static final double COCKPIT_FROM = 0.92;
    public static final double COCKPIT_TO = 1.62;

    private final int along;
    private final int per;
    private final List<double[]> nodes = new ArrayList<>();
    private final List<int[]> elements = new ArrayList<>();
    private final List<double[]> normals = new ArrayList<>();
    private final List<Integer> regionOf = new ArrayList<>();
    private final Map<Region, Integer> regions = new LinkedHashMap<>();
    private final List<MeshLine> lines = new ArrayList<>();

    private FakeTub(int along, int per) {
        this.along = along;
        this.per = per;
    }

    /** A tub of {@code along} elements along and {@code per} across each strip. */
    public static Mesh mesh(int along, int per) {
        FakeTub tub = new FakeTub(along, per);
        tub.skin();
        tub.wall("front bulkhead", 0.0, 0.0, 0.45, 3);
        tub.wall("dash", 0.9, 0.0, 0.72, 2);
        tub.wall("seat back", 1.62, 0.30, 0.0, 4);
        tub.wall("rear bulkhead", 2.15, 0.0, 0.0, 4);
        return tub.build();
    }

    /** Angle of twist at a station for a unit of couple, rad. */
    public static double twist(double x) {
        int steps = 200;
        double sum = 0;
        for (int i = 0; i < steps; i++) {
            sum += rate((i + 0.5) * x / steps) * x / steps;
        }
        return sum;
    }

    /** Slope of the twist line, rad/m, 1 somewhere quiet. */
    public static double rate(double x) {
        double in = 1 / (1 + Math.exp(-(x - COCKPIT_FROM) * 25)) - 1 / (1 + Math.exp(-(x - COCKPIT_TO) * 25));
        return (1.3 - 0.35 * x + 2.6 * in) * 6e-7;
    }

    /** Displacements of every node for a couple of {@code couple} N·m. */
    public static double[] displacements(Mesh mesh, double couple) {
        double[] u = new double[6 * mesh.nodeCount()];
        double held = twist(2.15);
        for (int n = 0; n < mesh.nodeCount(); n++) {
            double angle = couple * (held - twist(mesh.nodes()[3 * n]));
            u[6 * n + 1] = -angle * (mesh.nodes()[3 * n + 2] - 0.3);
            u[6 * n + 2] = angle * mesh.nodes()[3 * n + 1];
            u[6 * n + 3] = angle;
        }
        return u;
    }

    /** Energy density of every element for a couple of {@code couple} N·m, J/m². */
    public static double[] densities(Mesh mesh, double couple) {
        double[] w = new double[mesh.elementCount()];
        double[][] hot = {
            {COCKPIT_FROM, -0.22, 0.47},
            {COCKPIT_FROM, 0.22, 0.47},
            {COCKPIT_TO, -0.22, 0.52},
            {COCKPIT_TO, 0.22, 0.52},
            {0.15, 0.13, 0.2},
            {0.15, -0.13, 0.2},
            {0.5, 0.19, 0.33},
            {0.5, -0.19, 0.33}
        };
        for (int e = 0; e < w.length; e++) {
            double[] c = new double[3];
            for (int i = 0; i < mesh.cornerCount(e); i++) {
                for (int d = 0; d < 3; d++) {
                    c[d] += mesh.nodes()[3 * mesh.elementNodes()[4 * e + i] + d] / mesh.cornerCount(e);
                }
            }
            double r = rate(c[0]) / 6e-7;
            double value = 0.4 * r * r;
            for (double[] h : hot) {
                double d2 =
                        (c[0] - h[0]) * (c[0] - h[0]) + (c[1] - h[1]) * (c[1] - h[1]) + (c[2] - h[2]) * (c[2] - h[2]);
                value += 12 * Math.exp(-d2 / 0.006);
            }
            if (mesh.region(e).surface() == Region.Surface.WALL) {
                value *= 0.12;
            }
            w[e] = value * couple * couple * 1e-6;
        }
        return w;
    }

    private void skin() {
        int strips = STRIPS.length;
        int[][][] grid = new int[2][][];
        for (int side = 0; side < 2; side++) {
            double sign = side == 0 ? 1 : -1;
            for (int piece = 0; piece < 2; piece++) {
                int from = piece == 0 ? 0 : 3;
                int to = piece == 0 ? 3 : strips;
                int across = (to - from) * per;
                int[][] ids = new int[along + 1][across + 1];
                for (int i = 0; i <= along; i++) {
                    double x = 2.15 * i / along;
                    for (int j = 0; j <= across; j++) {
                        boolean middle = piece == 0 && j == 0 || piece == 1 && j == across;
                        if (side == 1 && middle) {
                            ids[i][j] = grid[piece][i][j];
                            continue;
                        }
                        double[] yz = outline(x, from + (double) j / per);
                        ids[i][j] = node(x, sign * yz[0], yz[1]);
                    }
                }
                if (side == 0) {
                    grid[piece] = ids;
                }
                String name = piece == 0 ? "lower shell" : "upper shell";
                List<int[]> chain = List.of(column(ids, piece == 0 ? across : 0));
                if (piece == 0) {
                    lines.add(new MeshLine(
                            "shoulder seam " + side, MeshLine.Kind.SEAM, "lower shell", "upper shell", chain));
                }
                for (int i = 0; i < along; i++) {
                    double x = 2.15 * (i + 0.5) / along;
                    for (int j = 0; j < across; j++) {
                        String strip = STRIPS[from + j / per];
                        if (strip.equals("deck") && x > COCKPIT_FROM && x < COCKPIT_TO) {
                            continue;
                        }
                        String zone = strip
                                + (strip.equals("flank") || strip.equals("deck") ? x < 0.9 ? " front" : " rear" : "");
                        Region region = new Region(
                                strip,
                                Region.Surface.SKIN,
                                zone,
                                strip.equals("flank") && x > 0.4 && x < 0.6 ? List.of("wishbone patch") : List.of(),
                                name,
                                side == 1);
                        int[] quad = side == 0
                                ? new int[] {ids[i][j], ids[i][j + 1], ids[i + 1][j + 1], ids[i + 1][j]}
                                : new int[] {ids[i][j], ids[i + 1][j], ids[i + 1][j + 1], ids[i][j + 1]};
                        element(quad, region);
                    }
                }
            }
        }
    }

    private void wall(String name, double x, double rake, double hole, int layers) {
        int around = 2 * STRIPS.length * per;
        int[][] ring = new int[layers + 1][around];
        double[][] rim = new double[around][];
        double[] centre = new double[3];
        for (int k = 0; k < around; k++) {
            boolean left = k > around / 2;
            double t = (double) (left ? around - k : k) / per;
            double at = x;
            double[] yz = outline(at, t);
            for (int pass = 0; pass < 4; pass++) {
                at = Math.min(2.15, x + rake * (yz[1] - 0.5));
                yz = outline(at, t);
            }
            rim[k] = new double[] {at, left ? -yz[0] : yz[0], yz[1]};
            for (int d = 0; d < 3; d++) {
                centre[d] += rim[k][d] / around;
            }
        }
        Region region = new Region(name, Region.Surface.WALL, name, List.of(), name, false);
        double inner = hole > 0 ? hole : 0.0;
        int tip = hole > 0 ? -1 : node(centre[0], centre[1], centre[2]);
        for (int l = 0; l <= layers; l++) {
            double s = inner + (1 - inner) * (1 - (double) l / layers);
            for (int k = 0; k < around; k++) {
                if (l == layers && hole == 0) {
                    ring[l][k] = tip;
                } else {
                    double[] p = new double[3];
                    for (int d = 0; d < 3; d++) {
                        p[d] = centre[d] + s * (rim[k][d] - centre[d]);
                    }
                    ring[l][k] = node(p[0], p[1], p[2]);
                }
            }
        }
        for (int l = 0; l < layers; l++) {
            for (int k = 0; k < around; k++) {
                int m = (k + 1) % around;
                if (l == layers - 1 && hole == 0) {
                    element(new int[] {ring[l][k], ring[l][m], tip, -1}, region);
                } else {
                    element(new int[] {ring[l][k], ring[l][m], ring[l + 1][m], ring[l + 1][k]}, region);
                }
            }
        }
        lines.add(new MeshLine(name + " edge", MeshLine.Kind.WALL_EDGE, name, "", List.of(closed(ring[0]))));
        if (hole > 0) {
            lines.add(
                    new MeshLine(name + " hole", MeshLine.Kind.OPENING_EDGE, name, "", List.of(closed(ring[layers]))));
        }
    }

    private static double[] outline(double x, double t) {
        int s = 0;
        while (s < STATIONS.length - 2 && x > STATIONS[s + 1]) {
            s++;
        }
        double u = (x - STATIONS[s]) / (STATIONS[s + 1] - STATIONS[s]);
        int k = Math.min((int) t, STRIPS.length - 1);
        double v = t - k;
        double[] p = new double[2];
        for (int d = 0; d < 2; d++) {
            double a = spline(s, u, 2 * k + d);
            double b = spline(s, u, 2 * k + 2 + d);
            p[d] = (a + (b - a) * v) / 1000;
        }
        return p;
    }

    /** Catmull-Rom through the frames. */
    private static double spline(int s, double u, int entry) {
        double p0 = OUTLINES[Math.max(0, s - 1)][entry];
        double p1 = OUTLINES[s][entry];
        double p2 = OUTLINES[s + 1][entry];
        double p3 = OUTLINES[Math.min(OUTLINES.length - 1, s + 2)][entry];
        return 0.5
                * (2 * p1
                        + (p2 - p0) * u
                        + (2 * p0 - 5 * p1 + 4 * p2 - p3) * u * u
                        + (3 * p1 - p0 - 3 * p2 + p3) * u * u * u);
    }

    private int node(double x, double y, double z) {
        nodes.add(new double[] {x, y, z});
        return nodes.size() - 1;
    }

    private void element(int[] corners, Region region) {
        elements.add(corners);
        regions.putIfAbsent(region, regions.size());
        regionOf.add(regions.get(region));
        double[] a = nodes.get(corners[0]);
        double[] b = nodes.get(corners[1]);
        double[] c = nodes.get(corners[2]);
        double[] d = corners[3] < 0 ? a : nodes.get(corners[3]);
        double[] p = {c[0] - a[0], c[1] - a[1], c[2] - a[2]};
        double[] q = {d[0] - b[0], d[1] - b[1], d[2] - b[2]};
        double[] n = {p[1] * q[2] - p[2] * q[1], p[2] * q[0] - p[0] * q[2], p[0] * q[1] - p[1] * q[0]};
        double length = Math.sqrt(n[0] * n[0] + n[1] * n[1] + n[2] * n[2]);
        normals.add(new double[] {n[0] / length, n[1] / length, n[2] / length});
    }

    private Mesh build() {
        double[] x = new double[3 * nodes.size()];
        for (int n = 0; n < nodes.size(); n++) {
            System.arraycopy(nodes.get(n), 0, x, 3 * n, 3);
        }
        int count = elements.size();
        int[] corner = new int[4 * count];
        double[] cornerNormals = new double[12 * count];
        double[] directions = new double[3 * count];
        int[] region = new int[count];
        for (int e = 0; e < count; e++) {
            System.arraycopy(elements.get(e), 0, corner, 4 * e, 4);
            for (int i = 0; i < 4; i++) {
                System.arraycopy(normals.get(e), 0, cornerNormals, 12 * e + 3 * i, 3);
            }
            directions[3 * e] = 1;
            region[e] = regionOf.get(e);
        }
        return new Mesh(x, corner, cornerNormals, directions, region, List.copyOf(regions.keySet()), lines);
    }

    private static int[] column(int[][] ids, int j) {
        int[] result = new int[ids.length];
        for (int i = 0; i < ids.length; i++) {
            result[i] = ids[i][j];
        }
        return result;
    }

    private static int[] closed(int[] ring) {
        int[] result = java.util.Arrays.copyOf(ring, ring.length + 1);
        result[ring.length] = ring[0];
        return result;
    }
}
