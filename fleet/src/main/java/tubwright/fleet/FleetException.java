// SPDX-License-Identifier: Apache-2.0
package tubwright.fleet;

/** What keeps a study from being run or kept, with what to do about it on further lines. */
public final class FleetException extends RuntimeException {
    private static final long serialVersionUID = 1L;

    /**
     * @param message what happened
     * @param remedy what to do; may be empty
     */
    public FleetException(String message, String remedy) {
        super(remedy.isEmpty() ? message : message + "\n    " + remedy);
    }
}
