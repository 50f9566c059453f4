// SPDX-License-Identifier: Apache-2.0
package tubwright.engine.make.surface;

import java.util.Arrays;
import java.util.HashMap;
import java.util.Map;
import java.util.function.IntPredicate;
import tubwright.engine.mesh.Mesh;

/**
 * Elements of a mesh as one surface of triangles: quadrilaterals parted along their shorter diagonal, nodes that lie on
 * each other (where pieces meet) made one.
 *
 * @param surface the triangles, anticlockwise seen from outside
 * @param element per triangle the mesh element it came from; −1 for what {@link #withRim} added
 * @param pointOfNode per mesh node its point of the surface; −1 where none of its elements was taken
 * @param normals 3 numbers per point: unit outward normal, of the true surface where its elements agree
 */
public record MeshSurface(TriangleSurface surface, int[] element, int[] pointOfNode, double[] normals) {
    /** Nodes nearer than this are one, m. */
    private static final double ONE = 1e-7;

    /** The elements of a mesh for which {@code taken} holds. */
    public static MeshSurface of(Mesh mesh, IntPredicate taken) {
        int[] pointOfNode = new int[mesh.nodeCount()];
        Arrays.fill(pointOfNode, -1);
        Map<Place, Integer> places = new HashMap<>();
        double[] points = new double[3 * mesh.nodeCount()];
        double[] normals = new double[3 * mesh.nodeCount()];
        int[] corners = new int[6 * mesh.elementCount()];
        int[] element = new int[2 * mesh.elementCount()];
        int count = 0;
        int triangles = 0;
        int[] p = new int[4];
        for (int e = 0; e < mesh.elementCount(); e++) {
            if (!taken.test(e)) {
                continue;
            }
            int sides = mesh.cornerCount(e);
            for (int k = 0; k < sides; k++) {
                int node = mesh.elementNodes()[4 * e + k];
                if (pointOfNode[node] < 0) {
                    Integer there = places.putIfAbsent(place(mesh, node), count);
                    if (there == null) {
                        System.arraycopy(mesh.nodes(), 3 * node, points, 3 * count, 3);
                        pointOfNode[node] = count++;
                    } else {
                        pointOfNode[node] = there;
                    }
                }
                p[k] = pointOfNode[node];
                for (int i = 0; i < 3; i++) {
                    normals[3 * p[k] + i] += mesh.cornerNormals()[12 * e + 3 * k + i];
                }
            }
            int shift = sides == 4 && apart(points, p[1], p[3]) < apart(points, p[0], p[2]) ? 1 : 0;
            for (int half = 0; half < sides - 2; half++) {
                element[triangles] = e;
                corners[3 * triangles] = p[shift];
                corners[3 * triangles + 1] = p[(shift + half + 1) % sides];
                corners[3 * triangles + 2] = p[(shift + half + 2) % sides];
                triangles++;
            }
        }
        unit(normals, count);
        return new MeshSurface(
                TriangleSurface.of(Arrays.copyOf(points, 3 * count), Arrays.copyOf(corners, 3 * triangles)),
                Arrays.copyOf(element, triangles),
                pointOfNode,
                Arrays.copyOf(normals, 3 * count));
    }

    /** Coordinates in steps of {@link #ONE}. */
    private record Place(long x, long y, long z) {
        @Override
        public int hashCode() {
            long h = (x * 0x9E3779B97F4A7C15L + y) * 0xC2B2AE3D27D4EB4FL + z;
            return (int) (h ^ h >>> 32);
        }
    }

    private static Place place(Mesh mesh, int node) {
        double[] x = mesh.nodes();
        return new Place(
                Math.round(x[3 * node] / ONE), Math.round(x[3 * node + 1] / ONE), Math.round(x[3 * node + 2] / ONE));
    }

