// SPDX-License-Identifier: Apache-2.0
package tubwright.numerics;

import java.util.ArrayList;
import java.util.List;
import tubwright.numerics.solver.Solvers;

/** The solvers that can be tested on this machine. */
public final class Backends {
    private Backends() {}

    public static List<DirectSolver> all() {
        List<DirectSolver> solvers = new ArrayList<>();
        solvers.add(Solvers.pureJava());
        Solvers.nativeIfPresent().ifPresent(solvers::add);
        return solvers;
    }
}
