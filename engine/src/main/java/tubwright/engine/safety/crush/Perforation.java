// SPDX-License-Identifier: Apache-2.0
package tubwright.engine.safety.crush;

/**
 * A hard body through a solid laminate, fast: Wen 2000 (Compos. Struct. 49, 321; all of it from memory). The laminate resists with
 * σe (1 + β √(ρ/σe) V), σe its quasi-static pressure of penetration; the body goes through when its energy is that pressure over
 * its section times the thickness. As the body grows heavy the energy tends to ¼ π D² T σe, that of slow penetration.
 *
 * <p>Meant for local failure: a laminate that bends as a whole before it gives way takes more. Sandwich: its faces one by one, the
 * core's own crush beside ({@link Penetration}).
 */
public final class Perforation {
    private Perforation() {}

    /** Shape of the nose, β of the law of resistance. */
    public enum Nose {
        FLAT(2),
        ROUND(1.5);

        private final double beta;

        Nose(double beta) {
            this.beta = beta;
        }
    }

    /**
     * Speed at which a body just goes through, m/s.
     *
     * @param mass of the body, kg
     * @param diameter m
     * @param thickness of the laminate, m
     * @param density of the laminate, kg/m³
     * @param resistance σe, its quasi-static pressure of penetration by test, Pa
     */
    public static double limitSpeed(
            Nose nose, double mass, double diameter, double thickness, double density, double resistance) {
        if (!(mass > 0 && diameter > 0 && thickness > 0 && density > 0 && resistance > 0)) {
            throw new IllegalArgumentException(
                    "mass, diameter, thickness, density and resistance of a perforation are greater than zero");
        }
        double a = Math.PI * diameter * diameter * thickness;
        return a
                * nose.beta
                * Math.sqrt(density * resistance)
                / (4 * mass)
                * (1 + Math.sqrt(1 + 8 * mass / (nose.beta * nose.beta * density * a)));
    }

    /** Energy with which it just goes through, J. */
    public static double energy(
            Nose nose, double mass, double diameter, double thickness, double density, double resistance) {
        double v = limitSpeed(nose, mass, diameter, thickness, density, resistance);
        return 0.5 * mass * v * v;
    }

    /** The same for a body so heavy that it is hardly slowed: ¼ π D² T σe, J. */
    public static double slowEnergy(double diameter, double thickness, double resistance) {
        return 0.25 * Math.PI * diameter * diameter * thickness * resistance;
    }
}
