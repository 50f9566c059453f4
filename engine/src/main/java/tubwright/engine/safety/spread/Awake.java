// SPDX-License-Identifier: Apache-2.0
package tubwright.engine.safety.spread;

import java.util.Arrays;
import java.util.BitSet;
import java.util.Optional;
import java.util.stream.IntStream;
import tubwright.numerics.Analysis;
import tubwright.numerics.Assembler;
import tubwright.numerics.Condensed;
import tubwright.numerics.ConstrainedSystem;
import tubwright.numerics.Definiteness;
import tubwright.numerics.DirectSolver;
import tubwright.numerics.Factorisation;
import tubwright.numerics.NodeGraph;
import tubwright.numerics.SymmetricMatrix;
import tubwright.numerics.SymmetricPattern;

/**
 * The part of a model that is solved again and again: the pieces that have begun to give way or soon may. The others sleep:
 * they stay elastic, are condensed onto the nodes they share with these once (exact in statics, Guyan 1965), and their own
 * displacements are only worked out to see whether they sleep on. What a solution costs then hangs on how far damage has come
 * and not on how much of the tub is looked at.
 */
final class Awake implements AutoCloseable {
    private final SpreadModel model;
    private final DirectSolver solver;
    private final boolean[] awake;
    private final int[] pieces;
    private final int[] nodes;
    private final double[] load;
    private final boolean[] fixed;
    private final double give;
    private final Optional<Block> block;
    private final Assembler assembler;
    private final Analysis analysis;
    private Optional<Sleeping> sleeping = Optional.empty();
    private SymmetricMatrix stiffness;

    /** A dense piece: what sleeps, or what is outside the model. */
    private record Block(int[] nodes, double[] matrix) {}

    /** What sleeps, with the nodes shared with what is awake held. */
    private record Sleeping(ConstrainedSystem system, Factorisation factor) {}

    private Awake(
            SpreadModel model,
            DirectSolver solver,
            boolean[] awake,
            int[] nodes,
            Optional<Block> block,
            double[] load,
            double give) {
        this.model = model;
        this.solver = solver;
        this.awake = awake;
        this.nodes = nodes;
        this.block = block;
        this.load = load;
        this.give = give;
        pieces = IntStream.range(0, awake.length).filter(p -> awake[p]).toArray();
        fixed = new boolean[load.length];
        for (int i = 0; i < fixed.length; i++) {
            fixed[i] = model.fixed()[6 * nodes[i / 6] + i % 6];
        }
        int count = pieces.length + (block.isPresent() ? 1 : 0);
        int[][] own = new int[count][];
        for (int k = 0; k < count; k++) {
            own[k] = Arrays.stream(
                            k < pieces.length
                                    ? model.nodesOf(pieces[k])
                                    : block.orElseThrow().nodes())
                    .map(n -> Arrays.binarySearch(nodes, n))
                    .toArray();
        }
        int[] start = starts(own);
        int[] flat = Arrays.stream(own).flatMapToInt(Arrays::stream).toArray();
        SymmetricPattern pattern = NodeGraph.of(nodes.length, start, flat).pattern(6);
        assembler = new Assembler(pattern, start, flat);
        stiffness = new SymmetricMatrix(pattern);
        analysis = solver.analyse(pattern, Definiteness.POSITIVE_DEFINITE);
    }

    /** All of a model. */
    static Awake all(SpreadModel model, DirectSolver solver) {
        boolean[] awake = new boolean[model.pieces()];
        Arrays.fill(awake, true);
        int[] nodes = IntStream.range(0, model.unknowns() / 6).toArray();
        Optional<Block> around =
                model.hasBlock() ? Optional.of(new Block(model.blockNodes(), model.block())) : Optional.empty();
        return new Awake(model, solver, awake, nodes, around, model.load(), model.give());
    }

    /**
     * Some of it, where that is cheaper than all of it: where it shares fewer nodes with what sleeps than the model shares with
     * the rest of the tub.
     *
     * @param awake which pieces
     */
    static Awake of(SpreadModel model, boolean[] awake, DirectSolver solver) {
        int count = model.unknowns() / 6;
        BitSet moving = new BitSet(count);
        BitSet still = new BitSet(count);
        for (int p = 0; p < awake.length; p++) {
            BitSet to = awake[p] ? moving : still;
            Arrays.stream(model.nodesOf(p)).forEach(to::set);
        }
        int around = model.hasBlock() ? model.blockNodes().length : 0;
        if (model.hasBlock()) {
            Arrays.stream(model.blockNodes()).forEach(still::set);
        }
        BitSet both = (BitSet) moving.clone();
        both.and(still);
        if (both.cardinality() >= around) {
            return all(model, solver);
        }
        int[] shared = both.stream().toArray();
        int[] nodes = moving.stream().toArray();
        ConstrainedSystem alone = asleep(model, awake, still, new BitSet());
        double[] pushed = pushed(model, still);
        int[] kept = Arrays.stream(shared)
                .flatMap(n -> IntStream.range(6 * n, 6 * n + 6))
                .toArray();
        // A held node that is shared stays: it is held where it is awake.
        Condensed reduced = solver.condense(alone.matrix(), kept, pushed);
        double[] load = new double[6 * nodes.length];
        for (int i = 0; i < load.length; i++) {
            int at = 6 * nodes[i / 6] + i % 6;
            int place = Arrays.binarySearch(shared, nodes[i / 6]);
            load[i] = place < 0 ? model.load()[at] : reduced.load()[6 * place + i % 6];
        }
        return new Awake(
                model,
                solver,
                awake.clone(),
                nodes,
                Optional.of(new Block(shared, reduced.matrix())),
                load,
                model.give() + reduced.give());
    }

