// SPDX-License-Identifier: Apache-2.0
package tubwright.desk.command;

import tubwright.desk.work.UserMistake;
import tubwright.engine.quantity.Dimension;
import tubwright.engine.quantity.Quantity;
import tubwright.engine.quantity.QuantityException;

/** What stands behind an option, read. */
final class OptionText {
    private OptionText() {}

    /**
     * A quantity with its unit, in SI.
     *
     * @param option its name, for the message
     * @throws UserMistake where it is none of that dimension
     */
    static double quantity(String option, String text, Dimension dimension) {
        try {
            return Quantity.parse(text, dimension).si();
        } catch (QuantityException e) {
            throw new UserMistake(option + ": " + e.getMessage());
        }
    }

    /**
     * As {@link #quantity}, greater than zero.
     *
     * @param otherwise what to say where it is not, after option and text
     */
    static double positive(String option, String text, Dimension dimension, String otherwise) {
        double value = quantity(option, text, dimension);
        if (value > 0) {
            return value;
        }
        throw new UserMistake(option + " " + text + ": " + otherwise);
    }
}
