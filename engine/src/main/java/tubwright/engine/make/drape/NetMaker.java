// SPDX-License-Identifier: Apache-2.0
package tubwright.engine.make.drape;

import java.util.ArrayDeque;
import java.util.List;
import tubwright.engine.make.surface.SurfacePoint;
import tubwright.engine.make.surface.TriangleSurface;
import tubwright.engine.make.surface.Walker;

/**
 * Lays a pin-jointed net on a surface (Mack & Taylor 1956; on arbitrary surfaces van West, Pipes & Keefe 1990; both from
 * memory). Threads do not stretch, do not slip at crossings and touch the surface everywhere. One warp and one weft
 * thread through the start run straight (geodesic); every other crossing is where threads of equal length from its two
 * neighbours meet on the surface. Lengths are measured along the surface, not as chords, so that a surface that unrolls
 * gives a net without shear to the last digit.
 *
 * <p>Where a straight thread leaves the area before the area ends, the row beside it is carried on straight and the net
 * grows from there: the choice that is free in every such net.
 */
final class NetMaker {
    /** Crossings nearer to each other than this share of the spacing, and not neighbours, are cloth over cloth. */
    private static final double OVER_ITSELF = 0.4;

    private static final int MOST_STEPS = 12;
    /** A crossing is met when its two threads end this share of the spacing apart. */
    private static final double CLOSED = 1e-12;
    /**
     * Behind a corner of the surface two straight lines may miss each other by a little (the corner's curvature times the
     * spacing): a gap of less than this share of the spacing is taken as met.
     */
    private static final double CLOSED_BEHIND_A_CORNER = 0.02;

    private final TriangleSurface surface;
    private final boolean[] allowed;
    private final NetSettings settings;
    private final NetNodes nodes = new NetNodes();
    private final NearNodes near;
    private final Walker a;
    private final Walker b;
    private final ArrayDeque<Integer> grown = new ArrayDeque<>();
    private final double[] pa = new double[3];
    private final double[] pb = new double[3];
    private final double[] da = new double[3];
    private final double[] db = new double[3];
    private int locked;
    private int overItself;

    NetMaker(TriangleSurface surface, boolean[] allowed, NetSettings settings) {
        this.surface = surface;
        this.allowed = allowed;
        this.settings = settings;
        near = new NearNodes(settings.spacing());
        a = new Walker(surface);
        b = new Walker(surface);
    }

    ClothNet lay(SurfacePoint start, double warp) {
        place(0, 0, start.triangle(), start.x(), start.y());
        for (int k = 0; k < 4; k++) {
            arm(0, k, warp + k * Math.PI / 2);
        }
        for (int n = 0; n < nodes.count; n++) {
            grown.add(n);
        }
        fill();
        for (int n = 0; n < nodes.count; n++) {
            // Nodes appended while this runs are looked at in their turn.
            for (int k = 0; k < 4; k++) {
                if (!nodes.linked(n, k) && nodes.linked(n, k ^ 2) && free(n, k) && carryOn(n, k)) {
                    fill();
                }
            }
        }
        return new ClothNet(surface, settings.spacing(), nodes, locked, overItself);
    }

    /**
     * A net from a row of crossings along the bias: crossing k of the row is (k, −k), and on either side the threads of
     * neighbours meet.
     */
    ClothNet layAlong(List<SurfacePoint> row) {
        for (int n = 0; n < row.size(); n++) {
            SurfacePoint p = row.get(n);
            place(n, -n, p.triangle(), p.x(), p.y());
        }
        double[] from = new double[3];
        double[] to = new double[3];
        for (int n = 0; n + 1 < row.size(); n++) {
            SurfacePoint p = row.get(n);
            SurfacePoint q = row.get(n + 1);
            surface.position(p.triangle(), p.x(), p.y(), from);
            surface.position(q.triangle(), q.x(), q.y(), to);
            for (int i = 0; i < 3; i++) {
                to[i] -= from[i];
            }
            double half = Math.sqrt(to[0] * to[0] + to[1] * to[1] + to[2] * to[2]) / 2;
            double aside = Math.acos(Math.min(1, half / settings.spacing()));
            double ahead = surface.angle(p.triangle(), to);
            double back = surface.angle(q.triangle(), to) + Math.PI;
            // Warp and weft leave on either side of the row: (n + 1, −n) above it, (n, −n − 1) below.
            meet(n, 0, ahead + aside, n + 1, 1, back - aside, -1);
            meet(n, 3, ahead - aside, n + 1, 2, back + aside, 1);
        }
        for (int n = 0; n < nodes.count; n++) {
            grown.add(n);
        }
        fill();
        return new ClothNet(surface, settings.spacing(), nodes, locked, overItself);
    }

