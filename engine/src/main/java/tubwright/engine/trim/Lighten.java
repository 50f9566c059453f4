// SPDX-License-Identifier: Apache-2.0
package tubwright.engine.trim;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Random;
import java.util.Set;
import java.util.TreeMap;
import tubwright.engine.laminate.Laminate;

/**
 * Weight back: one candidate laminate for each zone so that every stiffness target is met and the tub is lightest, with
 * a proved bound.
 *
 * <p>Down from above: with the stresses N of a design's exact solution, c(λ) ≤ Σ λ tr(C_k⁻¹ H), H = Σ w NNᵀ, is linear in
 * the choice and sufficient, so the least mass under that row meets the target again and is never heavier; repeated
 * until nothing changes, then from kicked designs. Up from below: any field v gives vᵀK(λ)v ≥ (fᵀv)²/c_target for every
 * choice that meets the target (Cauchy and Schwarz in the energy product); least mass under such cuts, from solutions of
 * mixtures of candidates, is the bound. A mixed-integer programme over the cuts closes the gap where it is small enough
 * to be solved.
 */
public final class Lighten {
    private static final double EXACT = 1e-8;
    private static final double HARVEST = 1e-3;
    private static final int MOST_HARVESTS = 60;
    /** So many whatever the time: without them there is no bound to speak of. */
    private static final int FEWEST_HARVESTS = 8;

    private static final int MOST_DESCENT = 8;
    private static final int MOST_KICKS = 12;
    private static final double DESCENT_SHARE = 0.06;
    private static final long SEED = 17;

    private final List<Target> targets;
    private final LoadedTub tub;
    private final Layup nominal;
    private final List<String> zones = new ArrayList<>();
    private final List<List<Laminate>> candidates = new ArrayList<>();
    private final List<List<Integer>> blocksOfZone = new ArrayList<>();
    /** Stiffness and compliance by zone, candidate and block of the zone. */
    private final double[][][][] stiffness;

    private final double[][][][] flexibility;
    private final double[][] masses;
    private final double base;
    private final Programme cuts;
    private final List<Lightened.Step> history = new ArrayList<>();
    private final Random random = new Random(SEED);
    private final long start = System.nanoTime();
    private final double seconds;
    private int solves;
    private int harvests;
    private double bound;
    private Optional<Design> best = Optional.empty();

    /**
     * A stiffness to be reached.
     *
     * @param tub solved under the case it is about; all targets' tubs have one structure and nominal layup
     * @param stiffness at least this: N·m/rad or N/m between loaded and held hardpoints
     */
    public record Target(LoadedTub tub, double stiffness) {
        double compliance() {
            return tub.stiffness(stiffness);
        }
    }

    private record Design(int[] choice, double mass, List<Resolve.Solved> solved) {}

    private Lighten(List<Target> targets, Map<String, List<Laminate>> offered, double seconds) {
        this.targets = List.copyOf(targets);
        this.seconds = seconds;
        tub = targets.getFirst().tub();
        nominal = tub.nominal();
        List<Blocks.Block> blocks = tub.blocks().all();
        new TreeMap<>(offered).forEach((zone, laminates) -> {
            if (laminates.isEmpty()) {
                throw new IllegalArgumentException("zone '" + zone + "' has no candidate: the rules leave none");
            }
            List<Integer> own = new ArrayList<>();
            for (int b = 0; b < blocks.size(); b++) {
                if (blocks.get(b).zone().equals(zone)) {
                    own.add(b);
                }
            }
            if (!own.isEmpty()) {
                zones.add(zone);
                candidates.add(List.copyOf(laminates));
                blocksOfZone.add(own);
            }
        });
        int count = zones.size();
        stiffness = new double[count][][][];
        flexibility = new double[count][][][];
        masses = new double[count][];
        double changing = 0;
        for (int z = 0; z < count; z++) {
            int n = candidates.get(z).size();
            List<Integer> own = blocksOfZone.get(z);
            stiffness[z] = new double[n][own.size()][];
            flexibility[z] = new double[n][own.size()][];
            masses[z] = new double[n];
            for (int k = 0; k < n; k++) {
                Layup layup = nominal.withZone(zones.get(z), candidates.get(z).get(k));
                for (int b = 0; b < own.size(); b++) {
                    Blocks.Block block = blocks.get(own.get(b));
                    Laminate laminate = layup.laminate(block);
                    stiffness[z][k][b] = Constitutive.of(laminate.stiffness().matrix());
                    flexibility[z][k][b] = Constitutive.inverse(stiffness[z][k][b]);
                    masses[z][k] += block.area() * laminate.arealMass();
                }
            }
            for (int b : own) {
                changing +=
                        blocks.get(b).area() * nominal.laminate(blocks.get(b)).arealMass();
            }
        }
        base = tub.mass(nominal) - changing;
        cuts = new Programme(masses);
        bound = base
                + Arrays.stream(masses)
                        .mapToDouble(m -> Arrays.stream(m).min().orElseThrow())
                        .sum();
    }

