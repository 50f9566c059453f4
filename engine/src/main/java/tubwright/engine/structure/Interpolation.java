// SPDX-License-Identifier: Apache-2.0
package tubwright.engine.structure;

import tubwright.engine.mesh.Mesh;

/**
 * The motion of a point that rides on interpolated nodes: translation u(p) = Σ N_i u_i + (Σ N_i θ_i) × (p − Σ N_i x_i),
 * rotation θ(p) = Σ N_i θ_i.
 *
 * @param nodes the nodes it rides on
 * @param weights N_i, summing to one
 * @param arm p − Σ N_i x_i, m
 */
record Interpolation(int[] nodes, double[] weights, double[] arm) {

    /** A point p that rides on a spot of the mesh. */
    static Interpolation of(Mesh mesh, SurfaceLocator.Spot spot, double[] p) {
        int[] nodes = new int[spot.weights().length];
        System.arraycopy(mesh.elementNodes(), 4 * spot.element(), nodes, 0, nodes.length);
        return new Interpolation(nodes, spot.weights(), Vectors.minus(p, spot.point()));
    }

    /** A point p that rides on the straight edge between two nodes, at the fraction t from the first. */
    static Interpolation ofEdge(Mesh mesh, int first, int second, double t, double[] p) {
        double[] on = new double[3];
        for (int d = 0; d < 3; d++) {
            on[d] = (1 - t) * mesh.nodes()[3 * first + d] + t * mesh.nodes()[3 * second + d];
        }
        return new Interpolation(new int[] {first, second}, new double[] {1 - t, t}, Vectors.minus(p, on));
    }

    /** A point p that rides rigidly on one node at x. */
    static Interpolation ofNode(int node, double[] x, double[] p) {
        return new Interpolation(new int[] {node}, new double[] {1}, Vectors.minus(p, x));
    }

    /** Adds {@code sign} times the translation along {@code direction} to a spring row, nodes starting at {@code at}. */
    void addTranslation(double[] row, int at, double sign, double[] direction) {
        double[] moment = Vectors.cross(arm, direction);
        for (int i = 0; i < nodes.length; i++) {
            for (int d = 0; d < 3; d++) {
                row[6 * (at + i) + d] += sign * weights[i] * direction[d];
                row[6 * (at + i) + 3 + d] += sign * weights[i] * moment[d];
            }
        }
    }

    /** Adds {@code sign} times the rotation about {@code axis} to a spring row. */
    void addRotation(double[] row, int at, double sign, double[] axis) {
        for (int i = 0; i < nodes.length; i++) {
            for (int d = 0; d < 3; d++) {
                row[6 * (at + i) + 3 + d] += sign * weights[i] * axis[d];
            }
        }
    }
}
