// SPDX-License-Identifier: Apache-2.0
package tubwright.engine.design.text;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.function.Supplier;

/** Gathers faults so that one reading reports them all. */
public final class Faults {
    private static final int MOST = 20;

    private final List<DesignError.Fault> found = new ArrayList<>();

    /** Notes a fault and goes on. */
    public void add(Place place, String read, String help) {
        add(new DesignError.Fault(place, read, help));
    }

    /** Notes a fault and goes on. */
    public void add(DesignError.Fault fault) {
        found.add(fault);
    }

    /** True if this very fault was noted already. */
    public boolean has(DesignError.Fault fault) {
        return found.contains(fault);
    }

    /** The value, or nothing if computing it met faults, which are noted. */
    public <T> Optional<T> attempt(Supplier<T> value) {
        try {
            return Optional.of(value.get());
        } catch (DesignError error) {
            found.addAll(error.faults());
            return Optional.empty();
        }
    }

    /** Runs something and notes the faults it meets. */
    public void check(Runnable check) {
        attempt(() -> {
            check.run();
            return true;
        });
    }

    /** True if nothing was found. */
    public boolean none() {
        return found.isEmpty();
    }

    /**
     * Ends the gathering.
     *
     * @throws DesignError if there are faults, in the order of the file, each once, at most twenty
     */
    public void throwIfAny() {
        if (!found.isEmpty()) {
            throw new DesignError(found.stream()
                    .distinct()
                    .sorted(Comparator.comparing(
                                    (DesignError.Fault f) -> f.place().line())
                            .thenComparing(f -> f.place().column()))
                    .limit(MOST)
                    .toList());
        }
    }
}