    /**
     * Finds the lightest layup.
     *
     * @param targets stiffness to be reached, at least one
     * @param candidates laminates each zone may take, by zone; zones not named keep theirs
     * @param seconds to spend, roughly
     * @throws IllegalArgumentException where a zone has no candidate, or no choice found meets the targets; the message
     *     says what is reachable
     */
    public static Lightened lightest(List<Target> targets, Map<String, List<Laminate>> candidates, double seconds) {
        return new Lighten(targets, candidates, seconds).run();
    }

    private Lightened run() {
        double removable = tub.mass(nominal) - bound;
        Design first = begin();
        descend(first, 0.6 * seconds);
        harvest();
        for (int kick = 0; kick < MOST_KICKS && left() > 0.2 * seconds; kick++) {
            kick();
        }
        close();
        Design found = best.orElseThrow();
        List<Interval> reached = new ArrayList<>();
        for (int t = 0; t < targets.size(); t++) {
            Interval c = found.solved.get(t).compliance();
            reached.add(new Interval(
                    targets.get(t).tub().stiffness(c.high()),
                    targets.get(t).tub().stiffness(c.low())));
        }
        return new Lightened(
                layup(found.choice),
                found.mass,
                reached,
                Math.min(bound, found.mass),
                removable,
                solves,
                harvests,
                history);
    }

    private double left() {
        return seconds - (System.nanoTime() - start) * 1e-9;
    }

    /** The heaviest candidates everywhere; where even they miss a target nothing is left to try. */
    private Design begin() {
        int[] choice = new int[zones.size()];
        for (int z = 0; z < choice.length; z++) {
            for (int k = 1; k < masses[z].length; k++) {
                choice[z] = masses[z][k] > masses[z][choice[z]] ? k : choice[z];
            }
        }
        Design design = solve(choice);
        if (best.isEmpty()) {
            StringBuilder reached = new StringBuilder();
            for (int t = 0; t < targets.size(); t++) {
                Target target = targets.get(t);
                reached.append(String.format(
                        java.util.Locale.ROOT,
                        "%s'%s' reaches %.1f %% of its target",
                        t > 0 ? ", " : "",
                        target.tub().loading().name(),
                        100
                                * target.tub()
                                        .stiffness(design.solved
                                                .get(t)
                                                .compliance()
                                                .middle())
                                / target.stiffness()));
            }
            throw new IllegalArgumentException("with the heaviest candidate in every zone " + reached);
        }
        return design;
    }

    private Design solve(int[] choice) {
        double mass = base;
        for (int z = 0; z < choice.length; z++) {
            mass += masses[z][choice[z]];
        }
        Change change = change(choice);
        List<Resolve.Solved> solved = new ArrayList<>();
        boolean met = true;
        for (Target target : targets) {
            Resolve.Solved each = new Resolve(target.tub()).solve(change, Resolve.within(EXACT));
            solved.add(each);
            met &= each.compliance().high() <= target.compliance();
            cuts.add(cut(target, each, whole(choice)));
        }
        solves++;
        Design design = new Design(choice, mass, solved);
        if (met && (best.isEmpty() || mass < best.get().mass - 1e-9)) {
            best = Optional.of(design);
            note();
        }
        return design;
    }

