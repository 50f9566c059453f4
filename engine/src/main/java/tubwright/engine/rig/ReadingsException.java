// SPDX-License-Identifier: Apache-2.0
package tubwright.engine.rig;

import java.util.List;

/** Readings that cannot be used; each message begins with file and line where it has one, and says what would be right. */
public final class ReadingsException extends RuntimeException {
    private static final long serialVersionUID = 1L;

    private final transient List<String> faults;

    public ReadingsException(String fault) {
        this(List.of(fault));
    }

    public ReadingsException(List<String> faults) {
        super(String.join("\n", faults));
        this.faults = List.copyOf(faults);
    }

    /** Everything found wrong, in the order of the file. */
    public List<String> faults() {
        return faults;
    }
}
