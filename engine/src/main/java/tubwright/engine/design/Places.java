// SPDX-License-Identifier: Apache-2.0
package tubwright.engine.design;

import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import tubwright.engine.design.text.Named;
import tubwright.engine.design.text.Place;

/** Where the named things of a design stand in its file, for faults found long after it was read. */
public final class Places {
    private static final Pattern QUOTED = Pattern.compile("['\"]([^'\"]+)['\"]");

    private final Place whole;
    private final Map<String, Place> places = new LinkedHashMap<>();

    Places(String file) {
        whole = Place.of(file);
    }

    /** Takes up the names of one variant; those known already keep their place. */
    void add(DesignText text) {
        add(text.cases());
        add(text.crush());
        text.crush()
                .forEach(c ->
                        places.putIfAbsent(c.name().text() + " crush", c.name().place()));
        text.laying()
                .forEach(l -> places.putIfAbsent(
                        "start of " + l.name().text(), l.name().place()));
        add(text.hardpoints());
        add(text.patches());
        add(text.zones());
        add(text.pieces());
        add(text.joints());
        add(text.stiffeners());
        add(text.nodes());
        add(text.tubes());
        add(text.bodies());
        add(text.masses());
        text.cabin().ifPresent(c -> add(c.kept()));
        add(text.shape().walls());
        add(text.shape().openings());
        text.shape().strips().forEach(s -> places.putIfAbsent(s.text(), s.place()));
        text.rules().forEach(r -> add(r.value().places()));
        text.mesh().ifPresent(m -> places.putIfAbsent("size", m.size().place()));
    }

    private void add(List<? extends Named<?>> entries) {
        entries.forEach(e -> places.putIfAbsent(e.name().text(), e.name().place()));
    }

    /** The place of a name; twins and patches round several points are found by the name they were written under. */
    Optional<Place> of(String name) {
        String written =
                name.replaceFirst(": .*$", "").replaceFirst(" [LR]$", "").replaceFirst(" edge$", "");
        return Optional.ofNullable(places.get(name)).or(() -> Optional.ofNullable(places.get(written)));
    }

    /** The place of the first known name that stands in quotes in a message, else the file as a whole. */
    Place mentioned(String message) {
        Matcher matcher = QUOTED.matcher(message);
        while (matcher.find()) {
            Optional<Place> found = of(matcher.group(1));
            if (found.isPresent()) {
                return found.get();
            }
        }
        return whole;
    }
}
