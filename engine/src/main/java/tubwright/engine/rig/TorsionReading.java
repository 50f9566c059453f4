// SPDX-License-Identifier: Apache-2.0
package tubwright.engine.rig;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/**
 * What a torsion test says.
 *
 * @param readings the load steps used
 * @param dropped load steps of the bed-in cycle left out on request
 * @param span the stations between which the angle is taken, in words
 * @param angles angle of the loaded end against the held end at each step, rad; NaN where it was not read
 * @param all both branches of all cycles together
 * @param loading the rising branches alone, if there are enough steps
 * @param unloading the falling branches alone, if there are enough steps
 * @param cycles each cycle alone
 * @param withoutRig {@code all} with the rig's flexibility taken out, if it is known
 * @param withoutOutliers {@code all} without the steps named as outliers, if there are any
 * @param loops one a cycle that goes up and down
 * @param straightness slop and curvature
 * @param twist measured twist line, by station
 * @param findings what the reader must know
 */
public record TorsionReading(
        Readings readings,
        int dropped,
        String span,
        double[] angles,
        Estimate all,
        Optional<Estimate> loading,
        Optional<Estimate> unloading,
        List<CycleStiffness> cycles,
        Optional<Estimate> withoutRig,
        Optional<Estimate> withoutOutliers,
        List<Loop> loops,
        Straightness straightness,
        List<StationAngle> twist,
        List<Finding> findings) {
    public TorsionReading {
        cycles = List.copyOf(cycles);
        loops = List.copyOf(loops);
        twist = List.copyOf(twist);
        findings = List.copyOf(findings);
    }

    /** The same with one more thing that the reader must know. */
    public TorsionReading with(Finding finding) {
        List<Finding> more = new ArrayList<>(findings);
        more.add(finding);
        return new TorsionReading(
                readings,
                dropped,
                span,
                angles,
                all,
                loading,
                unloading,
                cycles,
                withoutRig,
                withoutOutliers,
                loops,
                straightness,
                twist,
                more);
    }

    /** The stiffness to quote: without the rig where that is known. */
    public Estimate best() {
        return withoutRig.orElse(all);
    }

    /**
     * Stiffness of one cycle.
     *
     * @param cycle its number
     * @param stiffness N·m/rad
     * @param standardError N·m/rad
     */
    public record CycleStiffness(int cycle, double stiffness, double standardError) {}

    /**
     * Departures from a straight line through the origin.
     *
     * @param slop angle taken up before the structure stiffens, rad; NaN where the steps do not tell
     * @param slopError its standard uncertainty, rad
     * @param curvature greatest departure of the best parabola from its chord, as a share of the largest angle; positive
     *     if the structure softens
     * @param curvatureSignificance curvature over its standard uncertainty
     */
    public record Straightness(double slop, double slopError, double curvature, double curvatureSignificance) {
        /** Whether curvature stands out of the scatter. */
        public boolean curved() {
            return Math.abs(curvatureSignificance) > 3;
        }

        /** Whether slop stands out of the scatter. */
        public boolean slack() {
            return slop > 3 * slopError;
        }
    }

    /**
     * A point of the measured twist line.
     *
     * @param station x, m
     * @param perTorque angle against the held end over torque, rad/(N·m)
     * @param expanded half-width of its 95 % interval, rad/(N·m)
     * @param deviation its standard uncertainty without that of the torque, rad/(N·m)
     * @param shared the part of it that is the held pair's and thus common to all stations, rad/(N·m)
     * @param gauges names of the gauges it comes from
     * @param bodily greatest bodily displacement removed, m
     */
    public record StationAngle(
            double station,
            double perTorque,
            double expanded,
            double deviation,
            double shared,
            List<String> gauges,
            double bodily) {}
}
