// SPDX-License-Identifier: Apache-2.0
package tubwright.desk.answer;

import java.util.List;
import java.util.Optional;
import tubwright.engine.load.RollBalance;

/**
 * How stiff a tub must be for the balance of its car to obey springs and anti-roll bars.
 *
 * @param tub name
 * @param balance axles and loads of the two-axle model
 * @param share of a change of balance that is to arrive, 0 to 1
 * @param needed stiffness between the axles at which it does, N·m/rad
 * @param now what there is by the last run
 */
public record EnoughAnswer(String tub, RollBalance balance, double share, double needed, Optional<Now> now) {
    /** Shares told in tables. */
    public static final List<Double> SHARES = List.of(0.5, 0.7, 0.8, 0.9, 0.95, 0.97);

    /**
     * The last run.
     *
     * @param between the axles, links rigid, N·m/rad
     * @param ofTub flexibility of the tub with its joints in that, rad/(N·m)
     * @param torsional stiffness of the tub between its sections, N·m/rad
     * @param stale whether the design has changed since
     */
    public record Now(double between, double ofTub, double torsional, boolean stale) {
        /** Flexibility of all else between the axles: inserts, engine, hoops, rad/(N·m). */
        public double rest() {
            return Math.max(0, 1 / between - ofTub);
        }
    }

    /**
     * Torsional stiffness between sections that the tub must have, all else between the axles as it is, N·m/rad; empty where
     * all else is too soft already, or no run tells.
     */
    public Optional<Double> tubNeeded() {
        return now.filter(n -> 1 / needed > n.rest()).map(n -> n.torsional() * n.ofTub() / (1 / needed - n.rest()));
    }
}
