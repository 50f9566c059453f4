// SPDX-License-Identifier: Apache-2.0
package tubwright.engine.make.lay;

import java.util.ArrayDeque;
import java.util.Arrays;
import java.util.List;
import java.util.function.IntConsumer;
import tubwright.engine.make.ply.LaidPly;
import tubwright.engine.make.surface.MeshSurface;
import tubwright.engine.make.surface.PointLocator;
import tubwright.engine.make.surface.SurfacePoint;
import tubwright.engine.make.surface.TriangleSurface;
import tubwright.engine.mesh.Mesh;
import tubwright.engine.mesh.MeshSettings;
import tubwright.engine.mesh.Mesher;
import tubwright.engine.mesh.Region;
import tubwright.engine.mesh.SurfaceLayout;
import tubwright.engine.shape.TubShape;
import tubwright.numerics.Parallel;

/**
 * The mould surface of a tub's skin: run on over its openings, where cloth lies while it is laid and is trimmed later,
 * and past its ends. Also the faces that deeper plies lie on.
 */
final class Mould {
    /** How far the surface runs on past its ends, m. */
    private static final double RUN_OUT = 0.03;

    /** A triangle of the mould farther than this from the skin lies in an opening, m. */
    private static final double OPEN = 1e-3;

    private static final int SMOOTHINGS = 3;
    private static final int BATCH = 256;

    private final Mesh mesh;
    private final MeshSurface surface;
    /** Per mesh element and per mesh node, where it lies on the mould: triangle, weights of second and third corner. */
    private final int[] centreTriangle;

    private final double[] centreWeights;
    private final int[] nodeTriangle;
    private final double[] nodeWeights;
    /** Per point of the mould the mesh element nearest to it. */
    private final int[] elementAt;
    /** Per triangle the opening it lies in, numbered from 1; 0 on skin. */
    private final int[] opening;

    private final int openings;
    private final int[] besideStart;
    private final int[] beside;

    Mould(TubShape shape, Mesh mesh, double size) {
        this.mesh = mesh;
        TubShape closed = TubShape.of(shape.frames(), shape.strips(), shape.loft(), List.of(), List.of());
        Mesh whole = Mesher.mesh(closed, SurfaceLayout.plain(), MeshSettings.of(size));
        surface = MeshSurface.of(whole, e -> true).withRim(RUN_OUT);
        MeshSurface skin = MeshSurface.of(mesh, e -> mesh.region(e).surface() == Region.Surface.SKIN);
        PointLocator onMould = new PointLocator(surface.surface());
        centreTriangle = new int[mesh.elementCount()];
        centreWeights = new double[2 * mesh.elementCount()];
        nodeTriangle = new int[mesh.nodeCount()];
        nodeWeights = new double[2 * mesh.nodeCount()];
        Arrays.fill(centreTriangle, -1);
        Arrays.fill(nodeTriangle, -1);
        inBatches(mesh.elementCount(), e -> {
            if (mesh.region(e).surface() == Region.Surface.SKIN) {
                anchor(onMould, centre(mesh, e), e, centreTriangle, centreWeights);
            }
        });
        inBatches(mesh.nodeCount(), n -> {
            if (skin.pointOfNode()[n] >= 0) {
                anchor(onMould, Arrays.copyOfRange(mesh.nodes(), 3 * n, 3 * n + 3), n, nodeTriangle, nodeWeights);
            }
        });
        PointLocator onSkin = new PointLocator(skin.surface());
        TriangleSurface mould = surface.surface();
        elementAt = new int[mould.pointCount()];
        inBatches(elementAt.length, p -> {
            double[] x = mould.points();
            elementAt[p] = skin.element()[
                    onSkin.nearest(x[3 * p], x[3 * p + 1], x[3 * p + 2]).point().triangle()];
        });
        besideStart = new int[mould.pointCount() + 1];
        beside = new int[2 * mould.corners().length];
        neighbours();
        opening = new int[mould.triangles()];
        openings = findOpenings(onSkin);
    }

