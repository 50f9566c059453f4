// SPDX-License-Identifier: Apache-2.0
package tubwright.engine.structure;

import java.util.stream.IntStream;
import tubwright.engine.mesh.Mesh;

/** Where a spread force acts, and how far that place moves. */
public final class SpreadPlace {
    private SpreadPlace() {}

    /**
     * Elements of the named parts whose middles lie in the box. Where a pad is smaller than the mesh is fine, the element whose
     * middle lies nearest to its middle, if that is no farther than the element is large.
     */
    public static int[] elements(Mesh mesh, Case.Spread spread) {
        int[] inside = candidates(mesh, spread)
                .filter(e -> {
                    double[] x = middle(mesh, e);
                    return IntStream.range(0, 3).allMatch(d -> x[d] >= spread.low()[d] && x[d] <= spread.high()[d]);
                })
                .toArray();
        if (inside.length > 0) {
            return inside;
        }
        int nearest = -1;
        double best = Double.POSITIVE_INFINITY;
        for (int e : candidates(mesh, spread).toArray()) {
            double[] x = middle(mesh, e);
            double sum = 0;
            for (int d = 0; d < 3; d++) {
                double out = Math.max(0, Math.max(spread.low()[d] - x[d], x[d] - spread.high()[d]));
                sum += out * out;
            }
            if (sum < best) {
                best = sum;
                nearest = e;
            }
        }
        return nearest >= 0 && best <= mesh.area(nearest) ? new int[] {nearest} : new int[0];
    }

    /**
     * How far the place of a spread force goes along it, m: the mean over its area.
     *
     * @param u displacements, 6 per node
     */
    public static double movement(Mesh mesh, Case.Spread spread, double[] u) {
        double force = Vectors.length(spread.force());
        double area = 0;
        double sum = 0;
        for (int e : elements(mesh, spread)) {
            int corners = mesh.cornerCount(e);
            area += mesh.area(e);
            for (int c = 0; c < corners; c++) {
                int n = mesh.elementNodes()[4 * e + c];
                for (int d = 0; d < 3; d++) {
                    sum += mesh.area(e) / corners * u[6 * n + d] * spread.force()[d] / force;
                }
            }
        }
        return sum / area;
    }

    private static IntStream candidates(Mesh mesh, Case.Spread spread) {
        return IntStream.range(0, mesh.elementCount())
                .filter(e -> spread.on().isEmpty()
                        || spread.on().contains(mesh.region(e).part()));
    }

    private static double[] middle(Mesh mesh, int e) {
        int corners = mesh.cornerCount(e);
        double[] x = new double[3];
        for (int c = 0; c < corners; c++) {
            for (int d = 0; d < 3; d++) {
                x[d] += mesh.nodes()[3 * mesh.elementNodes()[4 * e + c] + d] / corners;
            }
        }
        return x;
    }
}
