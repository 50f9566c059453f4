// SPDX-License-Identifier: Apache-2.0
package tubwright.engine.structure;

/** The structure as described cannot be analysed; says what is wrong and what would put it right. */
public final class StructureException extends RuntimeException {
    private static final long serialVersionUID = 1L;
    private final String remedy;

    /**
     * @param message what is wrong, in the user's words
     * @param remedy what would be right
     */
    public StructureException(String message, String remedy) {
        super(message);
        this.remedy = remedy;
    }

    /** What would be right. */
    public String remedy() {
        return remedy;
    }
}