    /** Loads on what sleeps. */
    private static double[] pushed(SpreadModel model, BitSet still) {
        double[] pushed = new double[model.unknowns()];
        for (int i = 0; i < pushed.length; i++) {
            pushed[i] = still.get(i / 6) && !model.fixed()[i] ? model.load()[i] : 0;
        }
        return pushed;
    }

    /**
     * The stiffness of what sleeps, on all of the model's unknowns; those it does not touch, and those held, by themselves.
     *
     * @param shared nodes to hold too
     */
    private static ConstrainedSystem asleep(SpreadModel model, boolean[] awake, BitSet still, BitSet shared) {
        int[] some = IntStream.range(0, awake.length).filter(p -> !awake[p]).toArray();
        int count = some.length + (model.hasBlock() ? 1 : 0);
        int[][] own = new int[count][];
        double[][] matrices = new double[count][];
        for (int k = 0; k < count; k++) {
            own[k] = k < some.length ? model.nodesOf(some[k]) : model.blockNodes();
            matrices[k] = k < some.length ? model.matrix(some[k]) : model.block();
        }
        int[] start = starts(own);
        int[] flat = Arrays.stream(own).flatMapToInt(Arrays::stream).toArray();
        SymmetricPattern pattern =
                NodeGraph.of(model.unknowns() / 6, start, flat).pattern(6);
        boolean[] held = new boolean[model.unknowns()];
        for (int i = 0; i < held.length; i++) {
            held[i] = model.fixed()[i] || !still.get(i / 6) || shared.get(i / 6);
        }
        return ConstrainedSystem.constrainInPlace(new Assembler(pattern, start, flat).assemble(matrices), held);
    }

    private static int[] starts(int[][] lists) {
        int[] start = new int[lists.length + 1];
        for (int k = 0; k < lists.length; k++) {
            start[k + 1] = start[k] + lists[k].length;
        }
        return start;
    }

    /** Pieces that are awake, rising. */
    int[] pieces() {
        return pieces;
    }

    /** Whether a piece is awake. */
    boolean isAwake(int piece) {
        return awake[piece];
    }

    /** Whether all are. */
    boolean whole() {
        return pieces.length == awake.length;
    }

    /** Takes the pieces' stiffness as the model has it now. */
    void assemble() {
        double[][] matrices = new double[assembler.elements()][];
        for (int k = 0; k < matrices.length; k++) {
            matrices[k] = k < pieces.length
                    ? model.matrix(pieces[k])
                    : block.orElseThrow().matrix();
        }
        stiffness = ConstrainedSystem.constrainInPlace(assembler.assemble(matrices), fixed)
                .matrix();
    }

    /** The field of a unit load on the stiffness assembled last, among the model's unknowns; what sleeps is left at nought. */
    double[] solve() {
        double[] u = load.clone();
        for (int i = 0; i < u.length; i++) {
            u[i] = fixed[i] ? 0 : u[i];
        }
        try (Factorisation factorisation = analysis.factorise(stiffness)) {
            factorisation.solveInPlace(u);
        }
        double[] all = new double[model.unknowns()];
        for (int i = 0; i < u.length; i++) {
            all[6 * nodes[i / 6] + i % 6] = u[i];
        }
        return all;
    }

    /** Work of a unit load along a field, twice, J. */
    double along(double[] u, double factor) {
        double sum = factor * give;
        for (int i = 0; i < load.length; i++) {
            sum += load[i] * u[6 * nodes[i / 6] + i % 6];
        }
        return sum;
    }

    /** Length of the forces a field leaves out of balance on what is awake; what sleeps is in balance by itself. */
    double outOfBalance(double[] u, double factor) {
        double[] own = new double[load.length];
        for (int i = 0; i < own.length; i++) {
            own[i] = u[6 * nodes[i / 6] + i % 6];
        }
        double[] inner = stiffness.multiply(own);
        double out = 0;
        for (int i = 0; i < own.length; i++) {
            if (!fixed[i] && i % 6 < 3) {
                double f = inner[i] - factor * load[i];
                out += f * f;
            }
        }
        return Math.sqrt(out);
    }

    /** Adds to a field what sleeps, in place. */
    void complete(double[] u, double factor) {
        if (whole()) {
            return;
        }
        BitSet still = new BitSet();
        for (int p = 0; p < awake.length; p++) {
            if (!awake[p]) {
                Arrays.stream(model.nodesOf(p)).forEach(still::set);
            }
        }
        if (model.hasBlock()) {
            Arrays.stream(model.blockNodes()).forEach(still::set);
        }
        if (sleeping.isEmpty()) {
            BitSet shared = new BitSet();
            Arrays.stream(block.orElseThrow().nodes()).forEach(shared::set);
            ConstrainedSystem alone = asleep(model, awake, still, shared);
            sleeping =
                    Optional.of(new Sleeping(alone, solver.factorise(alone.matrix(), Definiteness.POSITIVE_DEFINITE)));
        }
        double[] pushed = pushed(model, still);
        for (int i = 0; i < pushed.length; i++) {
            pushed[i] *= factor;
        }
        Sleeping at = sleeping.get();
        double[] found = at.system().solve(at.factor(), pushed, u);
        System.arraycopy(found, 0, u, 0, u.length);
    }

    @Override
    public void close() {
        analysis.close();
        sleeping.ifPresent(s -> s.factor().close());
    }
}
