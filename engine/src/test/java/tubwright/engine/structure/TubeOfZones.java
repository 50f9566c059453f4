// SPDX-License-Identifier: Apache-2.0
package tubwright.engine.structure;

import java.util.ArrayList;
import java.util.List;
import java.util.function.Function;
import tubwright.engine.laminate.Laminate;
import tubwright.engine.laminate.ShellStiffness;
import tubwright.engine.mesh.Mesh;
import tubwright.engine.mesh.Region;

/**
 * A coarse tube of three zones and a patch, left and right, with struts across it that count as a joint: a few hundred
 * unknowns, solved in milliseconds, for tests that must solve thousands.
 */
public final class TubeOfZones {
    private static final int ALONG = 4;
    private static final int ROUND = 8;

    private TubeOfZones() {}

    /** The couple between its ends. */
    public static Case.Torsion torsion() {
        return TestStructures.torsion();
    }

    /** The tube with laminates of its regions (already mirrored where they are) and a factor on the struts. */
    public static Structure of(Function<Region, Laminate> laminates, double strut) {
        Mesh round = TestMeshes.tube(TestStructures.RADIUS, TestStructures.LENGTH, ALONG, ROUND);
        List<Region> regions = new ArrayList<>();
        int[] regionOf = new int[round.elementCount()];
        for (int e = 0; e < regionOf.length; e++) {
            double y = 0;
            double z = 0;
            for (int c = 0; c < 4; c++) {
                y += round.nodes()[3 * round.elementNodes()[4 * e + c] + 1];
                z += round.nodes()[3 * round.elementNodes()[4 * e + c] + 2];
            }
            String zone = Math.abs(y) > Math.abs(z) ? "flank" : z > 0 ? "deck" : "floor";
            List<String> patches = zone.equals("flank") && e / ROUND == 1 ? List.of("doubler: side") : List.of();
            Region region = new Region("skin", Region.Surface.SKIN, zone, patches, "tube", y < 0);
            if (!regions.contains(region)) {
                regions.add(region);
            }
            regionOf[e] = regions.indexOf(region);
        }
        Mesh mesh = new Mesh(
                round.nodes(),
                round.elementNodes(),
                round.cornerNormals(),
                round.referenceDirections(),
                regionOf,
                regions,
                List.of());
        List<Part> parts = new ArrayList<>(List.of(
                new Part(Part.Kind.ZONE, "floor"),
                new Part(Part.Kind.ZONE, "flank"),
                new Part(Part.Kind.ZONE, "deck"),
                new Part(Part.Kind.JOINT, "struts")));
        List<Member> members = new ArrayList<>();
        List<Hardpoint> hardpoints = TestStructures.hardpoints();
        HardpointTies inserts = new HardpointTies(mesh);
        for (int h = 0; h < hardpoints.size(); h++) {
            parts.add(new Part(Part.Kind.HARDPOINT, hardpoints.get(h).name()));
            members.addAll(inserts.tie(parts.size() - 1, hardpoints.get(h), mesh.nodeCount() + h));
        }
        for (int i = 1; i < ALONG; i++) {
            members.add(strut(mesh, i * ROUND, (i + 1) * ROUND + 3, strut * 2e7));
        }
        int count = regions.size();
        double[][] matrices = new double[count][];
        double[] areal = new double[count];
        double[] offset = new double[count];
        double[] second = new double[count];
        int[] partOf = new int[count];
        for (int r = 0; r < count; r++) {
            ShellStiffness shell = laminates.apply(regions.get(r)).stiffness();
            matrices[r] = shell.matrix();
            areal[r] = shell.arealMass();
            offset[r] = shell.firstMassMoment() / shell.arealMass();
            second[r] = shell.secondMassMoment();
            partOf[r] = List.of("floor", "flank", "deck").indexOf(regions.get(r).zone());
        }
        Structure.Masses masses = new Structure.Masses(areal, offset, second, List.of());
        return new Structure(mesh, matrices, parts, partOf, hardpoints, members, masses, List.of());
    }

    private static ElasticTie strut(Mesh mesh, int a, int b, double stiffness) {
        double[] x = mesh.nodes();
        double[] along = Vectors.unit(
                new double[] {x[3 * b] - x[3 * a], x[3 * b + 1] - x[3 * a + 1], x[3 * b + 2] - x[3 * a + 2]});
        double[] row = new double[12];
        for (int d = 0; d < 3; d++) {
            row[d] = -along[d];
            row[6 + d] = along[d];
        }
        return new ElasticTie(3, new int[] {a, b}, new double[][] {row}, new double[] {stiffness});
    }
}
