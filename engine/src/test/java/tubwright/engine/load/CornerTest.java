// SPDX-License-Identifier: Apache-2.0
package tubwright.engine.load;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.Test;

/** A right-hand corner whose links lie square, so that every force can be had by hand. */
class CornerTest {
    private static final double[] NONE = new double[3];

    /**
     * Wishbones 0.4 m long with legs 0.3 m ahead of and behind the axle (3-4-5 triangles), at heights 0.15 and 0.35 m;
     * toe link straight inward, 0.1 m behind the axle at 0.25 m; rod upright over the lower outer joint.
     */
    private static Corner square(Optional<Rocker> rocker) {
        double[] up = {0, 0.6, 0.35};
        double[] low = {0, 0.6, 0.15};
        return new Corner(
                "front right",
                List.of(
                        new Link("upper front leg", at(-0.3, 0.2, 0.35), up),
                        new Link("upper rear leg", at(0.3, 0.2, 0.35), up),
                        new Link("lower front leg", at(-0.3, 0.2, 0.15), low),
                        new Link("lower rear leg", at(0.3, 0.2, 0.15), low),
                        new Link("toe link", at(0.1, 0.2, 0.25), at(0.1, 0.6, 0.25))),
                new Link("rod", at(0, 0.6, 0.55), low),
                rocker);
    }

    private static double[] at(double x, double y, double z) {
        return new double[] {x, y, z};
    }

    @Test
    void aSidewaysForceIsSharedByTheLeversOfTheTwoWishbones() {
        // By hand, contact below the outer joints at z = 0: moments about x give 0.35 U + 0.15 L = 0 and U + L = -F for
        // the inward pulls U, L of the wishbones with F outward at the ground, so U = 0.75 F, L = -1.75 F. A leg's
        // inward part is 0.8 of its force, two legs alike.
        double[] n = square(Optional.empty()).linkForces(at(0, 0.6, 0), at(0, 1000, 0), NONE);
        double upper = -0.75 * 1000 / 2 / 0.8;
        double lower = 1.75 * 1000 / 2 / 0.8;
        assertArrayEquals(new double[] {upper, upper, lower, lower, 0, 0}, n, 1e-9);
    }

    @Test
    void brakingPullsTheLowerLegsAndTurnsTheUpperOnesRound() {
        // F aft at the ground: fore-and-aft pulls at heights 0.35 and 0.15 m with 0.35 U + 0.15 L = 0, U + L = F.
        // A leg's fore-and-aft part is 0.6 of its force; the front leg pulls forward, the rear leg pushes forward.
        double[] n = square(Optional.empty()).linkForces(at(0, 0.6, 0), at(1000, 0, 0), NONE);
        double upper = -0.75 * 1000 / 2 / 0.6;
        double lower = 1.75 * 1000 / 2 / 0.6;
        assertArrayEquals(new double[] {upper, -upper, lower, -lower, 0, 0}, n, 1e-9);
    }

    @Test
    void theRodAloneCarriesTheWheelLoadAndTheRockerTurnsIt() {
        // Rocker about the fore-and-aft axis at (0, 0.5, 0.55): the rod pushes up 0.1 m outboard, the damper lies level
        // inward from 0.05 m above the axis. Moment: 0.1 P = 0.05 D, so the damper is pressed with twice the wheel
        // load.
        Rocker rocker = new Rocker(
                "rocker", at(0, 0.5, 0.55), at(1, 0, 0), new Link("damper", at(0, 0.2, 0.60), at(0, 0.5, 0.60)));
        List<PointLoad> loads = square(Optional.of(rocker)).onTub(at(0, 0.6, 0), at(0, 0, 1000), NONE);
        PointLoad pivot = loads.get(5);
        PointLoad damper = loads.get(6);
        assertEquals("rocker", pivot.at());
        assertArrayEquals(at(0, -2000, 0), damper.force(), 1e-9);
        assertArrayEquals(at(0, 2000, 1000), pivot.force(), 1e-9);
        assertArrayEquals(NONE, pivot.moment(), 1e-9);
    }

    @Test
    void theTubFeelsExactlyWhatTheRoadPushes() {
        Rocker rocker = new Rocker(
                "rocker",
                at(0.05, 0.45, 0.57),
                at(0.9, 0.1, -0.2),
                new Link("damper", at(0.3, 0.25, 0.62), at(0.02, 0.5, 0.64)));
        double[] contact = at(-0.01, 0.62, 0);
        double[] force = at(700, -900, 2500);
        double[] moment = at(3, 5, -20);
        double[] f = NONE.clone();
        double[] m = NONE.clone();
        for (PointLoad load : square(Optional.of(rocker)).onTub(contact, force, moment)) {
            f = Vectors.plus(f, 1, load.force());
            m = Vectors.plus(m, 1, load.moment());
            m = Vectors.plus(m, 1, Vectors.cross(Vectors.minus(load.position(), contact), load.force()));
        }
        assertArrayEquals(force, f, 1e-9);
        assertArrayEquals(moment, m, 1e-9);
    }

    @Test
    void anUprightThatMayTurnIsRefused() {
        // The toe link moved into the plane of the two wishbone joints lets the wheel steer.
        List<Link> legs = new ArrayList<>(square(Optional.empty()).legs());
        legs.set(4, new Link("toe link", at(0, 0.2, 0.25), at(0, 0.6, 0.25)));
        Corner loose = new Corner("front right", legs, square(Optional.empty()).rod(), Optional.empty());
        LoadException e =
                assertThrows(LoadException.class, () -> loose.linkForces(at(0, 0.6, 0), at(0, 1000, 0), NONE));
        assertTrue(e.getMessage().contains("front right"), e.getMessage());
    }

    @Test
    void aDamperThatPointsAtTheRockersAxisIsRefused() {
        Rocker rocker = new Rocker(
                "rocker", at(0, 0.5, 0.55), at(1, 0, 0), new Link("damper", at(0, 0.2, 0.55), at(0, 0.45, 0.55)));
        assertThrows(LoadException.class, () -> square(Optional.of(rocker)).onTub(at(0, 0.6, 0), at(0, 0, 1000), NONE));
    }
}
