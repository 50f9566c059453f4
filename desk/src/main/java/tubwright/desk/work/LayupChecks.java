// SPDX-License-Identifier: Apache-2.0
package tubwright.desk.work;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import tubwright.engine.design.Targets;
import tubwright.engine.design.text.Limit;
import tubwright.engine.laminate.Laminate;
import tubwright.engine.mesh.Mesh;
import tubwright.engine.response.Reserve;
import tubwright.engine.response.Reserves;
import tubwright.engine.structure.Buckling;
import tubwright.engine.structure.BucklingAnswer;
import tubwright.engine.structure.BucklingMode;
import tubwright.engine.structure.Case;
import tubwright.engine.structure.Mode;
import tubwright.engine.structure.Modes;
import tubwright.engine.structure.Solution;
import tubwright.engine.structure.StaticSolver;
import tubwright.engine.structure.StepTimes;
import tubwright.engine.structure.Structure;
import tubwright.engine.structure.Tub;
import tubwright.engine.structure.Vibration;
import tubwright.engine.trim.Layup;
import tubwright.engine.trim.LayupCheck;
import tubwright.engine.trim.Owner;
import tubwright.numerics.DirectSolver;

/** Strength, buckling and vibration of a layup against the design's targets, by building and solving its tub whole. */
final class LayupChecks implements LayupCheck {
    private static final int MODES = 8;

    private final Tub tub;
    private final Mesh mesh;
    private final Targets targets;
    private final double margin;
    private final DirectSolver solver;

    LayupChecks(Tub tub, Mesh mesh, Targets targets, double margin, DirectSolver solver) {
        this.tub = tub;
        this.mesh = mesh;
        this.targets = targets;
        this.margin = margin;
        this.solver = solver;
    }

    /** Whether there is anything to check. */
    boolean any() {
        return targets.reserveFactor().isPresent() || targets.bucklingFactor().isPresent() || frequencies();
    }

    /** What the design asks that is not checked here, in words. */
    List<String> unasked() {
        List<String> words = new ArrayList<>();
        if (targets.reserveFactor().isEmpty()) {
            words.add("strength");
        }
        if (targets.bucklingFactor().isEmpty()) {
            words.add("buckling");
        }
        if (!frequencies()) {
            words.add("vibration");
        }
        return words;
    }

    /** The tub with another layup; joints that change keep what they were built with. */
    static Tub with(Tub tub, Layup layup) {
        return tub.with(layup.zones(), layup.patches(), tub.joints(), tub.hardpoints());
    }

    @Override
    public List<Finding> check(Layup layup) {
        if (!any()) {
            return List.of();
        }
        Tub changed = with(tub, layup);
        Structure structure = Structure.of(changed, mesh);
        List<Finding> findings = new ArrayList<>();
        if (targets.reserveFactor().isPresent() || targets.bucklingFactor().isPresent()) {
            List<Solution> solutions = StaticSolver.solve(structure, tub.cases(), solver, new StepTimes());
            targets.reserveFactor().ifPresent(l -> reserve(changed, structure, solutions, l, findings));
            targets.bucklingFactor().ifPresent(l -> buckling(structure, solutions, l, findings));
        }
        if (frequencies()) {
            Modes modes = Vibration.free(structure, MODES, solver);
            targets.firstTorsionFrequency()
                    .ifPresent(
                            l -> findings.add(frequency("first torsion frequency, Hz", modes, Mode.Motion.TORSION, l)));
            targets.firstBendingFrequency()
                    .ifPresent(l ->
                            findings.add(frequency("first bending frequency, Hz", modes, Mode.Motion.VERTICAL, l)));
        }
        return findings;
    }

    private boolean frequencies() {
        return targets.firstTorsionFrequency().isPresent()
                || targets.firstBendingFrequency().isPresent();
    }

    /** Where none of the modes found is of that motion, its first lies above them all. */
    private Finding frequency(String what, Modes modes, Mode.Motion motion, Limit limit) {
        double frequency = modes.first(motion)
                .map(Mode::frequency)
                .orElseGet(() -> modes.modes().getLast().frequency());
        return new Finding(what, frequency, least(limit), "", List.of());
    }

    private double least(Limit limit) {
        return limit.si() * (1 + margin);
    }

    private void reserve(
            Tub changed, Structure structure, List<Solution> solutions, Limit limit, List<Finding> findings) {
        List<Solution> loads =
                solutions.stream().filter(s -> s.solved() instanceof Case.Loads).toList();
        if (loads.isEmpty()) {
            throw new UserMistake("the design has a target for the reserve factor, but no load case to find one in"
                    + "\n    write one under \"cases:\"");
        }
        Laminate[] laminates = mesh.regions().stream().map(changed::laminate).toArray(Laminate[]::new);
        Optional<Reserve> lowest = Reserves.of(structure, laminates, loads, tub.strength()).rows().stream()
                .filter(r -> !r.local() && !r.firstCrack())
                .min(Comparator.comparingDouble(Reserve::value));
        lowest.ifPresent(r -> findings.add(new Finding(
                "least reserve factor",
                r.value(),
                least(limit),
                r.zone() + ", " + r.check() + ", " + r.load(),
                owners(r.zone()))));
    }

    private void buckling(Structure structure, List<Solution> solutions, Limit limit, List<Finding> findings) {
        double lowest = Double.POSITIVE_INFINITY;
        String where = "";
        String zone = "";
        List<Solution> loads =
                solutions.stream().filter(s -> s.solved() instanceof Case.Loads).toList();
        List<Solution> judged = loads.isEmpty() ? solutions : loads;
        for (BucklingAnswer answer : Buckling.solve(structure, judged, 1, 0, solver)) {
            for (BucklingMode mode : answer.modes()) {
                if (mode.factor() < lowest) {
                    lowest = mode.factor();
                    zone = structure.parts().get(mode.part()).name();
                    where = zone + ", " + answer.solved().name();
                }
            }
        }
        findings.add(new Finding("least buckling factor", lowest, least(limit), where, owners(zone)));
    }

    private List<Owner> owners(String zone) {
        return tub.laminates().containsKey(zone) ? List.of(new Owner.Zone(zone)) : List.of();
    }
}
