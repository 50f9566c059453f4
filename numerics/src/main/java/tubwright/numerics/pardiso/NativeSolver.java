// SPDX-License-Identifier: Apache-2.0
package tubwright.numerics.pardiso;

import java.io.IOException;
import java.lang.foreign.SymbolLookup;
import java.util.Optional;
import tubwright.numerics.Analysis;
import tubwright.numerics.Condensed;
import tubwright.numerics.Definiteness;
import tubwright.numerics.DirectSolver;
import tubwright.numerics.SymmetricMatrix;
import tubwright.numerics.SymmetricPattern;

/** The native direct solver. */
public final class NativeSolver implements DirectSolver {
    private final Pardiso pardiso;

    private NativeSolver(Pardiso pardiso) {
        this.pardiso = pardiso;
    }

    /** Loads on the first call; empty if it cannot be loaded here, see {@link #whyNotPresent()}. */
    public static Optional<DirectSolver> load() {
        return Holder.SOLVER;
    }

    /** Why {@link #load()} is empty, as the end of a sentence; empty text if it is not. */
    public static String whyNotPresent() {
        return Holder.REASON;
    }

    /** The loaded library itself, for comparing with it when called bare; empty if there is none. */
    public static Optional<SymbolLookup> library() {
        return load().map(solver -> ((NativeSolver) solver).pardiso.symbols());
    }

    @Override
    public String name() {
        return "native";
    }

    @Override
    public Analysis analyse(SymmetricPattern pattern, Definiteness definiteness) {
        return new NativeAnalysis(pardiso, pattern, definiteness);
    }

    /** What the library cannot do, or finds not to be held, is solved for column by column, which says what is loose. */
    @Override
    public Condensed condense(SymmetricMatrix matrix, int[] kept, double[] load) {
        return new NativeCondensation(matrix, kept, load)
                .by(pardiso)
                .orElseGet(() -> DirectSolver.super.condense(matrix, kept, load));
    }

    private static final class Holder {
        private static final Optional<DirectSolver> SOLVER;
        private static final String REASON;

        static {
            Optional<DirectSolver> solver = Optional.empty();
            String reason = "";
            try {
                solver = Optional.of(new NativeSolver(Pardiso.load()));
            } catch (IOException | RuntimeException | LinkageError failure) {
                reason = failure.getMessage() == null ? failure.toString() : failure.getMessage();
            }
            SOLVER = solver;
            REASON = reason;
        }
    }
}
