// SPDX-License-Identifier: Apache-2.0
package tubwright.engine.trim;

import java.util.List;

/**
 * A demand on a layup that is not linear in it and can only be checked by solving it whole: reserve factors, buckling,
 * vibration. It is asked about designs that meet all stiffness targets and are lighter than the best so far.
 */
@FunctionalInterface
public interface LayupCheck {
    /** Checks a layup; one finding for each demand. */
    List<Finding> check(Layup layup);

    /**
     * What was found.
     *
     * @param what in words, for instance {@code "least reserve factor"}
     * @param value found
     * @param least asked
     * @param where it is lowest, in words; may be empty
     * @param owners zones or patches that are to blame, if that is known
     */
    record Finding(String what, double value, double least, String where, List<Owner> owners) {
        public Finding {
            owners = List.copyOf(owners);
        }

        /** Whether it is enough. */
        public boolean met() {
            return value >= least;
        }

        /** {@code "least reserve factor 0.93 in deck, asked 1.5"}. */
        public String words() {
            return String.format(
                    java.util.Locale.ROOT,
                    "%s %.3g%s, asked %.3g",
                    what,
                    value,
                    where.isEmpty() ? "" : " in " + where,
                    least);
        }
    }
}
