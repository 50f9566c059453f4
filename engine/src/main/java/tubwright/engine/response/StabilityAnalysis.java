// SPDX-License-Identifier: Apache-2.0
package tubwright.engine.response;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.function.Consumer;
import tubwright.engine.mesh.Mesh;
import tubwright.engine.structure.Buckling;
import tubwright.engine.structure.BucklingAnswer;
import tubwright.engine.structure.BucklingMode;
import tubwright.engine.structure.Case;
import tubwright.engine.structure.Part;
import tubwright.engine.structure.Solution;
import tubwright.engine.structure.StrainEnergy;
import tubwright.engine.structure.Structure;
import tubwright.engine.structure.StructureException;
import tubwright.engine.structure.Vibration;
import tubwright.numerics.DirectSolver;
import tubwright.numerics.eigen.EigenException;
import tubwright.numerics.eigen.InertiaCount;

/** Answers what is asked of stability and vibration on one solved structure. */
public final class StabilityAnalysis {
    private StabilityAnalysis() {}

    /**
     * Computes.
     *
     * @param solutions of the cases whose buckling is asked
     * @param step hears what is about to be done, and may throw to stop it
     * @throws StructureException where the structure has no mass to vibrate
     */
    public static Stability of(
            Structure structure,
            List<Solution> solutions,
            StabilityAsk ask,
            DirectSolver solver,
            Consumer<String> step) {
        List<CaseBuckling> buckling = new ArrayList<>();
        if (ask.factors() > 0 && !solutions.isEmpty()) {
            buckling.addAll(buckling(structure, solutions, ask.factors(), solver, step));
        }
        Optional<Vibrations> free = Optional.empty();
        Optional<Vibrations> held = Optional.empty();
        if (ask.frequencies() > 0) {
            step.accept("natural frequencies");
            free = Optional.of(new Vibrations(Vibration.free(structure, ask.frequencies(), solver), Map.of()));
            if (!ask.hold().isEmpty()) {
                step.accept("natural frequencies, held");
                held = Optional.of(
                        new Vibrations(Vibration.held(structure, ask.hold(), ask.frequencies(), solver), Map.of()));
            }
        }
        return new Stability(buckling, free, held);
    }

    private static List<CaseBuckling> buckling(
            Structure structure, List<Solution> solutions, int factors, DirectSolver solver, Consumer<String> step) {
        List<CaseBuckling> answers = new ArrayList<>();
        try {
            List<BucklingAnswer> solved = Buckling.solve(
                    structure, solutions, factors, 0, solver, c -> step.accept("buckling in " + c.name()));
            for (BucklingAnswer each : solved) {
                List<Buckle> modes =
                        each.modes().stream().map(m -> buckle(structure, m)).toList();
                answers.add(new CaseBuckling(
                        each.solved().name(),
                        each.solved() instanceof Case.Loads,
                        modes,
                        each.count(),
                        Double.NaN,
                        ""));
            }
        } catch (EigenException stalled) {
            for (Solution each : solutions) {
                answers.add(new CaseBuckling(
                        each.solved().name(),
                        each.solved() instanceof Case.Loads,
                        List.of(),
                        new InertiaCount(0, 0, 0),
                        Double.NaN,
                        "not computed: " + stalled.getMessage()));
            }
        }
        return answers;
    }

    private static Buckle buckle(Structure structure, BucklingMode mode) {
        Mesh mesh = structure.mesh();
        double[] energies = StrainEnergy.ofElements(structure, mode.shape());
        Map<String, Double> panels = new LinkedHashMap<>();
        for (int e = 0; e < energies.length; e++) {
            panels.merge(mesh.region(e).part(), energies[e], Double::sum);
        }
        double whole = Arrays.stream(StrainEnergy.ofParts(structure, mode.shape(), energies))
                .sum();
        Map.Entry<String, Double> most =
                panels.entrySet().stream().max(Map.Entry.comparingByValue()).orElseThrow();
        Part part = structure.parts().get(mode.part());
        return new Buckle(
                mode.factor(),
                part.kind(),
                part.name(),
                mode.share(),
                most.getKey(),
                most.getValue() / whole,
                mode.place(),
                Arrays.copyOf(mode.shape(), 6 * mesh.nodeCount()),
                mode.error());
    }
}
