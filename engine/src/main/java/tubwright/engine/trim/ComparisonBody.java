// SPDX-License-Identifier: Apache-2.0
package tubwright.engine.trim;

import java.util.List;
import java.util.stream.IntStream;
import tubwright.engine.structure.StaticSolver;
import tubwright.numerics.Definiteness;
import tubwright.numerics.Factorisation;
import tubwright.numerics.SymmetricMatrix;
import tubwright.numerics.solver.Solvers;

/**
 * Lower bounds on the compliance of every choice from a body at least as stiff as any of them everywhere (Hashin &
 * Shtrikman 1962, variational principle with a stiffer comparison body). With C₀ ⪰ C_k, polarisations τ, t = K₀⁻¹Bᵀτ and
 * u₀ = K₀⁻¹f
 *
 * <p>c ≥ ‖u₀ − Σ_z t_z‖² − Σ_z w τᵀ(C₀ − C_k)⁻¹τ, the norm that of K₀,
 *
 * <p>and τ_z may be another one for every candidate of site z. A mixture's field does not know which candidate it meets;
 * these do, so that the bound stays sharp where a mixture hides most: where the load goes through a site whatever it is
 * made of. {@link ChoiceBound} makes rows of it. To be closed after use.
 */
final class ComparisonBody implements AutoCloseable {
    private static final int SHARES = 4;
    /** Unknowns worked on together. */
    private static final int PORTION = 512;

    private final LightenProblem problem;
    private final LoadedTub tub;
    private final double[][] body;
    private final double[] reference;
    private final Polarisations[] polarisations;
    private final boolean[] allowed;
    private final Factorisation factor;
    /** Bᵀτ of each polarisation. */
    private final double[][] forces;
    /** fᵀu₀, and u₀ᵀBᵀτ of each polarisation. */
    private final double unloadedWork;

    private final double[] unloadedWorks;

    private final ChoiceBound bound;

    /**
     * Makes it ready: one factorisation, and a back-substitution for each polarisation.
     *
     * @param target index of the tub
     * @param allowed candidates that may be chosen; nothing is said about others
     * @param mixture whose reduced field gives the polarisations their shape
     * @param most polarisations of a site
     */
    ComparisonBody(
            LightenProblem problem,
            int target,
            boolean[] allowed,
            double[] mixture,
            FieldBasis.Reduced field,
            int most) {
        this.problem = problem;
        this.allowed = allowed.clone();
        tub = problem.tubs.get(target);
        reference = problem.bases.get(target).displacements(field.coefficients());
        body = StifferBody.of(problem, mixture, allowed);
        double[][] gramians = symmetric(field.gramians());
        int sites = problem.sites.size();
        polarisations = new Polarisations[sites];
        IntStream.range(0, sites)
                .parallel()
                .forEach(s -> polarisations[s] = new Polarisations(problem, s, body, mixture, allowed, gramians, most));
        int[] first = new int[sites + 1];
        for (int s = 0; s < sites; s++) {
            first[s + 1] = first[s] + polarisations[s].size();
        }
        int n = first[sites];
        forces = new double[n][];
        double[][] costs = new double[problem.masses.length][0];
        IntStream.range(0, sites).parallel().forEach(s -> {
            for (int i = first[s]; i < first[s + 1]; i++) {
                forces[i] = polarisations[s].force(i - first[s], tub, reference);
            }
            for (int j = problem.offset[s]; j < problem.offset[s + 1]; j++) {
                if (allowed[j]) {
                    costs[j] = polarisations[s].costs(j - problem.offset[s], gramians);
                }
            }
        });
        SymmetricMatrix matrix = StaticSolver.system(
                        tub.structure().withLaminates(problem.laminates(body)), tub.loading())
                .stiffness()
                .matrix();
        factor = Solvers.best().factorise(matrix, Definiteness.POSITIVE_DEFINITE);
        double[][] answers = new double[n + 1][];
        for (int i = 0; i < n; i++) {
            answers[i] = forces[i].clone();
        }
        answers[n] = tub.loads().clone();
        factor.solveInPlace(answers);
        unloadedWork = LoadedTub.dot(tub.loads(), answers[n]);
        unloadedWorks = works(forces, answers[n]);
        double[] gramian = products(forces, answers);
        bound = new ChoiceBound(problem.offset, first, gramian, costs);
        about(mixture, field, reference);
    }

    /** fᵢᵀt of each. */
    private static double[] works(double[][] forces, double[] t) {
        return IntStream.range(0, forces.length)
                .parallel()
                .mapToDouble(i -> LoadedTub.dot(forces[i], t))
                .toArray();
    }

