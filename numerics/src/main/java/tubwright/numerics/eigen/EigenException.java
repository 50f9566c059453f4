// SPDX-License-Identifier: Apache-2.0
package tubwright.numerics.eigen;

/** The iteration did not reach what was asked. */
public final class EigenException extends RuntimeException {
    private static final long serialVersionUID = 1;

    EigenException(String message) {
        super(message);
    }
}
