// SPDX-License-Identifier: Apache-2.0
package tubwright.engine.laminate;

/**
 * The twelve lamination parameters (Tsai and Pagano 1968; Miki 1982), each array in the order of the weighted means of
 * cos 2θ, cos 4θ, sin 2θ, sin 4θ over the thickness, z measured from the middle along the outward normal.
 *
 * @param membrane weight 1/h
 * @param coupling weight 4z/h²
 * @param bending weight 12z²/h³
 */
public record LaminationParameters(double[] membrane, double[] coupling, double[] bending) {
    /** Of a laminate; they describe its stiffness fully only if all layers are of one material. */
    public static LaminationParameters of(Laminate laminate) {
        double[] z = laminate.about(Reference.MIDDLE).surfaces();
        double h = laminate.thickness();
        double[] membrane = new double[4];
        double[] coupling = new double[4];
        double[] bending = new double[4];
        for (int i = 0; i < laminate.layers().size(); i++) {
            double angle = laminate.layers().get(i).angle();
            double[] f = {Math.cos(2 * angle), Math.cos(4 * angle), Math.sin(2 * angle), Math.sin(4 * angle)};
            double outer = z[i] / h;
            double inner = z[i + 1] / h;
            for (int k = 0; k < 4; k++) {
                membrane[k] += f[k] * (outer - inner);
                coupling[k] += f[k] * 2 * (outer * outer - inner * inner);
                bending[k] += f[k] * 4 * (outer * outer * outer - inner * inner * inner);
            }
        }
        return new LaminationParameters(membrane, coupling, bending);
    }
}
