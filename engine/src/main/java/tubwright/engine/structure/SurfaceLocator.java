// SPDX-License-Identifier: Apache-2.0
package tubwright.engine.structure;

import java.util.Arrays;
import java.util.Optional;
import java.util.function.IntPredicate;
import tubwright.engine.mesh.Mesh;

/**
 * Finds the spot of a meshed surface that is closest to a point in space, so that meshes which do not share nodes can
 * be tied together. Elements are kept in a uniform grid of boxes; a search walks outward until no closer element can
 * exist.
 */
final class SurfaceLocator {
    /**
     * A spot on the mesh.
     *
     * @param element element index
     * @param weights interpolation weights of its corners (3 or 4)
     * @param point the spot itself, m
     * @param distance from the point asked for, m
     */
    record Spot(int element, double[] weights, double[] point, double distance) {}

    private static final int MOST_BOXES = 2_000_000;

    private final Mesh mesh;
    private final double[] low = new double[3];
    private final int[] boxes = new int[3];
    private final double boxSize;
    private final int[] boxStart;
    private final int[] boxElements;

    SurfaceLocator(Mesh mesh, IntPredicate candidate) {
        this.mesh = mesh;
        int elements = mesh.elementCount();
        int[] chosen = new int[elements];
        int count = 0;
        double sizeSum = 0;
        double[] high = new double[3];
        Arrays.fill(low, Double.POSITIVE_INFINITY);
        Arrays.fill(high, Double.NEGATIVE_INFINITY);
        double[] bounds = new double[6];
        for (int e = 0; e < elements; e++) {
            if (!candidate.test(e)) {
                continue;
            }
            chosen[count++] = e;
            bounds(e, bounds);
            sizeSum += Math.max(bounds[3] - bounds[0], Math.max(bounds[4] - bounds[1], bounds[5] - bounds[2]));
            for (int d = 0; d < 3; d++) {
                low[d] = Math.min(low[d], bounds[d]);
                high[d] = Math.max(high[d], bounds[3 + d]);
            }
        }
        double size = count == 0 ? 1 : Math.max(1.2 * sizeSum / count, 1e-9);
        double volume = 1;
        for (int d = 0; d < 3 && count > 0; d++) {
            volume *= Math.max(high[d] - low[d], size) / size;
        }
        boxSize = size * Math.cbrt(Math.max(1, volume / MOST_BOXES));
        for (int d = 0; d < 3; d++) {
            boxes[d] = count == 0 ? 1 : 1 + (int) Math.floor((high[d] - low[d]) / boxSize);
        }
        boxStart = new int[boxes[0] * boxes[1] * boxes[2] + 1];
        int[][] filled = {new int[0]};
        for (int pass = 0; pass < 2; pass++) {
            int[] next = pass == 0 ? null : Arrays.copyOf(boxStart, boxStart.length);
            for (int c = 0; c < count; c++) {
                bounds(chosen[c], bounds);
                for (int i = index(0, bounds[0]); i <= index(0, bounds[3]); i++) {
                    for (int j = index(1, bounds[1]); j <= index(1, bounds[4]); j++) {
                        for (int k = index(2, bounds[2]); k <= index(2, bounds[5]); k++) {
                            int box = (i * boxes[1] + j) * boxes[2] + k;
                            if (next == null) {
                                boxStart[box + 1]++;
                            } else {
                                filled[0][next[box]++] = chosen[c];
                            }
                        }
                    }
                }
            }
            if (pass == 0) {
                for (int b = 1; b < boxStart.length; b++) {
                    boxStart[b] += boxStart[b - 1];
                }
                filled[0] = new int[boxStart[boxStart.length - 1]];
            }
        }
        boxElements = filled[0];
    }

    /**
     * The closest spot within {@code reach} of a point.
     *
     * @param x 3 coordinates, m
     * @param reach m
     * @return the spot, or empty where no element is that close
     */
    Optional<Spot> closest(double[] x, double reach) {
        Spot best = null;
        double bestDistance = reach;
        int rings = 1 + (int) Math.ceil(reach / boxSize);
        int[] centre = {rawIndex(0, x[0]), rawIndex(1, x[1]), rawIndex(2, x[2])};
        for (int ring = 0; ring <= rings && (ring - 1) * boxSize <= bestDistance; ring++) {
            for (int i = centre[0] - ring; i <= centre[0] + ring; i++) {
                for (int j = centre[1] - ring; j <= centre[1] + ring; j++) {
                    boolean face = Math.abs(i - centre[0]) == ring || Math.abs(j - centre[1]) == ring;
                    int step = face || ring == 0 ? 1 : 2 * ring;
                    for (int k = centre[2] - ring; k <= centre[2] + ring; k += step) {
                        if (i < 0 || j < 0 || k < 0 || i >= boxes[0] || j >= boxes[1] || k >= boxes[2]) {
                            continue;
                        }
                        int box = (i * boxes[1] + j) * boxes[2] + k;
                        for (int n = boxStart[box]; n < boxStart[box + 1]; n++) {
                            Spot spot = project(boxElements[n], x);
                            boolean tieBreak =
                                    best != null && spot.distance() == bestDistance && spot.element() < best.element();
                            if (spot.distance() < bestDistance
                                    || tieBreak
                                    || best == null && spot.distance() <= reach) {
                                best = spot;
                                bestDistance = spot.distance();
                            }
                        }
                    }
                }
            }
        }
        return Optional.ofNullable(best);
    }

    private int rawIndex(int d, double value) {
        return (int) Math.floor((value - low[d]) / boxSize);
    }

    private int index(int d, double value) {
        return Math.clamp(rawIndex(d, value), 0, boxes[d] - 1);
    }

