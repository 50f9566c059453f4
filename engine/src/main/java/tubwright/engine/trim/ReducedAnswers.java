// SPDX-License-Identifier: Apache-2.0
package tubwright.engine.trim;

/**
 * What the reduced models say of mixtures. The last one is kept, for every thread its own, since rows, parting and
 * sharpening ask about the same mixture and nodes are worked on side by side.
 */
final class ReducedAnswers {
    private final LightenProblem problem;
    private final int[] active;
    /** How often the bases have grown. */
    private int grown;

    private final ThreadLocal<At> last =
            ThreadLocal.withInitial(() -> new At(new double[0], -1, new FieldBasis.Reduced[0]));

    private record At(double[] mixture, int grown, FieldBasis.Reduced[] reduced) {}

    /**
     * @param active tubs with a target
     */
    ReducedAnswers(LightenProblem problem, int[] active) {
        this.problem = problem;
        this.active = active;
    }

    /** Says that a basis has grown, so that what is kept is no longer the best. Not to be called beside {@link #of}. */
    void forget() {
        grown++;
    }

    /** By tub; null where it has no target. */
    FieldBasis.Reduced[] of(double[] mixture) {
        At at = last.get();
        if (at.mixture != mixture || at.grown != grown) {
            double[][] stiffness = problem.stiffness(mixture);
            FieldBasis.Reduced[] reduced = new FieldBasis.Reduced[problem.tubs.size()];
            for (int t : active) {
                reduced[t] = problem.bases.get(t).solve(stiffness);
            }
            at = new At(mixture, grown, reduced);
            last.set(at);
        }
        return at.reduced;
    }
}
