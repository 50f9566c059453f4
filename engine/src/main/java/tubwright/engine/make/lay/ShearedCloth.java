// SPDX-License-Identifier: Apache-2.0
package tubwright.engine.make.lay;

import java.util.List;
import tubwright.engine.laminate.Layer;
import tubwright.engine.laminate.LayerRole;
import tubwright.engine.material.Elasticity;
import tubwright.engine.material.Ply;

/**
 * A sheared cloth as two half-plies of straight fibres, one along each thread: no longer square to each other, the ply is
 * no longer orthotropic about its warp. The halves are such that unsheared they are the cloth exactly in its plane; how
 * the cloth's stiffness parts into along and across the fibres its own constants do not tell, so the stiffness across is
 * taken as {@value #ACROSS} times the cloth's shear modulus, as of tape of the same kind of fibre (assumed). Thickness and
 * mass grow with 1/cos γ, since the threads' length is kept while the area falls.
 */
final class ShearedCloth {
    /** Q22 of the halves over G12 of the cloth: 9 to 10 GPa over 4 to 5 GPa in carbon tape and cloth of the library. */
    static final double ACROSS = 2.2;

    private ShearedCloth() {}

    /**
     * The halves of a cloth layer.
     *
     * @param warp angle of the warp from the reference direction, rad
     * @param weft angle of the weft, rad
     */
    static List<Layer> halves(Layer layer, double warp, double weft) {
        Ply cloth = (Ply) layer.material();
        Elasticity e = cloth.elasticity();
        double shear = Math.PI / 2 - Math.abs(Math.IEEEremainder(weft - warp, Math.PI));
        double thickness = layer.thickness() / 2 / Math.cos(shear);
        double across = Math.min(ACROSS * e.g12(), 0.8 * Math.min(e.q11(), e.q22()));
        return List.of(
                new Layer(half(cloth, "warp", 2 * e.q11() - across, across), thickness, warp, LayerRole.PLY),
                new Layer(half(cloth, "weft", 2 * e.q22() - across, across), thickness, weft, LayerRole.PLY));
    }

    /** A ply of these reduced stiffnesses, Poisson's coupling and shear those of the cloth. */
    private static Ply half(Ply cloth, String thread, double along, double across) {
        Elasticity e = cloth.elasticity();
        double q12 = e.q12();
        double e1 = along - q12 * q12 / across;
        double e2 = across - q12 * q12 / along;
        double mean = (e.g13() + e.g23()) / 2;
        return new Ply(
                cloth.name() + " " + thread,
                cloth.description(),
                Ply.Form.UNIDIRECTIONAL,
                cloth.properties(),
                new Elasticity(e1, e2, q12 / across, e.g12(), mean, mean));
    }
}
