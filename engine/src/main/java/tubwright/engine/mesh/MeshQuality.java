// SPDX-License-Identifier: Apache-2.0
package tubwright.engine.mesh;

import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import tubwright.engine.shape.PlacedWall;
import tubwright.engine.shape.TubShape;

/**
 * How good a mesh is.
 *
 * @param nodes number of nodes
 * @param quads number of quadrilaterals
 * @param triangles number of triangles
 * @param aspect longest over shortest side
 * @param skew largest difference of a corner from 90 degrees (60 in a triangle), degrees
 * @param warp angle between the two triangles a quadrilateral is folded into along a diagonal, the larger of the two ways,
 *     degrees
 * @param corner smallest corner angle, degrees
 * @param areas mesh area against exact area by strip and wall
 */
public record MeshQuality(
        int nodes,
        int quads,
        int triangles,
        Spread aspect,
        Spread skew,
        Spread warp,
        Spread corner,
        List<PartArea> areas) {

    public MeshQuality {
        areas = List.copyOf(areas);
    }

    /**
     * A measure over all elements.
     *
     * @param least smallest value
     * @param mean mean value
     * @param most largest value
     * @param worst number of the worst element
     * @param worstAt its centre, m, 3 numbers
     */
    public record Spread(double least, double mean, double most, int worst, double[] worstAt) {}

    /**
     * Area of a part.
     *
     * @param part strip (both sides) or wall (both twins)
     * @param mesh area of its elements, m²
     * @param exact area of the true surface, openings and holes taken out, m²
     */
    public record PartArea(String part, double mesh, double exact) {
        /** Mesh area less exact area, per cent of the exact one. */
        public double errorPercent() {
            return 100 * (mesh - exact) / exact;
        }
    }

    /** Measures a mesh; areas of parts are held against the shape it was made from. */
    public static MeshQuality of(Mesh mesh, TubShape shape) {
        int n = mesh.elementCount();
        Gauge aspect = new Gauge(true);
        Gauge skew = new Gauge(true);
        Gauge warp = new Gauge(true);
        Gauge corner = new Gauge(false);
        int triangles = 0;
        Map<String, Double> area = new LinkedHashMap<>();
        for (int k = 0; k < shape.strips().size(); k++) {
            area.put(shape.strips().get(k), 0.0);
        }
        for (PlacedWall wall : shape.placedWalls()) {
            area.put(wall.wall().name(), 0.0);
        }
        double[] byRegion = new double[mesh.regions().size()];
        for (int e = 0; e < n; e++) {
            int c = mesh.cornerCount(e);
            triangles += c == 3 ? 1 : 0;
            double shortest = Double.POSITIVE_INFINITY;
            double longest = 0;
            double worstSkew = 0;
            double least = 180;
            for (int i = 0; i < c; i++) {
                int p = 3 * mesh.elementNodes()[4 * e + (i + c - 1) % c];
                int q = 3 * mesh.elementNodes()[4 * e + i];
                int r = 3 * mesh.elementNodes()[4 * e + (i + 1) % c];
                double length = distance(mesh.nodes(), q, r);
                shortest = Math.min(shortest, length);
                longest = Math.max(longest, length);
                double angle = angle(mesh.nodes(), p, q, r);
                least = Math.min(least, angle);
                worstSkew = Math.max(worstSkew, Math.abs(angle - (c == 3 ? 60 : 90)));
            }
            aspect.add(e, longest / shortest);
            skew.add(e, worstSkew);
            corner.add(e, least);
            warp.add(e, c == 3 ? 0 : warp(mesh, e));
            byRegion[mesh.elementRegions()[e]] += mesh.area(e);
        }
        for (int r = 0; r < byRegion.length; r++) {
            area.merge(mesh.regions().get(r).part(), byRegion[r], Double::sum);
        }
        return new MeshQuality(
                mesh.nodeCount(),
                n - triangles,
                triangles,
                aspect.spread(mesh),
                skew.spread(mesh),
                warp.spread(mesh),
                corner.spread(mesh),
                areas(area, shape));
    }

    private static List<PartArea> areas(Map<String, Double> area, TubShape shape) {
        return area.entrySet().parallelStream()
                .map(each -> new PartArea(each.getKey(), each.getValue(), exact(shape, each.getKey())))
                .toList();
    }

    private static double exact(TubShape shape, String part) {
        return shape.strip(part)
                .map(shape::netStripArea)
                .orElseGet(() -> shape.placedWalls().stream()
                        .filter(w -> w.wall().name().equals(part))
                        .mapToDouble(PlacedWall::area)
                        .sum());
    }

    private static double distance(double[] x, int p, int q) {
        double dx = x[p] - x[q];
        double dy = x[p + 1] - x[q + 1];
        double dz = x[p + 2] - x[q + 2];
        return Math.sqrt(dx * dx + dy * dy + dz * dz);
    }

    private static double angle(double[] x, int p, int q, int r) {
        double ux = x[p] - x[q];
        double uy = x[p + 1] - x[q + 1];
        double uz = x[p + 2] - x[q + 2];
        double vx = x[r] - x[q];
        double vy = x[r + 1] - x[q + 1];
        double vz = x[r + 2] - x[q + 2];
        double dot = ux * vx + uy * vy + uz * vz;
        double l = Math.sqrt((ux * ux + uy * uy + uz * uz) * (vx * vx + vy * vy + vz * vz));
        return Math.toDegrees(Math.acos(Math.clamp(dot / l, -1.0, 1.0)));
    }

    private static double warp(Mesh mesh, int e) {
        int[] c = mesh.elementNodes();
        double[] x = mesh.nodes();
        int p = 3 * c[4 * e];
        int q = 3 * c[4 * e + 1];
        int r = 3 * c[4 * e + 2];
        int s = 3 * c[4 * e + 3];
        return Math.max(
                between(normal(x, p, q, r), normal(x, p, r, s)), between(normal(x, q, r, s), normal(x, q, s, p)));
    }

    private static double[] normal(double[] x, int p, int q, int r) {
        double ux = x[q] - x[p];
        double uy = x[q + 1] - x[p + 1];
        double uz = x[q + 2] - x[p + 2];
        double vx = x[r] - x[p];
        double vy = x[r + 1] - x[p + 1];
        double vz = x[r + 2] - x[p + 2];
        return new double[] {uy * vz - uz * vy, uz * vx - ux * vz, ux * vy - uy * vx};
    }

    private static double between(double[] a, double[] b) {
        double cx = a[1] * b[2] - a[2] * b[1];
        double cy = a[2] * b[0] - a[0] * b[2];
        double cz = a[0] * b[1] - a[1] * b[0];
        double dot = a[0] * b[0] + a[1] * b[1] + a[2] * b[2];
        return Math.toDegrees(Math.atan2(Math.sqrt(cx * cx + cy * cy + cz * cz), dot));
    }

    /** Gathers one measure. */
    private static final class Gauge {
        private final boolean highIsBad;
        private double least = Double.POSITIVE_INFINITY;
        private double most = Double.NEGATIVE_INFINITY;
        private double sum;
        private int count;
        private int worst;

        Gauge(boolean highIsBad) {
            this.highIsBad = highIsBad;
        }

        void add(int element, double value) {
            if (highIsBad ? value > most : value < least) {
                worst = element;
            }
            least = Math.min(least, value);
            most = Math.max(most, value);
            sum += value;
            count++;
        }

        Spread spread(Mesh mesh) {
            double[] at = new double[3];
            int c = mesh.cornerCount(worst);
            for (int i = 0; i < c; i++) {
                for (int j = 0; j < 3; j++) {
                    at[j] += mesh.nodes()[3 * mesh.elementNodes()[4 * worst + i] + j] / c;
                }
            }
            return new Spread(least, sum / count, most, worst, at);
        }
    }
}
