// SPDX-License-Identifier: Apache-2.0
package tubwright.engine.rig.statistics;

/** The readings cannot tell what is asked of them; the message says why. */
public final class IllPosedException extends IllegalArgumentException {
    private static final long serialVersionUID = 1L;

    IllPosedException(String message) {
        super(message);
    }
}
