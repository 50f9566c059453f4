// SPDX-License-Identifier: Apache-2.0
package tubwright.engine.make.nest;

/** A pattern that cannot be nested; the message names it and what would help. */
public final class NestException extends IllegalArgumentException {
    private static final long serialVersionUID = 1L;

    /** With a message for the user. */
    public NestException(String message) {
        super(message);
    }
}
