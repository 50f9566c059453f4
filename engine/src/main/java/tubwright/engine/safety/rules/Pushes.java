// SPDX-License-Identifier: Apache-2.0
package tubwright.engine.safety.rules;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import tubwright.engine.laminate.Laminate;
import tubwright.engine.response.Reserve;
import tubwright.engine.response.ReserveTable;
import tubwright.engine.response.Reserves;
import tubwright.engine.response.Study;
import tubwright.engine.structure.Case;
import tubwright.engine.structure.Hardpoint;
import tubwright.engine.structure.Solution;
import tubwright.engine.structure.SpreadPlace;
import tubwright.engine.structure.StaticSolver;
import tubwright.engine.structure.StepTimes;
import tubwright.engine.structure.Structure;
import tubwright.engine.structure.Tub;
import tubwright.numerics.DirectSolver;

/** Every push of a rule set on the tub with all that is bolted on, solved together. */
public final class Pushes {
    /** Of a rule set that pushes nowhere. */
    public static final Pushes NONE = new Pushes(Map.of());

    private final Map<String, Answer> answers;

    private Pushes(Map<String, Answer> answers) {
        this.answers = Map.copyOf(answers);
    }

    /**
     * What a clause's pushes come to.
     *
     * @param reserve lowest factor on the load
     * @param where it gives way
     * @param mode how
     * @param movement of the place along the force, m; not a number for a body free in space or points that only carry
     * @param notChecked what could not be looked at, in words
     */
    public record Answer(double reserve, String where, String mode, double movement, List<String> notChecked) {
        public Answer {
            notChecked = List.copyOf(notChecked);
        }
    }

    /** What a clause comes to that was asked. */
    Answer of(String clause) {
        return Optional.ofNullable(answers.get(clause))
                .orElse(new Answer(Double.NaN, "", "", Double.NaN, List.of("its pushes solved")));
    }

    /** What the design must still say before a push can be solved; empty where it can. */
    static Optional<String> lacks(RuledTub rules, RuleSet.Pushed demand) {
        Optional<RuledTub.Place> place = rules.place(demand.place());
        boolean pad = !Double.isNaN(demand.pad()[0]);
        if (place.isEmpty()
                || (pad ? place.get().middle().isEmpty() : place.get().points().isEmpty())) {
            return Optional.of("\"" + (pad ? "at" : "points") + "\" of place \"" + demand.place() + "\"");
        }
        if (rules.hold().isEmpty() && Double.isFinite(demand.moves())) {
            return Optional.of("\"hold\": how the tub is held while it is pushed");
        }
        return Optional.empty();
    }

    /** A case and what of its rows counts. */
    private record Asked(
            String clause, Case.Loads load, Optional<String> only, Optional<Case.Spread> pad, List<String> points) {}

    /**
     * Solves them all on one mesh.
     *
     * @param meshSize m
     */
    public static Pushes solve(Tub tub, RuledTub rules, double meshSize, DirectSolver solver) {
        List<Asked> asked = new ArrayList<>();
        for (RuleSet.Clause clause : rules.set().clauses()) {
            switch (clause.demand()) {
                case RuleSet.Pushed p -> push(clause.number(), p, rules).ifPresent(asked::add);
                case RuleSet.Carries c -> asked.addAll(carry(clause.number(), c, rules, tub));
                default -> {}
            }
        }
        if (asked.isEmpty()) {
            return NONE;
        }
        Structure structure = Structure.fitted(tub, Study.mesh(tub, meshSize));
        List<Solution> solutions = StaticSolver.solve(
                structure, asked.stream().<Case>map(Asked::load).toList(), solver, new StepTimes());
        Laminate[] laminates =
                structure.mesh().regions().stream().map(tub::laminate).toArray(Laminate[]::new);
        ReserveTable table = Reserves.of(structure, laminates, solutions, tub.strength());
        Map<String, Answer> answers = new LinkedHashMap<>();
        for (int i = 0; i < asked.size(); i++) {
            Asked each = asked.get(i);
            Answer answer = answer(each, structure, solutions.get(i), table);
            answers.merge(each.clause(), answer, Pushes::worse);
        }
        return new Pushes(answers);
    }

