// SPDX-License-Identifier: Apache-2.0
package tubwright.engine.verification;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import tubwright.engine.structure.Beam;

/** A frame of beams small enough for a dense solve. */
final class FrameModel {
    private record Placed(int a, int b, Beam beam) {}

    private final List<double[]> nodes = new ArrayList<>();
    private final List<Placed> beams = new ArrayList<>();
    private final Map<Integer, Double> loads = new HashMap<>();
    private final java.util.Set<Integer> held = new java.util.HashSet<>();
    private double[] u;

    void node(double x, double y, double z) {
        nodes.add(new double[] {x, y, z});
    }

    double[] position(int node) {
        return nodes.get(node);
    }

    void beam(int a, int b, Beam beam) {
        beams.add(new Placed(a, b, beam));
    }

    void hold(int node, int... freedoms) {
        for (int f : freedoms) {
            held.add(6 * node + f);
        }
    }

    /** Keeps everything in the x-z plane. */
    void plane() {
        for (int i = 0; i < nodes.size(); i++) {
            hold(i, 1, 3, 5);
        }
    }

    void load(int node, int freedom, double value) {
        loads.merge(6 * node + freedom, value, Double::sum);
    }

    void solve() {
        int n = 6 * nodes.size();
        EnvelopeSolver solver = new EnvelopeSolver(new int[n]);
        double[] right = new double[n];
        loads.forEach((d, v) -> right[d] = held.contains(d) ? 0 : v);
        for (Placed p : beams) {
            double[] k = new double[144];
            p.beam.stiffness(k);
            for (int i = 0; i < 12; i++) {
                for (int j = 0; j < 12; j++) {
                    int row = 6 * (i < 6 ? p.a : p.b) + i % 6;
                    int column = 6 * (j < 6 ? p.a : p.b) + j % 6;
                    if (!held.contains(row) && !held.contains(column)) {
                        solver.add(row, column, k[12 * i + j]);
                    }
                }
            }
        }
        held.forEach(d -> solver.add(d, d, 1));
        solver.factorise();
        solver.solve(right);
        u = right;
    }

    double at(int node, int freedom) {
        return u[6 * node + freedom];
    }

    /** The twelve displacements of a beam between two nodes. */
    double[] of(int a, int b) {
        double[] both = new double[12];
        System.arraycopy(u, 6 * a, both, 0, 6);
        System.arraycopy(u, 6 * b, both, 6, 6);
        return both;
    }
}
