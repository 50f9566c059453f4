// SPDX-License-Identifier: Apache-2.0
package tubwright.engine.structure;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import tubwright.engine.laminate.Laminate;
import tubwright.engine.laminate.Layer;
import tubwright.engine.laminate.ShellStiffness;
import tubwright.engine.mesh.Mesh;
import tubwright.engine.mesh.MeshLine;
import tubwright.engine.mesh.Region;

/** Builds the structure of a tub on one of its meshes. */
final class StructureBuilder {
    private final Tub tub;
    private final Mesh mesh;
    private final Map<Part, Integer> parts = new LinkedHashMap<>();
    private final List<Member> members = new ArrayList<>();
    private final List<LumpedMass> masses = new ArrayList<>();
    private final List<JointRun> runs = new ArrayList<>();

    StructureBuilder(Tub tub, Mesh mesh) {
        this.tub = tub;
        this.mesh = mesh;
    }

    Structure build() {
        int regions = mesh.regions().size();
        double[][] laminates = new double[regions][];
        double[] arealMass = new double[regions];
        double[] massOffset = new double[regions];
        double[] secondMoment = new double[regions];
        int[] partOfRegion = new int[regions];
        for (int r = 0; r < regions; r++) {
            Region region = mesh.regions().get(r);
            ShellStiffness stiffness = laminate(tub, region).stiffness();
            laminates[r] = stiffness.matrix();
            arealMass[r] = stiffness.arealMass();
            massOffset[r] = stiffness.firstMassMoment() / stiffness.arealMass();
            secondMoment[r] = stiffness.secondMassMoment();
            Part.Kind kind = region.surface() == Region.Surface.WALL ? Part.Kind.WALL : Part.Kind.ZONE;
            partOfRegion[r] = part(kind, region.zone());
        }
        joints();
        stiffeners();
        hardpoints();
        return new Structure(
                mesh,
                laminates,
                List.copyOf(parts.keySet()),
                partOfRegion,
                tub.hardpoints(),
                members,
                new Structure.Masses(arealMass, massOffset, secondMoment, masses),
                runs);
    }

    /**
     * The laminate of a region: its zone's, with the patches' plies laid on the inner face in their order, mirrored on
     * the left.
     */
    static Laminate laminate(Tub tub, Region region) {
        Laminate zone = tub.laminates().get(region.zone());
        if (zone == null) {
            throw new StructureException(
                    "zone '" + region.zone() + "' has no laminate", "name its laminate in the design");
        }
        List<Layer> layers = new ArrayList<>(zone.layers());
        for (String patch : region.patches()) {
            layers.addAll(tub.patchPlies().getOrDefault(patch, List.of()));
        }
        Laminate whole = new Laminate(layers, zone.reference());
        return region.mirrored() ? whole.mirrored() : whole;
    }

    private void joints() {
        JointTies ties = new JointTies(mesh);
        for (Joint joint : tub.joints()) {
            MeshLine line = line(joint.line(), "joint");
            int owner = part(Part.Kind.JOINT, joint.line());
            JointTies.Tied tied = ties.tie(owner, joint, line);
            members.addAll(tied.ties());
            runs.add(new JointRun(joint, line.from(), tied.length(), tied.points()));
            if (tied.length() > 0) {
                double[] centre = Vectors.plus(new double[3], 1 / tied.length(), tied.centre());
                masses.add(new LumpedMass(owner, line.from(), joint.massPerLength() * tied.length(), centre));
            }
        }
    }

    private void stiffeners() {
        StiffenerBars bars = new StiffenerBars(mesh);
        for (Stiffener stiffener : tub.stiffeners()) {
            MeshLine line = line(stiffener.line(), "stiffener");
            int owner = part(Part.Kind.STIFFENER, stiffener.line() + ": " + stiffener.description());
            bars.build(owner, stiffener, line, members, masses);
        }
    }

    private void hardpoints() {
        HardpointTies ties = new HardpointTies(mesh);
        for (int h = 0; h < tub.hardpoints().size(); h++) {
            Hardpoint hardpoint = tub.hardpoints().get(h);
            int owner = part(Part.Kind.HARDPOINT, hardpoint.name());
            members.addAll(ties.tie(owner, hardpoint, mesh.nodeCount() + h));
            masses.add(new LumpedMass(owner, pieceOf(hardpoint), hardpoint.mass(), hardpoint.position()));
        }
    }

    private String pieceOf(Hardpoint hardpoint) {
        for (Region region : mesh.regions()) {
            if (region.part().equals(hardpoint.part())) {
                return region.piece();
            }
        }
        return hardpoint.part();
    }

    private MeshLine line(String name, String what) {
        for (MeshLine line : mesh.lines()) {
            if (line.name().equals(name)) {
                return line;
            }
        }
        throw new StructureException(
                what + " follows the line '" + name + "', which this tub does not have",
                "lines are: "
                        + String.join(
                                ", ", mesh.lines().stream().map(MeshLine::name).toList()));
    }

    private int part(Part.Kind kind, String name) {
        return parts.computeIfAbsent(new Part(kind, name), k -> parts.size());
    }
}
