// SPDX-License-Identifier: Apache-2.0
package tubwright.engine.structure;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.stream.IntStream;
import tubwright.engine.mesh.Mesh;
import tubwright.numerics.SymmetricMatrix;

/**
 * The finite-element model: shells, and members (ties, bars) between their nodes. Six unknowns a node: ux, uy, uz (m),
 * θx, θy, θz (rad), global axes. The mesh's nodes come first, then one node for each hardpoint.
 *
 * <p>Stiffness is the sum over shells of Σ w Bᵀ C B, linear in the laminates C of the regions, plus the members.
 */
public final class Structure {
    private final Mesh mesh;
    private final double[][] laminates;
    private final double[][] nominals;
    private final List<Part> parts;
    private final int[] partOfRegion;
    private final List<Hardpoint> hardpoints;
    private final List<Member> members;
    private final Masses masses;
    private final List<JointRun> runs;
    private final double[] positions;
    private final Fitted fitted;

    /**
     * What is bolted on.
     *
     * @param positions of its nodes, which follow those of the hardpoints, m
     * @param riders its named points
     * @param masses at nodes
     */
    record Fitted(double[] positions, Map<String, Rider> riders, List<NodeMass> masses) {
        static final Fitted NONE = new Fitted(new double[0], Map.of(), List.of());

        Fitted {
            riders = Map.copyOf(riders);
            masses = List.copyOf(masses);
        }
    }

    /**
     * Where mass sits.
     *
     * @param areal kg/m² per region
     * @param offset of its centre along the normal from the reference surface, m per region
     * @param second moment of the mass about the reference surface, kg per region
     * @param lumped joints, stiffeners, inserts
     */
    record Masses(double[] areal, double[] offset, double[] second, List<LumpedMass> lumped) {
        Masses {
            lumped = List.copyOf(lumped);
        }
    }

    /**
     * @param mesh the shells
     * @param laminates 8 × 8 stiffness of each region, row-major, ready mirrored where the region is
     * @param parts everything that stores energy
     * @param partOfRegion part index of each region
     * @param hardpoints in the order of their nodes
     * @param members ties and bars
     * @param masses where mass sits
     * @param runs the joints as they came out
     */
    Structure(
            Mesh mesh,
            double[][] laminates,
            List<Part> parts,
            int[] partOfRegion,
            List<Hardpoint> hardpoints,
            List<? extends Member> members,
            Masses masses,
            List<JointRun> runs) {
        this(mesh, laminates, laminates, parts, partOfRegion, hardpoints, members, masses, runs, Fitted.NONE);
    }

    /** As the other, with what is bolted on. */
    Structure(
            Mesh mesh,
            double[][] laminates,
            double[][] nominals,
            List<Part> parts,
            int[] partOfRegion,
            List<Hardpoint> hardpoints,
            List<? extends Member> members,
            Masses masses,
            List<JointRun> runs,
            Fitted fitted) {
        this.mesh = mesh;
        this.laminates = laminates;
        this.nominals = nominals;
        this.parts = List.copyOf(parts);
        this.partOfRegion = partOfRegion;
        this.hardpoints = List.copyOf(hardpoints);
        this.members = List.copyOf(members);
        this.masses = masses;
        this.runs = List.copyOf(runs);
        this.fitted = fitted;
        int skin = mesh.nodes().length;
        positions = new double[skin + 3 * hardpoints.size() + fitted.positions.length];
        System.arraycopy(mesh.nodes(), 0, positions, 0, skin);
        for (int h = 0; h < hardpoints.size(); h++) {
            System.arraycopy(hardpoints.get(h).position(), 0, positions, skin + 3 * h, 3);
        }
        System.arraycopy(fitted.positions, 0, positions, skin + 3 * hardpoints.size(), fitted.positions.length);
    }

    /**
     * The structure of a tub on one of its meshes.
     *
     * @throws StructureException where a name resolves to nothing on the mesh, or a hardpoint finds no surface
     */
    public static Structure of(Tub tub, Mesh mesh) {
        return new StructureBuilder(tub, mesh).build();
    }

    /**
     * Shells alone, nothing joined or bolted on, without mass.
     *
     * @param laminates 8 × 8 stiffness of each region of the mesh, row-major
     */
    public static Structure ofShells(Mesh mesh, double[][] laminates) {
        int regions = laminates.length;
        List<Part> parts = mesh.regions().stream()
                .map(r -> new Part(Part.Kind.ZONE, r.zone()))
                .toList();
        Masses none = new Masses(new double[regions], new double[regions], new double[regions], List.of());
        int[] own = IntStream.range(0, regions).toArray();
        return new Structure(mesh, laminates, parts, own, List.of(), List.of(), none, List.of());
    }