    private static double apart(double[] points, int a, int b) {
        double x = points[3 * a] - points[3 * b];
        double y = points[3 * a + 1] - points[3 * b + 1];
        double z = points[3 * a + 2] - points[3 * b + 2];
        return x * x + y * y + z * z;
    }

    private static void unit(double[] normals, int count) {
        for (int i = 0; i < count; i++) {
            double l = Math.sqrt(normals[3 * i] * normals[3 * i]
                    + normals[3 * i + 1] * normals[3 * i + 1]
                    + normals[3 * i + 2] * normals[3 * i + 2]);
            for (int k = 0; k < 3 && l > 0; k++) {
                normals[3 * i + k] /= l;
            }
        }
    }

    /** The surface run on straight past its rim, as a mould's run-out does, by a width in m. */
    public MeshSurface withRim(double width) {
        int n = surface.pointCount();
        int[] c = surface.corners();
        double[] out = new double[3 * n];
        boolean[] onRim = new boolean[n];
        int rimEdges = 0;
        for (int e = 0; e < c.length; e++) {
            if (surface.across(e / 3, e % 3) < 0) {
                rimEdges++;
                int a = c[e];
                int b = c[e % 3 == 2 ? e - 2 : e + 1];
                double[] along = new double[3];
                for (int i = 0; i < 3; i++) {
                    along[i] = surface.points()[3 * b + i] - surface.points()[3 * a + i];
                }
                double[] aside = Space.cross(along, surface.normal(e / 3));
                double l = Space.length(aside);
                for (int p : new int[] {a, b}) {
                    onRim[p] = true;
                    for (int i = 0; i < 3; i++) {
                        out[3 * p + i] += aside[i] / l;
                    }
                }
            }
        }
        int[] added = new int[n];
        int count = n;
        for (int p = 0; p < n; p++) {
            added[p] = onRim[p] ? count++ : -1;
        }
        double[] points = Arrays.copyOf(surface.points(), 3 * count);
        double[] longer = Arrays.copyOf(normals, 3 * count);
        for (int p = 0; p < n; p++) {
            if (onRim[p]) {
                double l = Math.hypot(Math.hypot(out[3 * p], out[3 * p + 1]), out[3 * p + 2]);
                // Two rim edges of one direction give a vector of length 2; at a corner the strip keeps its width.
                double far = width * Math.min(2, 2 / Math.max(l, 1e-3));
                for (int i = 0; i < 3; i++) {
                    points[3 * added[p] + i] = points[3 * p + i] + far * out[3 * p + i] / Math.max(l, 1e-9);
                    longer[3 * added[p] + i] = normals[3 * p + i];
                }
            }
        }
        int[] corners = Arrays.copyOf(c, c.length + 6 * rimEdges);
        int[] from = Arrays.copyOf(element, element.length + 2 * rimEdges);
        int t = element.length;
        for (int e = 0; e < c.length; e++) {
            if (surface.across(e / 3, e % 3) < 0) {
                int a = c[e];
                int b = c[e % 3 == 2 ? e - 2 : e + 1];
                int[] two = {b, a, added[a], b, added[a], added[b]};
                System.arraycopy(two, 0, corners, 3 * t, 6);
                from[t] = -1;
                from[t + 1] = -1;
                t += 2;
            }
        }
        return new MeshSurface(TriangleSurface.of(points, corners), from, pointOfNode, longer);
    }

