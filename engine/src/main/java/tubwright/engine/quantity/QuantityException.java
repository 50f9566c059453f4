// SPDX-License-Identifier: Apache-2.0
package tubwright.engine.quantity;

import java.util.List;
import java.util.Optional;

/** A text that is not the quantity it should be; says what was read, why it is wrong and what would be right. */
public final class QuantityException extends IllegalArgumentException {
    private static final long serialVersionUID = 1L;

    private final String read;
    private final int position;
    private final String reason;
    private final List<String> suitableUnits;
    private final transient Optional<String> nearestUnit;

    QuantityException(String read, int position, String reason, List<String> suitableUnits, Optional<String> nearest) {
        super(message(read, reason, suitableUnits, nearest));
        this.read = read;
        this.position = position;
        this.reason = reason;
        this.suitableUnits = List.copyOf(suitableUnits);
        this.nearestUnit = nearest;
    }

    private static String message(String read, String reason, List<String> suitable, Optional<String> nearest) {
        StringBuilder message = new StringBuilder("cannot read '" + read + "': " + reason);
        nearest.ifPresent(
                name -> message.append("; did you mean '").append(name).append("'?"));
        if (!suitable.isEmpty()) {
            message.append(nearest.isPresent() ? " Units that fit: " : "; units that fit: ")
                    .append(String.join(", ", suitable));
        }
        return message.toString();
    }

    /** The offending text. */
    public String read() {
        return read;
    }

    /** Index in {@link #read()} where reading stopped. */
    public int position() {
        return position;
    }

    /** What is wrong, without the suggestions. */
    public String reason() {
        return reason;
    }

    /** Units that would be right; empty if any unit was allowed. */
    public List<String> suitableUnits() {
        return suitableUnits;
    }

    /** The spelling probably meant. */
    public Optional<String> nearestUnit() {
        return nearestUnit;
    }
}
