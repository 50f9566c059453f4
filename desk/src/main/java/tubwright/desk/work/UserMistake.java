// SPDX-License-Identifier: Apache-2.0
package tubwright.desk.work;

/** Something the user asked for cannot be done; the message says why and what to do instead. */
public final class UserMistake extends RuntimeException {
    private static final long serialVersionUID = 1L;

    public UserMistake(String message) {
        super(message);
    }
}
