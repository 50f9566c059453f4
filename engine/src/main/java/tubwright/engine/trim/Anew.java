// SPDX-License-Identifier: Apache-2.0
package tubwright.engine.trim;

import java.util.Arrays;
import java.util.List;
import tubwright.engine.structure.Case;
import tubwright.engine.structure.Solution;
import tubwright.engine.structure.StaticSolver;
import tubwright.engine.structure.StepTimes;
import tubwright.numerics.SymmetricMatrix;
import tubwright.numerics.solver.Solvers;

/**
 * Solves tubs that differ from the nominal one everywhere: assembled and factorised anew, all cases on one factor, which
 * is several times faster than conjugate gradients on the nominal factor where these would need dozens of steps. Joints
 * that change are left to conjugate gradients.
 */
final class Anew {
    private final LightenProblem problem;

    Anew(LightenProblem problem) {
        this.problem = problem;
    }

    /**
     * Solves.
     *
     * @param tubs indices of the problem's
     * @param stiffness of the pieces
     * @param change the same, as a change of the nominal tub
     * @param width of the answer where it is iterated, relative
     * @return by tub; nothing for those not asked for
     */
    Resolve.Solved[] solve(int[] tubs, double[][] stiffness, Change change, double width) {
        Resolve.Solved[] result = new Resolve.Solved[problem.tubs.size()];
        if (problem.variesJoints() && !change.joints().isEmpty()) {
            for (int t : tubs) {
                FieldBasis basis = problem.bases.get(t);
                Resolve.Start from = basis.start(basis.solve(stiffness).coefficients());
                result[t] = new Resolve(problem.tubs.get(t)).solve(change, from, Resolve.within(width));
            }
            return result;
        }
        List<Case> cases =
                Arrays.stream(tubs).mapToObj(t -> problem.tubs.get(t).loading()).toList();
        List<Solution> solutions = StaticSolver.solve(
                problem.tubs.getFirst().structure().withLaminates(problem.laminates(stiffness)),
                cases,
                Solvers.best(),
                new StepTimes());
        for (int i = 0; i < tubs.length; i++) {
            LoadedTub tub = problem.tubs.get(tubs[i]);
            double[] u = solutions.get(i).displacements();
            double c = LoadedTub.dot(tub.loads(), u);
            result[tubs[i]] = new Resolve.Solved(new Interval(c, c), u, c, new double[u.length], 0);
        }
        return result;
    }

    /** The same answer with bounds that are proved, from the residual that the nominal matrix leaves. */
    Resolve.Solved certified(int t, Change change, Resolve.Solved solved, double width) {
        if (solved.compliance().high() > solved.compliance().low()) {
            return solved;
        }
        LoadedTub tub = problem.tubs.get(t);
        SymmetricMatrix nominal =
                StaticSolver.system(tub.structure(), tub.loading()).stiffness().matrix();
        Resolve.Start start = new Resolve.Start(solved.displacements(), nominal.multiply(solved.displacements()));
        return new Resolve(tub).solve(change, start, Resolve.within(width));
    }
}
