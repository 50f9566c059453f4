// SPDX-License-Identifier: Apache-2.0
package tubwright.engine.cabin;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import tubwright.engine.cabin.Body.Length;
import tubwright.engine.cabin.Body.People;
import tubwright.engine.shape.Frame;
import tubwright.engine.shape.Loft;
import tubwright.engine.shape.OutlineCorner;
import tubwright.engine.shape.TubShape;

/** A square tube, in which all room can be reckoned by hand. */
class CabinTest {
    private static final TubShape TUBE = TubShape.of(
            List.of(frame(0), frame(2)), List.of("floor", "side", "deck"), Loft.RULED, List.of(), List.of());

    private static Frame frame(double x) {
        return new Frame(
                x,
                List.of(
                        new OutlineCorner(0, 0, 0),
                        new OutlineCorner(0.3, 0, 0),
                        new OutlineCorner(0.3, 0.6, 0),
                        new OutlineCorner(0, 0.6, 0)));
    }

    private static Driver driver(double heels) {
        return new Driver(
                People.MEN, 0.5, new double[] {1.2, 0.2}, Math.toRadians(75), new double[] {heels, 0.1}, 0.15, 0);
    }

    @Test
    void aTankInAPrismHoldsItsLengthTimesItsInsetSection() {
        // Inset by 20 mm of skin and 10 mm of gap: 540 mm wide, and from 50 to 250 mm nothing of floor or deck is near.
        Tank tank = new Tank(0.05, 0.5, 1.0, 0.05, 0.25, 0.01);
        assertEquals(0.5 * 0.54 * 0.2, tank.room(TUBE, _ -> 0.02), 1e-9);
        // From the floor on: the lowest 30 mm are lost.
        Tank low = new Tank(0.05, 0.5, 1.0, 0, 0.25, 0.01);
        assertEquals(0.5 * 0.54 * 0.22, low.room(TUBE, _ -> 0.02), 1e-9);
    }

    @Test
    void aBoxIsAsFarFromTheSkinAsItsNearestFace() {
        Cabin cabin = new Cabin(
                Optional.empty(),
                Optional.empty(),
                List.of(
                        Solid.box("near", new double[] {0.5, -0.25, 0.2}, new double[] {0.7, 0.25, 0.4}),
                        Solid.bar("out", new double[] {0.5, 0.27, 0.3}, new double[] {0.7, 0.27, 0.3}, 0.03)),
                0.01);
        Cabin.Fit fit = cabin.in(TUBE, _ -> 0.02);
        assertEquals("out", fit.nearest().getFirst().what());
        assertEquals(-0.02, fit.nearest().getFirst().distance(), 1e-9);
        assertEquals(0.03, fit.nearest().getLast().distance(), 1e-9);
        assertEquals(List.of(new Cabin.Clash("out", "near")), fit.clashes());
    }

    @Test
    void theLinksOfTheLegAreAsLongAsTheTableMakesThem() {
        Driver driver = driver(0.5);
        double[] knee = driver.knee();
        assertEquals(driver.thigh(), Math.hypot(knee[0] - 1.2, knee[1] - 0.2), 1e-12);
        assertEquals(driver.shank(), Math.hypot(knee[0] - 0.5, knee[1] - 0.1), 1e-12);
        assertTrue(knee[1] > 0.2, "the knee is bent upward");
        // 618 mm to the front of the knee, 142.5 mm of it behind the hip joint, 51 mm before the knee's.
        assertEquals(0.61795 - 0.1372 / 0.8839 * 0.91829 - 0.051, driver.thigh(), 1e-12);
        double[] crown = driver.onBack(driver.crown());
        assertEquals(
                (1 - 0.0864 / 0.8839) * driver.length(Length.SITTING_HEIGHT),
                Math.hypot(crown[0] - 1.2, crown[1] - 0.2),
                1e-12);
    }

    @Test
    void pedalsTooFarAwayAreSaidToBe() {
        assertTrue(driver(0.5).reach() > 0);
        assertEquals(
                driver(0.1).thigh() + driver(0.1).shank() - Math.hypot(1.1, 0.1),
                driver(0.1).reach(),
                1e-12);
        assertTrue(driver(0.1).reach() < 0);
    }

    @Test
    void aMediumManFitsATubeThatIsWiderThanHisShouldersByWhatIsLeft() {
        Cabin cabin = new Cabin(Optional.of(driver(0.5)), Optional.empty(), List.of(), 0);
        Cabin.Nearest shoulders = cabin.in(TUBE, _ -> 0.02).nearest().stream()
                .filter(n -> n.what().equals("shoulders"))
                .findFirst()
                .orElseThrow();
        assertEquals((0.6 - 0.5104) / 2 - 0.02, shoulders.distance(), 1e-9);
    }
}
