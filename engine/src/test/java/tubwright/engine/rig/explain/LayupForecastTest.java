// SPDX-License-Identifier: Apache-2.0
package tubwright.engine.rig.explain;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import org.junit.jupiter.api.Test;
import tubwright.engine.structure.Tub;
import tubwright.numerics.solver.Solvers;

/** Layups foretold one after another are what each would be foretold by itself. */
class LayupForecastTest {
    private static final double SIZE = CockpitTub.TUB.meshSize();
    private static final Calibration KNOWN = known();

    /** As after a test: cloth 10 % softer and known to 2 %, all else as before it. */
    private static Calibration known() {
        Calibration before = Calibration.none(CockpitTub.TUB, CockpitTub.TORSION);
        double[] mean = before.mean().clone();
        mean[0] = Math.log(0.9);
        double[][] covariance = before.covariance();
        covariance[0][0] = 0.02 * 0.02;
        return new Calibration(before.doubts(), mean, covariance, "box", 20, "t.csv", "today");
    }

    private static LayupForecast forecast(Calibration known, double modelError) {
        Tub built = Doubts.applied(CockpitTub.TUB, CockpitTub.TORSION, known.doubts(), known.mean());
        return new LayupForecast(built, CockpitTub.TORSION, known, modelError, SIZE, SIZE, Solvers.best(), () -> false);
    }

    private static Tub built(Calibration known) {
        return Doubts.applied(CockpitTub.TUB, CockpitTub.TORSION, known.doubts(), known.mean());
    }

    @Test
    void theTubItselfIsForetoldAsTheNextTubIs() {
        NextTub next =
                NextTub.of(CockpitTub.TUB, CockpitTub.TORSION, KNOWN, 0.01, SIZE, SIZE, Solvers.best(), () -> false);
        LayupForecast.Foretold same = forecast(KNOWN, 0.01).of(built(KNOWN));
        assertEquals(next.stiffness(), same.stiffness(), 1e-9 * next.stiffness());
        assertEquals(next.spread(), same.spread(), 1e-6 * next.spread());
    }

    @Test
    void aSofterLayupHasItsOwnStiffnessAndNearlyItsOwnInterval() {
        // Every zone at 70 %: a layup like any other.
        List<Doubt> doubts = KNOWN.doubts();
        double[] thinner = KNOWN.mean().clone();
        for (int i = 0; i < thinner.length; i++) {
            thinner[i] += doubts.get(i).is(Doubt.Kind.ZONE) && i % 2 == 0 ? Math.log(0.7) : 0;
        }
        Tub layup = Doubts.applied(CockpitTub.TUB, CockpitTub.TORSION, doubts, thinner);
        LayupForecast.Foretold foretold = forecast(KNOWN, 0).of(layup);
        TubTwistModel model = new TubTwistModel(
                layup,
                CockpitTub.TORSION,
                doubts,
                new double[0],
                java.util.OptionalDouble.empty(),
                SIZE,
                SIZE,
                Solvers.best(),
                () -> false);
        double[] nothing = new double[doubts.size()];
        assertEquals(model.stiffness(nothing), foretold.stiffness(), 1e-9 * foretold.stiffness());
        double whole = NextTub.spread(model.slope(nothing), KNOWN.covariance());
        assertEquals(whole, foretold.spread(), 2e-3 * whole);
    }

    @Test
    void whatHardlyWeighsIsNotDerivedAgain() {
        LayupForecast forecast = forecast(KNOWN, 0);
        assertTrue(
                forecast.weighing() < KNOWN.doubts().size(),
                forecast.weighing() + " of " + KNOWN.doubts().size());
        assertTrue(forecast.weighing() > 2);
    }
}
