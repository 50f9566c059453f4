// SPDX-License-Identifier: Apache-2.0
package tubwright.engine.make.cure;

/** Cure data or a cycle that cannot be used; the message says where and what would be right. */
public final class CureException extends IllegalArgumentException {
    private static final long serialVersionUID = 1L;

    /** With a message for the user. */
    public CureException(String message) {
        super(message);
    }
}
