// SPDX-License-Identifier: Apache-2.0
package tubwright.engine.make.drape;

import java.util.Arrays;
import java.util.List;
import tubwright.engine.make.surface.SurfacePoint;
import tubwright.engine.make.surface.TriangleSurface;

/**
 * A cloth ply as a pin-jointed net on a surface. Crossing (i, j) lies i spacings along the warp and j along the weft from
 * the start, which is also its place in the flat cloth. Immutable.
 *
 * <p>Shear of a cell is 90° less the angle from warp to weft, in radians: positive where they close up, negative where
 * they open.
 */
public final class ClothNet {
    private final TriangleSurface surface;
    private final double spacing;
    private final NetNodes nodes;
    private final int locked;
    private final int overItself;
    /** The node at the low corner of every whole cell. */
    private final int[] cells;

    private final double[] shear;

    ClothNet(TriangleSurface surface, double spacing, NetNodes nodes, int locked, int overItself) {
        this.surface = surface;
        this.spacing = spacing;
        this.nodes = nodes;
        this.locked = locked;
        this.overItself = overItself;
        int[] found = new int[nodes.count];
        double[] angles = new double[nodes.count];
        int n = 0;
        for (int o = 0; o < nodes.count; o++) {
            int[] c = corners(o);
            if (c.length == 4) {
                // Second order at the cell's middle: the sum of the four is 2π and the cell's curvature.
                double low = cornerAngle(c[0], 0, 1) + cornerAngle(c[2], 2, 3);
                double high = cornerAngle(c[1], 1, 2) + cornerAngle(c[3], 3, 0);
                found[n] = o;
                angles[n++] = (high - low) / 4;
            }
        }
        cells = Arrays.copyOf(found, n);
        shear = Arrays.copyOf(angles, n);
    }

    /**
     * Lays a net.
     *
     * @param surface what it lies on
     * @param allowed triangles it may reach; let them run a spacing or two past the ply's edge
     * @param start of the net
     * @param warp direction of the warp in the start's triangle, rad
     * @param settings spacing, and shear at which it stops
     */
    public static ClothNet lay(
            TriangleSurface surface, boolean[] allowed, SurfacePoint start, double warp, NetSettings settings) {
        if (!allowed[start.triangle()]) {
            throw new IllegalArgumentException("the start of the net lies outside its area");
        }
        return new NetMaker(surface, allowed, settings).lay(start, warp);
    }

    /**
     * Lays a net from a row of crossings along its bias, such as a ring round the tub: no thread runs straight of itself.
     *
     * @param row crossings one behind the other; neighbours nearer than two spacings
     */
    public static ClothNet layAlong(
            TriangleSurface surface, boolean[] allowed, List<SurfacePoint> row, NetSettings settings) {
        return new NetMaker(surface, allowed, settings).layAlong(row);
    }

    /** Nodes of the cell whose low corner is node o, anticlockwise in the flat; empty where a thread is missing. */
    private int[] corners(int o) {
        if (!nodes.linked(o, 0) || !nodes.linked(o, 1)) {
            return new int[0];
        }
        int i = nodes.i[o];
        int j = nodes.j[o];
        int p = nodes.at(i + 1, j);
        int q = nodes.at(i + 1, j + 1);
        int r = nodes.at(i, j + 1);
        boolean whole = p >= 0
                && q >= 0
                && r >= 0
                && nodes.linked(p, 1)
                && nodes.linked(q, 2)
                && nodes.linked(q, 3)
                && nodes.linked(r, 0);
        return whole ? new int[] {o, p, q, r} : new int[0];
    }

    /** The angle at a node from thread k to thread m, without regard to which way the surface is seen, rad. */
    private double cornerAngle(int node, int k, int m) {
        return Math.abs(NetMaker.angleBetween(nodes.toward[4 * node + k], nodes.toward[4 * node + m]));
    }

    /** The surface it lies on. */
    public TriangleSurface surface() {
        return surface;
    }

    /** Distance of neighbouring crossings along either thread, m. */
    public double spacing() {
        return spacing;
    }

    /** Number of crossings. */
    public int nodeCount() {
        return nodes.count;
    }

    /** The crossing at a place of the lattice; −1 where the net does not reach. */
    public int node(int i, int j) {
        return nodes.at(i, j);
    }

    /** Steps along the warp from the start. */
    public int warpSteps(int node) {
        return nodes.i[node];
    }

    /** Steps along the weft from the start. */
    public int weftSteps(int node) {
        return nodes.j[node];
    }

    /** Where a crossing lies. */
    public SurfacePoint place(int node) {
        return new SurfacePoint(nodes.triangle[node], nodes.x[node], nodes.y[node]);
    }

    /** Where a crossing lies in space, m. */
    public void position(int node, double[] xyz) {
        surface.position(nodes.triangle[node], nodes.x[node], nodes.y[node], xyz);
    }

    /** Direction of a thread at a crossing in its triangle, rad: 0 on along the warp, 1 along the weft, 2 and 3 back. */
    public double threadDirection(int node, int thread) {
        return nodes.toward[4 * node + thread];
    }

    /** Number of whole cells. */
    public int cellCount() {
        return cells.length;
    }

    /** The four crossings of a cell, anticlockwise in the flat, the lowest first. */
    public int[] cell(int cell) {
        return corners(cells[cell]);
    }

    /** Shear of a cell at its middle, rad. */
    public double shear(int cell) {
        return shear[cell];
    }

    /** Shear at a crossing, rad, from the angles of the cells round it; not a number where no cell touches it. */
    public double shearAt(int node) {
        double sum = 0;
        int count = 0;
        for (int k = 0; k < 4; k++) {
            int m = (k + 1) & 3;
            if (nodes.linked(node, k) && nodes.linked(node, m)) {
                double angle = cornerAngle(node, k, m);
                sum += (k & 1) == 0 ? Math.PI / 2 - angle : angle - Math.PI / 2;
                count++;
            }
        }
        return count == 0 ? Double.NaN : sum / count;
    }

    /** How often the net could not be carried on because its threads would lock or not meet. */
    public int locked() {
        return locked;
    }

    /** How often the net was stopped because it came upon itself, as round a closed tube or a hole. */
    public int overItself() {
        return overItself;
    }
}
