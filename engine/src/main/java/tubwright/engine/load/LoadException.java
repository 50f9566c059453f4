// SPDX-License-Identifier: Apache-2.0
package tubwright.engine.load;

/** A layout that cannot carry its load, or a car that cannot stand on its wheels; says what to do about it. */
public final class LoadException extends RuntimeException {
    private static final long serialVersionUID = 1;

    /**
     * @param what is wrong, naming the place
     * @param advice what to do
     */
    public LoadException(String what, String advice) {
        super(what + "; " + advice);
    }
}