    /**
     * The face at a depth under this surface, point by point along the normals. In a fillet tighter than the depth a face
     * has no room: there it is taken as deep as keeps {@value #LEAST_LEFT} of every edge.
     *
     * @param depth per point, m inward
     */
    public TriangleSurface inward(double[] depth) {
        double[] from = surface.points();
        int[] c = surface.corners();
        double[] held = depth.clone();
        for (int e = 0; e < c.length; e++) {
            int a = c[e];
            int b = c[e % 3 == 2 ? e - 2 : e + 1];
            double length = 0;
            double closing = 0;
            for (int i = 0; i < 3; i++) {
                double d = from[3 * b + i] - from[3 * a + i];
                length += d * d;
                closing += d * (normals[3 * b + i] - normals[3 * a + i]);
            }
            if (closing > 0) {
                double most = (1 - LEAST_LEFT) * length / closing;
                held[a] = Math.min(held[a], most);
                held[b] = Math.min(held[b], most);
            }
        }
        double[] moved = new double[from.length];
        for (int turn = 0; ; turn++) {
            held = evened(depth, held);
            for (int i = 0; i < moved.length; i++) {
                moved[i] = from[i] - held[i / 3] * normals[i];
            }
            // Each turn brings folded triangles nearer to the surface, where none is folded.
            if (turn == MOST_TURNS || !raiseFolded(moved, held)) {
                return surface.movedTo(moved);
            }
        }
    }

    /**
     * A fillet that is held less deep passes that on to its neighbours and evenly into its surroundings: from point to point
     * the least depth leaves a face with dents, which no cloth follows and no pattern flattens.
     */
    private double[] evened(double[] depth, double[] held) {
        int[] c = surface.corners();
        double[] raised = new double[depth.length];
        boolean any = false;
        for (int p = 0; p < raised.length; p++) {
            raised[p] = depth[p] - held[p];
            any |= raised[p] > 0;
        }
        if (!any) {
            return held;
        }
        for (int turn = 0; turn < EVENINGS; turn++) {
            double[] most = raised.clone();
            for (int e = 0; e < c.length; e++) {
                int a = c[e];
                int b = c[e % 3 == 2 ? e - 2 : e + 1];
                most[a] = Math.max(most[a], raised[b]);
                most[b] = Math.max(most[b], raised[a]);
            }
            raised = most;
        }
        for (int turn = 0; turn < EVENINGS; turn++) {
            double[] sum = raised.clone();
            int[] count = new int[sum.length];
            for (int e = 0; e < c.length; e++) {
                int a = c[e];
                int b = c[e % 3 == 2 ? e - 2 : e + 1];
                sum[a] += raised[b];
                sum[b] += raised[a];
                count[a]++;
                count[b]++;
            }
            for (int p = 0; p < sum.length; p++) {
                raised[p] = sum[p] / (1 + count[p]);
            }
        }
        double[] even = new double[depth.length];
        for (int p = 0; p < even.length; p++) {
            even[p] = Math.min(held[p], depth[p] - raised[p]);
        }
        return even;
    }

    /** Brings the points of triangles that have lost their area or turned over nearer to the surface; whether any has. */
    private boolean raiseFolded(double[] moved, double[] held) {
        int[] c = surface.corners();
        boolean[] raise = new boolean[held.length];
        boolean any = false;
        double[] p = new double[3];
        double[] q = new double[3];
        for (int t = 0; t < surface.triangles(); t++) {
            for (int i = 0; i < 3; i++) {
                p[i] = moved[3 * c[3 * t + 1] + i] - moved[3 * c[3 * t] + i];
                q[i] = moved[3 * c[3 * t + 2] + i] - moved[3 * c[3 * t] + i];
            }
            double left = Space.dot(Space.cross(p, q), surface.normal(t)) / (2 * surface.area(t));
            if (left < LEAST_LEFT * LEAST_LEFT / 2) {
                for (int k = 0; k < 3; k++) {
                    raise[c[3 * t + k]] = true;
                    any = true;
                }
            }
        }
        for (int n = 0; n < held.length; n++) {
            if (raise[n]) {
                held[n] *= 0.7;
                for (int i = 3 * n; i < 3 * n + 3; i++) {
                    moved[i] = surface.points()[i] - held[n] * normals[i];
                }
            }
        }
        return any;
    }

    private static final double LEAST_LEFT = 0.25;
    private static final int MOST_TURNS = 50;
    private static final int EVENINGS = 2;
}
