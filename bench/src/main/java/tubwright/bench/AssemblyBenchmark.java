// SPDX-License-Identifier: Apache-2.0
package tubwright.bench;

import java.util.concurrent.TimeUnit;
import org.openjdk.jmh.annotations.Benchmark;
import org.openjdk.jmh.annotations.BenchmarkMode;
import org.openjdk.jmh.annotations.Fork;
import org.openjdk.jmh.annotations.Measurement;
import org.openjdk.jmh.annotations.Mode;
import org.openjdk.jmh.annotations.OutputTimeUnit;
import org.openjdk.jmh.annotations.Param;
import org.openjdk.jmh.annotations.Scope;
import org.openjdk.jmh.annotations.Setup;
import org.openjdk.jmh.annotations.State;
import org.openjdk.jmh.annotations.Warmup;
import tubwright.numerics.SymmetricMatrix;
import tubwright.numerics.SymmetricPattern;
import tubwright.numerics.ordering.Graph;
import tubwright.numerics.ordering.NestedDissection;

/** The steps around a factorisation: pattern, assembly, product, order. */
@State(Scope.Benchmark)
@BenchmarkMode(Mode.AverageTime)
@OutputTimeUnit(TimeUnit.MILLISECONDS)
@Warmup(iterations = 3, time = 2)
@Measurement(iterations = 3, time = 2)
@Fork(1)
public class AssemblyBenchmark {
    /** Number of unknowns. */
    @Param({"60000", "300000"})
    public int unknowns;

    private ShellGrid grid;
    private SymmetricPattern pattern;
    private SymmetricMatrix matrix;
    private double[] x;
    private double[] y;

    /** Builds what the benchmarks start from. */
    @Setup
    public void prepare() {
        grid = new ShellGrid(ShellGrid.sideFor(unknowns));
        pattern = grid.pattern();
        matrix = grid.assemble(pattern);
        x = matrix.diagonal();
        y = new double[x.length];
    }

    /** From connectivities to the pattern. */
    @Benchmark
    public SymmetricPattern pattern() {
        return grid.pattern();
    }

    /** From ready element matrices to the sparse one. */
    @Benchmark
    public SymmetricMatrix assembly() {
        return grid.assemble(pattern);
    }

    /** Matrix times vector. */
    @Benchmark
    public double[] product() {
        matrix.multiply(x, y);
        return y;
    }

    /** From the pattern to an order of elimination. */
    @Benchmark
    public int[] order() {
        return NestedDissection.order(Graph.of(pattern));
    }
}
