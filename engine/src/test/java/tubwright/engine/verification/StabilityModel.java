// SPDX-License-Identifier: Apache-2.0
package tubwright.engine.verification;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import tubwright.engine.structure.Beam;
import tubwright.engine.structure.ShellGeometricStiffness;
import tubwright.engine.structure.ShellQuad;
import tubwright.engine.structure.ShellTriangle;
import tubwright.engine.structure.ShellWorkspace;
import tubwright.numerics.Analysis;
import tubwright.numerics.ConstrainedSystem;
import tubwright.numerics.Definiteness;
import tubwright.numerics.Factorisation;
import tubwright.numerics.NodeGraph;
import tubwright.numerics.SymmetricMatrix;
import tubwright.numerics.SymmetricPattern;
import tubwright.numerics.eigen.CriticalFactors;
import tubwright.numerics.eigen.EigenPairs;
import tubwright.numerics.eigen.LowestModes;
import tubwright.numerics.solver.Solvers;

/** Shells and beams written by hand, with their natural frequencies and buckling factors. */
class StabilityModel extends ShellModel {
    /** Mass per area (kg/m²), its first (kg/m) and second (kg) moments. */
    double[] inertia = new double[3];

    private record PlacedBeam(int[] nodes, Beam beam) {}

    private record Ground(int node, double[] direction, double[] other) {}

    private final List<Ground> grounds = new ArrayList<>();
    private final List<PlacedBeam> beams = new ArrayList<>();
    private final Map<Integer, Double> pointMasses = new HashMap<>();
    private EigenPairs latest;

    StabilityModel(double[] laminate) {
        super(laminate);
    }

    void beam(int a, int b, double[] arms, double[] orientation, tubwright.engine.structure.BeamSection section) {
        double[] x = new double[6];
        System.arraycopy(nodes.get(a), 0, x, 0, 3);
        System.arraycopy(nodes.get(b), 0, x, 3, 3);
        beams.add(new PlacedBeam(new int[] {a, b}, new Beam(x, arms, orientation, section)));
    }

    void pointMass(int node, double kilograms) {
        pointMasses.merge(node, kilograms, Double::sum);
    }

    /** Grounds a node by stiff springs: no movement along the direction, turning only about it; other: square to it and to x. */
    void ground(int node, double[] direction, double[] other) {
        grounds.add(new Ground(node, direction, other));
    }

    private SymmetricPattern pattern() {
        List<int[]> groups = new ArrayList<>(elements);
        beams.forEach(b -> groups.add(b.nodes));
        return NodeGraph.of(nodes.size(), groups.toArray(new int[0][])).pattern(6);
    }

    private static void scatter(SymmetricMatrix matrix, int[] q, double[] k) {
        int n = 6 * q.length;
        for (int i = 0; i < n; i++) {
            for (int j = 0; j < n; j++) {
                int row = 6 * q[i / 6] + i % 6;
                int column = 6 * q[j / 6] + j % 6;
                if (row <= column) {
                    matrix.add(row, column, k[n * i + j]);
                }
            }
        }
    }

    private boolean[] fixed() {
        boolean[] fixed = new boolean[6 * nodes.size()];
        held.keySet().forEach(d -> fixed[d] = true);
        return fixed;
    }

    SymmetricMatrix stiffnessMatrix(SymmetricPattern pattern) {
        SymmetricMatrix k = new SymmetricMatrix(pattern);
        for (int e = 0; e < elements.size(); e++) {
            scatter(k, elements.get(e), stiffness(e));
        }
        for (PlacedBeam b : beams) {
            double[] kb = new double[144];
            b.beam.stiffness(kb);
            scatter(k, b.nodes, kb);
        }
        for (Ground ground : grounds) {
            addGround(k, ground);
        }
        return ConstrainedSystem.constrainInPlace(k, fixed()).matrix();
    }

    /** Springs ten thousand times as stiff as the laminate: translation along one direction, turning about two others. */
    private void addGround(SymmetricMatrix k, Ground ground) {
        double stiff = 1e4 * laminate[0];
        double[][] turned = {{1, 0, 0}, ground.other};
        for (int i = 0; i < 3; i++) {
            for (int j = i; j < 3; j++) {
                int row = 6 * ground.node + i;
                int column = 6 * ground.node + j;
                k.add(row, column, stiff * ground.direction[i] * ground.direction[j]);
                for (double[] axis : turned) {
                    k.add(row + 3, column + 3, stiff * axis[i] * axis[j]);
                }
            }
        }
    }

