// SPDX-License-Identifier: Apache-2.0
package tubwright.engine.response;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.Set;
import tubwright.engine.joint.BondChecks;
import tubwright.engine.joint.FastenerChecks;
import tubwright.engine.joint.JointDetail;
import tubwright.engine.joint.LineLoad;
import tubwright.engine.joint.Sheet;
import tubwright.engine.laminate.Laminate;
import tubwright.engine.laminate.LayerRole;
import tubwright.engine.material.Metal;
import tubwright.engine.mesh.Mesh;
import tubwright.engine.mesh.MeshLine;
import tubwright.engine.strength.Check;
import tubwright.engine.strength.KnockDown;
import tubwright.engine.strength.StrengthBasis;
import tubwright.engine.structure.JointPoint;
import tubwright.engine.structure.JointRun;
import tubwright.engine.structure.ShellKernel;
import tubwright.engine.structure.Structure;

/**
 * Reserves of bond lines and fastener rows at every point of every joint, by the forces its ties carry. What is joined is
 * the laminate of the element on either side, core run out.
 */
final class JointReserves {
    private final Structure structure;
    private final Mesh mesh;
    private final Laminate[] laminates;
    private final StrengthBasis basis;
    private final ShellKernel kernel;
    private final Map<Long, Integer> elementOfEdge = new HashMap<>();
    private final List<Prepared> prepared = new ArrayList<>();

    /** A point with what it needs for every case; its line's direction in the laminate axes of the elements it joins. */
    private record Prepared(
            JointRun run,
            JointPoint point,
            boolean tee,
            int element,
            double apart,
            double off,
            double[] ofEdge,
            double[] ofOnto,
            Sheet one,
            Sheet two,
            Optional<FastenerChecks> fasteners) {}

    private record SheetKey(int region, long degrees) {}

    private record PairKey(String line, SheetKey one, SheetKey two) {}

    private final Map<SheetKey, Sheet> sheets = new HashMap<>();
    private final Map<PairKey, Optional<FastenerChecks>> fasteners = new HashMap<>();

    JointReserves(Structure structure, Laminate[] laminates, StrengthBasis basis, Set<Check.NotChecked> notChecked) {
        this.structure = structure;
        mesh = structure.mesh();
        this.laminates = laminates;
        this.basis = basis;
        kernel = new ShellKernel(structure);
        for (JointRun run : structure.jointRuns()) {
            JointDetail detail = run.joint().detail();
            if (detail.equals(JointDetail.UNKNOWN)) {
                notChecked.add(new Check.NotChecked(
                        "joint \"" + run.joint().line() + "\"", List.of("how it is made, under \"joints\"")));
            } else if (run.points().isEmpty()) {
                notChecked.add(new Check.NotChecked(
                        "joint \"" + run.joint().line() + "\"", List.of("something to hold on to along its line")));
            } else {
                edges(run);
            }
        }
        for (JointRun run : structure.jointRuns()) {
            if (!run.joint().detail().equals(JointDetail.UNKNOWN)) {
                boolean tee =
                        line(run).map(l -> l.kind() == MeshLine.Kind.WALL_EDGE).orElse(false);
                run.points().forEach(p -> prepare(run, p, tee).ifPresent(prepared::add));
            }
        }
    }

    /** Finds the elements at the edges of a run, in one pass for all of them. */
    private void edges(JointRun run) {
        if (elementOfEdge.isEmpty()) {
            for (JointRun each : structure.jointRuns()) {
                each.points().forEach(p -> elementOfEdge.put(key(p.edge()[0], p.edge()[1]), -1));
            }
            for (int e = 0; e < mesh.elementCount(); e++) {
                int corners = mesh.cornerCount(e);
                for (int c = 0; c < corners; c++) {
                    long key = key(mesh.elementNodes()[4 * e + c], mesh.elementNodes()[4 * e + (c + 1) % corners]);
                    int element = e;
                    elementOfEdge.computeIfPresent(key, (_, old) -> old < 0 ? element : old);
                }
            }
        }
    }

    private static long key(int a, int b) {
        return (long) Math.min(a, b) << 32 | Math.max(a, b);
    }