    private void note() {
        double now = (System.nanoTime() - start) * 1e-9;
        history.add(new Lightened.Step(now, best.map(Design::mass).orElse(Double.NaN), bound));
    }

    private Change change(int[] choice) {
        TreeMap<Integer, double[]> laminates = new TreeMap<>();
        for (int z = 0; z < choice.length; z++) {
            for (int b = 0; b < blocksOfZone.get(z).size(); b++) {
                double[] c = stiffness[z][choice[z]][b];
                int block = blocksOfZone.get(z).get(b);
                if (!Arrays.equals(c, tub.laminate(block))) {
                    laminates.put(block, c);
                }
            }
        }
        return new Change(laminates, new TreeMap<>());
    }

    private double[][] whole(int[] choice) {
        double[][] mixture = new double[choice.length][];
        for (int z = 0; z < choice.length; z++) {
            mixture[z] = new double[masses[z].length];
            mixture[z][choice[z]] = 1;
        }
        return mixture;
    }

    /** vᵀK(λ)v ≥ (fᵀv)²/c_target, v solved for a mixture. */
    private Programme.Row cut(Target target, Resolve.Solved solved, double[][] mixture) {
        double[][] coefficients = new double[zones.size()][];
        double[] u = solved.displacements();
        double fixed = solved.work();
        for (int z = 0; z < zones.size(); z++) {
            coefficients[z] = new double[masses[z].length];
            for (int b = 0; b < blocksOfZone.get(z).size(); b++) {
                double[] g = target.tub().gramians(blocksOfZone.get(z).get(b), u);
                for (int k = 0; k < coefficients[z].length; k++) {
                    coefficients[z][k] += Constitutive.trace(stiffness[z][k][b], g, 0);
                }
            }
            for (int k = 0; k < coefficients[z].length; k++) {
                fixed -= mixture[z][k] * coefficients[z][k];
            }
        }
        double load = LoadedTub.dot(target.tub().loads(), u);
        return new Programme.Row(coefficients, load * load / target.compliance() - fixed);
    }

    /** Σ λ tr(C_k⁻¹ H) ≤ c_target less the fixed part, H of a design's stresses; written with ≥. */
    private Programme.Row flexibilityRow(Target target, Resolve.Solved solved, int[] choice) {
        double[][] coefficients = new double[zones.size()][];
        double fixed = solved.compliance().high();
        for (int z = 0; z < zones.size(); z++) {
            coefficients[z] = new double[masses[z].length];
            for (int b = 0; b < blocksOfZone.get(z).size(); b++) {
                double[] c = stiffness[z][choice[z]][b];
                double[] g = target.tub().gramians(blocksOfZone.get(z).get(b), solved.displacements());
                double[] h = Constitutive.product(Constitutive.product(c, g), c);
                for (int k = 0; k < coefficients[z].length; k++) {
                    coefficients[z][k] -= Constitutive.trace(flexibility[z][k][b], h, 0);
                }
            }
            fixed += coefficients[z][choice[z]];
        }
        return new Programme.Row(coefficients, fixed - target.compliance());
    }

    /** Goes down by flexibility rows until nothing changes, or no more than the reserve of time is left. */
    private void descend(Design from, double reserve) {
        Design design = from;
        for (int step = 0; step < MOST_DESCENT && left() > reserve; step++) {
            Optional<int[]> next = lightestUnderRows(design, Set.of());
            if (next.isEmpty() || Arrays.equals(next.get(), design.choice)) {
                return;
            }
            Design lighter = solve(next.get());
            if (!(lighter.mass < design.mass - 1e-9)) {
                return;
            }
            design = lighter;
        }
    }

    /** The lightest choice the rows of a design allow; in the zones forbidden it may not stay as it is. */
    private Optional<int[]> lightestUnderRows(Design design, Set<Integer> forbidden) {
        double[][] weights = new double[masses.length][];
        for (int z = 0; z < weights.length; z++) {
            weights[z] = masses[z].clone();
            if (forbidden.contains(z)) {
                weights[z][design.choice[z]] += tub.mass(nominal);
            }
        }
        Programme programme = new Programme(weights);
        for (int t = 0; t < targets.size(); t++) {
            programme.add(flexibilityRow(targets.get(t), design.solved.get(t), design.choice));
        }
        return programme.whole((long) (1000 * Math.max(1, Math.min(left(), DESCENT_SHARE * seconds))), false);
    }

