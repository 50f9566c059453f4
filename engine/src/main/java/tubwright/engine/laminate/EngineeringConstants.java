// SPDX-License-Identifier: Apache-2.0
package tubwright.engine.laminate;

/**
 * Moduli of the homogeneous plate that would stretch, or bend, like the laminate when it is free to deform in every
 * other way (Jones 1999, section 4.4): from the compliance of the whole laminate about its middle, so an unsymmetric
 * laminate may curl.
 *
 * @param ex modulus along x, Pa
 * @param ey modulus along y, Pa
 * @param gxy shear modulus, Pa
 * @param nuxy contraction along y per extension along x under load along x
 * @param nuyx contraction along x per extension along y under load along y
 * @param etaxyx shear strain per extension along x under load along x (η x,xy)
 * @param etaxyy shear strain per extension along y under load along y (η y,xy)
 */
public record EngineeringConstants(
        double ex, double ey, double gxy, double nuxy, double nuyx, double etaxyx, double etaxyy) {

    /** In stretching: 1/(h a11) and so on. */
    public static EngineeringConstants membrane(Laminate laminate) {
        return from(laminate, 0, laminate.thickness());
    }

    /** In bending: 12/(h³ d11) and so on. */
    public static EngineeringConstants flexural(Laminate laminate) {
        double h = laminate.thickness();
        return from(laminate, 3, h * h * h / 12);
    }

    private static EngineeringConstants from(Laminate laminate, int block, double weight) {
        double[] c = laminate.about(Reference.MIDDLE).stiffness().compliance();
        double c11 = c[9 * block];
        double c12 = c[9 * block + 1];
        double c16 = c[9 * block + 2];
        double c22 = c[9 * (block + 1)];
        double c26 = c[9 * (block + 1) + 1];
        double c66 = c[9 * (block + 2)];
        return new EngineeringConstants(
                1 / (weight * c11),
                1 / (weight * c22),
                1 / (weight * c66),
                -c12 / c11,
                -c12 / c22,
                c16 / c11,
                c26 / c22);
    }
}