    private Optional<Prepared> prepare(JointRun run, JointPoint point, boolean tee) {
        int from = elementOfEdge.getOrDefault(key(point.edge()[0], point.edge()[1]), -1);
        if (from < 0) {
            return Optional.empty();
        }
        double[] along = point.axes()[0];
        double[] inward = new double[3];
        double[] centre = PlyReserves.centre(mesh, from);
        double along0 = 0;
        for (int d = 0; d < 3; d++) {
            inward[d] = centre[d] - point.place()[d];
            along0 += inward[d] * along[d];
        }
        for (int d = 0; d < 3; d++) {
            inward[d] -= along0 * along[d];
        }
        SheetKey one = key(from, inward);
        SheetKey two = key(point.onto(), point.axes()[1]);
        if (!solid(one) || !solid(two)) {
            return Optional.empty();
        }
        Sheet a = sheet(one);
        Sheet b = sheet(two);
        Optional<FastenerChecks> rows = fasteners.computeIfAbsent(
                new PairKey(run.joint().line(), one, two),
                k -> run.joint().detail().fasteners().map(f -> new FastenerChecks(f, a, b, basis.knockDown())));
        return Optional.of(new Prepared(
                run,
                point,
                tee,
                from,
                Math.signum(dot(point.axes()[1], inward)),
                Math.signum(dot(point.axes()[2], inward)),
                inLaminateAxes(from, along),
                inLaminateAxes(point.onto(), along),
                a,
                b,
                rows));
    }

    private Optional<MeshLine> line(JointRun run) {
        return mesh.lines().stream()
                .filter(l -> l.name().equals(run.joint().line()))
                .findFirst();
    }

    private boolean solid(SheetKey key) {
        return laminates[key.region()].layers().stream()
                .anyMatch(l -> l.role() == LayerRole.PLY || l.role() == LayerRole.SHEET);
    }

    private Sheet sheet(SheetKey key) {
        return sheets.computeIfAbsent(key, k -> Sheet.of(laminates[k.region()], Math.toRadians(k.degrees())));
    }

    /** Region of an element, and the angle of a direction from its laminate's axis in whole degrees, half a turn the same. */
    private SheetKey key(int element, double[] direction) {
        double[] own = inLaminateAxes(element, direction);
        long degrees = Math.floorMod(Math.round(Math.toDegrees(Math.atan2(own[1], own[0])) / 5) * 5, 180L);
        return new SheetKey(mesh.elementRegions()[element], degrees);
    }

    private double[] inLaminateAxes(int element, double[] direction) {
        double[] axes = kernel.strainPoints(element).axes(0);
        double[] own = new double[2];
        for (int d = 0; d < 3; d++) {
            own[0] += axes[d] * direction[d];
            own[1] += axes[3 + d] * direction[d];
        }
        return own;
    }

    private record Key(String line, String mode) {}

    private record Worst(Prepared at, Check.Reserve check) {}

    /** Adds the worst of each check over each joint. */
    void add(
            PlySweep sweep,
            int c,
            String load,
            double[] u,
            SheetFolds folds,
            List<Reserve> rows,
            Set<Check.NotChecked> notChecked) {
        Map<Key, Worst> worst = new LinkedHashMap<>();
        List<List<Check>> made = prepared.parallelStream()
                .map(p -> checks(p, sweep, c, u, folds))
                .toList();
        for (int k = 0; k < made.size(); k++) {
            Prepared p = prepared.get(k);
            for (Check check : made.get(k)) {
                switch (check) {
                    case Check.NotChecked not -> notChecked.add(not);
                    case Check.Reserve found -> {
                        if (found.reserveFactor() < Double.POSITIVE_INFINITY) {
                            worst.merge(
                                    new Key(p.run().joint().line(), found.mode()),
                                    new Worst(p, found),
                                    (a, b) -> b.check().reserveFactor()
                                                    < a.check().reserveFactor()
                                            ? b
                                            : a);
                        }
                    }
                }
            }
        }
        worst.forEach((key, at) -> {
            boolean core = at.at().one().coreRunsOut() || at.at().two().coreRunsOut();
            rows.add(new Reserve(
                    load,
                    key.mode(),
                    "",
                    false,
                    at.at().tee()
                            ? key.line() + " on "
                                    + mesh.region(at.at().point().onto()).piece()
                            : key.line(),
                    "",
                    at.at().point().place(),
                    at.check().reserveFactor(),
                    (at.at().fasteners().isPresent() ? basis.knockDown() : KnockDown.NONE).name(),
                    false,
                    0,
                    at.check().basis() + (core ? "; core run out before the joint" : "")));
        });
    }