    private void bounds(int e, double[] out) {
        Arrays.fill(out, 0, 3, Double.POSITIVE_INFINITY);
        Arrays.fill(out, 3, 6, Double.NEGATIVE_INFINITY);
        for (int c = 0; c < mesh.cornerCount(e); c++) {
            int n = mesh.elementNodes()[4 * e + c];
            for (int d = 0; d < 3; d++) {
                out[d] = Math.min(out[d], mesh.nodes()[3 * n + d]);
                out[3 + d] = Math.max(out[3 + d], mesh.nodes()[3 * n + d]);
            }
        }
    }

    private Spot project(int e, double[] x) {
        return mesh.isTriangle(e) ? projectTriangle(e, x) : projectQuad(e, x);
    }

    /** Closest point of a bilinear patch by damped Gauss-Newton on its two parameters, kept inside the patch. */
    private Spot projectQuad(int e, double[] x) {
        double[] p = new double[12];
        for (int c = 0; c < 4; c++) {
            System.arraycopy(mesh.nodes(), 3 * mesh.elementNodes()[4 * e + c], p, 3 * c, 3);
        }
        double r = 0;
        double s = 0;
        double[] w = new double[4];
        for (int iteration = 0; iteration < 12; iteration++) {
            weights(r, s, w);
            double a = 0;
            double b = 0;
            double c = 0;
            double f = 0;
            double g = 0;
            for (int d = 0; d < 3; d++) {
                double gr = 0.25 * ((1 - s) * (p[3 + d] - p[d]) + (1 + s) * (p[6 + d] - p[9 + d]));
                double gs = 0.25 * ((1 - r) * (p[9 + d] - p[d]) + (1 + r) * (p[6 + d] - p[3 + d]));
                double gap = x[d] - (w[0] * p[d] + w[1] * p[3 + d] + w[2] * p[6 + d] + w[3] * p[9 + d]);
                a += gr * gr;
                b += gr * gs;
                c += gs * gs;
                f += gr * gap;
                g += gs * gap;
            }
            double det = a * c - b * b;
            double dr = (f * c - g * b) / det;
            double ds = (g * a - f * b) / det;
            // On an edge the step along it is taken alone, or the search would stop short of the closest point.
            if (Math.abs(r) == 1 && r * (r + dr) >= 1) {
                dr = 0;
                ds = g / c;
            } else if (Math.abs(s) == 1 && s * (s + ds) >= 1) {
                ds = 0;
                dr = f / a;
            }
            double nextR = Math.clamp(r + dr, -1, 1);
            double nextS = Math.clamp(s + ds, -1, 1);
            double moved = Math.abs(nextR - r) + Math.abs(nextS - s);
            r = nextR;
            s = nextS;
            if (moved < 1e-12) {
                break;
            }
        }
        weights(r, s, w);
        return spot(e, w, x);
    }

    private static void weights(double r, double s, double[] w) {
        w[0] = 0.25 * (1 - r) * (1 - s);
        w[1] = 0.25 * (1 + r) * (1 - s);
        w[2] = 0.25 * (1 + r) * (1 + s);
        w[3] = 0.25 * (1 - r) * (1 + s);
    }

    /** Closest point of a triangle by its barycentric regions (Ericson 2005, section 5.1.5). */
    private Spot projectTriangle(int e, double[] x) {
        double[] p = new double[9];
        for (int c = 0; c < 3; c++) {
            System.arraycopy(mesh.nodes(), 3 * mesh.elementNodes()[4 * e + c], p, 3 * c, 3);
        }
        double d1 = 0;
        double d2 = 0;
        double d3 = 0;
        double d4 = 0;
        double d5 = 0;
        double d6 = 0;
        for (int d = 0; d < 3; d++) {
            double ab = p[3 + d] - p[d];
            double ac = p[6 + d] - p[d];
            d1 += ab * (x[d] - p[d]);
            d2 += ac * (x[d] - p[d]);
            d3 += ab * (x[d] - p[3 + d]);
            d4 += ac * (x[d] - p[3 + d]);
            d5 += ab * (x[d] - p[6 + d]);
            d6 += ac * (x[d] - p[6 + d]);
        }
        double va = d3 * d6 - d5 * d4;
        double vb = d5 * d2 - d1 * d6;
        double vc = d1 * d4 - d3 * d2;
        double v;
        double w;
        if (d1 <= 0 && d2 <= 0) {
            v = 0;
            w = 0;
        } else if (d3 >= 0 && d4 <= d3) {
            v = 1;
            w = 0;
        } else if (vc <= 0 && d1 >= 0 && d3 <= 0) {
            v = d1 / (d1 - d3);
            w = 0;
        } else if (d6 >= 0 && d5 <= d6) {
            v = 0;
            w = 1;
        } else if (vb <= 0 && d2 >= 0 && d6 <= 0) {
            v = 0;
            w = d2 / (d2 - d6);
        } else if (va <= 0 && d4 - d3 >= 0 && d5 - d6 >= 0) {
            w = (d4 - d3) / ((d4 - d3) + (d5 - d6));
            v = 1 - w;
        } else {
            double sum = va + vb + vc;
            v = vb / sum;
            w = vc / sum;
        }
        return spot(e, new double[] {1 - v - w, v, w}, x);
    }

    private Spot spot(int e, double[] w, double[] x) {
        double[] point = new double[3];
        double distance = 0;
        for (int d = 0; d < 3; d++) {
            for (int c = 0; c < w.length; c++) {
                point[d] += w[c] * mesh.nodes()[3 * mesh.elementNodes()[4 * e + c] + d];
            }
            distance += (point[d] - x[d]) * (point[d] - x[d]);
        }
        return new Spot(e, w, point, Math.sqrt(distance));
    }
}
