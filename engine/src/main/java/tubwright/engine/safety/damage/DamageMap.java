// SPDX-License-Identifier: Apache-2.0
package tubwright.engine.safety.damage;

import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import tubwright.engine.mesh.Mesh;
import tubwright.engine.response.Reserve;

/**
 * What the patches of a scan cost, laid back on the tub: of every element the worst of the patches that take it; an element
 * that none takes has what the patch nearest to it has.
 *
 * @param lost share of torsional stiffness, one an element; not a number where it is not known
 * @param reserve lowest reserve factor with the damage, one an element; infinite where nothing fails, 0 where something is
 *     left loose
 */
public record DamageMap(double[] lost, double[] reserve) {
    /** Of a scan. */
    public static DamageMap of(Mesh mesh, List<PatchAnswer> scan) {
        int count = mesh.elementCount();
        double[] lost = new double[count];
        double[] reserve = new double[count];
        boolean[] taken = new boolean[count];
        Arrays.fill(lost, Double.NaN);
        Arrays.fill(reserve, Double.POSITIVE_INFINITY);
        for (PatchAnswer each : scan) {
            for (int e : each.patch().elements()) {
                taken[e] = true;
                lower(e, each, lost, reserve);
            }
        }
        for (int e = 0; e < count; e++) {
            if (!taken[e]) {
                int element = e;
                nearest(mesh, e, scan).ifPresent(p -> lower(element, p, lost, reserve));
            }
        }
        return new DamageMap(lost, reserve);
    }

    private static void lower(int e, PatchAnswer answer, double[] lost, double[] reserve) {
        double share = answer.torsionLost();
        if (!Double.isNaN(share) && !(lost[e] >= share)) {
            lost[e] = share;
        }
        reserve[e] = Math.min(reserve[e], reserve(answer));
    }

    /** Lowest reserve factor after a hit; infinite where nothing fails, 0 where something is left loose. */
    public static double reserve(PatchAnswer answer) {
        if (answer.loose()) {
            return 0;
        }
        return answer.worst()
                .flatMap(PatchAnswer.UnderLoad::after)
                .map(Reserve::value)
                .orElse(Double.POSITIVE_INFINITY);
    }

    private static Optional<PatchAnswer> nearest(Mesh mesh, int e, List<PatchAnswer> scan) {
        double[] x = new double[3];
        for (int c = 0; c < mesh.cornerCount(e); c++) {
            for (int d = 0; d < 3; d++) {
                x[d] += mesh.nodes()[3 * mesh.elementNodes()[4 * e + c] + d] / mesh.cornerCount(e);
            }
        }
        PatchAnswer best = null;
        double least = Double.POSITIVE_INFINITY;
        for (PatchAnswer each : scan) {
            double[] p = each.patch().place();
            double apart = Math.hypot(Math.hypot(p[0] - x[0], p[1] - x[1]), p[2] - x[2])
                    + (each.patch().region().equals(mesh.region(e).zone()) ? 0 : 0.1);
            if (apart < least) {
                least = apart;
                best = each;
            }
        }
        return Optional.ofNullable(best);
    }
}
