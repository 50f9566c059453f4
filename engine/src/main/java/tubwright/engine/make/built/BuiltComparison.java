// SPDX-License-Identifier: Apache-2.0
package tubwright.engine.make.built;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.Set;
import java.util.TreeMap;
import tubwright.engine.make.built.BuiltTub.Kind;
import tubwright.engine.make.built.BuiltTub.Line;
import tubwright.engine.make.data.DataException;
import tubwright.engine.quantity.NearestName;

/**
 * A tub as built against its plan.
 *
 * @param plies weighed ones
 * @param pieces weighed ones
 * @param tub the whole, if it was weighed
 * @param batches those named, with what they were used for
 * @param materials what the weighing says of each
 * @param beyond what lies outside its limit, in words
 * @param without plies of the plan of which no batch is known
 */
public record BuiltComparison(
        List<Weighed> plies,
        List<Weighed> pieces,
        Optional<Weighed> tub,
        Map<String, Batch> batches,
        Map<String, Factor> materials,
        List<String> beyond,
        List<String> without) {
    /** How far a mass may be from its plan: common practice, no source. */
    public static final double LIMIT = 0.05;

    /** How far the thickness a ply cures to may be: common practice, no source (5 to 8 %). */
    public static final double THICKNESS = 0.08;

    /**
     * Something weighed.
     *
     * @param name of it
     * @param material "" for pieces
     * @param batch "" where nobody said
     * @param planned kg
     * @param mass kg
     */
    public record Weighed(String name, String material, String batch, double planned, double mass) {
        /** Share by which it is heavier. */
        public double over() {
            return mass / planned - 1;
        }
    }

    /**
     * A batch.
     *
     * @param name of it
     * @param material of it
     * @param areal measured over planned mass per area, if it was measured
     * @param thickness measured over planned, if it was
     * @param plies made of it
     */
    public record Batch(
            String name, String material, OptionalDouble areal, OptionalDouble thickness, List<String> plies) {
        public Batch {
            plies = List.copyOf(plies);
        }
    }

    /**
     * What is known of a material.
     *
     * @param factor mass per area over that of the plan: by its batches where they were measured, else by plies weighed
     * @param known share of the planned mass that this rests on
     */
    public record Factor(double factor, double known) {}

    public BuiltComparison {
        plies = List.copyOf(plies);
        pieces = List.copyOf(pieces);
        batches = java.util.Collections.unmodifiableMap(new LinkedHashMap<>(batches));
        materials = java.util.Collections.unmodifiableMap(new TreeMap<>(materials));
        beyond = List.copyOf(beyond);
        without = List.copyOf(without);
    }

    /**
     * Compares.
     *
     * @param built as the shop filled the form in
     * @param plan the form as it left
     * @throws DataException naming file and line of what the plan does not have
     */
    public static BuiltComparison of(BuiltTub built, BuiltTub plan) {
        return new Comparing(built, plan).result();
    }

    /** Weight of all pieces over their plan; 1 where none was weighed. */
    public double massFactor() {
        double mass = pieces.stream().mapToDouble(Weighed::mass).sum();
        double planned = pieces.stream().mapToDouble(Weighed::planned).sum();
        return planned > 0 ? mass / planned : 1;
    }

    private static final class Comparing {
        private final BuiltTub built;
        private final Map<String, Line> patterns = new LinkedHashMap<>();
        private final Map<String, Line> pieces = new LinkedHashMap<>();
        private final Set<String> materials = new LinkedHashSet<>();
        private final BuiltTub plan;
        private final List<String> beyond = new ArrayList<>();

        Comparing(BuiltTub built, BuiltTub plan) {
            this.built = built;
            this.plan = plan;
            plan.of(Kind.PLY).forEach(l -> patterns.put(l.pattern(), l));
            plan.of(Kind.PIECE).forEach(l -> pieces.put(l.piece(), l));
            plan.lines().stream().map(Line::material).filter(m -> !m.isEmpty()).forEach(materials::add);
        }

        BuiltComparison result() {
            Map<String, List<Line>> byBatch = new LinkedHashMap<>();
            Map<String, List<String>> used = new LinkedHashMap<>();
            for (Line line : built.of(Kind.BATCH)) {
                if (!line.filled()) {
                    continue;
                }
                if (line.batch().isEmpty()) {
                    throw fault(line, "a batch wants its number under 'batch'");
                }
                known(line, line.material(), materials, "material");
                byBatch.computeIfAbsent(line.batch(), _ -> new ArrayList<>()).add(line);
            }
            List<Weighed> plies = new ArrayList<>();
            Map<String, String> batchOf = new LinkedHashMap<>();
            Set<String> seen = new LinkedHashSet<>();
            for (Line line : built.of(Kind.PLY)) {
                known(line, line.pattern(), patterns.keySet(), "pattern");
                if (!seen.add(line.pattern())) {
                    throw fault(line, "'" + line.pattern() + "' is there twice");
                }
                Line planned = patterns.get(line.pattern());
                if (!line.material().isEmpty() && !line.material().equals(planned.material())) {
                    beyond.add(
                            "'" + line.pattern() + "' is of " + line.material() + " instead of " + planned.material());
                }
                if (!line.batch().isEmpty()) {
                    known(line, line.batch(), byBatch.keySet(), "batch");
                    String material = byBatch.get(line.batch()).getFirst().material();
                    if (!material.equals(planned.material())) {
                        beyond.add("'" + line.pattern() + "' is of batch " + line.batch() + ", which is " + material
                                + " and not " + planned.material());
                    }
                    batchOf.put(line.pattern(), line.batch());
                    used.computeIfAbsent(line.batch(), _ -> new ArrayList<>()).add(line.pattern());
                }
                line.mass()
                        .ifPresent(m -> plies.add(within(new Weighed(
                                line.pattern(),
                                planned.material(),
                                line.batch(),
                                planned.planned().orElse(Double.NaN),
                                m))));
            }
            List<Weighed> weighed = new ArrayList<>();
            Set<String> weighedPieces = new LinkedHashSet<>();
            for (Line line : built.of(Kind.PIECE)) {
                if (!weighedPieces.add(line.piece())) {
                    throw fault(line, "'" + line.piece() + "' is there twice");
                }
                known(line, line.piece(), pieces.keySet(), "piece");
                line.mass()
                        .ifPresent(m -> weighed.add(within(new Weighed(
                                line.piece(),
                                "",
                                "",
                                pieces.get(line.piece()).planned().orElse(Double.NaN),
                                m))));
            }
            Optional<Weighed> tub = built.of(Kind.TUB).stream()
                    .filter(l -> l.mass().isPresent())
                    .findFirst()
                    .map(l -> within(new Weighed(
                            "the whole tub",
                            "",
                            "",
                            plan.of(Kind.TUB).getFirst().planned().orElse(Double.NaN),
                            l.mass().getAsDouble())));
            built.of(Kind.CONCESSION).stream()
                    .filter(l -> l.filled() && l.released().isEmpty())
                    .findFirst()
                    .ifPresent(l -> {
                        throw fault(l, "a concession wants the name of who released it under 'released by'");
                    });
            Map<String, Batch> batches = batches(byBatch, used);
            List<String> without = patterns.keySet().stream()
                    .filter(p -> !batchOf.containsKey(p))
                    .toList();
            return new BuiltComparison(plies, weighed, tub, batches, factors(plies, batches, batchOf), beyond, without);
        }

        private Map<String, Batch> batches(Map<String, List<Line>> byBatch, Map<String, List<String>> used) {
            Map<String, Batch> result = new LinkedHashMap<>();
            byBatch.forEach((name, lines) -> {
                String material = lines.getFirst().material();
                double areal = 0;
                double thickness = 0;
                int areals = 0;
                int thicknesses = 0;
                for (Line line : lines) {
                    if (!line.material().equals(material)) {
                        throw fault(line, "batch " + name + " is of " + material + " further up");
                    }
                    Line planned = planned(line);
                    if (line.areal().isPresent() && planned.plannedAreal().isPresent()) {
                        areal += line.areal().getAsDouble()
                                / planned.plannedAreal().getAsDouble();
                        areals++;
                    }
                    if (line.thickness().isPresent()
                            && planned.plannedThickness().isPresent()) {
                        thickness += line.thickness().getAsDouble()
                                / planned.plannedThickness().getAsDouble();
                        thicknesses++;
                    }
                }
                Batch batch = new Batch(
                        name,
                        material,
                        areals > 0 ? OptionalDouble.of(areal / areals) : OptionalDouble.empty(),
                        thicknesses > 0 ? OptionalDouble.of(thickness / thicknesses) : OptionalDouble.empty(),
                        used.getOrDefault(name, List.of()));
                batch.areal()
                        .ifPresent(f ->
                                beyond("batch " + name + " of " + material + " weighs", f, LIMIT, " a square metre"));
                batch.thickness()
                        .ifPresent(f ->
                                beyond("batch " + name + " of " + material + " cures", f, THICKNESS, " in thickness"));
                result.put(name, batch);
            });
            return result;
        }

        /** The line of the form for this material, of several thicknesses the nearest. */
        private Line planned(Line line) {
            return plan.of(Kind.BATCH).stream()
                    .filter(p -> p.material().equals(line.material()))
                    .min(java.util.Comparator.comparingDouble(p ->
                            line.thickness().isPresent() && p.plannedThickness().isPresent()
                                    ? Math.abs(p.plannedThickness().getAsDouble()
                                            - line.thickness().getAsDouble())
                                    : line.areal().isPresent()
                                                    && p.plannedAreal().isPresent()
                                            ? Math.abs(p.plannedAreal().getAsDouble()
                                                    - line.areal().getAsDouble())
                                            : 0))
                    .orElse(line);
        }

        private Map<String, Factor> factors(
                List<Weighed> plies, Map<String, Batch> batches, Map<String, String> batchOf) {
            Map<String, Weighed> weighed = new LinkedHashMap<>();
            plies.forEach(w -> weighed.put(w.name(), w));
            Map<String, double[]> sums = new TreeMap<>();
            patterns.forEach((pattern, line) -> {
                double planned = line.planned().orElse(0);
                double[] sum = sums.computeIfAbsent(line.material(), _ -> new double[3]);
                sum[2] += planned;
                Batch batch = batches.get(batchOf.getOrDefault(pattern, ""));
                OptionalDouble factor = batch != null && batch.areal().isPresent()
                        ? batch.areal()
                        : weighed.containsKey(pattern)
                                ? OptionalDouble.of(1 + weighed.get(pattern).over())
                                : OptionalDouble.empty();
                factor.ifPresent(f -> {
                    sum[0] += f * planned;
                    sum[1] += planned;
                });
            });
            Map<String, Factor> factors = new TreeMap<>();
            sums.forEach((material, sum) -> {
                if (sum[1] > 0) {
                    factors.put(material, new Factor(sum[0] / sum[1], sum[1] / sum[2]));
                }
            });
            return factors;
        }

        private Weighed within(Weighed w) {
            beyond(
                    "'" + w.name() + "' weighs",
                    w.mass() / w.planned(),
                    LIMIT,
                    " more than planned",
                    " less than planned");
            return w;
        }

        private void beyond(String what, double factor, double limit, String words) {
            beyond(what, factor, limit, " more than planned" + words, " less than planned" + words);
        }

        private void beyond(String what, double factor, double limit, String more, String less) {
            if (Math.abs(factor - 1) > limit) {
                beyond.add(what + " " + Math.round(1000 * Math.abs(factor - 1)) / 10.0 + " %"
                        + (factor > 1 ? more : less) + "; the limit is " + Math.round(100 * limit) + " %");
            }
        }

        private void known(Line line, String name, Set<String> names, String what) {
            if (!names.contains(name)) {
                throw fault(
                        line,
                        (name.isEmpty() ? "the " + what + " is missing" : "no " + what + " is called '" + name + "'")
                                + NearestName.of(name, names)
                                        .map(n -> "; did you mean '" + n + "'?")
                                        .orElse(what.equals("batch") ? "; give it a line of kind batch first" : ""));
            }
        }

        private DataException fault(Line line, String message) {
            return new DataException(built.source() + ":" + line.number() + ": " + message);
        }
    }
}