    /** Leaves out the points that ride on some elements, or hold an edge of one. */
    void leaveOut(int[] torn) {
        prepared.removeIf(p -> Arrays.binarySearch(torn, p.element()) >= 0
                || Arrays.binarySearch(torn, p.point().onto()) >= 0);
    }

    /** Points whose strength can be asked, in the order of {@link #factor}. */
    List<JointPoint> points() {
        return prepared.stream().map(Prepared::point).toList();
    }

    /** The joint a point belongs to. */
    JointRun run(int k) {
        return prepared.get(k).run();
    }

    /**
     * Lowest factor of the bond line at a point, of its elastic checks.
     *
     * @param f forces per length as {@link JointPoint#forces}
     * @return empty where nothing gives way
     */
    OptionalDouble factor(int k, double[] f) {
        Prepared p = prepared.get(k);
        double least = Double.POSITIVE_INFINITY;
        for (Check check : BondChecks.of(
                p.run().joint().detail().bond().orElseThrow(), p.one(), p.two(), load(p, f), KnockDown.NONE)) {
            if (check instanceof Check.Reserve found) {
                least = Math.min(least, found.reserveFactor());
            }
        }
        return least == Double.POSITIVE_INFINITY ? OptionalDouble.empty() : OptionalDouble.of(least);
    }

    private static LineLoad load(Prepared p, double[] f) {
        double across = p.tee() ? Math.abs(f[1]) : f[1] * p.apart();
        double normal = p.tee() ? f[2] * p.off() : Math.abs(f[2]);
        return new LineLoad(across, f[0], normal, f[3]);
    }

    private List<Check> checks(Prepared p, PlySweep sweep, int c, double[] u, SheetFolds folds) {
        double[] f = p.point().forces(u);
        double across = p.tee() ? Math.abs(f[1]) : f[1] * p.apart();
        double normal = p.tee() ? f[2] * p.off() : Math.abs(f[2]);
        LineLoad load = load(p, f);
        List<Check> checks = new ArrayList<>();
        JointDetail detail = p.run().joint().detail();
        detail.bond().ifPresent(b -> checks.addAll(BondChecks.of(b, p.one(), p.two(), load, KnockDown.NONE)));
        p.fasteners().ifPresent(rows -> {
            JointDetail.Fasteners row = detail.fasteners().orElseThrow();
            // The flange of a wall is pried off: the wall pulls beside the row, the flange's toe is the heel.
            double pried = p.tee() ? Math.abs(f[3]) + Math.max(0, normal) * row.edge() : f[3];
            LineLoad flat = new LineLoad(across, f[0], normal, pried);
            // Of a wall only its own folds pull on the row at its edge; the skin runs on past it.
            checks.addAll(folds.under(
                    rows,
                    flat,
                    p.tee()
                            ? new int[] {p.element()}
                            : new int[] {p.element(), p.point().onto()}));
            interRivet(p.ofEdge(), row, p.element(), p.one(), sweep, c).ifPresent(checks::add);
            interRivet(p.ofOnto(), row, p.point().onto(), p.two(), sweep, c).ifPresent(checks::add);
        });
        return checks;
    }

    private Optional<Check> interRivet(
            double[] along, JointDetail.Fasteners row, int element, Sheet sheet, PlySweep sweep, int c) {
        if (!(sheet.solid().layers().getFirst().material() instanceof Metal metal)) {
            return Optional.empty();
        }
        double[] strains = sweep.mean(c, element);
        double[] stiffness = structure.laminate(mesh.elementRegions()[element]);
        double[] n = new double[3];
        for (int i = 0; i < 3; i++) {
            for (int j = 0; j < 8; j++) {
                n[i] += stiffness[8 * i + j] * strains[j];
            }
        }
        double x = along[0];
        double y = along[1];
        double compression = -(n[0] * x * x + n[1] * y * y + 2 * n[2] * x * y) / sheet.thickness();
        return Optional.of(FastenerChecks.interRivet(row, metal, sheet.thickness(), compression));
    }

    private static double dot(double[] a, double[] b) {
        return a[0] * b[0] + a[1] * b[1] + a[2] * b[2];
    }
}
