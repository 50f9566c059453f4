// SPDX-License-Identifier: Apache-2.0
package tubwright.engine.structure;

import java.util.List;
import tubwright.numerics.eigen.InertiaCount;

/**
 * Linear buckling of one case.
 *
 * @param solved the case
 * @param modes positive factors rising; empty where the case's loads cannot buckle the structure
 * @param reversed negative factors, nearest to zero first: what happens when the loads change sign
 * @param count proof that no positive factor was missed
 */
public record BucklingAnswer(Case solved, List<BucklingMode> modes, List<BucklingMode> reversed, InertiaCount count) {
    public BucklingAnswer {
        modes = List.copyOf(modes);
        reversed = List.copyOf(reversed);
    }
}