    private boolean free(int n, int k) {
        return nodes.at(nodes.i[n] + NetNodes.STEP_I[k], nodes.j[n] + NetNodes.STEP_J[k]) < 0;
    }

    private int place(int i, int j, int triangle, double x, double y) {
        int n = nodes.add(i, j, triangle, x, y);
        surface.position(triangle, x, y, pa);
        near.add(n, pa);
        return n;
    }

    /** A straight thread from a node until it leaves the area. */
    private void arm(int from, int k, double direction) {
        int n = from;
        double angle = direction;
        while (true) {
            a.stand(nodes.triangle[n], nodes.x[n], nodes.y[n], angle);
            if (!a.walk(settings.spacing()) || !allowed[a.triangle]) {
                return;
            }
            int next = settle(nodes.i[n] + NetNodes.STEP_I[k], nodes.j[n] + NetNodes.STEP_J[k], a);
            if (next < 0) {
                return;
            }
            nodes.toward[4 * n + k] = angle;
            nodes.toward[4 * next + (k ^ 2)] = a.angle + Math.PI;
            n = next;
            angle = a.angle;
        }
    }

    private boolean carryOn(int n, int k) {
        double angle = nodes.toward[4 * n + (k ^ 2)] + Math.PI;
        a.stand(nodes.triangle[n], nodes.x[n], nodes.y[n], angle);
        if (!a.walk(settings.spacing()) || !allowed[a.triangle]) {
            return false;
        }
        int next = settle(nodes.i[n] + NetNodes.STEP_I[k], nodes.j[n] + NetNodes.STEP_J[k], a);
        if (next < 0) {
            return false;
        }
        nodes.toward[4 * n + k] = angle;
        nodes.toward[4 * next + (k ^ 2)] = a.angle + Math.PI;
        grown.add(next);
        return true;
    }

    /** A new node where a walker stands, unless cloth lies there already: then −1. */
    private int settle(int i, int j, Walker at) {
        surface.position(at.triangle, at.x, at.y, pa);
        int there = near.nearest(pa, OVER_ITSELF * settings.spacing());
        if (there >= 0) {
            overItself++;
            return -1;
        }
        return place(i, j, at.triangle, at.x, at.y);
    }

    private void fill() {
        while (!grown.isEmpty()) {
            int n = grown.poll();
            for (int k = 0; k < 4; k++) {
                if (free(n, k)) {
                    corner(n, k, (k + 1) & 3);
                    if (free(n, k)) {
                        corner(n, k, (k + 3) & 3);
                    }
                }
            }
        }
    }

    /**
     * Tries the crossing one step in direction k from node n by the cell on its side away from direction m: its threads
     * come from n along k and, along m, from the node that closes the cell.
     */
    private void corner(int n, int k, int m) {
        int oi = nodes.i[n] - NetNodes.STEP_I[m];
        int oj = nodes.j[n] - NetNodes.STEP_J[m];
        int o = nodes.at(oi, oj);
        int other = nodes.at(oi + NetNodes.STEP_I[k], oj + NetNodes.STEP_J[k]);
        if (o < 0
                || other < 0
                || !nodes.linked(o, k)
                || !nodes.linked(o, m)
                || !nodes.linked(n, m ^ 2)
                || !nodes.linked(other, k ^ 2)) {
            return;
        }
        // The parallelogram: each thread carried along the other's side of the cell.
        double opening = nodes.toward[4 * o + k] - nodes.toward[4 * o + m];
        double alongK = nodes.toward[4 * n + (m ^ 2)] + Math.PI + opening;
        double alongM = nodes.toward[4 * other + (k ^ 2)] + Math.PI - opening;
        double sense = Math.signum(Math.IEEEremainder(opening, 2 * Math.PI));
        int next = meet(n, k, alongK, other, m, alongM, sense);
        if (next >= 0) {
            grown.add(next);
        }
    }