    /** fᵢᵀtⱼ of all pairs, a portion of the unknowns at a time so that it stays in the cache. */
    private static double[] products(double[][] forces, double[][] answers) {
        int n = forces.length;
        int unknowns = n == 0 ? 0 : forces[0].length;
        double[][] parts = new double[SHARES][n * n];
        IntStream.range(0, SHARES).parallel().forEach(share -> {
            int last = (int) ((long) (share + 1) * unknowns / SHARES);
            for (int from = (int) ((long) share * unknowns / SHARES); from < last; from += PORTION) {
                int to = Math.min(last, from + PORTION);
                for (int i = 0; i < n; i++) {
                    double[] force = forces[i];
                    double[] part = parts[share];
                    // Four sums side by side: one alone waits for itself.
                    for (int j = 0; j <= i; j += 4) {
                        double[] a = answers[j];
                        double[] b = answers[Math.min(i, j + 1)];
                        double[] c = answers[Math.min(i, j + 2)];
                        double[] d = answers[Math.min(i, j + 3)];
                        double ofA = 0;
                        double ofB = 0;
                        double ofC = 0;
                        double ofD = 0;
                        for (int k = from; k < to; k++) {
                            ofA += force[k] * a[k];
                            ofB += force[k] * b[k];
                            ofC += force[k] * c[k];
                            ofD += force[k] * d[k];
                        }
                        part[i * n + j] += ofA;
                        if (j + 1 <= i) {
                            part[i * n + j + 1] += ofB;
                        }
                        if (j + 2 <= i) {
                            part[i * n + j + 2] += ofC;
                        }
                        if (j + 3 <= i) {
                            part[i * n + j + 3] += ofD;
                        }
                    }
                }
            }
        });
        double[] gramian = new double[n * n];
        for (int i = 0; i < n; i++) {
            for (int j = 0; j <= i; j++) {
                for (double[] part : parts) {
                    gramian[i * n + j] += part[i * n + j];
                }
                gramian[j * n + i] = gramian[i * n + j];
            }
        }
        return gramian;
    }

    private static double[][] symmetric(double[][] gramians) {
        double[][] result = new double[gramians.length][];
        for (int p = 0; p < result.length; p++) {
            double[] g = gramians[p];
            if (g.length == Constitutive.ENTRIES) {
                g = Constitutive.plus(g, 1, Constitutive.transposed(g, 0));
                for (int k = 0; k < g.length; k++) {
                    g[k] *= 0.5;
                }
            }
            result[p] = g;
        }
        return result;
    }

    /**
     * Sets what all candidates have in common: the polarisation (C̄ − C₀)ε of a mixture under a field, one
     * back-substitution.
     *
     * @param u displacements of the field
     */
    void about(double[] mixture, FieldBasis.Reduced field, double[] u) {
        double[][] gramians = symmetric(field.gramians());
        double[][] mixed = problem.stiffness(mixture);
        int pieces = mixed.length;
        double[][] steps = new double[pieces][];
        double[][] crossed = new double[pieces][];
        double[] nothing = new double[Constitutive.ENTRIES];
        double[][] parts = new double[SHARES][u.length];
        // Shares of the pieces go side by side, each with forces of its own; added up in order they repeat to the bit.
        IntStream.range(0, SHARES).parallel().forEach(share -> {
            for (int p = share; p < pieces; p += SHARES) {
                Piece piece = problem.pieces.get(p);
                if (Polarisations.decides(piece)) {
                    steps[p] = Constitutive.minus(mixed[p], body[p]);
                    tub.visits().forces(piece.block(), steps[p], nothing, u, parts[share]);
                    crossed[p] = piece.gramiansWith(tub, u, List.of(reference));
                }
            }
        });
        double[] force = parts[0];
        for (int share = 1; share < SHARES; share++) {
            for (int i = 0; i < force.length; i++) {
                force[i] += parts[share][i];
            }
        }
        tub.release(force);
        double[] t = force.clone();
        factor.solveInPlace(t);
        double load = unloadedWork - 2 * LoadedTub.dot(tub.loads(), t) + LoadedTub.dot(force, t);
        double[] loads = works(forces, t);
        for (int i = 0; i < loads.length; i++) {
            loads[i] = unloadedWorks[i] - loads[i];
        }
        double[][] common = new double[problem.masses.length][0];
        IntStream.range(0, polarisations.length).parallel().forEach(s -> {
            for (int j = problem.offset[s]; j < problem.offset[s + 1]; j++) {
                if (allowed[j]) {
                    common[j] = polarisations[s].common(j - problem.offset[s], steps, crossed, gramians);
                }
            }
        });
        bound.about(load, loads, common);
    }

    /** The bound, about what was last set. */
    ChoiceBound bound() {
        return bound;
    }

    @Override
    public void close() {
        factor.close();
    }
}
