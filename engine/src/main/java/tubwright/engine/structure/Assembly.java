// SPDX-License-Identifier: Apache-2.0
package tubwright.engine.structure;

import java.util.Arrays;
import tubwright.engine.mesh.Mesh;
import tubwright.numerics.Assembler;
import tubwright.numerics.NodeGraph;
import tubwright.numerics.SymmetricMatrix;
import tubwright.numerics.SymmetricPattern;

/** The matrices of a structure, nothing fixed, all on one pattern. */
public final class Assembly {
    private final Structure structure;
    private final Mesh mesh;
    private final SymmetricPattern pattern;
    private final Assembler assembler;
    private final ThreadLocal<ShellKernel> kernels;

    public Assembly(Structure structure) {
        this.structure = structure;
        mesh = structure.mesh();
        kernels = ThreadLocal.withInitial(() -> new ShellKernel(structure));
        int[][] connectivity = structure.connectivity();
        int[] start = new int[connectivity.length + 1];
        for (int e = 0; e < connectivity.length; e++) {
            start[e + 1] = start[e] + connectivity[e].length;
        }
        int[] nodes = new int[start[connectivity.length]];
        for (int e = 0; e < connectivity.length; e++) {
            System.arraycopy(connectivity[e], 0, nodes, start[e], connectivity[e].length);
        }
        pattern = NodeGraph.of(structure.nodeCount(), start, nodes).pattern(6);
        assembler = new Assembler(pattern, start, nodes);
    }

    /** Stiffness. */
    public SymmetricMatrix stiffness() {
        return assembler.assemble((e, target, offset) -> {
            if (e < mesh.elementCount()) {
                kernels.get().stiffness(e, target, offset);
            } else {
                copy(e, member(e).matrix(), target, offset);
            }
        });
    }

    /**
     * Consistent mass: shells with the first and second moments of their laminates' mass, bars, and lumped masses.
     * Rotations about shell normals, and the free rotations of inserts, carry none, so the matrix is semi-definite.
     */
    public SymmetricMatrix mass() {
        SymmetricMatrix mass = assembler.assemble((e, target, offset) -> {
            if (e < mesh.elementCount()) {
                kernels.get().mass(e, target, offset);
            } else {
                copy(e, member(e).mass(), target, offset);
            }
        });
        for (LumpedMass lump : structure.lumpedMasses()) {
            switch (structure.parts().get(lump.owner()).kind()) {
                case HARDPOINT ->
                    addPoint(
                            mass,
                            structure.hardpointNode(
                                    structure.parts().get(lump.owner()).name()),
                            lump.mass());
                case JOINT -> spread(mass, lump);
                // A stiffener's bars and tubes bring their own mass, bodies come as masses of nodes.
                case STIFFENER, TUBE, BODY -> {}
                case ZONE, WALL -> addPoint(mass, nearest(lump.centre()), lump.mass());
            }
        }
        structure.nodeMasses().forEach(m -> addPoint(mass, m.node(), m.mass()));
        return mass;
    }

    /**
     * Geometric stiffness of the membrane resultants of shells and the section forces of bars.
     *
     * @param u displacements of the stressed state, 6 per node
     */
    public SymmetricMatrix geometricStiffness(double[] u) {
        return assembler.assemble((e, target, offset) -> {
            if (e < mesh.elementCount()) {
                kernels.get().geometricStiffness(e, u, target, offset);
            } else {
                copy(e, member(e).geometricStiffness(u), target, offset);
            }
        });
    }

    private Member member(int e) {
        return structure.members().get(e - mesh.elementCount());
    }

    private void copy(int e, double[] from, double[] target, int offset) {
        if (from.length == 0) {
            Arrays.fill(target, offset, offset + assembler.matrixLength(e), 0);
        } else {
            System.arraycopy(from, 0, target, offset, from.length);
        }
    }

    private static void addPoint(SymmetricMatrix mass, int node, double kilograms) {
        for (int d = 0; d < 3; d++) {
            mass.add(6 * node + d, 6 * node + d, kilograms);
        }
    }

    /** Spreads a joint's mass over the nodes its ties hold on to, by their share in each tie and its stiffness. */
    private void spread(SymmetricMatrix mass, LumpedMass lump) {
        double[] share = new double[structure.nodeCount()];
        double sum = 0;
        for (Member member : structure.members()) {
            if (member instanceof ElasticTie tie && tie.owner() == lump.owner()) {
                for (int k = 0; k < tie.nodes().length; k++) {
                    double square = 0;
                    for (int d = 0; d < 3; d++) {
                        double c = tie.rows()[0][6 * k + d];
                        square += c * c;
                    }
                    double part = tie.stiffness()[0] * Math.sqrt(square);
                    share[tie.nodes()[k]] += part;
                    sum += part;
                }
            }
        }
        if (sum == 0) {
            addPoint(mass, nearest(lump.centre()), lump.mass());
            return;
        }
        for (int n = 0; n < share.length; n++) {
            if (share[n] > 0) {
                addPoint(mass, n, lump.mass() * share[n] / sum);
            }
        }
    }

    private int nearest(double[] point) {
        int nearest = 0;
        double best = Double.POSITIVE_INFINITY;
        for (int n = 0; n < mesh.nodeCount(); n++) {
            double[] x = Arrays.copyOfRange(mesh.nodes(), 3 * n, 3 * n + 3);
            double distance = Vectors.length(Vectors.minus(x, point));
            if (distance < best) {
                best = distance;
                nearest = n;
            }
        }
        return nearest;
    }
}
