// SPDX-License-Identifier: Apache-2.0
package tubwright.engine.rig.explain;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import java.util.Locale;
import java.util.OptionalDouble;
import java.util.Random;
import java.util.concurrent.CancellationException;
import org.junit.jupiter.api.Test;
import tubwright.engine.rig.ReadingsReader;
import tubwright.engine.rig.TorsionReading;
import tubwright.engine.rig.TorsionReduction;
import tubwright.numerics.solver.Solvers;

/** A tub is built with one soft joint, put on a rig of known noise, and the readings must say so. */
class ExplanationTest {
    private static final List<Doubt> DOUBTS = Doubts.of(CockpitTub.TUB, CockpitTub.TORSION);
    private static final int WAIST = index("joint lower / upper");

    private static int index(String name) {
        for (int i = 0; i < DOUBTS.size(); i++) {
            if (DOUBTS.get(i).name().equals(name)) {
                return i;
            }
        }
        throw new AssertionError("no doubt '" + name + "' among " + DOUBTS);
    }

    private static TubTwistModel model(OptionalDouble held) {
        return new TubTwistModel(
                CockpitTub.TUB,
                CockpitTub.TORSION,
                DOUBTS,
                CockpitTub.STATIONS,
                held,
                CockpitTub.TUB.meshSize(),
                CockpitTub.TUB.meshSize(),
                Solvers.best(),
                () -> false);
    }

    /** Readings of gauge pairs a metre apart, in mm to a thousandth, two cycles up and down. */
    static TorsionReading read(double[] perTorque, double noise, boolean heldRead, long seed) {
        Random random = new Random(seed);
        StringBuilder text = new StringBuilder("held station, 1850 mm\nloaded station, 150 mm\n"
                + "torque uncertainty, 0.3 %\ngauge spacing uncertainty, 0.5 mm\ngauge resolution, 0.001 mm\n");
        int n = perTorque.length + (heldRead ? 1 : 0);
        for (int k = 0; k < n; k++) {
            double x = k < perTorque.length ? CockpitTub.STATIONS[k] : CockpitTub.HELD;
            for (String side : List.of("L", "R")) {
                text.append(String.format(
                        Locale.ROOT,
                        "gauge, g%d%s, %.0f mm, z, %d mm, 0 mm%n",
                        k,
                        side,
                        1000 * x,
                        side.equals("L") ? -500 : 500));
            }
        }
        text.append("cycle, torque [N·m]");
        for (int k = 0; k < n; k++) {
            text.append(", g").append(k).append("L [mm], g").append(k).append("R [mm]");
        }
        text.append('\n');
        for (int c = 1; c <= 2; c++) {
            for (int i = 0; i <= 12; i++) {
                double torque = 300 * (i <= 6 ? i : 12 - i);
                text.append(c).append(String.format(Locale.ROOT, ", %.1f", torque));
                for (int k = 0; k < n; k++) {
                    double angle = k < perTorque.length ? torque * perTorque[k] : 0;
                    for (double y : new double[] {-0.5, 0.5}) {
                        text.append(String.format(
                                Locale.ROOT, ", %.6f", 1000 * (y * angle + noise * random.nextGaussian())));
                    }
                }
                text.append('\n');
            }
        }
        return TorsionReduction.of(ReadingsReader.read("test.csv", text.toString()), false);
    }

    static Explanation explain(TorsionReading reading) {
        return Explanation.of(
                CockpitTub.TUB,
                CockpitTub.TORSION,
                reading,
                DOUBTS,
                0.005,
                CockpitTub.TUB.meshSize(),
                CockpitTub.TUB.meshSize(),
                Solvers.best(),
                () -> false);
    }

    @Test
    void aWaistBuiltTenTimesTooSoftIsFoundAndNamed() {
        double[] truth = new double[DOUBTS.size()];
        truth[WAIST] = -Math.log(10);
        TubTwistModel model = model(OptionalDouble.of(CockpitTub.HELD));
        double built = model.stiffness(truth);
        Explanation told = explain(read(model.read(truth), 2e-6, true, 5));
        Update update = told.update();
        assertTrue(update.converged());
        assertTrue(
                Math.abs(update.mean()[WAIST] - truth[WAIST]) < 2 * update.deviation(WAIST),
                () -> "ln factor " + update.mean()[WAIST] + " ± " + update.deviation(WAIST));
        assertTrue(update.mean()[WAIST] < -2 * update.deviation(WAIST), "it is not softer beyond doubt");
        assertTrue(update.learnt(WAIST) > Explanation.SETTLED, "the waist is not settled: " + update.learnt(WAIST));
        assertEquals(built, told.calibrated(), told.expanded());
        assertTrue(told.predicted() > 1.1 * built, "the tub as designed is stiffer than the tub as built");
        Segment worst = told.standingOut().getFirst();
        assertEquals("joint lower / upper", worst.guilty().orElseThrow().name());
        assertTrue(worst.excess() > 0 && worst.significance() > 2);
        assertTrue(told.leftOver() < 2, "the update leaves " + told.leftOver() + " standard deviations");
        // What no gauge can see the test says nothing about, and must not claim to.
        int held = index("held hardpoints");
        assertTrue(update.learnt(held) < Explanation.SILENT, "held inserts learnt " + update.learnt(held));
        assertEquals(0, update.mean()[held], 0.3 * DOUBTS.get(held).spread());
    }

    @Test
    void aTubBuiltAsDesignedIsLeftAsDesigned() {
        TubTwistModel model = model(OptionalDouble.of(CockpitTub.HELD));
        double[] nothing = new double[DOUBTS.size()];
        Explanation told = explain(read(model.read(nothing), 2e-6, true, 8));
        assertEquals(told.predicted(), told.calibrated(), told.expanded());
        for (int i = 0; i < DOUBTS.size(); i++) {
            assertTrue(
                    Math.abs(told.update().mean()[i]) < DOUBTS.get(i).spread(),
                    DOUBTS.get(i).name() + " moved without cause");
        }
        assertTrue(told.expanded() < 0.03 * told.calibrated(), "a test narrows what is known of the tub");
    }

    @Test
    void withTheHeldEndUnreadTheRigTakesTheBlameThatIsItsOwn() {
        TubTwistModel model = model(OptionalDouble.empty());
        double[] read = model.read(new double[DOUBTS.size()]);
        double whole = 1 / model.stiffness(new double[DOUBTS.size()]);
        for (int k = 0; k < read.length; k++) {
            read[k] += 0.2 * whole;
        }
        Explanation told = explain(read(read, 2e-6, false, 3));
        List<Doubt> all = told.update().doubts();
        int give = all.size() - 1;
        assertTrue(all.get(give).is(Doubt.Kind.RIG_GIVE));
        assertEquals(0.2, told.update().mean()[give], 2 * told.update().deviation(give));
        assertEquals(told.predicted(), told.calibrated(), told.expanded());
    }

    @Test
    void stoppedMeansStopped() {
        TubTwistModel stopped = new TubTwistModel(
                CockpitTub.TUB,
                CockpitTub.TORSION,
                DOUBTS,
                CockpitTub.STATIONS,
                OptionalDouble.empty(),
                CockpitTub.TUB.meshSize(),
                CockpitTub.TUB.meshSize(),
                Solvers.best(),
                () -> true);
        assertThrows(CancellationException.class, () -> stopped.read(new double[DOUBTS.size()]));
    }
}
