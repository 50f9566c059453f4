// SPDX-License-Identifier: Apache-2.0
package tubwright.engine.design;

import java.util.List;
import java.util.Optional;
import tubwright.engine.design.text.Amount;
import tubwright.engine.design.text.Amounts;
import tubwright.engine.design.text.Choose;
import tubwright.engine.design.text.In;
import tubwright.engine.design.text.Limit;
import tubwright.engine.design.text.Name;
import tubwright.engine.design.text.Needed;
import tubwright.engine.design.text.Otherwise;
import tubwright.engine.design.text.Place;
import tubwright.engine.design.text.Says;
import tubwright.engine.quantity.Dimension;
import tubwright.engine.safety.crush.CrushStructure;

/** A clause as written. */
@Says("A clause: what it says, how far its figures may be trusted, and one thing that is held against the tub.")
@Choose({"bends", "bends across", "punched", "carries", "pushed", "stopped", "plies enclosed", "shown by"})
record ClauseText(
        @Says("What it asks, in your words.") String says,
        @Says("How its figures were read.") Reading trust,

        @Says("Whether the text wants it shown by a physical test.") @Otherwise("no")
        boolean byTest,

        @Says("Panels in bending as stiff as tubes.") Optional<Bends> bends,
        @Says("Panels nearly as stiff across as along.") Optional<Across> bendsAcross,
        @Says("A flat punch through the panel.") Optional<Punched> punched,
        @Says("Points that carry a force in any direction.") Optional<Carries> carries,
        @Says("A force on a pad or at points.") Optional<Pushed> pushed,
        @Says("An impact.") Optional<Stopped> stopped,

        @Says("yes: unidirectional plies between others, none next to a core.")
        Optional<Boolean> pliesEnclosed,

        @Says("What cannot be computed: the test or the paper that would show it.")
        Optional<String> shownBy,

        Place place) {
    /** How figures were read. */
    enum Reading {
        PUBLISHED,
        TRANSCRIPTION,
        COMPUTED,
        FROM_MEMORY,
        STATED
    }

    /** Panels in bending. */
    @Says("The sum of the EI of the panels of some places.")
    record Bends(
            @Says("Places whose panels count.") @Needed List<Name> places,

            @Says("EI, at least.") @In(value = Dimension.BENDING_RIGIDITY, positive = true)
            Amount bending,

            @Says("no: the true section counts, curvature and all.") @Otherwise("yes")
            boolean flat,

            Place place) {}

    /** Panels bent across. */
    @Says("Bending stiffness across over along.")
    record Across(
            @Says("Places whose panels count.") @Needed List<Name> places,

            @Says("Share, at least.") @In(value = Dimension.DIMENSIONLESS, positive = true)
            Amount share,

            Place place) {}

    /** A punch. */
    @Says("Perimeter shear.")
    record Punched(
            @Says("Where.") Name place,

            @Says("Force, at least.") @In(value = Dimension.FORCE, positive = true)
            Amount force,

            @Says("Diameter of the punch.") @In(value = Dimension.LENGTH, positive = true)
            Amount diameter,

            Place at) {}

    /** Points. */
    @Says("Every point of a place.")
    record Carries(
            @Says("Whose points.") Name place,

            @Says("Force each carries, at least.") @In(value = Dimension.FORCE, positive = true)
            Amount force,

            Place at) {}

    /** A push. */
    @Says("A force held on a pad, or shared by points.")
    record Pushed(
            @Says("Where.") Name place,

            @Says("Force, aft, right and up: \"60, 50, -90 kN\".") @In(Dimension.FORCE)
            Amounts force,

            @Says("Size of the pad along x, y and z; left out, it pushes at the place's points.")
            @In(value = Dimension.LENGTH, positive = true)
            Optional<Amounts> pad,

            @Says("How far it may move.") @In(value = Dimension.LENGTH, positive = true)
            Optional<Limit> moves,

            @Says("How long it is held.") @In(value = Dimension.TIME, positive = true)
            Optional<Amount> hold,

            Place at) {}

    /** An impact. */
    @Says("An impact on the design's crush structure of that side.")
    record Stopped(
            @Says("Side on which it is hit.") CrushStructure.Hit hit,

            @Says("Mass that is stopped.") @In(value = Dimension.MASS, positive = true)
            Amount mass,

            @Says("Speed.") @In(value = Dimension.VELOCITY, positive = true)
            Amount speed,

            @Says("What it must keep to.") CrushLimitsText limits,
            Place place) {}
}
