// SPDX-License-Identifier: Apache-2.0
package tubwright.engine.structure;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import tubwright.engine.laminate.ShellStiffness;
import tubwright.engine.mesh.Mesh;
import tubwright.engine.mesh.MeshLine;
import tubwright.engine.mesh.Region;

/** Structures made by hand for tests: a tube, whole or in two lengths, held at one end and twisted at the other. */
final class TestStructures {
    static final double RADIUS = 0.3;
    static final double LENGTH = 1.5;
    static final double THICKNESS = 0.004;
    static final double YOUNGS = 70e9;
    static final double POISSON = 0.33;
    static final double SHEAR = YOUNGS / (2 * (1 + POISSON));
    static final double COUPLE = 1000;

    private TestStructures() {}

    static Case.Torsion torsion() {
        boolean[] held = {true, true, true, false, false, false};
        List<Case.Support> hold = List.of(
                support("rear 0", held), support("rear 1", held), support("rear 2", held), support("rear 3", held));
        List<String> loaded = List.of("front 0", "front 1", "front 2", "front 3");
        return new Case.Torsion("torsion", hold, loaded, COUPLE, 0.3, 1.2);
    }

    private static Case.Support support(String name, boolean[] held) {
        return new Case.Support(name, held);
    }

    static List<Hardpoint> hardpoints() {
        List<Hardpoint> hardpoints = new ArrayList<>();
        for (int end = 0; end < 2; end++) {
            for (int k = 0; k < 4; k++) {
                double angle = Math.PI / 4 + k * Math.PI / 2;
                double[] x = {end == 0 ? 0.1 : LENGTH - 0.1, RADIUS * Math.cos(angle), RADIUS * Math.sin(angle)};
                String name = (end == 0 ? "front " : "rear ") + k;
                hardpoints.add(new Hardpoint(name, "skin", x, 0.03, 1e8, 1e5, 0.1));
            }
        }
        return hardpoints;
    }

    static double[] sheet() {
        return ShellStiffness.isotropic(YOUNGS, POISSON, THICKNESS, 2700).matrix();
    }

    /** A structure of a mesh whose regions all carry the same sheet. */
    static Structure of(Mesh mesh, List<Joint> joints) {
        return of(mesh, joints, Fittings.NONE);
    }

    /** The same with something bolted on. */
    static Structure of(Mesh mesh, List<Joint> joints, Fittings fittings) {
        List<Part> parts = new ArrayList<>(List.of(new Part(Part.Kind.ZONE, "skin")));
        List<Member> members = new ArrayList<>();
        List<Hardpoint> hardpoints = hardpoints();
        HardpointTies inserts = new HardpointTies(mesh);
        for (int h = 0; h < hardpoints.size(); h++) {
            parts.add(new Part(Part.Kind.HARDPOINT, hardpoints.get(h).name()));
            members.addAll(inserts.tie(parts.size() - 1, hardpoints.get(h), mesh.nodeCount() + h));
        }
        JointTies ties = new JointTies(mesh);
        List<JointRun> runs = new ArrayList<>();
        for (Joint joint : joints) {
            parts.add(new Part(Part.Kind.JOINT, joint.line()));
            MeshLine line = mesh.lines().stream()
                    .filter(l -> l.name().equals(joint.line()))
                    .findFirst()
                    .orElseThrow();
            JointTies.Tied tied = ties.tie(parts.size() - 1, joint, line);
            members.addAll(tied.ties());
            runs.add(new JointRun(joint, line.from(), tied.length(), tied.points()));
        }
        int regions = mesh.regions().size();
        double[][] laminates = new double[regions][];
        Arrays.fill(laminates, sheet());
        double[] areal = new double[regions];
        Arrays.fill(areal, 2700 * THICKNESS);
        double[] second = new double[regions];
        Arrays.fill(second, 2700 * Math.pow(THICKNESS, 3) / 12);
        Structure.Masses masses = new Structure.Masses(areal, new double[regions], second, List.of());
        return new Structure(mesh, laminates, parts, new int[regions], hardpoints, members, masses, runs)
                .with(fittings);
    }

    /** The tube in two lengths that share no nodes, the rear one turned by half a facet where asked. */
    static Mesh twoLengths(int along, int round, boolean turned) {
        Mesh front = TestMeshes.tube(RADIUS, LENGTH / 2, along / 2, round);
        double turn = turned ? Math.PI / round : 0;
        double[] nodes = Arrays.copyOf(front.nodes(), 2 * front.nodes().length);
        double[] normals = Arrays.copyOf(front.cornerNormals(), 2 * front.cornerNormals().length);
        for (int i = 0; i < front.nodes().length; i += 3) {
            rotate(front.nodes(), i, LENGTH / 2, turn, nodes, front.nodes().length + i);
        }
        for (int i = 0; i < front.cornerNormals().length; i += 3) {
            rotate(front.cornerNormals(), i, 0, turn, normals, front.cornerNormals().length + i);
        }
        int elements = front.elementCount();
        int[] elementNodes = Arrays.copyOf(front.elementNodes(), 8 * elements);
        for (int i = 0; i < 4 * elements; i++) {
            elementNodes[4 * elements + i] = front.elementNodes()[i] + front.nodeCount();
        }
        double[] reference = Arrays.copyOf(front.referenceDirections(), 6 * elements);
        System.arraycopy(front.referenceDirections(), 0, reference, 3 * elements, 3 * elements);
        int[] regions = new int[2 * elements];
        Arrays.fill(regions, elements, 2 * elements, 1);
        int[] chain = new int[round + 1];
        for (int j = 0; j <= round; j++) {
            chain[j] = along / 2 * round + j % round;
        }
        MeshLine seam = new MeshLine("front / rear", MeshLine.Kind.SEAM, "front", "rear", List.of(chain));
        return new Mesh(
                nodes,
                elementNodes,
                normals,
                reference,
                regions,
                List.of(
                        new Region("skin", Region.Surface.SKIN, "skin", List.of(), "front", false),
                        new Region("skin", Region.Surface.SKIN, "skin", List.of(), "rear", false)),
                List.of(seam));
    }

    private static void rotate(double[] from, int i, double shift, double turn, double[] to, int j) {
        to[j] = from[i] + shift;
        to[j + 1] = Math.cos(turn) * from[i + 1] - Math.sin(turn) * from[i + 2];
        to[j + 2] = Math.sin(turn) * from[i + 1] + Math.cos(turn) * from[i + 2];
    }

    /** Mean twist about x of the tube's nodes within half a millimetre of a station, rad. */
    static double twist(Structure structure, double[] u, double station) {
        double sum = 0;
        int count = 0;
        double[] x = structure.mesh().nodes();
        for (int n = 0; n < structure.mesh().nodeCount(); n++) {
            if (Math.abs(x[3 * n] - station) < 5e-4) {
                double r2 = x[3 * n + 1] * x[3 * n + 1] + x[3 * n + 2] * x[3 * n + 2];
                sum += (x[3 * n + 1] * u[6 * n + 2] - x[3 * n + 2] * u[6 * n + 1]) / r2;
                count++;
            }
        }
        return sum / count;
    }
}
