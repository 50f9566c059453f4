// SPDX-License-Identifier: Apache-2.0
package tubwright.desk.work;

import tubwright.desk.answer.WeighedIn;
import tubwright.engine.make.built.BuiltComparison;
import tubwright.engine.make.built.WeighedTub;
import tubwright.engine.structure.Case;
import tubwright.engine.structure.Tub;

/**
 * A tub that was built and weighed.
 *
 * @param number of it
 * @param comparison against its plan
 */
public record BuiltWork(int number, BuiltComparison comparison) {
    /** What the weighing says of a tub's stiffness. */
    WeighedIn on(Tub tub, Case.Torsion loading) {
        return new WeighedIn(number, WeighedTub.known(tub, loading, comparison.materials()), comparison.massFactor());
    }
}
