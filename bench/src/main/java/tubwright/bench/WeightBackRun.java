// SPDX-License-Identifier: Apache-2.0
package tubwright.bench;

import java.io.IOException;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.Collections;
import java.util.List;
import java.util.Locale;
import java.util.Random;
import java.util.TreeSet;
import tubwright.engine.design.Design;
import tubwright.engine.laminate.Laminate;
import tubwright.engine.laminate.Layer;
import tubwright.engine.laminate.LayerRole;
import tubwright.engine.response.Study;
import tubwright.engine.structure.Case;
import tubwright.engine.structure.StaticSolver;
import tubwright.engine.structure.StepTimes;
import tubwright.engine.structure.Structure;
import tubwright.engine.structure.Tub;
import tubwright.engine.trim.Interval;
import tubwright.engine.trim.Layup;
import tubwright.engine.trim.Ledger;
import tubwright.engine.trim.LoadedTub;
import tubwright.engine.trim.WhatIf;
import tubwright.numerics.solver.Solvers;

/**
 * What-if and ledger of a tub at one mesh size against whole solutions of the same mesh, all in one process, so that the
 * ratios do not depend on the machine. Prints one line of figures.
 */
final class WeightBackRun {
    private static final int CHANGES = 100;
    private static final int EXACT = 10;
    private static final long SEED = 26_112_026;

    private WeightBackRun() {}

    /** @param arguments folder of the design, mesh size in mm */
    public static void main(String[] arguments) throws IOException {
        Tub tub = Design.read(Path.of(arguments[0])).asDesigned().tub();
        Structure structure = Structure.of(tub, Study.mesh(tub, Double.parseDouble(arguments[1]) / 1000));
        List<Case> cases = tub.cases().stream()
                .filter(c -> c instanceof Case.Torsion)
                .limit(1)
                .toList();
        double whole = Math.min(wholeSolution(structure, cases), wholeSolution(structure, cases));
        Layup nominal = Layup.of(tub);
        try (WhatIf whatIf = WhatIf.solve(structure, cases, nominal, Solvers.best())) {
            WhatIf.Preparation preparation = whatIf.prepare(_ -> {});
            List<Layup> changes = changes(nominal);
            double[] seconds = new double[CHANGES];
            double[] widths = new double[CHANGES];
            // Warmed up by other questions than those that are timed, so that none of these is asked twice.
            changes(nominal).forEach(l -> whatIf.ask(varied(l)));
            int before = whatIf.tubs().getFirst().substitutions();
            for (int i = 0; i < CHANGES; i++) {
                long start = System.nanoTime();
                WhatIf.Answer answer = whatIf.ask(changes.get(i));
                seconds[i] = since(start);
                widths[i] = answer.stiffness().relativeWidth();
            }
            if (whatIf.tubs().getFirst().substitutions() != before) {
                throw new IllegalStateException("instant answers made solutions");
            }
            double[] exact = new double[EXACT];
            int[] steps = new int[EXACT];
            for (int i = 0; i < EXACT; i++) {
                Interval instant = whatIf.ask(changes.get(i)).stiffness();
                long start = System.nanoTime();
                WhatIf.Answer answer = whatIf.solve(changes.get(i), 1e-8);
                exact[i] = since(start);
                steps[i] = answer.substitutions();
                if (!instant.contains(answer.stiffness().middle())) {
                    throw new IllegalStateException(instant + " does not contain " + answer.stiffness());
                }
            }
            LoadedTub loaded = whatIf.tubs().getFirst();
            before = loaded.substitutions();
            long start = System.nanoTime();
            Ledger ledger = Ledger.of(loaded);
            double drawnUp = since(start);
            System.out.println(String.format(
                    Locale.ROOT,
                    "RESULT %d %.3f %d %.2f %.1f %.2f %.3f %.3f %.0f %.3f %.3f %d %.3f %d %.2f %d %.2f %.1f %.2f",
                    structure.unknowns(),
                    whole,
                    preparation.fields(),
                    preparation.seconds(),
                    preparation.seconds() / whole,
                    preparation.bytes() / 1e9,
                    1000 * quantile(seconds, 0.5),
                    1000 * quantile(seconds, 1),
                    whole / quantile(seconds, 0.5),
                    100 * quantile(widths, 0.95),
                    100 * quantile(widths, 1),
                    Arrays.stream(steps).max().orElseThrow(),
                    quantile(exact, 0.5),
                    ledger.entries().size(),
                    drawnUp,
                    loaded.substitutions() - before,
                    drawnUp / whole,
                    whole / quantile(exact, 0.5),
                    SolverRun.peakGigabytes()));
        }
    }

    private static double wholeSolution(Structure structure, List<Case> cases) {
        StepTimes times = new StepTimes();
        StaticSolver.solve(structure, cases, Solvers.best(), times);
        return times.assembly + times.ordering + times.factorisation + times.solve;
    }

    /** Up to two plies less in each of any three zones. */
    private static List<Layup> changes(Layup nominal) {
        Random random = new Random(SEED);
        List<Layup> result = new ArrayList<>();
        for (int i = 0; i < CHANGES; i++) {
            List<String> zones = new ArrayList<>(new TreeSet<>(nominal.zones().keySet()));
            Collections.shuffle(zones, random);
            Layup layup = nominal;
            for (String zone : zones.subList(0, 3)) {
                layup = layup.withZone(zone, thinner(nominal.zones().get(zone), 1 + random.nextInt(2), random));
            }
            result.add(layup);
        }
        return result;
    }

    private static Laminate thinner(Laminate laminate, int plies, Random random) {
        List<Layer> layers = new ArrayList<>(laminate.layers());
        for (int gone = 0; gone < plies; ) {
            int at = random.nextInt(layers.size());
            if (layers.get(at).role() == LayerRole.PLY) {
                layers.remove(at);
                gone++;
            }
        }
        return new Laminate(layers, laminate.reference());
    }

    /** The same change with a zone more. */
    private static Layup varied(Layup layup) {
        String zone = new TreeSet<>(layup.zones().keySet()).first();
        return layup.withZone(zone, thinner(layup.zones().get(zone), 1, new Random(SEED)));
    }

    private static double quantile(double[] values, double share) {
        double[] sorted = values.clone();
        Arrays.sort(sorted);
        return sorted[Math.min(sorted.length - 1, (int) (share * sorted.length))];
    }

    private static double since(long start) {
        return (System.nanoTime() - start) * 1e-9;
    }
}
