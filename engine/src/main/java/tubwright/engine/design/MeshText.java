// SPDX-License-Identifier: Apache-2.0
package tubwright.engine.design;

import tubwright.engine.design.text.Amount;
import tubwright.engine.design.text.In;
import tubwright.engine.design.text.Otherwise;
import tubwright.engine.design.text.Says;
import tubwright.engine.quantity.Dimension;

/** The mesh as written. */
record MeshText(
        @Says("Edge length of an element where nothing asks for smaller ones.")
        @In(value = Dimension.LENGTH, positive = true)
        @Otherwise("30 mm")
        Amount size) {
    /** The size where a design says nothing, m. */
    static final double USUAL_SIZE = 0.030;
}