    /** Moves the best design away in a few zones and goes down again. */
    private void kick() {
        Design design = best.orElseThrow();
        Set<Integer> forbidden = new HashSet<>();
        int most = Math.min(zones.size(), 2 + random.nextInt(3));
        while (forbidden.size() < most) {
            forbidden.add(random.nextInt(zones.size()));
        }
        lightestUnderRows(design, forbidden)
                .filter(choice -> !Arrays.equals(choice, design.choice))
                .ifPresent(choice -> descend(solve(choice), 0.15 * seconds));
    }

    /** Raises the bound by cuts from mixtures, each halfway between the lightest mixture and the best design. */
    private void harvest() {
        for (int h = 0; h < MOST_HARVESTS && (h < FEWEST_HARVESTS || left() > 0.35 * seconds); h++) {
            Optional<double[][]> mixture = cuts.relaxed();
            if (mixture.isEmpty()) {
                break;
            }
            double[][] centre = whole(best.orElseThrow().choice);
            // The first half of the way keeps cuts deep; the end point itself proves that the relaxation is solved.
            double inward = h % 3 == 2 ? 0 : 0.5;
            double[][] point = new double[centre.length][];
            for (int z = 0; z < point.length; z++) {
                point[z] = new double[centre[z].length];
                for (int k = 0; k < point[z].length; k++) {
                    point[z][k] = inward * centre[z][k] + (1 - inward) * mixture.get()[z][k];
                }
            }
            Change change = mixed(point);
            boolean met = true;
            for (Target target : targets) {
                Resolve.Solved solved = new Resolve(target.tub()).solve(change, Resolve.within(HARVEST));
                met &= solved.compliance().low() <= target.compliance() * (1 + 2e-4);
                cuts.add(cut(target, solved, point));
            }
            harvests++;
            raise(base + cuts.bound());
            if (met && inward == 0) {
                break;
            }
        }
    }

    private void raise(double proved) {
        if (proved > bound) {
            bound = proved;
            note();
        }
    }

    private Change mixed(double[][] mixture) {
        TreeMap<Integer, double[]> laminates = new TreeMap<>();
        for (int z = 0; z < mixture.length; z++) {
            for (int b = 0; b < blocksOfZone.get(z).size(); b++) {
                double[] sum = new double[Constitutive.ENTRIES];
                for (int k = 0; k < mixture[z].length; k++) {
                    if (mixture[z][k] > 0) {
                        sum = Constitutive.plus(sum, mixture[z][k], stiffness[z][k][b]);
                    }
                }
                laminates.put(blocksOfZone.get(z).get(b), sum);
            }
        }
        return new Change(laminates, new TreeMap<>());
    }

    /** Outer approximation: the lightest choice under all cuts is solved; it meets the targets, or gives the next cut. */
    private void close() {
        Set<List<Integer>> seen = new HashSet<>();
        while (left() > 0 && best.orElseThrow().mass - bound > 1e-9 * bound) {
            Optional<int[]> choice = cuts.whole((long) (1000 * Math.max(1, left())), true);
            if (choice.isEmpty()) {
                return;
            }
            double mass = base;
            for (int z = 0; z < choice.get().length; z++) {
                mass += masses[z][choice.get()[z]];
            }
            // The solver keeps rows to a part in a million, and so is the bound it proves.
            raise(Math.min(mass, best.get().mass) * (1 - 1e-6));
            if (mass >= best.get().mass - 1e-9
                    || !seen.add(Arrays.stream(choice.get()).boxed().toList())) {
                return;
            }
            solve(choice.get());
        }
    }

    private Layup layup(int[] choice) {
        Layup layup = nominal;
        for (int z = 0; z < choice.length; z++) {
            layup = layup.withZone(zones.get(z), candidates.get(z).get(choice[z]));
        }
        return layup;
    }
}
