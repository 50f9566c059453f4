// SPDX-License-Identifier: Apache-2.0
package tubwright.engine.make.data;

/** A data file that cannot be used; the message names file and line and what would be right. */
public final class DataException extends IllegalArgumentException {
    private static final long serialVersionUID = 1L;

    /** With a message for the user. */
    public DataException(String message) {
        super(message);
    }
}
