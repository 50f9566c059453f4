// SPDX-License-Identifier: Apache-2.0
package tubwright.engine.structure;

/**
 * A place at which a joint holds: the ending piece's edge on one side, the surface joined onto on the other.
 */
public final class JointPoint {
    private final ElasticTie tie;
    private final int[] edge;
    private final int onto;
    private final double[] place;
    private final double length;
    private final double[][] axes;

    JointPoint(ElasticTie tie, int[] edge, int onto, double[] place, double length, double[][] axes) {
        this.tie = tie;
        this.edge = edge;
        this.onto = onto;
        this.place = place;
        this.length = length;
        this.axes = axes;
    }

    /**
     * What the joint carries here per length, along the line, across it in the surface, along the normal (N/m) and about the
     * line (N): the pull of the surface joined onto on the edge, positive where the edge has moved along the axis.
     *
     * @param u displacements, 6 per node
     */
    public double[] forces(double[] u) {
        double[] forces = new double[4];
        for (int r = 0; r < 4; r++) {
            forces[r] = tie.stiffness()[r] * tie.gap(r, u) / length;
        }
        return forces;
    }

    /** The springs that hold it. */
    ElasticTie tie() {
        return tie;
    }

    /** What holds it: along, across, normal, about the line, and two turns of the stretch of line it stands for. */
    public Springs springs() {
        return new Springs(tie.nodes(), tie.rows(), tie.stiffness());
    }

    /** The two mesh nodes of the edge it lies on. */
    public int[] edge() {
        return edge.clone();
    }

    /** The element joined onto. */
    public int onto() {
        return onto;
    }

    /** Where it is, m. */
    public double[] place() {
        return place.clone();
    }

    /** Length of line it stands for, m. */
    public double length() {
        return length;
    }

    /** Unit vectors along the line, across it in the surface joined onto, and normal to that: 3 × 3. */
    public double[][] axes() {
        return axes;
    }
}
