// SPDX-License-Identifier: Apache-2.0
package tubwright.bench;

import java.util.Map;
import tubwright.numerics.Analysis;
import tubwright.numerics.Definiteness;
import tubwright.numerics.DirectSolver;
import tubwright.numerics.Factorisation;
import tubwright.numerics.SymmetricMatrix;
import tubwright.numerics.solver.Solvers;

/** Who takes part, by name. */
final class Contestants {
    static final Map<String, String> WHAT = Map.of(
            "java", "our Java backend",
            "native", "our native backend",
            "bare", "the native library (PARDISO) called bare, scalar rows, its own defaults",
            "ejml", "EJML sparse Cholesky, given our order of elimination");

    private Contestants() {}

    static Contestant named(String name) {
        return switch (name) {
            case "java" -> (matrix, load) -> ours(Solvers.pureJava(), matrix, load);
            case "native" -> (matrix, load) -> ours(Solvers.nativeIfPresent().orElseThrow(), matrix, load);
            case "bare" -> BareLibrary::run;
            case "ejml" -> ReferenceLibrary::run;
            default -> throw new IllegalArgumentException("Nobody here is called " + name);
        };
    }

    private static Contestant.Times ours(DirectSolver solver, SymmetricMatrix matrix, double[] load) {
        long t0 = System.nanoTime();
        try (Analysis analysis = solver.analyse(matrix.pattern(), Definiteness.POSITIVE_DEFINITE)) {
            long t1 = System.nanoTime();
            try (Factorisation factorisation = analysis.factorise(matrix)) {
                long t2 = System.nanoTime();
                factorisation.solveInPlace(load);
                long t3 = System.nanoTime();
                return new Contestant.Times(
                        (t1 - t0) / 1e9, (t2 - t1) / 1e9, (t3 - t2) / 1e9, factorisation.factorEntries());
            }
        }
    }
}
