// SPDX-License-Identifier: Apache-2.0
package tubwright.engine.laminate;

/** What gives way first in a ply. */
public enum FailureMode {
    FIBRE_TENSION,
    FIBRE_COMPRESSION,
    MATRIX_TENSION,
    MATRIX_COMPRESSION,
    SHEAR,
    /** The criterion does not tell modes apart. */
    INTERACTION;

    /** True if fibres break: the laminate's strength is lost, not only its resin cracked. */
    public boolean isFibre() {
        return this == FIBRE_TENSION || this == FIBRE_COMPRESSION;
    }
}
