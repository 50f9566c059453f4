// SPDX-License-Identifier: Apache-2.0
package tubwright.engine.structure;

/**
 * A beam between two nodes of the structure.
 *
 * @param owner part index
 * @param nodes two node indices
 * @param beam carried by rigid arms from the nodes
 */
record Bar(int owner, int[] nodes, Beam beam) implements Member {
    private static final int LENGTH = Beam.FREEDOMS * Beam.FREEDOMS;

    @Override
    public double[] matrix() {
        double[] k = new double[LENGTH];
        beam.stiffness(k);
        return k;
    }

    @Override
    public double[] mass() {
        double[] m = new double[LENGTH];
        beam.mass(m);
        return m;
    }

    @Override
    public double[] geometricStiffness(double[] u) {
        double[] ends = new double[Beam.FREEDOMS];
        System.arraycopy(u, 6 * nodes[0], ends, 0, 6);
        System.arraycopy(u, 6 * nodes[1], ends, 6, 6);
        double[] g = new double[LENGTH];
        beam.geometricStiffness(ends, g);
        return g;
    }
}