    /** The same with everything that is bolted to the tub: tubes, bodies and masses. */
    public static Structure fitted(Tub tub, Mesh mesh) {
        return of(tub, mesh).with(tub.fittings());
    }

    /**
     * The same structure with more bolted to it.
     *
     * @throws StructureException where a name resolves to nothing
     */
    public Structure with(Fittings fittings) {
        if (fittings.isEmpty()) {
            return this;
        }
        Map<String, Rider> riders = new LinkedHashMap<>(fitted.riders);
        for (int h = 0; h < hardpoints.size(); h++) {
            Hardpoint each = hardpoints.get(h);
            riders.put(each.name(), Rider.at(mesh.nodeCount() + h, each.position()));
        }
        List<Part> allParts = new ArrayList<>(parts);
        FittingsBuilder builder = new FittingsBuilder(riders, nodeCount(), (kind, name) -> {
            Part part = new Part(kind, name);
            if (!allParts.contains(part)) {
                allParts.add(part);
            }
            return allParts.indexOf(part);
        });
        builder.stiffness(fittings);
        builder.masses(fittings, mesh);
        List<Member> allMembers = new ArrayList<>(members);
        allMembers.addAll(builder.members());
        List<NodeMass> nodeMasses = new ArrayList<>(fitted.masses);
        nodeMasses.addAll(builder.masses());
        double[] own = builder.positions();
        double[] nodes = Arrays.copyOf(fitted.positions, fitted.positions.length + own.length);
        System.arraycopy(own, 0, nodes, fitted.positions.length, own.length);
        return new Structure(
                mesh,
                laminates,
                nominals,
                allParts,
                partOfRegion,
                hardpoints,
                allMembers,
                masses,
                runs,
                new Fitted(nodes, riders, nodeMasses));
    }

    /**
     * The same structure with other laminates; the strain operators stay those of the original laminates, so that
     * stiffness remains linear in them.
     *
     * @param other 8 × 8 stiffness of each region
     */
    public Structure withLaminates(double[][] other) {
        return new Structure(mesh, other, nominals, parts, partOfRegion, hardpoints, members, masses, runs, fitted);
    }

    /** The mesh. */
    public Mesh mesh() {
        return mesh;
    }

    /** Everything that stores energy. */
    public List<Part> parts() {
        return parts;
    }

    /** Index into {@link #parts()} of a region of the mesh. */
    public int partOfRegion(int region) {
        return partOfRegion[region];
    }

    /** Number of nodes, hardpoints' own included. */
    public int nodeCount() {
        return positions.length / 3;
    }

    /** Number of unknowns, fixed ones included. */
    public int unknowns() {
        return 6 * nodeCount();
    }

    /** Coordinates of all nodes, m. Not to be modified. */
    public double[] positions() {
        return positions;
    }

    /** The hardpoints. */
    public List<Hardpoint> hardpoints() {
        return hardpoints;
    }

    /** The node of the hardpoint of that name, or of a node or body that is bolted on. */
    public int hardpointNode(String name) {
        for (int h = 0; h < hardpoints.size(); h++) {
            if (hardpoints.get(h).name().equals(name)) {
                return mesh.nodeCount() + h;
            }
        }
        Rider rider = fitted.riders.get(name);
        if (rider != null && rider.isNode()) {
            return rider.node();
        }
        throw new StructureException(
                rider == null
                        ? "no hardpoint is called '" + name + "'"
                        : "'" + name + "' rides on a body and cannot be held by itself",
                rider == null ? "name one that the design has" : "hold the body, or its mounts");
    }

    /** The point of a name: a hardpoint, a node, a body or a point of one. */
    Rider rider(String name) {
        Rider rider = fitted.riders.get(name);
        if (rider != null) {
            return rider;
        }
        int node = hardpointNode(name);
        return Rider.at(node, Arrays.copyOfRange(positions, 3 * node, 3 * node + 3));
    }

    /**
     * Translation (m) and rotation (rad) of a named point: hardpoint, node, body or point of one.
     *
     * @param u displacements, 6 per node
     * @return 6 numbers
     */
    public double[] movement(String name, double[] u) {
        return rider(name).movement(u);
    }

    /** Where a named point is, m, 3 numbers. */
    public double[] place(String name) {
        return rider(name).position();
    }

    /** Name of the hardpoint, node or body whose own node this is; empty for a node of the mesh. */
    public String nameAt(int node) {
        int h = node - mesh.nodeCount();
        if (h < 0) {
            return "";
        }
        return h < hardpoints.size() ? hardpoints.get(h).name() : fittingAt(node);
    }

    /** Name of what rides on a node of the fittings; empty for other nodes. */
    String fittingAt(int node) {
        return fitted.riders.entrySet().stream()
                .filter(e -> e.getValue().node() == node)
                .map(Map.Entry::getKey)
                .findFirst()
                .orElse("");
    }

