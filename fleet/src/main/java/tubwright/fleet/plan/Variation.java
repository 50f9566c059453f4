// SPDX-License-Identifier: Apache-2.0
package tubwright.fleet.plan;

import java.util.List;
import java.util.Optional;
import org.hipparchus.distribution.continuous.NormalDistribution;
import tubwright.engine.design.text.DesignError;
import tubwright.engine.design.text.Name;
import tubwright.engine.design.text.Named;
import tubwright.fleet.Blueprint;

/** One thing that is varied in a study: from a share between 0 and 1 to a value in the design. */
public final class Variation {
    private static final NormalDistribution NORMAL = new NormalDistribution();

    private final String name;
    private final Spread spread;
    private final Setter setter;
    private final int steps;

    /** How a share becomes a value. */
    private sealed interface Spread {
        record Range(double low, double high, String unit) implements Spread {}

        record Values(List<Figure> values) implements Spread {}

        record Words(List<String> words) implements Spread {}

        record Normal(double middle, double deviation, String unit) implements Spread {}
    }

    private Variation(String name, Spread spread, Setter setter, int steps) {
        this.name = name;
        this.spread = spread;
        this.setter = setter;
        this.steps = steps;
    }

    /**
     * What a study says of one thing.
     *
     * @throws DesignError if it names nothing, or its figures do not fit what it names
     */
    static Variation of(Named<VaryText> named, Blueprint blueprint) {
        VaryText text = named.value();
        Setter setter;
        if (text.frames().isPresent()) {
            setter = FrameSetter.of(blueprint, text);
        } else if (text.opening().isPresent()) {
            setter = OpeningSetter.of(blueprint, text.opening().get());
        } else {
            setter = ValueSetter.of(
                    blueprint,
                    text.at().stream().map(Name::text).toList(),
                    named.name().place());
        }
        if (text.steps() < 1) {
            throw new DesignError(text.place(), "steps: " + text.steps(), "at least one");
        }
        return new Variation(named.name().text(), spread(text, setter, blueprint), setter, text.steps());
    }

    private static Spread spread(VaryText text, Setter setter, Blueprint blueprint) {
        if (!text.words().isEmpty()) {
            return new Spread.Words(text.words().stream().map(Name::text).toList());
        }
        Figure present = setter.present(new Edited(blueprint));
        if (text.values().isPresent()) {
            List<Figure> values = Figure.several(text.values().get(), ",")
                    .orElseThrow(() -> wrong(text, text.values().get(), "10, 15, 20 mm"));
            values.forEach(v -> fits(text, v, present));
            return new Spread.Values(values);
        }
        if (text.range().isPresent()) {
            List<Figure> ends = Figure.several(text.range().get(), "\\.\\.")
                    .filter(l -> l.size() == 2)
                    .orElseThrow(() -> wrong(text, text.range().get(), "10 .. 25 mm"));
            ends.forEach(v -> fits(text, v, present));
            Figure low = ends.getFirst().in(ends.getLast().unit());
            if (low.number() >= ends.getLast().number()) {
                throw new DesignError(
                        text.place(),
                        "the range " + text.range().get() + " ends before it starts",
                        "the smaller first");
            }
            return new Spread.Range(low.number(), ends.getLast().number(), low.unit());
        }
        String given = text.spread().or(text::within).orElseThrow();
        Figure width = Figure.of(given).orElseThrow(() -> wrong(text, given, "0.5 mm"));
        Figure half;
        if (width.unit().equals("%")) {
            half = new Figure(Math.abs(present.number()) * width.number() / 100, present.unit());
        } else {
            fits(text, width, present);
            half = width.in(present.unit());
        }
        if (!(half.number() > 0)) {
            throw new DesignError(text.place(), "a scatter of " + given + " is none", "write one above nought");
        }
        return text.spread().isPresent()
                ? new Spread.Normal(present.number(), half.number(), present.unit())
                : new Spread.Range(present.number() - half.number(), present.number() + half.number(), present.unit());
    }

    private static DesignError wrong(VaryText text, String read, String example) {
        return new DesignError(
                text.place(), "\"" + read + "\" cannot be read as figures", "write it as \"" + example + "\"");
    }

    private static void fits(VaryText text, Figure given, Figure present) {
        if (!given.like(present)) {
            throw new DesignError(
                    text.place(),
                    "\"" + given + "\" does not fit what is varied, which is \"" + present + "\" as designed",
                    present.unit().isEmpty() ? "write a plain number" : "write it in " + present.unit());
        }
    }

    /** As the study calls it. */
    public String name() {
        return name;
    }

    /** Unit of its numbers; empty for words and plain numbers. */
    public String unit() {
        return switch (spread) {
            case Spread.Range r -> r.unit;
            case Spread.Values v -> v.values.getFirst().unit();
            case Spread.Words _ -> "";
            case Spread.Normal n -> n.unit;
        };
    }

    /** Whether its values are words. */
    public Optional<List<String>> words() {
        return spread instanceof Spread.Words w ? Optional.of(w.words) : Optional.empty();
    }

    /** Whether it scatters about the value as designed. */
    public boolean scatters() {
        return spread instanceof Spread.Normal;
    }

    /** Levels it has where all combinations are taken. */
    int levels() {
        return switch (spread) {
            case Spread.Values v -> v.values.size();
            case Spread.Words w -> w.words.size();
            case Spread.Range _, Spread.Normal _ -> steps;
        };
    }

    /**
     * The number a share stands for: in the unit, or which of the words.
     *
     * @param share 0 to 1
     */
    public double number(double share) {
        return switch (spread) {
            case Spread.Range r -> Double.parseDouble(Figure.plain(r.low + share * (r.high - r.low)));
            case Spread.Values v ->
                v.values.get(which(share, v.values.size())).in(unit()).number();
            case Spread.Words w -> which(share, w.words.size());
            case Spread.Normal n ->
                Double.parseDouble(Figure.plain(n.middle
                        + n.deviation * NORMAL.inverseCumulativeProbability(Math.clamp(share, 1e-9, 1 - 1e-9))));
        };
    }

    private static int which(double share, int count) {
        return Math.min(count - 1, (int) (share * count));
    }

    /** As it is written into the design. */
    public String text(double share) {
        return spread instanceof Spread.Words w
                ? w.words.get(which(share, w.words.size()))
                : new Figure(number(share), unit()).toString();
    }

    void apply(Edited design, double share) {
        setter.set(design, text(share));
    }
}
