// SPDX-License-Identifier: Apache-2.0
package tubwright.engine.response;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Collectors;
import tubwright.engine.joint.BoltedChecks;
import tubwright.engine.joint.InsertChecks;
import tubwright.engine.joint.InsertLoad;
import tubwright.engine.joint.InsertSite;
import tubwright.engine.joint.Sheet;
import tubwright.engine.laminate.Laminate;
import tubwright.engine.laminate.Layer;
import tubwright.engine.laminate.LayerRole;
import tubwright.engine.laminate.Reference;
import tubwright.engine.mesh.Mesh;
import tubwright.engine.strength.Check;
import tubwright.engine.strength.StrengthBasis;
import tubwright.engine.strength.sandwich.Sandwich;
import tubwright.engine.structure.Case;
import tubwright.engine.structure.Hardpoint;
import tubwright.engine.structure.ShellKernel;
import tubwright.engine.structure.Solution;
import tubwright.engine.structure.Structure;

/**
 * Hardpoints against all that pushes them: loads, supports, what is bolted on; force and moment, brought to the skin.
 */
final class InsertReserves {
    private final Structure structure;
    private final Laminate[] laminates;
    private final StrengthBasis basis;
    private final List<Seat> seats = new ArrayList<>();

    /**
     * A hardpoint on the mesh.
     *
     * @param node its own
     * @param element nearest to it
     * @param axes of that element: e1, e2, normal
     * @param arm from the skin to the point, m
     * @param overlaps names of the hardpoints whose inserts it overlaps; empty where it stands clear
     */
    private record Seat(
            Hardpoint hardpoint, int node, int element, double[] axes, double[] arm, InsertSite site, String overlaps) {
        double[] normal() {
            return Arrays.copyOfRange(axes, 6, 9);
        }

        /** Whether the load comes in from outside. */
        boolean outside() {
            return dot(arm, normal()) > -1e-4;
        }
    }

    InsertReserves(Structure structure, Laminate[] laminates, StrengthBasis basis) {
        this.structure = structure;
        this.laminates = laminates;
        this.basis = basis;
        List<Hardpoint> hardpoints = structure.hardpoints();
        if (hardpoints.isEmpty()) {
            return;
        }
        ShellKernel kernel = new ShellKernel(structure);
        Map<String, List<double[]>> edges = edges();
        Mesh mesh = structure.mesh();
        for (Hardpoint each : hardpoints) {
            int element = nearest(each);
            double[] axes = kernel.strainPoints(element).axes(0).clone();
            double[] centre = PlyReserves.centre(mesh, element);
            double[] p = each.position();
            double height = 0;
            for (int d = 0; d < 3; d++) {
                height += (p[d] - centre[d]) * axes[6 + d];
            }
            double[] arm = {height * axes[6], height * axes[7], height * axes[8]};
            double[] foot = {p[0] - arm[0], p[1] - arm[1], p[2] - arm[2]};
            double edge = edges.getOrDefault(pieceOf(element), List.of()).stream()
                    .mapToDouble(s -> distance(foot, s))
                    .min()
                    .orElse(Double.POSITIVE_INFINITY);
            List<Hardpoint> others = hardpoints.stream()
                    .filter(o -> o != each && o.part().equals(each.part()))
                    .toList();
            double spacing = others.stream()
                    .mapToDouble(o -> distance(o.position(), p))
                    .min()
                    .orElse(Double.POSITIVE_INFINITY);
            String overlaps = others.stream()
                    .filter(o -> distance(o.position(), p) < o.footprintRadius() + each.footprintRadius())
                    .map(Hardpoint::name)
                    .collect(Collectors.joining("\" and of \""));
            seats.add(new Seat(
                    each,
                    structure.hardpointNode(each.name()),
                    element,
                    axes,
                    arm,
                    new InsertSite(each.footprintRadius(), edge, spacing),
                    overlaps));
        }
    }

    /** Leaves out some hardpoints. */
    void leaveOut(List<String> names) {
        seats.removeIf(s -> names.contains(s.hardpoint().name()));
    }

    void add(Solution solution, List<Reserve> rows, Set<Check.NotChecked> notChecked) {
        if (!(solution.solved() instanceof Case.Loads loads)) {
            return;
        }
        for (Seat seat : seats) {
            double[] push = structure.onInsert(seat.hardpoint().name(), solution.displacements());
            double[] force = Arrays.copyOf(push, 3);
            double[] moment = Arrays.copyOfRange(push, 3, 6);
            if (Math.sqrt(dot(force, force)) < 1e-3 && Math.sqrt(dot(moment, moment)) < 1e-6) {
                continue;
            }
            if (!seat.overlaps().isEmpty()) {
                // No rule says what is left of two inserts in the same core.
                notChecked.add(new Check.NotChecked(
                        "insert of \"" + seat.hardpoint().name() + "\", which overlaps that of \"" + seat.overlaps()
                                + "\"",
                        List.of("inserts that stand clear of each other, or a test of them together")));
                continue;
            }
            for (Check check : checks(seat, force, moment)) {
                switch (check) {
                    case Check.NotChecked not -> notChecked.add(not);
                    case Check.Reserve made -> {
                        if (made.reserveFactor() < Double.POSITIVE_INFINITY) {
                            rows.add(new Reserve(
                                    loads.name(),
                                    made.mode(),
                                    "",
                                    false,
                                    seat.hardpoint().name(),
                                    "",
                                    seat.hardpoint().position(),
                                    made.reserveFactor(),
                                    basis.knockDown().name(),
                                    false,
                                    0,
                                    made.basis()));
                        }
                    }
                }
            }
        }
    }

