// SPDX-License-Identifier: Apache-2.0
package tubwright.engine.verification.random;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Random;
import java.util.Set;
import tubwright.engine.laminate.Laminate;
import tubwright.engine.laminate.Layer;
import tubwright.engine.laminate.LayerRole;
import tubwright.engine.laminate.Reference;
import tubwright.engine.mesh.Mesh;
import tubwright.engine.mesh.Region;
import tubwright.engine.response.Study;
import tubwright.engine.shape.Opening;
import tubwright.engine.shape.TubShape;
import tubwright.engine.structure.Joint;
import tubwright.engine.structure.Solution;
import tubwright.engine.structure.StaticSolver;
import tubwright.engine.structure.StepTimes;
import tubwright.engine.structure.Structure;
import tubwright.engine.structure.Tub;
import tubwright.numerics.solver.Solvers;

/**
 * What the answer to a tub must obey whatever its shape. Where a law is one of matrices (more stiffness in one place never
 * means more give) it is asked of one mesh and holds to round-off; where meshes differ, to the error of the mesh.
 */
final class Laws {
    /** Two factorisations of nearly singular-looking matrices: relative error of the compliance. */
    private static final double ROUND_OFF = 1e-7;

    /**
     * Strain operators and shear factors depend a little on the laminate, so that a structure built anew with another ply
     * is stiffer only this far.
     */
    private static final double SHAPING = 2e-3;

    private final Tub tub;
    private final Mesh mesh;
    private final Structure structure;
    private final String where;
    private final Random random;
    private final double compliance;

    Laws(Tub tub, String where, long seed) {
        this.tub = tub;
        this.where = where + ", variant " + tub.variant() + ": ";
        random = new Random(seed);
        mesh = Study.mesh(tub, tub.meshSize());
        structure = Structure.of(tub, mesh);
        Solution solution = solve(structure);
        compliance = solution.work();
        assertTrue(compliance > 0 && Double.isFinite(compliance), this.where + "work " + compliance);
        assertTrue(solution.residual() < 1e-9, this.where + "residual " + solution.residual());
    }

    /** Work of the torsion case, J. */
    double compliance() {
        return compliance;
    }

    /** Whether both tubs' elements join the same nodes, seen from one side or mirrored. */
    boolean hasMeshLike(Laws other) {
        return mesh.nodeCount() == other.mesh.nodeCount() && edges(mesh).equals(edges(other.mesh));
    }

    /** Sides of elements by twice their middle points, to a hundredth of a millimetre, y without its sign. */
    private static Set<List<Long>> edges(Mesh mesh) {
        Set<List<Long>> edges = new HashSet<>();
        for (int e = 0; e < mesh.elementCount(); e++) {
            int corners = mesh.cornerCount(e);
            for (int k = 0; k < corners; k++) {
                int a = mesh.elementNodes()[4 * e + k];
                int b = mesh.elementNodes()[4 * e + (k + 1) % corners];
                List<Long> middle = new ArrayList<>();
                for (int d = 0; d < 3; d++) {
                    double sum = mesh.nodes()[3 * a + d] + mesh.nodes()[3 * b + d];
                    middle.add(Math.round((d == 1 ? Math.abs(sum) : sum) * 1e5 + .317));
                }
                edges.add(middle);
            }
        }
        return edges;
    }

    private Solution solve(Structure structure) {
        return StaticSolver.solve(structure, tub.cases().subList(0, 1), Solvers.best(), new StepTimes())
                .getFirst();
    }

    private void softerOrSame(double work, double share, String what) {
        assertTrue(work >= compliance * (1 - share), () -> where + what + ", compliance times " + work / compliance);
    }

    private void stifferOrSame(double work, double share, String what) {
        assertTrue(work <= compliance * (1 + share), () -> where + what + ", compliance times " + work / compliance);
    }

    /** One ply more on the free side of a zone, where it moves nothing that is there. */
    void anotherPlyNeverMakesItSofter() {
        List<String> zones =
                mesh.regions().stream().map(Region::zone).distinct().sorted().toList();
        String zone = zones.get(random.nextInt(zones.size()));
        double angle = random.nextDouble(-Math.PI / 2, Math.PI / 2);
        double[][] more = new double[mesh.regions().size()][];
        boolean lawful = true;
        for (int r = 0; r < more.length; r++) {
            Region region = mesh.regions().get(r);
            more[r] = structure.laminate(r);
            if (region.zone().equals(zone)) {
                more[r] = thicker(tub.laminate(region), angle).stiffness().matrix();
                lawful &= notLess(more[r], structure.laminate(r));
            }
        }
        double work = solve(structure.withLaminates(more)).work();
        stifferOrSame(work, lawful ? ROUND_OFF : SHAPING, "a ply more on " + zone + " makes it softer");
    }

    private static Laminate thicker(Laminate laminate, double angle) {
        Layer outer = laminate.layersWith(LayerRole.values()).stream()
                .filter(l -> l.material() instanceof tubwright.engine.material.Ply)
                .findFirst()
                .orElse(laminate.layers().getFirst());
        Layer ply = new Layer(outer.material(), outer.thickness(), angle);
        List<Layer> layers = new ArrayList<>(laminate.layers());
        if (laminate.reference() != Reference.INNER) {
            layers.addLast(ply);
        }
        if (laminate.reference() != Reference.OUTER) {
            layers.addFirst(ply);
        }
        return new Laminate(layers, laminate.reference());
    }

