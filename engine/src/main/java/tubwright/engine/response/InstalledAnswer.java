// SPDX-License-Identifier: Apache-2.0
package tubwright.engine.response;

import java.util.List;
import java.util.Optional;

/**
 * The tub with everything bolted to it, on the finest mesh.
 *
 * @param torsion the first torsion case without and with what is bolted on; empty where the design has none
 * @param hubToHub from wheel to wheel; empty where the design has no car
 * @param pickUps how far the suspension's points on the tub give way
 * @param alignment what that and the links cost in the cases of the car on its wheels
 * @param masses what the model weighs
 */
public record InstalledAnswer(
        Optional<WithAndWithout> torsion,
        Optional<HubToHub> hubToHub,
        List<PickUp> pickUps,
        List<Lost> alignment,
        Masses masses) {
    public InstalledAnswer {
        pickUps = List.copyOf(pickUps);
        alignment = List.copyOf(alignment);
    }

    /**
     * Torsional stiffness of one case, held and loaded alike, N·m/rad.
     *
     * @param name of the case
     * @param sections tub alone, between skin sections
     * @param sectionsWith with what is bolted on
     * @param hardpoints tub alone, between the hardpoints themselves
     * @param hardpointsWith with what is bolted on
     * @param fitted what is bolted on, in words
     */
    public record WithAndWithout(
            String name,
            double sections,
            double sectionsWith,
            double hardpoints,
            double hardpointsWith,
            List<String> fitted) {
        public WithAndWithout {
            fitted = List.copyOf(fitted);
        }
    }

    /**
     * Couple at the hubs of one axle against those of the other: the body free, dampers solid or as stiff as stated.
     *
     * @param stiffness couple over the twist between the axles, N·m/rad
     * @param withoutLinks the same with links that do not stretch, N·m/rad
     * @param springs in series, largest share first; their shares add up to one
     */
    public record HubToHub(double stiffness, double withoutLinks, List<Spring> springs) {
        /** Share of the twist below which no figure of the whole would change. */
        private static final double COUNTS = .005;

        public HubToHub {
            springs = List.copyOf(springs);
        }

        /** The springs a person would list: those stiffer than anybody can tell left out. */
        public List<Spring> springsThatCount() {
            return springs.stream().filter(s -> s.share() >= COUNTS).toList();
        }
    }

    /**
     * One of the springs in series.
     *
     * @param name what gives
     * @param share of the twist: its strain energy over the whole
     * @param stiffness of it alone, N·m/rad
     */
    public record Spring(String name, double share, double stiffness) {}

    /**
     * A point of the suspension on the tub.
     *
     * @param name of the hardpoint
     * @param direction unit vector of the force
     * @param stiffness force over the movement of the point in its direction against the mean motion of the tub, which
     *     is free and resists by its mass, N/m
     */
    public record PickUp(String name, double[] direction, double stiffness) {}

    /**
     * What a wheel loses in a case against the tub's mean motion.
     *
     * @param load the case
     * @param wheel name
     * @param camber top outward positive, rad
     * @param toe toe-in positive, rad
     */
    public record Lost(String load, String wheel, double camber, double toe) {}

    /**
     * Kilograms.
     *
     * @param tub alone
     * @param bolted on
     * @param sprung mass that the car ought to have: the whole less its wheels; NaN without a car
     */
    public record Masses(double tub, double bolted, double sprung) {}
}
