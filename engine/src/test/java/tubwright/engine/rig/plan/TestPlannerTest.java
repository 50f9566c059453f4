// SPDX-License-Identifier: Apache-2.0
package tubwright.engine.rig.plan;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import org.junit.jupiter.api.Test;
import tubwright.engine.rig.explain.CockpitTub;
import tubwright.numerics.solver.Solvers;

/** A torsion test planned for the small tub with a cockpit. */
class TestPlannerTest {
    private static final TestPlan PLAN = new TestPlanner(
                    CockpitTub.TUB, CockpitTub.TORSION, CockpitTub.TUB.meshSize(), Solvers.best(), () -> false)
            .plan(Means.USUAL);

    @Test
    void theTorqueLeavesTheMarginAtTheWeakestPlace() {
        double factor = PLAN.weakest().orElseThrow().value() * Math.abs(CockpitTub.TORSION.couple()) / PLAN.torque();
        assertTrue(factor >= TestPlanner.MARGIN, "reserve factor at the greatest torque is " + factor);
        assertEquals(PLAN.safeTorque(), PLAN.weakest().orElseThrow().value() * 1000 / TestPlanner.MARGIN, 1e-6);
    }

    @Test
    void theEndsAreReadAndEveryPairTellsLessThanTheOneBefore() {
        List<GaugePair> pairs = PLAN.pairs();
        assertEquals(1.85, pairs.get(0).station(), 1e-9);
        assertEquals(0.15, pairs.get(1).station(), 1e-9);
        for (int i = 3; i < pairs.size(); i++) {
            assertTrue(pairs.get(i).gain() <= pairs.get(i - 1).gain() + 1e-9, "gains do not fall: " + pairs);
        }
        for (int i = 1; i < pairs.size(); i++) {
            assertTrue(pairs.get(i).spread() <= pairs.get(i - 1).spread() + 1e-12);
            assertTrue(pairs.get(i).movement() > 5 * PLAN.means().resolution(), "gauge " + i + " hardly moves");
        }
        assertTrue(pairs.size() > 2 && pairs.size() <= Means.USUAL.pairs());
    }

    @Test
    void holdingMoreThanSixDirectionsNeverSoftens() {
        Restraint restraint = PLAN.restraint();
        assertEquals(12, restraint.held());
        assertTrue(restraint.excess() >= -1e-9, "held more it turns " + restraint.excess() + " softer");
        assertTrue(restraint.least().size() >= 3, "a body is held at three points at least: " + restraint.least());
    }

    @Test
    void theBudgetIsTheGumsOwnSum() {
        // JCGM 100:2008 eq. 10: contributions add by their squares; by hand for these means.
        Means means = Means.USUAL.upTo(2000);
        double k = 300_000;
        double spacing = 0.8;
        double angle = Math.sqrt(2) * Math.sqrt(2 * (1e-10 / 12 + 25e-12)) / spacing;
        double slope = angle * k / means.torqueLength(2000);
        double repeat = 5e-3 / Math.sqrt(3);
        // The loaded pair turns by the twist and what a rig twenty times as stiff gives, the held one by that alone.
        double place = Math.sqrt(1.05 * 1.05 + 0.05 * 0.05) * Math.sqrt(2) * 1e-3 / spacing;
        double expected = k * Math.sqrt(25e-6 + 1e-6 + place * place + slope * slope + repeat * repeat);
        assertEquals(expected, TestPlanner.budget(means, k, spacing, 2000).combined(), 1e-9 * expected);
    }

    @Test
    void torqueLengthIsTheRootOfTheSumOfSquares() {
        Means means = new Means(java.util.OptionalDouble.of(400), 4, 1, 2, 1e-5, 0, 0.1, 0, 1, 0, 0, 0);
        // 0, 100, 200, 300, 400, 300, 200, 100, 0: mean 177.78, sum of squares about it 155 555.6.
        assertEquals(Math.sqrt(155_555.555_6), means.torqueLength(400), 1e-3);
    }

    @Test
    void meansThatCannotWorkAreRefused() {
        assertThrows(
                IllegalArgumentException.class,
                () -> new Means(java.util.OptionalDouble.empty(), 3, 3, 6, 1e-5, 0, 0.1, 0, 1, 0, 0, 0));
    }
}
