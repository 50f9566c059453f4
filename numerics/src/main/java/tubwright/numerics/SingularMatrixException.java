// SPDX-License-Identifier: Apache-2.0
package tubwright.numerics;

/** A pivot vanished, or was not positive where all should be: the system has no unique or no stable solution. */
public final class SingularMatrixException extends RuntimeException {
    private static final long serialVersionUID = 1;

    private final int unknown;

    /** @param unknown index of the unknown whose pivot failed, or -1 if it is not known */
    public SingularMatrixException(int unknown, String reason) {
        super("The system cannot be solved: " + reason
                + (unknown < 0 ? "" : " at unknown " + unknown)
                + ". Some unknown is held by nothing, or a mechanism is left free.");
        this.unknown = unknown;
    }

    /** Index of the unknown whose pivot failed, or -1: it takes part in the motion that nothing resists. */
    public int unknown() {
        return unknown;
    }
}
