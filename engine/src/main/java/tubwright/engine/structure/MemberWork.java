// SPDX-License-Identifier: Apache-2.0
package tubwright.engine.structure;

import java.util.ArrayList;
import java.util.List;

/** Forces and work of the members (ties and bars) of each part, for methods that vary a part's stiffness as a whole. */
public final class MemberWork {
    private final List<List<Member>> ofPart = new ArrayList<>();

    public MemberWork(Structure structure) {
        structure.parts().forEach(_ -> ofPart.add(new ArrayList<>()));
        structure.members().forEach(m -> ofPart.get(m.owner()).add(m));
    }

    /** Whether a part has members. */
    public boolean present(int part) {
        return !ofPart.get(part).isEmpty();
    }

    /**
     * Work of the forces of one displacement field over another, uᵀ K_part v, J.
     *
     * @param part index into {@link Structure#parts()}
     * @param u displacements, 6 per node
     * @param v displacements, 6 per node
     */
    public double between(int part, double[] u, double[] v) {
        double work = 0;
        for (Member member : ofPart.get(part)) {
            int n = 6 * member.nodes().length;
            double[] k = member.matrix();
            for (int i = 0; i < n; i++) {
                double ui = u[unknown(member, i)];
                if (ui == 0) {
                    continue;
                }
                double force = 0;
                for (int j = 0; j < n; j++) {
                    force += k[i * n + j] * v[unknown(member, j)];
                }
                work += ui * force;
            }
        }
        return work;
    }

    /**
     * The work of every pair of many fields, v_iᵀ K_part v_j with i ≤ j, pairs in rows, J.
     *
     * @param fields displacements, 6 per node
     */
    public double[] between(int part, double[][] fields) {
        int count = fields.length;
        double[] work = new double[count * (count + 1) / 2];
        for (Member member : ofPart.get(part)) {
            int n = 6 * member.nodes().length;
            double[] k = member.matrix();
            double[][] local = new double[count][n];
            for (int f = 0; f < count; f++) {
                for (int i = 0; i < n; i++) {
                    local[f][i] = fields[f][unknown(member, i)];
                }
            }
            double[] forces = new double[n];
            int at = 0;
            for (int a = 0; a < count; a++) {
                for (int i = 0; i < n; i++) {
                    double force = 0;
                    for (int j = 0; j < n; j++) {
                        force += k[i * n + j] * local[a][j];
                    }
                    forces[i] = force;
                }
                for (int b = a; b < count; b++) {
                    double sum = 0;
                    for (int i = 0; i < n; i++) {
                        sum += forces[i] * local[b][i];
                    }
                    work[at++] += sum;
                }
            }
        }
        return work;
    }

    /** Adds factor · K_part u to forces (6 per node, N and N·m). */
    public void addForces(int part, double factor, double[] u, double[] forces) {
        for (Member member : ofPart.get(part)) {
            int n = 6 * member.nodes().length;
            double[] k = member.matrix();
            for (int i = 0; i < n; i++) {
                double force = 0;
                for (int j = 0; j < n; j++) {
                    force += k[i * n + j] * u[unknown(member, j)];
                }
                forces[unknown(member, i)] += factor * force;
            }
        }
    }

    private static int unknown(Member member, int i) {
        return 6 * member.nodes()[i / 6] + i % 6;
    }
}
