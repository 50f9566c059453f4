// SPDX-License-Identifier: Apache-2.0
package tubwright.desk.page;

import java.util.List;
import java.util.Optional;

/** What was computed of one variant. */
@Meaning("What was computed of one variant")
public record AnswerView(
        @Meaning("whose") String variant,
        @Meaning("of the file it was computed from") String revision,
        @Meaning("in a few words") String construction,
        @Meaning("ISO 8601") String stamp,

        @Meaning("whether the stiffness was carried to mesh size zero and has an error")
        boolean extrapolated,

        @Meaning("kg") double mass,
        @Meaning("kg, by piece") List<TubView.PieceView> pieces,
        @Meaning("the cases solved") List<CaseView> cases,

        @Meaning("lowest first, one for each zone and manner of giving way")
        List<ReserveView> reserves) {

    /** Torsion or bending. */
    public enum Kind {
        TORSION,
        BENDING
    }

    /** What a case came to. */
    @Meaning("What a case came to")
    public record CaseView(
            String name,
            Kind kind,

            @Meaning("read between skin sections; N·m/rad or N/m")
            double stiffness,

            @Meaning("half-width of its error, same unit") Optional<Double> error,

            @Meaning("between the hardpoints themselves, on the finest mesh, same unit")
            double atHardpoints,

            @Meaning("N·m or N") double load,
            @Meaning("station, m") double frontStation,
            @Meaning("station, m") double rearStation,
            @Meaning("what the figure includes") String includes,
            Optional<TwistView> twist,
            @Meaning("largest first") List<ShareView> energy) {}

    /** The twist line. */
    @Meaning("Twist of the skin's sections against station, under the case's couple")
    public record TwistView(
            @Meaning("m, increasing") double[] stations,
            @Meaning("rad") double[] angles,
            @Meaning("rad/m") double[] slopes) {}

    /** Where energy is stored. */
    @Meaning("Share of the strain energy stored in one part")
    public record ShareView(String name, @Meaning("0 to 1") double share) {}

    /** How far one place is from giving way. */
    @Meaning("How far one place is from giving way in one manner")
    public record ReserveView(
            @Meaning("the case") String load,
            String zone,
            @Meaning("what was looked at") String check,

            @Meaning("which layer; empty where it is no ply")
            String ply,

            @Meaning("m, 3 numbers") double[] place,

            @Meaning("factor on the loads at which it gives way")
            double value,

            @Meaning("a crack between fibres that does not yet part them")
            boolean firstCrack,

            @Meaning("at an insert, where the mesh cannot settle it")
            boolean local) {}
}
