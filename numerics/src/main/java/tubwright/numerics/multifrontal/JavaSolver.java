// SPDX-License-Identifier: Apache-2.0
package tubwright.numerics.multifrontal;

import tubwright.numerics.Analysis;
import tubwright.numerics.Definiteness;
import tubwright.numerics.DirectSolver;
import tubwright.numerics.Factorisation;
import tubwright.numerics.SymmetricMatrix;
import tubwright.numerics.SymmetricPattern;

/**
 * The direct solver in Java: multifrontal (Duff and Reid 1983) L D Lᵀ without interchanges. Indefinite matrices keep
 * the signs of their pivots but are not pivoted for stability: look at the residual.
 */
public final class JavaSolver implements DirectSolver {
    @Override
    public String name() {
        return "java";
    }

    @Override
    public Analysis analyse(SymmetricPattern pattern, Definiteness definiteness) {
        Symbolic symbolic = Symbolic.of(pattern);
        return new Analysis() {
            @Override
            public Factorisation factorise(SymmetricMatrix matrix) {
                if (!matrix.pattern().sameAs(pattern)) {
                    throw new IllegalArgumentException("The matrix has another pattern than the one analysed");
                }
                return new Numeric(symbolic, matrix, definiteness).factorise();
            }

            @Override
            public long factorEntries() {
                return symbolic.factorEntries();
            }

            @Override
            public void close() {}
        };
    }
}