    /** True if more − less has no negative eigenvalue: elimination meets no negative pivot. */
    private static boolean notLess(double[] more, double[] less) {
        double[][] d = new double[8][8];
        for (int i = 0; i < 8; i++) {
            for (int j = 0; j < 8; j++) {
                double scale = Math.sqrt(more[9 * i] * more[9 * j]);
                d[i][j] = (more[8 * i + j] - less[8 * i + j]) / scale + (i == j ? 1e-12 : 0);
            }
        }
        for (int p = 0; p < 8; p++) {
            if (d[p][p] < 0) {
                return false;
            }
            for (int i = p + 1; i < 8; i++) {
                double f = d[i][p] / d[p][p];
                for (int j = p; j < 8; j++) {
                    d[i][j] -= f * d[p][j];
                }
            }
        }
        return true;
    }

    /** All joints four times as stiff. */
    void stifferJointsNeverMakeItSofter() {
        if (tub.joints().isEmpty()) {
            return;
        }
        List<Joint> joints = tub.joints().stream()
                .map(j -> new Joint(
                        j.line(),
                        4 * j.alongStiffness(),
                        4 * j.acrossStiffness(),
                        4 * j.normalStiffness(),
                        4 * j.rotationStiffness(),
                        j.massPerLength(),
                        j.fastenerPitch(),
                        j.fastenerRows(),
                        j.description()))
                .toList();
        Tub stiffer = with(tub.shape(), tub.laminates(), joints);
        stifferOrSame(solve(Structure.of(stiffer, mesh)).work(), ROUND_OFF, "stiffer joints make it softer");
    }

    /** A hole torn into the same mesh: elements inside a ball keep a thousandth of their stiffness. */
    void aHoleInTheSameMeshNeverMakesItStiffer() {
        int seedElement = random.nextInt(mesh.elementCount());
        double radius = random.nextDouble(.05, .25);
        double[] middle = centre(seedElement);
        int[] regionOf = mesh.elementRegions().clone();
        List<Region> regions = new ArrayList<>(mesh.regions());
        Map<Integer, Integer> torn = new HashMap<>();
        Map<String, Laminate> laminates = new HashMap<>(tub.laminates());
        for (int e = 0; e < regionOf.length; e++) {
            double[] c = centre(e);
            if (Math.hypot(Math.hypot(c[0] - middle[0], c[1] - middle[1]), c[2] - middle[2]) > radius) {
                continue;
            }
            regionOf[e] = torn.computeIfAbsent(regionOf[e], r -> {
                Region old = mesh.regions().get(r);
                String zone = old.zone() + ", torn";
                laminates.put(zone, tub.laminates().get(old.zone()));
                regions.add(new Region(old.part(), old.surface(), zone, old.patches(), old.piece(), old.mirrored()));
                return regions.size() - 1;
            });
        }
        Mesh marked = new Mesh(
                mesh.nodes(),
                mesh.elementNodes(),
                mesh.cornerNormals(),
                mesh.referenceDirections(),
                regionOf,
                regions,
                mesh.lines());
        Structure whole = Structure.of(with(tub.shape(), laminates, tub.joints()), marked);
        assertEquals(1, solve(whole).work() / compliance, ROUND_OFF, where + "marking elements changes the answer");
        double[][] soft = new double[regions.size()][];
        for (int r = 0; r < soft.length; r++) {
            double factor = torn.containsValue(r) ? 1e-3 : 1;
            soft[r] = Arrays.stream(whole.laminate(r)).map(v -> factor * v).toArray();
        }
        softerOrSame(solve(whole.withLaminates(soft)).work(), ROUND_OFF, "a hole makes it stiffer");
    }

    private double[] centre(int e) {
        double[] c = new double[3];
        int corners = mesh.cornerCount(e);
        for (int k = 0; k < corners; k++) {
            int n = mesh.elementNodes()[4 * e + k];
            for (int d = 0; d < 3; d++) {
                c[d] += mesh.nodes()[3 * n + d] / corners;
            }
        }
        return c;
    }

    /**
     * An opening of the design filled again, meshed anew. What its edge did to the mesh shows too, so on a coarse mesh the
     * law may seem broken; on a finer one it then is broken less, or within a hundredth.
     */
    void fillingAnOpeningNeverMakesItSofter() {
        List<Opening> openings = tub.shape().openings();
        if (openings.isEmpty() || !tub.patchPlies().isEmpty()) {
            return; // a patch round an opening keeps it
        }
        Opening filled = openings.get(random.nextInt(openings.size()));
        double coarse = filledOverCut(filled, 1);
        if (coarse > 1 + 1e-3) {
            double fine = filledOverCut(filled, .5);
            assertTrue(
                    fine < 1.01 && fine - 1 < .8 * (coarse - 1),
                    where + "filling " + filled.name() + " makes it softer, compliance times " + coarse + " and " + fine
                            + " on half the mesh size");
        }
    }

    private double filledOverCut(Opening filled, double size) {
        TubShape s = tub.shape();
        List<Opening> rest = s.openings().stream().filter(o -> o != filled).toList();
        TubShape shape = TubShape.of(s.frames(), s.strips(), s.loft(), rest, s.walls());
        Tub closed = with(shape, tub.laminates(), tub.joints());
        double cut = size == 1
                ? compliance
                : solve(Structure.of(tub, Study.mesh(tub, size * tub.meshSize())))
                        .work();
        return solve(Structure.of(closed, Study.mesh(closed, size * tub.meshSize())))
                        .work()
                / cut;
    }

    private Tub with(TubShape shape, Map<String, Laminate> laminates, List<Joint> joints) {
        return new Tub(
                tub.name(),
                tub.variant(),
                tub.construction(),
                shape,
                tub.layout(),
                tub.meshSize(),
                laminates,
                tub.patchPlies(),
                joints,
                tub.stiffeners(),
                tub.hardpoints(),
                tub.cases());
    }
}
