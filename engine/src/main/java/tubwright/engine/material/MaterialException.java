// SPDX-License-Identifier: Apache-2.0
package tubwright.engine.material;

/** A material that cannot be used as given; the message says what to change. */
public final class MaterialException extends IllegalArgumentException {
    private static final long serialVersionUID = 1L;

    public MaterialException(String message) {
        super(message);
    }
}