    /**
     * What pushes an insert into its bed under displacements u (6 per node): loads, supports, tubes, bodies and masses
     * together.
     *
     * @return force (N) and moment (N·m) in the car's axes, 6 numbers
     */
    public double[] onInsert(String hardpoint, double[] u) {
        int node = hardpointNode(hardpoint);
        int owner = parts.indexOf(new Part(Part.Kind.HARDPOINT, hardpoint));
        double[] push = new double[6];
        for (Member member : members) {
            if (member.owner() == owner) {
                double[] forces = member.forces(u);
                for (int i = 0; i < forces.length; i++) {
                    if (member.nodes()[i / 6] == node) {
                        push[i % 6] += forces[i];
                    }
                }
            }
        }
        return push;
    }

    /** Mass bolted on at nodes. */
    List<NodeMass> nodeMasses() {
        return fitted.masses;
    }

    /** Mass per area of a region, kg/m². */
    public double arealMass(int region) {
        return masses.areal[region];
    }

    /** Where a region's centre of mass lies along the normal from the reference surface, m. */
    public double massOffset(int region) {
        return masses.offset[region];
    }

    /** Second moment of a region's mass per area about the reference surface, ∫ρz² dz, kg. */
    public double secondMassMoment(int region) {
        return masses.second[region];
    }

    /** Mass of joints, stiffeners and inserts. */
    public List<LumpedMass> lumpedMasses() {
        return masses.lumped;
    }

    /** The joints as they came out on this mesh. */
    public List<JointRun> jointRuns() {
        return runs;
    }

    List<Member> members() {
        return members;
    }

    /** Nodes of everything that adds stiffness: shells first, then members. */
    int[][] connectivity() {
        int elements = mesh.elementCount();
        int[][] all = new int[elements + members.size()][];
        for (int e = 0; e < elements; e++) {
            all[e] = Arrays.copyOfRange(mesh.elementNodes(), 4 * e, 4 * e + mesh.cornerCount(e));
        }
        for (int m = 0; m < members.size(); m++) {
            all[elements + m] = members.get(m).nodes();
        }
        return all;
    }

    /** Number of bodies of skin and wall that nothing but joints holds together: the sheets or mouldings to be made. */
    public int bodies() {
        int[][] shells = Arrays.copyOf(connectivity(), mesh.elementCount());
        FreeMotion bodies = new FreeMotion(mesh.nodes(), List.of(shells));
        return (int) IntStream.range(0, mesh.nodeCount())
                .filter(n -> bodies.root(n) == n)
                .count();
    }

    /** What every tube and every stretch of a stiffener carries under displacements u (6 per node), one an element. */
    public List<BarForce> barForces(double[] u) {
        List<BarForce> forces = new ArrayList<>();
        for (Member member : members) {
            switch (member) {
                case Bar bar -> forces.add(BarForce.of(parts.get(bar.owner()), bar, place(bar.nodes()), u));
                case PinnedBar bar ->
                    forces.add(BarForce.of(parts.get(bar.owner()), bar, place(bar.nodes()), bar.tension(u)));
                case ElasticTie _, MountMatrix _ -> {}
            }
        }
        return forces;
    }

    private double[] place(int[] nodes) {
        double[] middle = new double[3];
        for (int d = 0; d < 3; d++) {
            middle[d] = 0.5 * (positions[3 * nodes[0] + d] + positions[3 * nodes[1] + d]);
        }
        return middle;
    }

    /** Number of separate bars: connected runs of beams of one stiffener. */
    public int bars() {
        Map<Integer, List<int[]>> byOwner = new LinkedHashMap<>();
        for (Member member : members) {
            if (member instanceof Bar bar && parts.get(bar.owner()).kind() == Part.Kind.STIFFENER) {
                byOwner.computeIfAbsent(bar.owner(), k -> new ArrayList<>()).add(bar.nodes());
            }
        }
        int count = 0;
        for (List<int[]> beams : byOwner.values()) {
            FreeMotion runs = new FreeMotion(positions, beams);
            count += (int)
                    beams.stream().map(nodes -> runs.root(nodes[0])).distinct().count();
        }
        return count;
    }

    /** Groups of nodes that move together because something joins them. */
    Iterable<int[]> groups() {
        return List.of(connectivity());
    }

    /** The stiffness matrix, nothing fixed. */
    public SymmetricMatrix assemble() {
        return new Assembly(this).stiffness();
    }

    /** Stiffness of a region's laminate, 8 × 8 row-major, mirrored where the region is. Not to be modified. */
    public double[] laminate(int region) {
        return laminates[region];
    }

    double[] nominal(int region) {
        return nominals[region];
    }
}