    /**
     * Places the crossing where a thread from node n and one from another node meet, each one spacing long (Newton, by the
     * two angles at which they leave).
     *
     * @param sense +1 where at the new crossing direction k lies anticlockwise of m, −1 where clockwise
     * @return the new node, or −1
     */
    private int meet(int n, int k, double leavingK, int other, int m, double leavingM, double sense) {
        double d = settings.spacing();
        double gap = Double.POSITIVE_INFINITY;
        double alongK = leavingK;
        double alongM = leavingM;
        double bestK = alongK;
        double bestM = alongM;
        for (int step = 0; step < MOST_STEPS && gap > CLOSED; step++) {
            if (!walk(n, alongK, other, alongM)) {
                return -1;
            }
            surface.position(a.triangle, a.x, a.y, pa);
            surface.position(b.triangle, b.x, b.y, pb);
            surface.direction(a.triangle, a.angle + Math.PI / 2, da);
            surface.direction(b.triangle, b.angle + Math.PI / 2, db);
            double rx = pb[0] - pa[0];
            double ry = pb[1] - pa[1];
            double rz = pb[2] - pa[2];
            double now = Math.sqrt(rx * rx + ry * ry + rz * rz) / d;
            if (now < gap) {
                gap = now;
                bestK = alongK;
                bestM = alongM;
            }
            double ab = da[0] * db[0] + da[1] * db[1] + da[2] * db[2];
            double det = 1 - ab * ab;
            if (det < 1e-6) {
                break;
            }
            double ra = (rx * da[0] + ry * da[1] + rz * da[2]) / d;
            double rb = (rx * db[0] + ry * db[1] + rz * db[2]) / d;
            alongK += Math.clamp((ra - ab * rb) / det, -0.5, 0.5);
            alongM -= Math.clamp((rb - ab * ra) / det, -0.5, 0.5);
        }
        if (!(gap < CLOSED_BEHIND_A_CORNER) || !walk(n, bestK, other, bestM)) {
            locked++;
            return -1;
        }
        double arriving = intoTriangleOfA();
        double shear = Math.PI / 2 - sense * angleBetween(arriving, a.angle);
        if (Math.abs(shear) > settings.stop()) {
            locked++;
            return -1;
        }
        if (!allowed[a.triangle]) {
            return -1;
        }
        double leaving = a.angle + Math.PI;
        int next = settle(nodes.i[n] + NetNodes.STEP_I[k], nodes.j[n] + NetNodes.STEP_J[k], a);
        if (next >= 0) {
            nodes.toward[4 * n + k] = bestK;
            nodes.toward[4 * other + m] = bestM;
            nodes.toward[4 * next + (k ^ 2)] = leaving;
            nodes.toward[4 * next + (m ^ 2)] = arriving + Math.PI;
        }
        return next;
    }

    private boolean walk(int n, double alongK, int other, double alongM) {
        double d = settings.spacing();
        a.stand(nodes.triangle[n], nodes.x[n], nodes.y[n], alongK);
        b.stand(nodes.triangle[other], nodes.x[other], nodes.y[other], alongM);
        return a.walk(d) && b.walk(d);
    }

    /** The second walker's direction, in the triangle of the first. */
    private double intoTriangleOfA() {
        if (surface.touch(a.triangle, b.triangle)) {
            return b.angle + surface.turnInto(b.triangle, a.triangle);
        }
        surface.direction(b.triangle, b.angle, db);
        return surface.angle(a.triangle, db);
    }

    /** From one direction to another, in (−π, π]. */
    static double angleBetween(double from, double to) {
        return Math.IEEEremainder(to - from, 2 * Math.PI);
    }
}
