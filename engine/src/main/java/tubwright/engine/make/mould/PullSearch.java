// SPDX-License-Identifier: Apache-2.0
package tubwright.engine.make.mould;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import tubwright.engine.mesh.Mesh;

/**
 * Finds along which direction a piece comes out best: little area that faces the wrong way, little with less draft than is
 * wanted, then the largest least draft; not more than 45° from where the piece opens to (a trough is not drawn out
 * lengthwise), and in the plane between its halves where it has both. Directions spread evenly over the sphere (a Fibonacci
 * lattice) are tried, the best is improved by smaller and smaller steps, and an axis of the car is taken instead where it
 * does about as well.
 */
public final class PullSearch {
    private static final int TRIED = 600;
    private static final double[][] AXES = {{0, 0, 1}, {0, 0, -1}, {-1, 0, 0}, {1, 0, 0}, {0, 1, 0}, {0, -1, 0}};
    private static final int MOST_PARTS = 4;
    private static final double SHUT = 0.05;

    /** Unit normals of the elements at their middles, and their areas. */
    private final double[] normals;

    private final double[] areas;
    /** Where the piece opens to: less the sum of its normals, by area. Next to nothing for a tube. */
    private final double[] opens = new double[3];

    private final double wanted;
    private final boolean bothHalves;

    private PullSearch(PieceFace face, double wanted) {
        Mesh mesh = face.mesh();
        this.wanted = Math.sin(wanted);
        areas = new double[face.elements().length];
        normals = new double[3 * areas.length];
        double whole = face.area();
        double left = 0;
        for (int i = 0; i < areas.length; i++) {
            int e = face.elements()[i];
            areas[i] = mesh.area(e) / whole;
            left += mesh.region(e).mirrored() ? areas[i] : 0;
            double sum = 0;
            for (int d = 0; d < 3; d++) {
                for (int k = 0; k < mesh.cornerCount(e); k++) {
                    normals[3 * i + d] += mesh.cornerNormals()[12 * e + 3 * k + d];
                }
                sum += normals[3 * i + d] * normals[3 * i + d];
            }
            for (int d = 0; d < 3; d++) {
                normals[3 * i + d] /= Math.sqrt(sum);
                opens[d] -= areas[i] * normals[3 * i + d];
            }
        }
        bothHalves = Math.abs(left - 0.5) < 0.05;
    }

    /** The best direction, a unit vector. */
    public static double[] best(PieceFace face, double wanted) {
        PullSearch search = new PullSearch(face, wanted);
        double[] best = AXES[0];
        for (double[] each : directions()) {
            double[] in = search.inPlane(each);
            best = search.cost(in) < search.cost(best) ? in : best;
        }
        for (double step = 0.08; step > 1e-3; step /= 2) {
            for (double[] toward : AXES) {
                double[] near = search.inPlane(
                        unit(best[0] + step * toward[0], best[1] + step * toward[1], best[2] + step * toward[2]));
                best = search.cost(near) < search.cost(best) ? near : best;
            }
        }
        for (double[] axis : AXES) {
            // The plain axis is handier: a mould is set up by it, and a slanted pull that frees little more is not
            // worth it.
            if (search.cost(axis) < 1.25 * Math.max(0, search.cost(best)) + 0.002) {
                return axis;
            }
        }
        return best;
    }

    private double[] inPlane(double[] d) {
        return bothHalves && Math.abs(d[1]) < 0.99 ? unit(d[0], 0, d[2]) : d;
    }

    private double cost(double[] d) {
        double wrong = 0;
        double little = 0;
        double most = -1;
        for (int i = 0; i < areas.length; i++) {
            double along = normals[3 * i] * d[0] + normals[3 * i + 1] * d[1] + normals[3 * i + 2] * d[2];
            wrong += areas[i] * Math.max(0, along);
            little += areas[i] * (along + wanted > 0 ? 2 + along + wanted : 0);
            most = Math.max(most, along);
        }
        double along = d[0] * opens[0] + d[1] * opens[1] + d[2] * opens[2];
        double size = Math.sqrt(opens[0] * opens[0] + opens[1] * opens[1] + opens[2] * opens[2]);
        double aside = size > SHUT && along < size * Math.sqrt(0.5) ? 10 : 0;
        return 10 * wrong + little + 1e-3 * most + aside;
    }

    /**
     * A part of a mould.
     *
     * @param pull direction along which it leaves the piece's face
     * @param share of the face that it can be
     */
    public record Part(double[] pull, double share) {}

    /**
     * A mould in parts: the given direction first, then the directions that free most of what is left, until a hundredth of
     * the face is left or there are four.
     */
    public static List<Part> parts(PieceFace face, double[] first) {
        PullSearch search = new PullSearch(face, 0);
        boolean[] left = new boolean[search.areas.length];
        Arrays.fill(left, true);
        List<Part> parts = new ArrayList<>(List.of(new Part(first, search.freed(first, left))));
        search.free(first, left);
        double rest = 1 - parts.getFirst().share();
        while (rest > 0.01 && parts.size() < MOST_PARTS) {
            double[] best = AXES[0];
            for (double[] each : directions()) {
                best = search.freed(each, left) > search.freed(best, left) + 1e-6 ? each : best;
            }
            parts.add(new Part(best, search.freed(best, left)));
            rest -= parts.getLast().share();
            search.free(best, left);
        }
        return parts;
    }

    private double freed(double[] d, boolean[] among) {
        double area = 0;
        for (int i = 0; i < areas.length; i++) {
            area += among[i] && leaves(i, d) ? areas[i] : 0;
        }
        return area;
    }

    private void free(double[] d, boolean[] left) {
        for (int i = 0; i < areas.length; i++) {
            left[i] &= !leaves(i, d);
        }
    }

    private boolean leaves(int i, double[] d) {
        return normals[3 * i] * d[0] + normals[3 * i + 1] * d[1] + normals[3 * i + 2] * d[2] <= Math.sin(Draft.UPRIGHT);
    }

    private static List<double[]> directions() {
        List<double[]> all = new ArrayList<>(List.of(AXES));
        double golden = Math.PI * (3 - Math.sqrt(5));
        for (int i = 0; i < TRIED; i++) {
            double z = 1 - 2 * (i + 0.5) / TRIED;
            double r = Math.sqrt(1 - z * z);
            all.add(new double[] {r * Math.cos(golden * i), r * Math.sin(golden * i), z});
        }
        return all;
    }

    private static double[] unit(double x, double y, double z) {
        double l = Math.sqrt(x * x + y * y + z * z);
        return new double[] {x / l, y / l, z / l};
    }
}
