// SPDX-License-Identifier: Apache-2.0
package tubwright.engine.structure;

/**
 * A named point that rides rigidly on a node.
 *
 * @param node index
 * @param arm from the node to the point, m, 3 numbers; zeros where the point is the node
 * @param position of the point, m, 3 numbers
 */
record Rider(int node, double[] arm, double[] position) {
    /** A point that is its node. */
    static Rider at(int node, double[] position) {
        return new Rider(node, new double[3], position);
    }

    /** A point that rides on a node at x. */
    static Rider on(int node, double[] x, double[] position) {
        return new Rider(node, Vectors.minus(position, x), position);
    }

    /** Where the node is, m. */
    double[] nodePosition() {
        return Vectors.minus(position, arm);
    }

    /** True where the point is its node. */
    boolean isNode() {
        return Vectors.length(arm) < 1e-9;
    }

    /** Translation (m) and rotation (rad) of the point under displacements of 6 numbers a node. */
    double[] movement(double[] u) {
        double[] m = new double[6];
        System.arraycopy(u, 6 * node, m, 0, 6);
        double[] turn = Vectors.cross(new double[] {m[3], m[4], m[5]}, arm);
        for (int d = 0; d < 3; d++) {
            m[d] += turn[d];
        }
        return m;
    }

    /** Adds a force (N) and a moment (N·m) at the point to loads of 6 numbers a node. */
    void push(double[] force, double[] moment, double[] loads) {
        double[] lever = Vectors.cross(arm, force);
        for (int d = 0; d < 3; d++) {
            loads[6 * node + d] += force[d];
            loads[6 * node + 3 + d] += moment[d] + lever[d];
        }
    }
}