    /** On all cores, some hundred at a time; each writes its own place only. */
    private static void inBatches(int count, IntConsumer task) {
        int batches = (count + BATCH - 1) / BATCH;
        Parallel.run(batches, b -> {
            for (int i = b * BATCH; i < Math.min(count, (b + 1) * BATCH); i++) {
                task.accept(i);
            }
        });
    }

    private void anchor(PointLocator locator, double[] x, int index, int[] triangle, double[] weights) {
        SurfacePoint p = locator.nearest(x[0], x[1], x[2]).point();
        double[] w = surface.surface().weights(p);
        triangle[index] = p.triangle();
        weights[2 * index] = w[0];
        weights[2 * index + 1] = w[1];
    }

    static double[] centre(Mesh mesh, int e) {
        double[] sum = new double[3];
        int sides = mesh.cornerCount(e);
        for (int k = 0; k < sides; k++) {
            for (int i = 0; i < 3; i++) {
                sum[i] += mesh.nodes()[3 * mesh.elementNodes()[4 * e + k] + i] / sides;
            }
        }
        return sum;
    }

    private int findOpenings(PointLocator onSkin) {
        TriangleSurface mould = surface.surface();
        boolean[] open = new boolean[mould.triangles()];
        inBatches(open.length, t -> {
            if (surface.element()[t] >= 0) {
                double[] p = new double[3];
                SurfacePoint middle = mould.at(t, 1 / 3.0, 1 / 3.0);
                mould.position(t, middle.x(), middle.y(), p);
                open[t] = onSkin.nearest(p[0], p[1], p[2]).distance() > OPEN;
            }
        });
        int count = 0;
        ArrayDeque<Integer> queue = new ArrayDeque<>();
        for (int first = 0; first < open.length; first++) {
            if (!open[first] || opening[first] != 0) {
                continue;
            }
            count++;
            opening[first] = count;
            queue.add(first);
            while (!queue.isEmpty()) {
                int t = queue.poll();
                for (int k = 0; k < 3; k++) {
                    int next = mould.across(t, k);
                    if (next >= 0 && open[next] && opening[next] == 0) {
                        opening[next] = count;
                        queue.add(next);
                    }
                }
            }
        }
        return count;
    }

    /** The face a ply lies on: as deep under the mould as the plies before it are thick, run on past its edge. */
    TriangleSurface face(LaidPly ply) {
        double[] byElement = new double[mesh.elementCount()];
        Arrays.fill(byElement, Double.NaN);
        for (int i = 0; i < ply.elements().length; i++) {
            byElement[ply.elements()[i]] = ply.depths()[i];
        }
        int points = elementAt.length;
        double[] depth = new double[points];
        for (int p = 0; p < points; p++) {
            depth[p] = byElement[elementAt[p]];
        }
        // A ply smaller than the mould's mesh has no point of its own: it takes those round it.
        for (int e : ply.elements()) {
            for (int k = 0; k < 3; k++) {
                int p = surface.surface().corners()[3 * centreTriangle[e] + k];
                depth[p] = Double.isNaN(depth[p]) ? byElement[e] : depth[p];
            }
        }
        runOn(depth);
        for (int i = 0; i < SMOOTHINGS; i++) {
            depth = smoothed(depth);
        }
        return surface.inward(depth);
    }

    /** Points off the ply take the depth of those beside them, outward from its edge. */
    private void runOn(double[] depth) {
        int[] queue = new int[depth.length];
        int tail = 0;
        for (int p = 0; p < depth.length; p++) {
            if (!Double.isNaN(depth[p])) {
                queue[tail++] = p;
            }
        }
        for (int head = 0; head < tail; head++) {
            int p = queue[head];
            for (int i = besideStart[p]; i < besideStart[p + 1]; i++) {
                int q = beside[i];
                if (Double.isNaN(depth[q])) {
                    depth[q] = depth[p];
                    queue[tail++] = q;
                }
            }
        }
    }

