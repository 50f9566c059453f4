// SPDX-License-Identifier: Apache-2.0
package tubwright.engine.design;

import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.concurrent.ConcurrentHashMap;
import java.util.concurrent.ConcurrentMap;
import tubwright.engine.design.text.Binder;
import tubwright.engine.design.text.DesignError;
import tubwright.engine.design.text.Faults;
import tubwright.engine.design.text.Limit;
import tubwright.engine.design.text.Name;
import tubwright.engine.design.text.Named;
import tubwright.engine.design.text.YamlReader;
import tubwright.engine.material.Provenance;
import tubwright.engine.material.Trust;
import tubwright.engine.safety.crush.Impact;
import tubwright.engine.safety.rules.RuleSet;
import tubwright.engine.safety.rules.Stop;

/** Rule sets from files: those shipped and the designer's own. */
public final class RuleSetReader {
    /** The shipped sets, by name. */
    public static final List<String> SHIPPED = List.of("student structural 2026", "junior single-seater 2014");

    private static final ConcurrentMap<String, RuleSet> READ = new ConcurrentHashMap<>();

    private RuleSetReader() {}

    /** A shipped set, read once. */
    public static RuleSet shipped(String name) {
        return READ.computeIfAbsent(name, RuleSetReader::fromShelf);
    }

    private static RuleSet fromShelf(String name) {
        String file = name.replace(' ', '-') + ".yaml";
        try (InputStream in = RuleSetReader.class.getResourceAsStream("/tubwright/rules/" + file)) {
            if (in == null) {
                throw new IllegalStateException("the shipped rule set " + file + " is missing");
            }
            return read(new String(in.readAllBytes(), StandardCharsets.UTF_8), file);
        } catch (IOException e) {
            throw new UncheckedIOException("the shipped rule set " + file + " cannot be read", e);
        }
    }

    /** The set of a name or file, beside a design. */
    static RuleSet find(Name set) {
        if (SHIPPED.contains(set.text())) {
            return shipped(set.text());
        }
        if (set.text().endsWith(".yaml")) {
            Path design = Path.of(set.place().file()).toAbsolutePath().getParent();
            Path file = design.resolve(set.text());
            if (!java.nio.file.Files.exists(file)) {
                throw new DesignError(
                        set.place(), "there is no file \"" + set.text() + "\" beside the design", "look at its name");
            }
            return read(YamlReader.contents(file), file.toString());
        }
        throw Names.unknown(set, SHIPPED, "rule set");
    }

    /**
     * A rule set from its text.
     *
     * @param file for messages
     * @throws DesignError with every fault found
     */
    public static RuleSet read(String text, String file) {
        return of(Binder.bind(YamlReader.read(text, file), RuleSetText.class));
    }

    /** A rule set as written. */
    static RuleSet of(RuleSetText set) {
        Faults faults = new Faults();
        List<RuleSet.Clause> clauses = new ArrayList<>();
        set.clauses().forEach(c -> faults.attempt(() -> clause(c, set)).ifPresent(clauses::add));
        faults.throwIfAny();
        return new RuleSet(set.ruleSet().text(), set.about().strip(), set.source(), set.year(), clauses);
    }

    private static RuleSet.Clause clause(Named<ClauseText> named, RuleSetText set) {
        ClauseText text = named.value();
        Trust trust = switch (text.trust()) {
            case PUBLISHED -> Trust.PUBLISHED;
            case TRANSCRIPTION -> Trust.TRANSCRIBED;
            case COMPUTED -> Trust.COMPUTED;
            case FROM_MEMORY -> Trust.FROM_MEMORY;
            case STATED -> Trust.STATED;
        };
        return new RuleSet.Clause(
                named.name().text(),
                text.says(),
                new Provenance(set.source() + ", " + named.name().text(), trust),
                text.byTest(),
                demand(text));
    }

    private static RuleSet.Demand demand(ClauseText text) {
        if (text.bends().isPresent()) {
            return new RuleSet.Bends(
                    names(text.bends().get().places()),
                    text.bends().get().bending().si(),
                    text.bends().get().flat());
        }
        if (text.bendsAcross().isPresent()) {
            return new RuleSet.BendsAcross(
                    names(text.bendsAcross().get().places()),
                    text.bendsAcross().get().share().si());
        }
        if (text.punched().isPresent()) {
            ClauseText.Punched p = text.punched().get();
            return new RuleSet.Punched(
                    p.place().text(), p.force().si(), p.diameter().si());
        }
        if (text.carries().isPresent()) {
            ClauseText.Carries c = text.carries().get();
            return new RuleSet.Carries(c.place().text(), c.force().si());
        }
        if (text.pushed().isPresent()) {
            return pushed(text.pushed().get());
        }
        if (text.stopped().isPresent()) {
            ClauseText.Stopped s = text.stopped().get();
            return new RuleSet.Stopped(new Stop(
                    s.hit(),
                    new Impact(s.mass().si(), s.speed().si()),
                    CrushReader.limits(java.util.Optional.of(s.limits()))));
        }
        return text.shownBy().isPresent() ? new RuleSet.Shown(text.shownBy().get()) : new RuleSet.PliesEnclosed();
    }

    private static RuleSet.Pushed pushed(ClauseText.Pushed text) {
        double[] nan = {Double.NaN, Double.NaN, Double.NaN};
        double[] force = PointBook.three(text.force(), "force");
        if (force[0] == 0 && force[1] == 0 && force[2] == 0) {
            throw new DesignError(text.force().place(), "force: it is zero", "give one that is not");
        }
        return new RuleSet.Pushed(
                text.place().text(),
                force,
                text.pad().map(p -> PointBook.three(p, "pad")).orElse(nan),
                text.moves().map(RuleSetReader::most).orElse(Double.POSITIVE_INFINITY),
                text.hold().map(h -> h.si()).orElse(Double.NaN));
    }

    private static double most(Limit limit) {
        if (limit.atLeast()) {
            throw new DesignError(
                    limit.place(), "\"" + limit + "\" binds the wrong way", "a movement is bounded above");
        }
        return limit.si();
    }

    private static List<String> names(List<Name> names) {
        return names.stream().map(Name::text).toList();
    }
}
