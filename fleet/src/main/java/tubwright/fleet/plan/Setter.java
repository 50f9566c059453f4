// SPDX-License-Identifier: Apache-2.0
package tubwright.fleet.plan;

/** Puts a figure or a word into a design. */
interface Setter {
    /** @param text a figure in the unit it was written in, or a word */
    void set(Edited design, String text);

    /** The figure as designed; 0 of nothing for what is a change anyway. */
    Figure present(Edited design);
}