    /** Points that share an edge with each point: along every edge once, at the rim perhaps only one way. */
    private void neighbours() {
        int[] c = surface.surface().corners();
        for (int corner : c) {
            besideStart[corner + 1] += 2;
        }
        for (int p = 0; p + 1 < besideStart.length; p++) {
            besideStart[p + 1] += besideStart[p];
        }
        int[] fill = besideStart.clone();
        for (int e = 0; e < c.length; e++) {
            beside[fill[c[e]]++] = c[e % 3 == 2 ? e - 2 : e + 1];
            beside[fill[c[e]]++] = c[e % 3 == 0 ? e + 2 : e - 1];
        }
    }

    private double[] smoothed(double[] depth) {
        int[] c = surface.surface().corners();
        double[] sum = depth.clone();
        int[] count = new int[depth.length];
        for (int e = 0; e < c.length; e++) {
            int a = c[e];
            int b = c[e % 3 == 2 ? e - 2 : e + 1];
            sum[a] += depth[b];
            sum[b] += depth[a];
            count[a]++;
            count[b]++;
        }
        for (int p = 0; p < sum.length; p++) {
            sum[p] /= 1 + count[p];
        }
        return sum;
    }

    /** Triangles a net of this ply may reach: under the ply, within a margin of it, and in openings it goes round. */
    boolean[] reach(LaidPly ply, double margin) {
        TriangleSurface mould = surface.surface();
        double[] far = new double[mould.triangles()];
        Arrays.fill(far, Double.POSITIVE_INFINITY);
        ArrayDeque<Integer> queue = new ArrayDeque<>();
        for (int e : ply.elements()) {
            mark(centreTriangle[e], far, queue);
            for (int k = 0; k < mesh.cornerCount(e); k++) {
                mark(nodeTriangle[mesh.elementNodes()[4 * e + k]], far, queue);
            }
        }
        int[] round = new int[openings + 1];
        int[] under = new int[openings + 1];
        for (int t = 0; t < far.length; t++) {
            for (int k = 0; k < 3; k++) {
                int o = mould.across(t, k);
                if (opening[t] == 0 && o >= 0 && opening[o] > 0) {
                    round[opening[o]]++;
                    if (far[t] == 0) {
                        under[opening[o]]++;
                    }
                }
            }
        }
        for (int t = 0; t < far.length; t++) {
            int o = opening[t];
            if (o > 0 && under[o] > 0.7 * round[o]) {
                mark(t, far, queue);
            }
        }
        while (!queue.isEmpty()) {
            int t = queue.poll();
            for (int k = 0; k < 3; k++) {
                int o = mould.across(t, k);
                if (o >= 0) {
                    double d = far[t] + Math.sqrt((mould.area(t) + mould.area(o)) / 2);
                    if (d < far[o] && d < margin) {
                        far[o] = d;
                        queue.add(o);
                    }
                }
            }
        }
        boolean[] reach = new boolean[far.length];
        for (int t = 0; t < reach.length; t++) {
            reach[t] = far[t] < Double.POSITIVE_INFINITY;
        }
        return reach;
    }

    private static void mark(int t, double[] far, ArrayDeque<Integer> queue) {
        if (far[t] > 0) {
            far[t] = 0;
            queue.add(t);
        }
    }

    /** Where the middle of an element lies on a face. */
    SurfacePoint centreOn(TriangleSurface face, int element) {
        return face.at(centreTriangle[element], centreWeights[2 * element], centreWeights[2 * element + 1]);
    }

    /** Where a node lies on a face. */
    SurfacePoint nodeOn(TriangleSurface face, int node) {
        return face.at(nodeTriangle[node], nodeWeights[2 * node], nodeWeights[2 * node + 1]);
    }
}
