// SPDX-License-Identifier: Apache-2.0
package tubwright.engine.trim;

import java.util.List;

/**
 * The lightest layup found, and the mass below which none exists.
 *
 * @param layup what to build
 * @param mass of the whole tub with it, kg
 * @param stiffness bounds for each target: N·m/rad or N/m between loaded and held hardpoints
 * @param bound no choice among the candidates that meets the stiffness targets and the rules is lighter, kg
 * @param removable nominal mass less that of the lightest candidates everywhere, kg: what was there to be taken
 * @param solves exact solutions of layups
 * @param harvests solutions to a ten-thousandth, of mixtures and of layups that were refused by it, for the bound
 * @param nodes of the branch and bound
 * @param ended why the search ended
 * @param verified what was checked of the layup by solving it whole, beside what is proved
 * @param history best mass and bound as they came
 */
public record Lightened(
        Layup layup,
        double mass,
        List<Interval> stiffness,
        double bound,
        double removable,
        int solves,
        int harvests,
        int nodes,
        End ended,
        List<LayupCheck.Finding> verified,
        List<Step> history) {
    public Lightened {
        stiffness = List.copyOf(stiffness);
        verified = List.copyOf(verified);
        history = List.copyOf(history);
    }

    /** Why a search ended. */
    public enum End {
        /** Nothing is lighter. */
        PROVED,
        /** The gap asked for was reached. */
        GAP,
        /** The solutions or nodes allowed were used up. */
        BUDGET,
        /** The time was up. */
        TIME,
        /** Somebody stopped it. */
        STOPPED
    }

    /**
     * One step on the way.
     *
     * @param seconds since the beginning
     * @param solves exact solutions so far
     * @param mass best so far, kg
     * @param bound best so far, kg
     */
    public record Step(double seconds, int solves, double mass, double bound) {}

    /** How much of the mass may still be too much, as a share of it. */
    public double gap() {
        return Math.max(0, (mass - bound) / mass);
    }

    /** The same with a mass that is proved otherwise. */
    Lightened withBound(double proved) {
        return new Lightened(
                layup,
                mass,
                stiffness,
                Math.min(proved, mass),
                removable,
                solves,
                harvests,
                nodes,
                ended,
                verified,
                history);
    }
}
