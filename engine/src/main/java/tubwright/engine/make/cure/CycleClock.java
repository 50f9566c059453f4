// SPDX-License-Identifier: Apache-2.0
package tubwright.engine.make.cure;

/** Goes through a cycle in time, waiting where a hold waits for the part. */
final class CycleClock {
    /** A hold that has not begun after so long never will, s. */
    private static final double LONGEST_WAIT = 24 * 3600.0;

    private final Cycle cycle;
    private int step;
    private double air;
    private double held;
    private double waited;
    private boolean holding;

    CycleClock(Cycle cycle) {
        this.cycle = cycle;
        this.air = cycle.start();
    }

    boolean finished() {
        return step >= cycle.steps().size();
    }

    /** Temperature of the air, K. */
    double air() {
        return air;
    }

    /** Step at hand; the last one after the end. */
    Cycle.Step at() {
        return cycle.steps().get(Math.min(step, cycle.steps().size() - 1));
    }

    /** Index of the step at hand. */
    int number() {
        return Math.min(step, cycle.steps().size() - 1);
    }

    /** True while the clock of a hold runs. */
    boolean holding() {
        return holding && !finished();
    }

    /**
     * Longest time up to {@code wanted} without a corner of the air's temperature inside it, s.
     */
    double straight(double wanted) {
        if (finished()) {
            return wanted;
        }
        Cycle.Step now = at();
        double gap = Math.abs(now.to() - air);
        double rest = gap > 0 ? gap / now.rate() : holding ? now.hold() - held : wanted;
        return Math.min(wanted, Math.max(rest, 1e-6));
    }

    /**
     * Goes on.
     *
     * @param seconds at most what {@link #straight} allows
     * @param lagging lowest temperature of the part, K
     */
    void advance(double seconds, double lagging) {
        Cycle.Step now = at();
        double gap = now.to() - air;
        if (Math.abs(gap) > 0) {
            double move = now.rate() * seconds;
            air = Math.abs(gap) <= move * (1 + 1e-9) ? now.to() : air + Math.signum(gap) * move;
        } else if (holding) {
            held += seconds;
        } else {
            waited += seconds;
        }
        if (air == now.to() && !holding) {
            holding = now.from() == Cycle.HoldFrom.AIR || lagging >= now.to() - Cycle.LAGGING_WITHIN;
            if (!holding && waited > LONGEST_WAIT) {
                throw new CureException("the cycle '" + cycle.name() + "' never gets on: the part does not come within "
                        + Cycle.LAGGING_WITHIN + " K of " + Math.round(now.to() - 273.15)
                        + " °C in a day; heat the tool side better or hold from the air");
            }
        }
        if (holding && held >= now.hold() - 1e-9) {
            step++;
            held = 0;
            waited = 0;
            holding = false;
        }
    }
}
