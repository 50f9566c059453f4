// SPDX-License-Identifier: Apache-2.0
package tubwright.engine.strength;

/** How a layer gives way. */
public enum FailureMode {
    FIBRE_TENSION("fibre tension", true),
    FIBRE_COMPRESSION("fibre compression", true),
    /** Weft fibres of a cloth. */
    WEFT_TENSION("weft fibre tension", true),
    /** Weft fibres of a cloth. */
    WEFT_COMPRESSION("weft fibre compression", true),
    MATRIX_TENSION("matrix tension", false),
    MATRIX_COMPRESSION("matrix compression", false),
    IN_PLANE_SHEAR("in-plane shear", false),
    /** Puck's mode A: the crack stands upright and opens. */
    INTER_FIBRE_A("inter-fibre fracture, mode A", false),
    /** Puck's mode B: the crack stands upright, pressed shut, sheared. */
    INTER_FIBRE_B("inter-fibre fracture, mode B", false),
    /** Puck's mode C: the crack runs oblique, a wedge that can push the laminate apart. */
    INTER_FIBRE_C("inter-fibre fracture, mode C", false),
    /** Yielding of a metal sheet. */
    YIELD("yield", true);

    private final String words;
    private final boolean carriesLoad;

    FailureMode(String words, boolean carriesLoad) {
        this.words = words;
        this.carriesLoad = carriesLoad;
    }

    /** In words. */
    public String words() {
        return words;
    }

    /** True where the load-carrying fibres (or the metal) give way; false for a first matrix crack. */
    public boolean isFibre() {
        return carriesLoad;
    }
}
