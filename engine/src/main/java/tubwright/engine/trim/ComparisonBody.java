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

    private final LightenProblem problem;
    private final LoadedTub tub;
    private final double[][] body;
    private final double[] reference;
    private final Polarisations[] polarisations;
    private final boolean[] allowed;
    private final Factorisation factor;
    /** Bᵀτ of each polarisation. */
    private final double[][] forces;
    /** u₀. */
    private final double[] unloaded;

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
        unloaded = answers[n];
        double[] gramian = new double[n * n];
        IntStream.range(0, n).parallel().forEach(i -> {
            for (int j = 0; j <= i; j++) {
                gramian[i * n + j] = LoadedTub.dot(forces[i], answers[j]);
                gramian[j * n + i] = gramian[i * n + j];
            }
        });
        bound = new ChoiceBound(problem.offset, first, gramian, costs);
        about(mixture, field, reference);
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
        double load =
                LoadedTub.dot(tub.loads(), unloaded) - 2 * LoadedTub.dot(tub.loads(), t) + LoadedTub.dot(force, t);
        double[] loads = new double[forces.length];
        IntStream.range(0, loads.length)
                .parallel()
                .forEach(i -> loads[i] = LoadedTub.dot(forces[i], unloaded) - LoadedTub.dot(forces[i], t));
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
