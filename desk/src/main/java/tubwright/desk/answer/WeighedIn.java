// SPDX-License-Identifier: Apache-2.0
package tubwright.desk.answer;

import java.util.List;
import tubwright.engine.make.built.WeighedTub;

/**
 * What the weighing of a tub says before it is tested.
 *
 * @param number of the tub
 * @param known factors on the stiffness of its materials
 * @param mass of its pieces over their plan
 */
public record WeighedIn(int number, List<WeighedTub.Known> known, double mass) {
    public WeighedIn {
        known = List.copyOf(known);
    }

    /** In words, for people. */
    public String words() {
        String factors = String.join(
                ", ",
                known.stream()
                        .map(k -> k.doubt().name() + " × " + Math.round(1000 * k.factor()) / 1000.0 + " ("
                                + Math.round(100 * k.share()) + " % of it weighed)")
                        .toList());
        return "Tub " + number + " as weighed: "
                + (factors.isEmpty() ? "no material of this model was weighed" : factors) + ". Its pieces weigh "
                + BuiltAnswer.over(mass - 1) + (mass == 1 ? "" : " than planned") + ".";
    }
}
