// SPDX-License-Identifier: Apache-2.0
package tubwright.engine.structure;

/**
 * A bar with a ball at either end: it carries force along itself only.
 *
 * @param owner part index
 * @param nodes two node indices
 * @param spring along its line, with the arms from the nodes; its stretch counts the nearing of the ends
 * @param section and material
 * @param length m
 */
record PinnedBar(int owner, int[] nodes, ElasticTie spring, BeamSection section, double length) implements Member {
    @Override
    public double[] matrix() {
        return spring.matrix();
    }

    @Override
    public double energy(double[] u) {
        return spring.energy(u);
    }

    /** Force along it under displacements u (6 per node), N, tension positive. */
    double tension(double[] u) {
        return -spring.stiffness()[0] * spring.gap(0, u);
    }
}
