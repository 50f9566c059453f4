// SPDX-License-Identifier: Apache-2.0
package tubwright.engine.load;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.Random;
import org.junit.jupiter.api.Test;

/** A rod that stands on the lower wishbone, part of the way in. */
class WishboneRodTest {
    private static final double[] NONE = new double[3];

    private static double[] at(double x, double y, double z) {
        return new double[] {x, y, z};
    }

    /** Wishbones 0.4 m long and square to the car, the rod upright on the lower one at y. */
    private static Corner square(double y) {
        double[] up = at(0, 0.6, 0.35);
        double[] low = at(0, 0.6, 0.15);
        return new Corner(
                "front R",
                List.of(
                        new Link("upper front leg", at(-0.3, 0.2, 0.35), up),
                        new Link("upper rear leg", at(0.3, 0.2, 0.35), up),
                        new Link("lower front leg", at(-0.3, 0.2, 0.15), low),
                        new Link("lower rear leg", at(0.3, 0.2, 0.15), low),
                        new Link("toe link", at(0.1, 0.2, 0.25), at(0.1, 0.6, 0.25))),
                new Link("rod", at(0, y, 0.55), at(0, y, 0.15)),
                Optional.empty(),
                List.of(2, 3));
    }

    /**
     * By hand, levers about the inner joints: W at 0.4 m is held by P at 0.3 m, P = W 4/3 pressed; the inner joints then
     * pull the wishbone down with P − W = W/3, each half of it.
     */
    @Test
    void theRodCarriesTheWheelByItsLever() {
        CornerForces f = square(0.5).forces(at(0, 0.6, 0), at(0, 0, 3000), NONE);
        assertEquals(-4000, f.tensions()[5], 1e-9);
        assertArrayEquals(at(0, 0, -500), f.onTub().get(2).force(), 1e-9);
        assertArrayEquals(at(0, 0, -500), f.onTub().get(3).force(), 1e-9);
        assertArrayEquals(at(0, 0, 4000), f.onTub().get(5).force(), 1e-9);
    }

    @Test
    void atTheOuterJointItIsTheCornerOfSixBars() {
        Corner bars = new Corner("front R", square(0.6).legs(), square(0.6).rod(), Optional.empty());
        double[] force = at(-700, 1100, 2600);
        assertArrayEquals(
                bars.linkForces(at(0.02, 0.62, 0), force, at(0, 40, 10)),
                square(0.6).linkForces(at(0.02, 0.62, 0), force, at(0, 40, 10)),
                1e-8);
    }

    /** Newton: what the road gives the upright, the tub gets, force and moment, for random corners and loads. */
    @Test
    void nothingIsLostOnTheWayToTheTub() {
        long seed = 20261125;
        Random random = new Random(seed);
        for (int trial = 0; trial < 200; trial++) {
            Corner corner = shaken(random);
            double[] contact = at(0.02 * random.nextGaussian(), 0.65, 0.01 * random.nextGaussian());
            double[] force = at(1000 * random.nextGaussian(), 1000 * random.nextGaussian(), 3000 * random.nextDouble());
            double[] moment = at(20 * random.nextGaussian(), 20 * random.nextGaussian(), 20 * random.nextGaussian());
            double[] f = NONE.clone();
            double[] m = NONE.clone();
            double largest = 0;
            for (PointLoad load : corner.onTub(contact, force, moment)) {
                f = Vectors.plus(f, 1, load.force());
                m = Vectors.plus(m, 1, load.moment());
                m = Vectors.plus(m, 1, Vectors.cross(Vectors.minus(load.position(), contact), load.force()));
                largest = Math.max(largest, Vectors.length(load.force()));
            }
            assertArrayEquals(force, f, 1e-12 * largest + 1e-9, "seed " + seed + ", trial " + trial);
            assertArrayEquals(moment, m, 1e-12 * largest + 1e-9, "seed " + seed + ", trial " + trial);
        }
    }

    /** The upright by itself: the pulls of its links at their outer ends balance the road; no tub in the sum. */
    @Test
    void eachUprightIsInEquilibrium() {
        Random random = new Random(7);
        for (int trial = 0; trial < 100; trial++) {
            Corner shaken = shaken(random);
            Corner corner = new Corner(shaken.name(), shaken.legs(), shaken.rod(), shaken.rocker());
            double[] contact = at(0, 0.65, 0);
            double[] force = at(900, -400, 2500);
            double[] n = corner.linkForces(contact, force, NONE);
            double[] f = force.clone();
            double[] m = NONE.clone();
            for (int k = 0; k < 6; k++) {
                Link link = corner.links().get(k);
                double[] pull = Vectors.times(n[k], Vectors.unit(Vectors.minus(link.inner(), link.outer())));
                f = Vectors.plus(f, 1, pull);
                m = Vectors.plus(m, 1, Vectors.cross(Vectors.minus(link.outer(), contact), pull));
            }
            assertArrayEquals(NONE, f, 1e-7, "trial " + trial);
            assertArrayEquals(NONE, m, 1e-7, "trial " + trial);
        }
    }

    @Test
    void aMirroredCornerCarriesTheMirroredLoadAlike() {
        Corner right = shaken(new Random(3));
        Corner left = right.mirrored("front L", name -> name + " L");
        assertArrayEquals(
                right.linkForces(at(0, 0.65, 0), at(500, 700, 2000), at(3, 5, 7)),
                left.linkForces(at(0, -0.65, 0), at(500, -700, 2000), at(-3, 5, -7)),
                1e-8);
    }

    @Test
    void aRodThatPointsAtTheHingeIsRefused() {
        Corner flat = square(0.5);
        Link level = new Link("rod", at(0, 0.2, 0.15), at(0, 0.5, 0.15));
        Corner corner = new Corner("front R", flat.legs(), level, Optional.empty(), List.of(2, 3));
        LoadException e = assertThrows(LoadException.class, () -> corner.forces(at(0, 0.6, 0), at(0, 0, 1000), NONE));
        assertTrue(e.getMessage().contains("'rod'") && e.getMessage().contains("cannot hold"), e.getMessage());
    }

    /** A corner whose points are moved at random by up to some centimetres, with a rocker. */
    private static Corner shaken(Random random) {
        Corner base = square(0.52);
        List<Link> legs = new ArrayList<>();
        double[] up = near(random, at(0, 0.6, 0.35));
        double[] low = near(random, at(0, 0.62, 0.15));
        for (int k = 0; k < 5; k++) {
            double[] outer =
                    k < 2 ? up : k < 4 ? low : near(random, base.legs().get(4).outer());
            Link leg = base.legs().get(k);
            legs.add(new Link(leg.name(), near(random, leg.inner()), outer));
        }
        Link rod = new Link(
                "rod", near(random, at(0.06, 0.2, 0.5)), near(random, base.rod().outer()));
        Rocker rocker = new Rocker(
                "rocker",
                at(0, 0.18, 0.5),
                near(random, at(0, 0.5, 0.87)),
                new Link("damper", near(random, at(0.35, 0.2, 0.5)), near(random, at(0, 0.24, 0.47))));
        return new Corner("front R", legs, rod, Optional.of(rocker), List.of(2, 3));
    }

    private static double[] near(Random random, double[] p) {
        double[] moved = p.clone();
        for (int d = 0; d < 3; d++) {
            moved[d] += 0.02 * random.nextGaussian();
        }
        return moved;
    }
}
