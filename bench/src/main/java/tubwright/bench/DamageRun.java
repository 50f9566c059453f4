// SPDX-License-Identifier: Apache-2.0
package tubwright.bench;

import java.io.IOException;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import tubwright.engine.design.Design;
import tubwright.engine.response.Progress;
import tubwright.engine.response.Study;
import tubwright.engine.safety.damage.DamageModel;
import tubwright.engine.safety.damage.Degree;
import tubwright.engine.safety.damage.Patch;
import tubwright.engine.safety.damage.PatchAnswer;
import tubwright.engine.structure.Case;
import tubwright.engine.structure.StaticSolver;
import tubwright.engine.structure.StepTimes;
import tubwright.engine.structure.Structure;
import tubwright.engine.structure.Tub;
import tubwright.numerics.solver.Solvers;

/** A moving hole over a whole tub, against whole solutions of the same cases. */
final class DamageRun {
    private static final int CHECKED = 24;

    private DamageRun() {}

    /** @param arguments folder of the design, mesh size in mm, patch in mm, positions */
    public static void main(String[] arguments) throws IOException {
        Tub tub = Design.read(Path.of(arguments[0])).asDesigned().tub();
        double size = Double.parseDouble(arguments[1]) / 1000;
        double diameter = Double.parseDouble(arguments[2]) / 1000;
        int count = Integer.parseInt(arguments[3]);
        Structure bare = Structure.of(tub, Study.mesh(tub, size));
        whole(tub, bare);
        double before = Math.min(whole(tub, bare), whole(tub, bare));
        long start = System.nanoTime();
        DamageModel model = DamageModel.of(tub, size, Solvers.best());
        double ready = ClockedSolver.since(start);
        List<Patch> patches = model.patches().moving(diameter, count);
        model.answer(patches.subList(0, Math.min(100, count)), Degree.HOLE, Progress.silent());
        start = System.nanoTime();
        List<PatchAnswer> answers = model.answer(patches, Degree.HOLE, Progress.silent());
        double scan = ClockedSolver.since(start);
        double after = Math.min(whole(tub, bare), whole(tub, bare));
        double solution = 0.5 * (before + after);
        List<Double> apart = new ArrayList<>();
        for (int k = 0; k < CHECKED; k++) {
            int at = k * patches.size() / CHECKED;
            double alone = model.answer(patches.get(at), Degree.HOLE).torsionLost();
            double scanned = answers.get(at).torsionLost();
            if (!Double.isNaN(alone)) {
                apart.add(Math.abs(alone - scanned));
            }
        }
        double[] lost = answers.stream()
                .mapToDouble(PatchAnswer::torsionLost)
                .filter(v -> !Double.isNaN(v))
                .sorted()
                .toArray();
        System.out.printf(
                Locale.ROOT,
                "RESULT %d %d %.1f %.2f %.2f %d %.1f %.1f %.1f %.1e %.3f %.2f %d %.2f%n",
                bare.unknowns(),
                tub.cases().size(),
                Arrays.stream(patches.stream()
                                .mapToInt(p -> p.elements().length)
                                .toArray())
                        .average()
                        .orElse(0),
                solution,
                ready,
                patches.size(),
                scan,
                1000 * scan / patches.size(),
                scan / solution,
                apart.stream().mapToDouble(v -> v).max().orElse(Double.NaN),
                100 * lost[lost.length / 2],
                100 * lost[lost.length - 1],
                answers.stream().filter(PatchAnswer::loose).count(),
                SolverRun.peakGigabytes());
    }

    /** Seconds to assemble, order, factorise and solve what the scan starts from. */
    private static double whole(Tub tub, Structure bare) {
        long start = System.nanoTime();
        List<Case> read =
                tub.cases().stream().filter(c -> !(c instanceof Case.Loads)).toList();
        List<Case> loads =
                tub.cases().stream().filter(Case.Loads.class::isInstance).toList();
        StaticSolver.solve(bare, read, Solvers.best(), new StepTimes());
        StaticSolver.solve(bare.with(tub.fittings()), loads, Solvers.best(), new StepTimes());
        return ClockedSolver.since(start);
    }
}
