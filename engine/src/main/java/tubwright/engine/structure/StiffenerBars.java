// SPDX-License-Identifier: Apache-2.0
package tubwright.engine.structure;

import java.util.Arrays;
import java.util.List;
import tubwright.engine.mesh.Mesh;
import tubwright.engine.mesh.MeshLine;

/**
 * Turns stiffeners into beams along mesh lines: one beam for each element edge, its axis stood off the surface by the
 * stiffener's offset, rigidly tied to the two mesh nodes. Where two surfaces meet in a sharp corner the stand-off is
 * along the mean of their normals.
 */
final class StiffenerBars {
    private final Mesh mesh;
    private final double[] normals;
    private final String[] pieces;

    StiffenerBars(Mesh mesh) {
        this.mesh = mesh;
        normals = new double[3 * mesh.nodeCount()];
        pieces = new String[mesh.nodeCount()];
        for (int e = 0; e < mesh.elementCount(); e++) {
            for (int c = 0; c < mesh.cornerCount(e); c++) {
                pieces[mesh.elementNodes()[4 * e + c]] = mesh.region(e).piece();
                for (int d = 0; d < 3; d++) {
                    normals[3 * mesh.elementNodes()[4 * e + c] + d] += mesh.cornerNormals()[12 * e + 3 * c + d];
                }
            }
        }
    }

    void build(int owner, Stiffener stiffener, MeshLine line, List<Member> members, List<LumpedMass> masses) {
        BeamSection section = BeamSection.of(stiffener.section());
        double massPerLength = section.density() * section.area();
        for (int[] chain : line.chains()) {
            for (int i = 0; i + 1 < chain.length; i++) {
                int a = chain[i];
                int b = chain[i + 1];
                double[] first = normal(a);
                double[] second = normal(b);
                double[] nodes = new double[6];
                double[] arms = new double[6];
                double[] middle = new double[3];
                for (int d = 0; d < 3; d++) {
                    nodes[d] = mesh.nodes()[3 * a + d];
                    nodes[3 + d] = mesh.nodes()[3 * b + d];
                    arms[d] = -stiffener.offset() * first[d];
                    arms[3 + d] = -stiffener.offset() * second[d];
                    middle[d] = 0.5 * (nodes[d] + arms[d] + nodes[3 + d] + arms[3 + d]);
                }
                Beam beam = new Beam(nodes, arms, Vectors.plus(first, 1, second), section);
                members.add(new Bar(owner, new int[] {a, b}, beam));
                masses.add(new LumpedMass(owner, pieces[a], massPerLength * beam.length(), middle));
            }
        }
    }

    private double[] normal(int n) {
        return Vectors.unit(Arrays.copyOfRange(normals, 3 * n, 3 * n + 3));
    }
}
