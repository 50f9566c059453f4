// SPDX-License-Identifier: Apache-2.0
package tubwright.engine.design;

import tubwright.engine.joint.FastenerFlexibility;
import tubwright.engine.joint.FastenerFlexibility.Plate;

/**
 * Stiffness per length of joints: of bond lines and of rows of fasteners.
 *
 * @param shear along the line and across it in the surface, N/m per m
 * @param normal out of the surface, N/m per m
 * @param rotation about the line, N·m/rad per m
 */
record JointStiffness(double shear, double normal, double rotation) {
    /** Nearly incompressible adhesives: Poisson's ratio above which the confined modulus is no longer trusted. */
    private static final double HIGHEST_POISSON = 0.45;

    /** Two joints side by side. */
    JointStiffness plus(JointStiffness other) {
        return new JointStiffness(shear + other.shear, normal + other.normal, rotation + other.rotation);
    }

    /**
     * A bond line between stiff faces (Goland and Reissner 1944 take its shear and peel stresses as G/t and E/t times the
     * faces' movements): shear G w/t, normal E' w/t, rotation E' w³/(12 t). E' is the modulus with the strains in the
     * plane held, E (1-ν)/((1+ν)(1-2ν)), since the bond is thin against its width.
     *
     * @param e modulus, Pa
     * @param g shear modulus, Pa
     * @param nu Poisson's ratio
     * @param width of one bonded face, m
     * @param thickness of the bond line, m
     * @param faces 2 for two faces back to back (double lap)
     */
    static JointStiffness bonded(double e, double g, double nu, double width, double thickness, int faces) {
        double v = Math.min(nu, HIGHEST_POISSON);
        double confined = e * (1 - v) / ((1 + v) * (1 - 2 * v));
        return new JointStiffness(
                faces * g * width / thickness,
                faces * confined * width / thickness,
                faces * confined * width * width * width / (12 * thickness));
    }

    /** Two legs of a tee lie side by side, one on each side of the wall: as one bond line of twice the width. */
    static JointStiffness tee(double e, double g, double nu, double leg, double thickness) {
        return bonded(e, g, nu, 2 * leg, thickness, 1);
    }

    /**
     * Rows of fasteners: in shear the rows' fasteners by Huth's formula, out of the surface the stretch of their shanks
     * through both plates. Rotation about the line: the rows about their middle, and a single row by heel and toe of its
     * flange, which reaches two diameters from the row (assumed).
     */
    static JointStiffness fastened(
            FastenerFlexibility formula,
            Plate one,
            Plate two,
            double diameter,
            double modulus,
            double pitch,
            int rows,
            double rowSpacing) {
        double shear = rows / (formula.singleShear(one, two, diameter, modulus) * pitch);
        double shank = Math.PI / 4 * diameter * diameter * modulus / (one.thickness() + two.thickness());
        double normal = rows * shank / pitch;
        double lever = 2 * diameter;
        double rotation = normal * lever * lever;
        for (int row = 0; row < rows; row++) {
            double arm = (row - 0.5 * (rows - 1)) * rowSpacing;
            rotation += shank / pitch * arm * arm;
        }
        return new JointStiffness(shear, normal, rotation);
    }
}
