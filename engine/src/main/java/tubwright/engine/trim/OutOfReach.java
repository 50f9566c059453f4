// SPDX-License-Identifier: Apache-2.0
package tubwright.engine.trim;

/** No choice found meets the targets; the message says what is reachable and what stands in the way. */
public final class OutOfReach extends RuntimeException {
    private static final long serialVersionUID = 1;

    OutOfReach(String message) {
        super(message);
    }
}
