// SPDX-License-Identifier: Apache-2.0
package tubwright.numerics.solver;

import java.util.Locale;
import java.util.Optional;
import tubwright.numerics.DirectSolver;
import tubwright.numerics.multifrontal.JavaSolver;
import tubwright.numerics.pardiso.NativeSolver;

/**
 * The solvers at hand. System property {@code tubwright.solver} or environment variable {@code TUBWRIGHT_SOLVER}, set to
 * {@code java} or {@code native}, forces one; the property goes first.
 */
public final class Solvers {
    private static final DirectSolver JAVA = new JavaSolver();

    private Solvers() {}

    /**
     * The forced solver if one is forced, else the native one if it loads, else the Java one.
     *
     * @throws IllegalStateException if the forced one is unknown or does not load
     */
    public static DirectSolver best() {
        String environment = System.getenv("TUBWRIGHT_SOLVER");
        String forced = System.getProperty("tubwright.solver", environment == null ? "" : environment);
        return switch (forced.toLowerCase(Locale.ROOT)) {
            case "" -> nativeIfPresent().orElse(JAVA);
            case "java" -> JAVA;
            case "native" ->
                nativeIfPresent()
                        .orElseThrow(() -> new IllegalStateException(
                                "The native solver was asked for but " + NativeSolver.whyNotPresent()
                                        + ". Leave tubwright.solver unset to use the Java solver."));
            default ->
                throw new IllegalStateException(
                        "tubwright.solver is \"" + forced + "\"; it can be \"java\" or \"native\"");
        };
    }

    /** The native solver, loaded on the first call; empty if this platform or class path has none. */
    public static Optional<DirectSolver> nativeIfPresent() {
        return NativeSolver.load();
    }

    /** The solver written in Java, present everywhere. */
    public static DirectSolver pureJava() {
        return JAVA;
    }
}
