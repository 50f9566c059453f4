// SPDX-License-Identifier: Apache-2.0
package tubwright.engine.safety.crush;

/**
 * What runs into something that does not give.
 *
 * @param mass kg
 * @param speed m/s
 */
public record Impact(double mass, double speed) {
    public Impact {
        if (!(mass > 0) || !(speed > 0) || !Double.isFinite(mass) || !Double.isFinite(speed)) {
            throw new IllegalArgumentException(
                    "an impact of " + mass + " kg at " + speed + " m/s; both are greater than zero and finite");
        }
    }

    /** Kinetic energy, J. */
    public double energy() {
        return 0.5 * mass * speed * speed;
    }

    /** The least stroke in which a mean deceleration (m/s²) stops it: v²/2a, m. */
    public double leastStroke(double deceleration) {
        if (!(deceleration > 0)) {
            throw new IllegalArgumentException("a deceleration of " + deceleration + " m/s²; it is greater than zero");
        }
        return speed * speed / (2 * deceleration);
    }
}
