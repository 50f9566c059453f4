// SPDX-License-Identifier: Apache-2.0
package tubwright.engine.laminate;

/**
 * Strains and stresses of one layer at its outer and inner surface.
 *
 * @param index place in the laminate, 0 at the outer surface
 * @param layer the layer
 * @param outer at the surface nearer the laminate's outer surface
 * @param inner at the other surface
 */
public record PlyState(int index, Layer layer, Point outer, Point inner) {

    /**
     * State at one height. Order (x, y, xy) or (1, 2, 12), engineering shear.
     *
     * @param z height above the reference surface, m
     * @param strain total strain in laminate axes
     * @param stress stress in laminate axes, Pa
     * @param plyStrain strain that causes stress (total less free strain) in the layer's axes
     * @param plyStress stress in the layer's axes, Pa
     */
    public record Point(double z, double[] strain, double[] stress, double[] plyStrain, double[] plyStress) {}
}
