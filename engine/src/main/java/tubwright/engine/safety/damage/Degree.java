// SPDX-License-Identifier: Apache-2.0
package tubwright.engine.safety.damage;

/** How bad a hit is. Common practice, no source, but for the knock-downs, which say theirs. */
public enum Degree {
    /** Nothing to see: stiffness stays, strength in compression is knocked down on the patch. */
    BARELY_VISIBLE("barely visible"),
    /**
     * The outer face is broken and the core crushed: the inner face is left, with the strength of a laminate with an open
     * hole. Of a laminate without a core the inner half of its layers, of a single layer nothing.
     */
    VISIBLE("visible"),
    /** All of it is gone, with the joints and inserts that sat on it. */
    HOLE("hole");

    private final String words;

    Degree(String words) {
        this.words = words;
    }

    /** For a reader. */
    public String words() {
        return words;
    }
}
