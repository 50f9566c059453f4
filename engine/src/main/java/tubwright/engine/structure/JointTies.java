// SPDX-License-Identifier: Apache-2.0
package tubwright.engine.structure;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import tubwright.engine.mesh.Mesh;
import tubwright.engine.mesh.MeshLine;
import tubwright.engine.mesh.Region;

/**
 * Turns joints into elastic ties: two Gauss points on each element edge along the joint, each held to the closest spot
 * of the surface joined onto, with the joint's stiffness per length times the point's share of the edge.
 */
final class JointTies {
    /** Gauss abscissa ±1/√3 mapped to 0..1. */
    private static final double[] POINTS = {0.5 - 0.5 / Math.sqrt(3), 0.5 + 0.5 / Math.sqrt(3)};

    /** Farther than this share of its edge from the surface, a point is taken to run over an opening and stays free. */
    private static final double REACH = 0.6;

    private final Mesh mesh;
    private final Map<String, SurfaceLocator> locators = new HashMap<>();

    JointTies(Mesh mesh) {
        this.mesh = mesh;
    }

    /**
     * The ties of one joint.
     *
     * @param ties the springs
     * @param length of line that found something to hold on to, m
     * @param centre first moment of that length, m²: for the mass roll-up
     * @param points one a tie
     */
    record Tied(List<ElasticTie> ties, double length, double[] centre, List<JointPoint> points) {}

    Tied tie(int owner, Joint joint, MeshLine line) {
        SurfaceLocator onto = locator(line);
        List<ElasticTie> ties = new ArrayList<>();
        List<JointPoint> points = new ArrayList<>();
        double tiedLength = 0;
        double[] moment = new double[3];
        for (int[] chain : line.chains()) {
            for (int i = 0; i + 1 < chain.length; i++) {
                double[] a = node(chain[i]);
                double[] edge = Vectors.minus(node(chain[i + 1]), a);
                double length = Vectors.length(edge);
                for (double t : POINTS) {
                    double[] p = Vectors.plus(a, t, edge);
                    Optional<SurfaceLocator.Spot> spot = onto.closest(p, REACH * length);
                    if (spot.isEmpty()) {
                        continue;
                    }
                    Interpolation from = Interpolation.ofEdge(mesh, chain[i], chain[i + 1], t, p);
                    Interpolation to = Interpolation.of(mesh, spot.get(), p);
                    double[] along = Vectors.unit(edge);
                    double[] normal = normalSquareTo(along, spot.get().element());
                    double[][] axes = {along, Vectors.cross(normal, along), normal};
                    ElasticTie tie = spring(owner, joint, from, to, axes, length);
                    ties.add(tie);
                    int[] side = {chain[i], chain[i + 1]};
                    points.add(new JointPoint(tie, side, spot.get().element(), p, 0.5 * length, axes));
                    tiedLength += 0.5 * length;
                    moment = Vectors.plus(moment, 0.5 * length, p);
                }
            }
        }
        return new Tied(ties, tiedLength, moment, points);
    }

    private static ElasticTie spring(
            int owner, Joint joint, Interpolation from, Interpolation to, double[][] directions, double edge) {
        double length = 0.5 * edge;
        // A stretch of line that turns about its middle opens and shuts like a beam on springs: L²/12 of their
        // stiffness.
        // It holds the rotations about the surfaces' normals together, without which edges would be hinged in their
        // plane.
        double turn = edge * edge / 12;
        int[] nodes = Arrays.copyOf(from.nodes(), from.nodes().length + to.nodes().length);
        System.arraycopy(to.nodes(), 0, nodes, from.nodes().length, to.nodes().length);
        double[][] rows = new double[6][6 * nodes.length];
        for (int r = 0; r < 3; r++) {
            from.addTranslation(rows[r], 0, 1, directions[r]);
            to.addTranslation(rows[r], from.nodes().length, -1, directions[r]);
        }
        for (int r = 0; r < 3; r++) {
            from.addRotation(rows[3 + r], 0, 1, directions[r]);
            to.addRotation(rows[3 + r], from.nodes().length, -1, directions[r]);
        }
        double[] stiffness = {
            joint.alongStiffness() * length,
            joint.acrossStiffness() * length,
            joint.normalStiffness() * length,
            joint.rotationStiffness() * length,
            joint.normalStiffness() * length * turn,
            joint.acrossStiffness() * length * turn
        };
        return new ElasticTie(owner, nodes, rows, stiffness);
    }

    private SurfaceLocator locator(MeshLine line) {
        boolean seam = line.kind() == MeshLine.Kind.SEAM;
        String key = line.kind() + "|" + line.from() + "|" + line.onto();
        return locators.computeIfAbsent(
                key,
                k -> new SurfaceLocator(mesh, e -> {
                    Region region = mesh.region(e);
                    if (!line.onto().isEmpty()) {
                        return region.piece().equals(line.onto()) && (!seam || region.surface() == Region.Surface.SKIN);
                    }
                    return region.surface() == Region.Surface.SKIN
                            && !region.piece().equals(line.from());
                }));
    }

    private double[] node(int n) {
        return Arrays.copyOfRange(mesh.nodes(), 3 * n, 3 * n + 3);
    }

    /** The element's mean normal, made square to the joint line. */
    private double[] normalSquareTo(double[] along, int e) {
        double[] n = Surfaces.normal(mesh, e);
        double[] square = Vectors.plus(n, -Vectors.dot(n, along), along);
        return Vectors.unit(square);
    }
}
