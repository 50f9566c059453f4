// SPDX-License-Identifier: Apache-2.0
package tubwright.bench;

import java.util.OptionalDouble;
import tubwright.numerics.Analysis;
import tubwright.numerics.Definiteness;
import tubwright.numerics.DirectSolver;
import tubwright.numerics.Factorisation;
import tubwright.numerics.SymmetricMatrix;
import tubwright.numerics.SymmetricPattern;

/** A solver that notes how long its parts take and how often they are called. */
final class ClockedSolver implements DirectSolver {
    private final DirectSolver inner;
    double ordering;
    double factorisation;
    double solve;
    int factorisations;
    int solves;
    int vectors;

    ClockedSolver(DirectSolver inner) {
        this.inner = inner;
    }

    @Override
    public String name() {
        return inner.name();
    }

    @Override
    public Analysis analyse(SymmetricPattern pattern, Definiteness definiteness) {
        long start = System.nanoTime();
        Analysis analysis = inner.analyse(pattern, definiteness);
        ordering += since(start);
        return new Analysis() {
            @Override
            public Factorisation factorise(SymmetricMatrix matrix) {
                long begin = System.nanoTime();
                Factorisation factor = analysis.factorise(matrix);
                factorisation += since(begin);
                factorisations++;
                return clocked(factor);
            }

            @Override
            public long factorEntries() {
                return analysis.factorEntries();
            }

            @Override
            public void close() {
                analysis.close();
            }
        };
    }

    private Factorisation clocked(Factorisation factor) {
        return new Factorisation() {
            @Override
            public int order() {
                return factor.order();
            }

            @Override
            public void solveInPlace(double[] vector) {
                solveInPlace(new double[][] {vector});
            }

            @Override
            public void solveInPlace(double[][] block) {
                long begin = System.nanoTime();
                factor.solveInPlace(block);
                solve += since(begin);
                solves++;
                vectors += block.length;
            }

            @Override
            public long factorEntries() {
                return factor.factorEntries();
            }

            @Override
            public double flops() {
                return factor.flops();
            }

            @Override
            public int negativePivots() {
                return factor.negativePivots();
            }

            @Override
            public OptionalDouble logAbsDeterminant() {
                return factor.logAbsDeterminant();
            }

            @Override
            public void close() {
                factor.close();
            }
        };
    }

    static double since(long start) {
        return (System.nanoTime() - start) * 1e-9;
    }
}