    private SymmetricMatrix massMatrix(SymmetricPattern pattern) {
        SymmetricMatrix m = new SymmetricMatrix(pattern);
        for (int e = 0; e < elements.size(); e++) {
            int[] q = elements.get(e);
            double[] me = new double[36 * q.length * q.length];
            if (q.length == 4) {
                ShellQuad.mass(corners(e), directors(e), inertia[0], inertia[1], inertia[2], me);
            } else {
                ShellTriangle.mass(corners(e), directors(e), inertia[0], inertia[1], inertia[2], me);
            }
            scatter(m, q, me);
        }
        for (PlacedBeam b : beams) {
            double[] mb = new double[144];
            b.beam.mass(mb);
            scatter(m, b.nodes, mb);
        }
        pointMasses.forEach((n, kg) -> {
            for (int d = 0; d < 3; d++) {
                m.add(6 * n + d, 6 * n + d, kg);
            }
        });
        ConstrainedSystem.clearInPlace(m, fixed());
        return m;
    }

    /** Lowest natural frequencies, rad/s. */
    double[] frequencies(int count) {
        return frequencies(count, 0);
    }

    /** Lowest natural frequencies, rad/s, of a body with rigid motions. */
    double[] frequencies(int count, double shift) {
        SymmetricPattern pattern = pattern();
        latest = LowestModes.of(stiffnessMatrix(pattern), massMatrix(pattern), count, shift, Solvers.best());
        return Arrays.stream(latest.values())
                .map(v -> Math.sqrt(Math.max(0, v)))
                .toArray();
    }

    double[] shape(int k) {
        return latest.vectors()[k];
    }

    /** Lowest positive load factors under uniform membrane resultants in the material axes of every element, N/m. */
    double[] uniformBuckling(int count, double nx, double ny, double nxy) {
        SymmetricPattern pattern = pattern();
        SymmetricMatrix g = new SymmetricMatrix(pattern);
        ShellWorkspace w = new ShellWorkspace();
        for (int e = 0; e < elements.size(); e++) {
            strainPoints(e, w);
            double[] n = new double[3 * w.points()];
            for (int p = 0; p < w.points(); p++) {
                n[3 * p] = nx;
                n[3 * p + 1] = ny;
                n[3 * p + 2] = nxy;
            }
            double[] ge = new double[w.freedoms() * w.freedoms()];
            ShellGeometricStiffness.integrate(n, w, ge);
            scatter(g, elements.get(e), ge);
        }
        return factors(pattern, g, count);
    }

    /** Lowest positive factors on the loads of the model. */
    double[] buckling(int count) {
        SymmetricPattern pattern = pattern();
        SymmetricMatrix k = stiffnessMatrix(pattern);
        double[] f = new double[6 * nodes.size()];
        loads.forEach((d, v) -> f[d] = held.containsKey(d) ? 0 : v);
        try (Factorisation factor = Solvers.best().factorise(k, Definiteness.POSITIVE_DEFINITE)) {
            displacement = factor.solve(f);
        }
        SymmetricMatrix g = new SymmetricMatrix(pattern);
        ShellWorkspace w = new ShellWorkspace();
        double[] strains = new double[ShellWorkspace.STRAINS];
        for (int e = 0; e < elements.size(); e++) {
            strainPoints(e, w);
            double[] u = elementDisplacement(e);
            double[] n = new double[3 * w.points()];
            for (int p = 0; p < w.points(); p++) {
                w.strainAt(p, u, strains);
                for (int i = 0; i < 3; i++) {
                    for (int j = 0; j < 8; j++) {
                        n[3 * p + i] += laminate[8 * i + j] * strains[j];
                    }
                }
            }
            double[] ge = new double[w.freedoms() * w.freedoms()];
            ShellGeometricStiffness.integrate(n, w, ge);
            scatter(g, elements.get(e), ge);
        }
        for (PlacedBeam b : beams) {
            double[] u = new double[12];
            for (int i = 0; i < 12; i++) {
                u[i] = displacement[6 * b.nodes[i / 6] + i % 6];
            }
            double[] gb = new double[144];
            b.beam.geometricStiffness(u, gb);
            scatter(g, b.nodes, gb);
        }
        return factors(pattern, g, count);
    }

    private double[] factors(SymmetricPattern pattern, SymmetricMatrix g, int count) {
        ConstrainedSystem.clearInPlace(g, fixed());
        SymmetricMatrix k = stiffnessMatrix(pattern);
        try (Analysis analysis = Solvers.best().analyse(pattern, Definiteness.INDEFINITE);
                Factorisation factor = analysis.factorise(k)) {
            latest = CriticalFactors.of(k, g, count, 0, analysis, factor).positive();
        }
        return latest.values();
    }
}
