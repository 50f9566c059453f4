// SPDX-License-Identifier: Apache-2.0
package tubwright.engine.make.drape;

import java.util.Optional;

/** Finds where in a net, and so in the flat cloth, a point of the surface lies. */
public final class NetLocator {
    /** How far past the last whole cell a place is still told, in cells. */
    private static final double PAST = 1.0;

    private final ClothNet net;
    private final NearNodes middles;
    private final double[] corners;

    public NetLocator(ClothNet net) {
        this.net = net;
        corners = new double[12 * net.cellCount()];
        middles = new NearNodes(1.5 * net.spacing());
        double[] p = new double[3];
        double[] middle = new double[3];
        for (int c = 0; c < net.cellCount(); c++) {
            int[] four = net.cell(c);
            java.util.Arrays.fill(middle, 0);
            for (int k = 0; k < 4; k++) {
                net.position(four[k], p);
                System.arraycopy(p, 0, corners, 12 * c + 3 * k, 3);
                for (int i = 0; i < 3; i++) {
                    middle[i] += p[i] / 4;
                }
            }
            middles.add(c, middle);
        }
    }

    /**
     * A place in the net.
     *
     * @param cell the cell it lies in, or the nearest
     * @param u along the warp from the start in the flat cloth, m
     * @param v along the weft, m
     * @param off distance of the point from the cell, m
     */
    public record Place(int cell, double u, double v, double off) {}

    /** The place of a point of the surface; empty where the net does not reach. */
    public Optional<Place> of(double[] point) {
        double[] best = {-1, 0, 0, Double.POSITIVE_INFINITY, Double.POSITIVE_INFINITY};
        double[] at = new double[2];
        middles.each(point, (c, apart) -> {
            // A cell's sides are no longer than the spacing: so much it costs at least to be so far from its middle.
            if ((apart - net.spacing()) / 2 > best[4]) {
                return;
            }
            double off = inCell(c, point, at);
            double out = Math.max(0, Math.max(Math.abs(at[0] - 0.5), Math.abs(at[1] - 0.5)) - 0.5);
            double cost = out * net.spacing() + off;
            if (out <= PAST && cost < best[4]) {
                best[0] = c;
                best[1] = at[0];
                best[2] = at[1];
                best[3] = off;
                best[4] = cost;
            }
        });
        if (best[0] < 0 || best[3] > net.spacing()) {
            return Optional.empty();
        }
        int c = (int) best[0];
        int low = net.cell(c)[0];
        return Optional.of(new Place(
                c,
                (net.warpSteps(low) + best[1]) * net.spacing(),
                (net.weftSteps(low) + best[2]) * net.spacing(),
                best[3]));
    }

    /** Directions of warp and weft in space at a place, as long as one spacing is there. */
    public double[][] threads(Place place) {
        int c = place.cell();
        int low = net.cell(c)[0];
        double u = place.u() / net.spacing() - net.warpSteps(low);
        double v = place.v() / net.spacing() - net.weftSteps(low);
        double[][] two = new double[2][3];
        for (int i = 0; i < 3; i++) {
            double a = corners[12 * c + i];
            double b = corners[12 * c + 3 + i];
            double d = corners[12 * c + 6 + i];
            double e = corners[12 * c + 9 + i];
            two[0][i] = (1 - v) * (b - a) + v * (d - e);
            two[1][i] = (1 - u) * (e - a) + u * (d - b);
        }
        return two;
    }

    /** Inverse of the cell's bilinear map, by least squares in space; the distance left over. */
    private double inCell(int c, double[] p, double[] at) {
        double u = 0.5;
        double v = 0.5;
        double rest = 0;
        for (int step = 0; step < 5; step++) {
            double uu = 0;
            double uv = 0;
            double vv = 0;
            double ru = 0;
            double rv = 0;
            rest = 0;
            for (int i = 0; i < 3; i++) {
                double a = corners[12 * c + i];
                double b = corners[12 * c + 3 + i];
                double d = corners[12 * c + 6 + i];
                double e = corners[12 * c + 9 + i];
                double x = (1 - u) * (1 - v) * a + u * (1 - v) * b + u * v * d + (1 - u) * v * e;
                double du = (1 - v) * (b - a) + v * (d - e);
                double dv = (1 - u) * (e - a) + u * (d - b);
                double r = p[i] - x;
                uu += du * du;
                uv += du * dv;
                vv += dv * dv;
                ru += du * r;
                rv += dv * r;
                rest += r * r;
            }
            double det = uu * vv - uv * uv;
            if (!(det > 1e-9 * uu * vv)) {
                at[0] = Double.MAX_VALUE;
                at[1] = Double.MAX_VALUE;
                return Double.POSITIVE_INFINITY;
            }
            double stepU = (vv * ru - uv * rv) / det;
            double stepV = (uu * rv - uv * ru) / det;
            rest -= stepU * ru + stepV * rv;
            u = Math.clamp(u + stepU, -3.0, 4.0);
            v = Math.clamp(v + stepV, -3.0, 4.0);
            if (Math.abs(stepU) + Math.abs(stepV) < 1e-12) {
                break;
            }
        }
        at[0] = u;
        at[1] = v;
        return Math.sqrt(Math.max(0, rest));
    }
}
