// SPDX-License-Identifier: Apache-2.0
package tubwright.desk.page;

import java.util.List;
import java.util.Optional;

/** A torsion test explained by the model. */
@Meaning("A torsion test explained by the model of a variant")
public record ExplainedView(
        @Meaning("of readings; empty while nothing was explained")
        String file,

        @Meaning("whose model") String variant,
        @Meaning("of the design file") String revision,
        @Meaning("stiffness as designed, N·m/rad") double predicted,
        @Meaning("of the model after the test, N·m/rad") double calibrated,
        @Meaning("half-width of its 95 % interval, N·m/rad") double calibratedExpanded,
        @Meaning("N·m/rad") double measured,
        @Meaning("half-width of its 95 % interval, N·m/rad") double measuredExpanded,
        @Meaning("in words, the most important first") List<String> verdict,

        @Meaning("station of the held end, m, where it was read")
        Optional<Double> held,

        @Meaning("in the order of their stations") List<TwistPointView> points,

        @Meaning("stretches between neighbouring gauges, from the held end")
        List<SegmentView> segments,

        List<FactorView> factors,

        @Meaning("where what was learnt was kept; none where it was not")
        Optional<String> keptAt) {

    /** Nothing yet. */
    static final ExplainedView NONE = new ExplainedView(
            "", "", "", 0, 0, 0, 0, 0, List.of(), Optional.empty(), List.of(), List.of(), List.of(), Optional.empty());

    /** The twist at a station. */
    @Meaning("The twist at a station over the torque, rad/(N·m)")
    public record TwistPointView(
            @Meaning("m") double station,
            double measured,
            @Meaning("half-width of its 95 % interval") double expanded,
            @Meaning("as designed") double designed,
            @Meaning("as built") double built) {}

    /** A stretch. */
    @Meaning("Twist gained along a stretch over the torque, rad/(N·m)")
    public record SegmentView(
            @Meaning("station, m") double from,
            @Meaning("station, m") double to,
            double measured,
            @Meaning("as designed") double designed,
            @Meaning("as built") double built,

            @Meaning("how far it is off, in standard uncertainties")
            double significance,

            @Meaning("what explains it; empty where it does not stand out")
            String blamed) {}

    /** A stiffness in question. */
    @Meaning("A stiffness in question: its factor before and after the test")
    public record FactorView(
            String name,

            @Meaning("ends of the 95 % range of the factor before; 0 and 0 for what is no factor")
            double beforeLow,

            double beforeHigh,
            @Meaning("most probable after") double after,
            double afterLow,
            double afterHigh,
            @Meaning("after, in words") String words,
            @Meaning("how much the test says of it") String learnt) {}
}
