// SPDX-License-Identifier: Apache-2.0
package tubwright.engine.design;

import java.util.Collection;
import java.util.List;
import java.util.stream.Collectors;
import tubwright.engine.design.text.Amount;
import tubwright.engine.design.text.DesignError;
import tubwright.engine.design.text.Name;
import tubwright.engine.design.text.Named;
import tubwright.engine.quantity.NearestName;

/** Finds what a name stands for, or says what was probably meant. */
final class Names {
    private static final int MOST_LISTED = 30;

    private Names() {}

    /** The entry of this name. */
    static <T> T find(Name name, List<Named<T>> among, String kind) {
        return among.stream()
                .filter(e -> e.name().text().equals(name.text()))
                .map(Named::value)
                .findFirst()
                .orElseThrow(() -> unknown(name, texts(among), kind));
    }

    /** The names of entries. */
    static List<String> texts(List<? extends Named<?>> entries) {
        return entries.stream().map(e -> e.name().text()).toList();
    }

    /** Checks that a name is among those known. */
    static void require(Name name, Collection<String> known, String kind) {
        if (!known.contains(name.text())) {
            throw unknown(name, known, kind);
        }
    }

    /** A mass that is not below zero, kg. */
    static double notNegative(Amount mass, String of) {
        if (mass.si() < 0) {
            throw new DesignError(
                    mass.place(), of + ": the mass \"" + mass + "\" is negative", "a mass is zero or more");
        }
        return mass.si();
    }

    /** What to say of a name that stands for nothing. */
    static DesignError unknown(Name name, Collection<String> known, String kind) {
        String nearest = NearestName.of(name.text(), known)
                .map(n -> "did you mean \"" + n + "\"? ")
                .orElse("");
        String list = known.isEmpty()
                ? "none is named in this design"
                : "known: " + known.stream().limit(MOST_LISTED).collect(Collectors.joining(", "));
        return new DesignError(name.place(), "there is no " + kind + " called \"" + name.text() + "\"", nearest + list);
    }
}