    private static Answer answer(Asked asked, Structure structure, Solution solution, ReserveTable table) {
        Optional<Reserve> lowest = table.rows().stream()
                .filter(r -> r.load().equals(asked.load().name()) && !r.firstCrack())
                .filter(r -> asked.only().map(o -> r.zone().equals(o)).orElse(!r.local()))
                .min(Comparator.comparingDouble(Reserve::value));
        List<String> missing = new ArrayList<>();
        asked.only().ifPresent(o -> {
            if (lowest.isEmpty()) {
                missing.add("how \"" + o + "\" is made (\"insert\"), or its strength by test");
            }
        });
        double movement = Double.NaN;
        if (!asked.load().free()) {
            movement = asked.pad()
                    .map(p -> SpreadPlace.movement(structure.mesh(), p, solution.displacements()))
                    .orElseGet(() -> movement(asked, structure, solution.displacements()));
        }
        return new Answer(
                lowest.map(Reserve::value).orElse(Double.POSITIVE_INFINITY),
                lowest.map(Reserve::zone).orElse("nothing"),
                lowest.map(r -> r.mode().isEmpty() ? r.check() : r.check() + ", " + r.mode())
                        .orElse("nothing pushed to its limit"),
                movement,
                missing);
    }

    private static double movement(Asked asked, Structure structure, double[] u) {
        double sum = 0;
        for (Case.Force each : asked.load().forces()) {
            double[] d = structure.movement(each.hardpoint(), u);
            double[] f = each.force();
            double length = Math.sqrt(f[0] * f[0] + f[1] * f[1] + f[2] * f[2]);
            sum += (d[0] * f[0] + d[1] * f[1] + d[2] * f[2])
                    / length
                    / asked.load().forces().size();
        }
        return sum;
    }

    /** The one with the lower factor, with what either lacks. */
    private static Answer worse(Answer a, Answer b) {
        List<String> missing = new ArrayList<>(a.notChecked());
        b.notChecked().stream().filter(n -> !missing.contains(n)).forEach(missing::add);
        Answer low = a.reserve() <= b.reserve() ? a : b;
        return new Answer(low.reserve(), low.where(), low.mode(), Math.max(a.movement(), b.movement()), missing);
    }

    private static Optional<Asked> push(String clause, RuleSet.Pushed demand, RuledTub rules) {
        if (lacks(rules, demand).isPresent()) {
            return Optional.empty();
        }
        RuledTub.Place place = rules.place(demand.place()).orElseThrow();
        String source = "clause " + clause + " of " + rules.set().name();
        if (Double.isNaN(demand.pad()[0])) {
            List<Case.Force> forces = place.points().stream()
                    .map(p -> new Case.Force(
                            p, divided(demand.force(), place.points().size()), new double[3]))
                    .toList();
            Case.Loads load = new Case.Loads(clause, rules.hold(), forces, new double[3], source);
            return Optional.of(new Asked(clause, load, Optional.empty(), Optional.empty(), place.points()));
        }
        double[] middle = place.middle().orElseThrow();
        double[] low = new double[3];
        double[] high = new double[3];
        for (int d = 0; d < 3; d++) {
            low[d] = middle[d] - demand.pad()[d] / 2;
            high[d] = middle[d] + demand.pad()[d] / 2;
        }
        Case.Spread pad = new Case.Spread(demand.place(), place.on(), low, high, demand.force());
        Case.Loads load = new Case.Loads(clause, rules.hold(), List.of(), new double[3], source).with(List.of(pad));
        return Optional.of(new Asked(clause, load, Optional.empty(), Optional.of(pad), List.of()));
    }

    /** Each point of the right-hand side (the left is its mirror image) along x, y and z, away from the tub's middle. */
    private static List<Asked> carry(String clause, RuleSet.Carries demand, RuledTub rules, Tub tub) {
        List<Asked> all = new ArrayList<>();
        for (String point :
                rules.place(demand.place()).map(RuledTub.Place::points).orElse(List.of())) {
            if (point.endsWith(" L")) {
                continue;
            }
            Optional<Hardpoint> at = tub.hardpoints().stream()
                    .filter(h -> h.name().equals(point))
                    .findFirst();
            for (int d = 0; d < 3; d++) {
                double[] force = new double[3];
                double middle = d == 0 ? (tub.shape().front() + tub.shape().rear()) / 2 : d == 1 ? 0 : meanHeight(tub);
                int axis = d;
                force[d] = at.map(h -> h.position()[axis] < middle).orElse(false) ? -demand.force() : demand.force();
                String name = clause + " " + point + " " + "xyz".charAt(d);
                Case.Loads load = new Case.Loads(
                        name,
                        List.of(),
                        List.of(new Case.Force(point, force, new double[3])),
                        new double[3],
                        "clause " + clause + " of " + rules.set().name());
                all.add(new Asked(clause, load, Optional.of(point), Optional.empty(), List.of()));
            }
        }
        return all;
    }

    private static double meanHeight(Tub tub) {
        return tub.hardpoints().stream()
                .mapToDouble(h -> h.position()[2])
                .average()
                .orElse(0);
    }

    private static double[] divided(double[] force, int by) {
        return new double[] {force[0] / by, force[1] / by, force[2] / by};
    }
}
