// SPDX-License-Identifier: Apache-2.0
package tubwright.desk.page;

import java.util.List;
import java.util.Optional;

/** A torsion test as it was read. */
@Meaning("A torsion test as it was read from a file of readings")
public record TestView(
        @Meaning("name of the file") String file,
        @Meaning("whether the bed-in cycle was left out") boolean withoutBedIn,
        @Meaning("what was tested, in the file's words") String test,
        @Meaning("whether suspension and all was tested") boolean hubToHub,

        @Meaning("between which stations the angle is taken, in words")
        String span,

        @Meaning("the first is the one to quote") List<EstimateView> estimates,
        @Meaning("in the order of the file") List<StepView> steps,
        List<LoopView> loops,

        @Meaning("angle taken up before the structure stiffens, rad; where it stands out of the scatter")
        Optional<Double> slop,

        @Meaning(
                "greatest departure from the chord as a share of the largest angle, positive where it softens; where it stands out")
        Optional<Double> curvature,

        @Meaning("station of the held end, m") Optional<Double> held,
        @Meaning("measured twist line") List<StationView> twist,
        @Meaning("what to know before trusting it") List<String> findings) {

    /** A stiffness. */
    @Meaning("A stiffness with its 95 % interval")
    public record EstimateView(
            @Meaning("of what") String name,
            @Meaning("N·m/rad") double stiffness,
            @Meaning("half-width, N·m/rad") double expanded) {}

    /** A load step. */
    @Meaning("A load step")
    public record StepView(
            int cycle,
            @Meaning("N·m") double torque,
            @Meaning("rad; none where it was not read") Optional<Double> angle,
            boolean unloading,
            @Meaning("of the file") int line) {}

    /** A loop. */
    @Meaning("What a cycle leaves between its branches")
    public record LoopView(
            int cycle,
            @Meaning("work lost, J") double area,
            @Meaning("widest difference of angle, rad") double width,
            @Meaning("of it in the range of angles, 0 to 1") double share,

            @Meaning("angle left without load, rad; none where the load does not come back")
            Optional<Double> residual) {}

    /** A point of the twist line. */
    @Meaning("A point of the measured twist line, against the held end")
    public record StationView(
            @Meaning("m") double station,
            @Meaning("rad/(N·m)") double perTorque,

            @Meaning("half-width of its 95 % interval, same unit")
            double expanded,

            @Meaning("it comes from") List<String> gauges) {}

    /** A test to be explained. */
    @Meaning("Which test to explain, and by which variant's model")
    public record ExplainRequest(
            @Meaning("of readings") String file,
            boolean withoutBedIn,
            @Meaning("that was built and tested") String variant) {}

    /** A file of readings. */
    @Meaning("A file of the project that may hold readings")
    public record FileView(
            @Meaning("below the project's folder") String file) {}
}