    private List<Check> checks(Seat seat, double[] force, double[] moment) {
        double[] n = seat.normal();
        double side = seat.outside() ? 1 : -1;
        double out = dot(force, n);
        double[] inPlane = new double[3];
        double[] bending = cross(seat.arm(), force);
        for (int d = 0; d < 3; d++) {
            inPlane[d] = force[d] - out * n[d];
            bending[d] += moment[d];
        }
        double torque = dot(bending, n);
        for (int d = 0; d < 3; d++) {
            bending[d] -= torque * n[d];
        }
        InsertLoad load = new InsertLoad(
                side * out, Math.sqrt(dot(inPlane, inPlane)), Math.abs(torque), Math.sqrt(dot(bending, bending)));
        double angle = Math.atan2(
                dot(inPlane, Arrays.copyOfRange(seat.axes(), 3, 6)), dot(inPlane, Arrays.copyOf(seat.axes(), 3)));
        Laminate laminate = laminates[structure.mesh().elementRegions()[seat.element()]];
        Optional<Sandwich> sandwich = Sandwich.of(laminate);
        boolean solid = laminate.layers().stream().noneMatch(l -> l.role() == LayerRole.CORE);
        if (solid) {
            return BoltedChecks.of(
                    seat.hardpoint().insert(), seat.site(), Sheet.of(laminate, angle), load, basis.knockDown());
        }
        if (sandwich.isEmpty()) {
            return List.of(new Check.NotChecked(
                    "hardpoints in laminates of several cores", List.of("a test of the hardpoint")));
        }
        return InsertChecks.of(
                seat.hardpoint().insert(),
                seat.site(),
                Sheet.of(face(laminate, seat.outside()), angle),
                Sheet.of(face(laminate, !seat.outside()), angle),
                sandwich.get().core(),
                sandwich.get().coreThickness(),
                load,
                basis.knockDown());
    }

    private static Laminate face(Laminate laminate, boolean outer) {
        List<Layer> before = new ArrayList<>();
        List<Layer> behind = new ArrayList<>();
        boolean past = false;
        for (Layer layer : laminate.layers()) {
            if (layer.role() == LayerRole.CORE) {
                past = true;
            } else {
                (past ? behind : before).add(layer);
            }
        }
        return new Laminate(outer ? before : behind, Reference.MIDDLE);
    }

    /** Edges of the pieces' bodies, and where a core begins: both end points, by piece. */
    private Map<String, List<double[]>> edges() {
        Mesh mesh = structure.mesh();
        boolean[] cored = new boolean[laminates.length];
        for (int r = 0; r < cored.length; r++) {
            cored[r] = laminates[r].layers().stream().anyMatch(l -> l.role() == LayerRole.CORE);
        }
        Map<Long, Integer> open = new HashMap<>();
        Map<Long, Integer> coreEnds = new HashMap<>();
        for (int e = 0; e < mesh.elementCount(); e++) {
            int corners = mesh.cornerCount(e);
            for (int c = 0; c < corners; c++) {
                int a = mesh.elementNodes()[4 * e + c];
                int b = mesh.elementNodes()[4 * e + (c + 1) % corners];
                long key = (long) Math.min(a, b) << 32 | Math.max(a, b);
                Integer other = open.remove(key);
                if (other == null) {
                    open.put(key, e);
                } else if (cored[mesh.elementRegions()[e]] != cored[mesh.elementRegions()[other]]) {
                    coreEnds.put(key, e);
                }
            }
        }
        Map<String, List<double[]>> edges = new HashMap<>();
        open.forEach((key, e) -> keep(edges, key, e));
        coreEnds.forEach((key, e) -> keep(edges, key, e));
        return edges;
    }

    private void keep(Map<String, List<double[]>> edges, long key, int element) {
        double[] x = structure.mesh().nodes();
        int a = 3 * (int) (key >> 32);
        int b = 3 * (int) key;
        edges.computeIfAbsent(pieceOf(element), k -> new ArrayList<>())
                .add(new double[] {x[a], x[a + 1], x[a + 2], x[b], x[b + 1], x[b + 2]});
    }

    private String pieceOf(int element) {
        return structure.mesh().region(element).piece();
    }

    private int nearest(Hardpoint hardpoint) {
        Mesh mesh = structure.mesh();
        int nearest = 0;
        double best = Double.POSITIVE_INFINITY;
        for (int e = 0; e < mesh.elementCount(); e++) {
            if (mesh.region(e).part().equals(hardpoint.part())) {
                double d = distance(PlyReserves.centre(mesh, e), hardpoint.position());
                if (d < best) {
                    best = d;
                    nearest = e;
                }
            }
        }
        return nearest;
    }

    /** Distance of a point from a point (3 numbers) or a line from point to point (6 numbers), m. */
    private static double distance(double[] p, double[] segment) {
        double t = 0;
        if (segment.length == 6) {
            double along = 0;
            double length = 0;
            for (int d = 0; d < 3; d++) {
                double edge = segment[3 + d] - segment[d];
                along += (p[d] - segment[d]) * edge;
                length += edge * edge;
            }
            t = length > 0 ? Math.clamp(along / length, 0, 1) : 0;
        }
        double sum = 0;
        for (int d = 0; d < 3; d++) {
            double q = segment.length == 6 ? segment[d] + t * (segment[3 + d] - segment[d]) : segment[d];
            sum += (p[d] - q) * (p[d] - q);
        }
        return Math.sqrt(sum);
    }

    private static double[] cross(double[] a, double[] b) {
        return new double[] {a[1] * b[2] - a[2] * b[1], a[2] * b[0] - a[0] * b[2], a[0] * b[1] - a[1] * b[0]};
    }

    private static double dot(double[] a, double[] b) {
        return a[0] * b[0] + a[1] * b[1] + a[2] * b[2];
    }
}
