// SPDX-License-Identifier: Apache-2.0
package tubwright.engine.design.text;

import java.util.List;
import java.util.stream.Collectors;

/** What is wrong with a design: one or several faults, each with its place, what was read and what would be right. */
public final class DesignError extends RuntimeException {
    private static final long serialVersionUID = 1L;

    /** The faults, in the order of the file; never empty. */
    private final transient List<Fault> faults;

    /**
     * One fault.
     *
     * @param place where
     * @param read what was read and why it cannot be used
     * @param help what would be right; may be empty
     */
    public record Fault(Place place, String read, String help) {
        /** Place and reading on one line, the help indented below. */
        @Override
        public String toString() {
            return place + ": " + read + (help.isEmpty() ? "" : "\n    " + help);
        }
    }

    public DesignError(Place place, String read, String help) {
        this(List.of(new Fault(place, read, help)));
    }

    public DesignError(List<Fault> faults) {
        super(faults.stream().map(Fault::toString).collect(Collectors.joining("\n")));
        this.faults = List.copyOf(faults);
    }

    /** The faults, in the order of the file; never empty. */
    public List<Fault> faults() {
        return faults;
    }

    /** Place of the first fault. */
    public Place place() {
        return faults.getFirst().place();
    }
}
