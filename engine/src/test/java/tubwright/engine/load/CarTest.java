// SPDX-License-Identifier: Apache-2.0
package tubwright.engine.load;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.Optional;
import org.junit.jupiter.api.Test;

class CarTest {
    private static final double G = Car.GRAVITY;
    private static final Car CAR = new Car(600, 2.4, 1.5, 1.4, 0.3, 1.2, 0.55, Optional.empty());

    @Test
    void aStandingCarPressesByItsLevers() {
        Car tail = new Car(600, 2.4, 1.5, 1.4, 0.3, 1.44, 0.5, Optional.empty());
        Car.Contacts c = tail.contacts(new double[3], 0.6);
        assertEquals(0.4 * 600 * G / 2, c.front()[0][2], 1e-9);
        assertEquals(0.6 * 600 * G / 2, c.rear()[1][2], 1e-9);
    }

    @Test
    void brakingAtOneAndAHalfGravityMovesWeightForward() {
        // m a h / L = 600 · 1.5 g · 0.3 / 2.4 = 112.5 g newtons from the rear to the front axle.
        Car.Contacts c = CAR.contacts(new double[] {1.5 * G, 0, 0}, 0.6);
        assertEquals((300 + 112.5) * G / 2, c.front()[0][2], 1e-9);
        assertEquals((300 - 112.5) * G / 2, c.rear()[0][2], 1e-9);
        assertEquals(0.6 * 600 * 1.5 * G / 2, c.front()[1][0], 1e-9);
    }

    @Test
    void inABendTheForcesBalanceRollAndYaw() {
        double[] a = {0, 1.4 * G, 0};
        Car.Contacts c = CAR.contacts(a, 0.6);
        double side = 0;
        double up = 0;
        double roll = 0;
        double yaw = 0;
        for (int s = 0; s < 2; s++) {
            double[] f = c.front()[s];
            double[] r = c.rear()[s];
            side += f[1] + r[1];
            up += f[2] + r[2];
            roll += (s == 0 ? -1 : 1) * (f[2] * CAR.frontTrack() + r[2] * CAR.rearTrack()) / 2;
            yaw += (CAR.wheelbase() - CAR.centreAft()) * r[1] - CAR.centreAft() * f[1];
        }
        assertEquals(600 * a[1], side, 1e-9);
        assertEquals(600 * G, up, 1e-9);
        assertEquals(-600 * a[1] * CAR.centreHeight(), roll, 1e-9);
        assertEquals(0, yaw, 1e-9);
        assertTrue(c.front()[0][2] > c.front()[1][2], "a right-hand bend presses the left wheel");
    }

    @Test
    void aWheelThatLiftsIsSaidSo() {
        LoadException e = assertThrows(LoadException.class, () -> CAR.contacts(new double[] {0, 4 * G, 0}, 0.6));
        assertTrue(e.getMessage().contains("right wheel"), e.getMessage());
    }
}
