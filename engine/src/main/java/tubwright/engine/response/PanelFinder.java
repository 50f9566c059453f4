// SPDX-License-Identifier: Apache-2.0
package tubwright.engine.response;

import java.util.ArrayDeque;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Set;
import java.util.TreeSet;
import tubwright.engine.joint.ShearPanel;
import tubwright.engine.laminate.Laminate;
import tubwright.engine.laminate.LayerRole;
import tubwright.engine.material.Metal;
import tubwright.engine.mesh.Mesh;
import tubwright.engine.mesh.MeshLine;
import tubwright.engine.structure.JointPoint;
import tubwright.engine.structure.JointRun;
import tubwright.engine.structure.ShellKernel;
import tubwright.engine.structure.Stiffener;
import tubwright.engine.structure.Structure;
import tubwright.engine.structure.Tub;

/**
 * Finds the panels of single metal sheets from the design: what hangs together within one piece between the walls whose edges
 * touch it, the seams, and the lines that carry bars.
 */
final class PanelFinder {
    /** Width of neighbouring sheet that works as a flange, in thicknesses (common practice, no source). */
    private static final double EFFECTIVE_WIDTH = 15;

    private final Structure structure;
    private final Mesh mesh;
    private final List<SheetPanels.Panel> panels = new ArrayList<>();

    private PanelFinder(Tub tub, Structure structure) {
        this.structure = structure;
        mesh = structure.mesh();
        Laminate[] laminates = mesh.regions().stream().map(tub::laminate).toArray(Laminate[]::new);
        boolean[] sheet = new boolean[laminates.length];
        boolean any = false;
        for (int r = 0; r < sheet.length; r++) {
            sheet[r] = laminates[r].layers().size() == 1
                    && laminates[r].layers().getFirst().role() == LayerRole.SHEET
                    && laminates[r].layers().getFirst().material() instanceof Metal;
            any |= sheet[r];
        }
        if (any) {
            find(tub, laminates, sheet);
        }
    }

    static List<SheetPanels.Panel> find(Tub tub, Structure structure) {
        return new PanelFinder(tub, structure).panels;
    }

    /** A plane that parts the panels of some parts. */
    private record Cut(Set<String> parts, double[] point, double[] normal) {}

    private void find(Tub tub, Laminate[] laminates, boolean[] sheet) {
        List<Cut> cuts = cuts();
        Map<Long, int[]> edges = new HashMap<>();
        Set<Long> bars = new HashSet<>();
        for (Stiffener stiffener : tub.stiffeners()) {
            line(stiffener.line()).forEach(chain -> {
                for (int i = 0; i + 1 < chain.length; i++) {
                    bars.add(key(chain[i], chain[i + 1]));
                }
            });
        }
        long[] side = new long[mesh.elementCount()];
        for (int e = 0; e < side.length; e++) {
            double[] x = PlyReserves.centre(mesh, e);
            String part = mesh.region(e).part();
            for (int c = 0; c < cuts.size() && c < Long.SIZE; c++) {
                Cut cut = cuts.get(c);
                double d = 0;
                for (int k = 0; k < 3; k++) {
                    d += (x[k] - cut.point()[k]) * cut.normal()[k];
                }
                side[e] |= cut.parts().contains(part) && d > 0 ? 1L << c : 0;
            }
            for (int c = 0; c < mesh.cornerCount(e); c++) {
                int[] both = edges.computeIfAbsent(edge(e, c), k -> new int[] {-1, -1});
                both[both[0] < 0 ? 0 : 1] = e;
            }
        }
        boolean[] seen = new boolean[side.length];
        for (int e = 0; e < seen.length; e++) {
            int region = mesh.elementRegions()[e];
            if (seen[e] || !sheet[region]) {
                continue;
            }
            List<Integer> found = new ArrayList<>();
            ArrayDeque<Integer> next = new ArrayDeque<>(List.of(e));
            seen[e] = true;
            while (!next.isEmpty()) {
                int at = next.poll();
                found.add(at);
                for (int c = 0; c < mesh.cornerCount(at); c++) {
                    long key = edge(at, c);
                    int[] both = edges.get(key);
                    int other = both[0] == at ? both[1] : both[0];
                    if (other >= 0
                            && !seen[other]
                            && !bars.contains(key)
                            && side[other] == side[at]
                            && laminates[mesh.elementRegions()[other]].equals(laminates[region])) {
                        seen[other] = true;
                        next.add(other);
                    }
                }
            }
            panel(
                    tub,
                    laminates[region],
                    found.stream().mapToInt(Integer::intValue).toArray());
        }
    }

    private long edge(int e, int c) {
        int corners = mesh.cornerCount(e);
        return key(mesh.elementNodes()[4 * e + c], mesh.elementNodes()[4 * e + (c + 1) % corners]);
    }

    private static long key(int a, int b) {
        return (long) Math.min(a, b) << 32 | Math.max(a, b);
    }

    private List<int[]> line(String name) {
        return mesh.lines().stream()
                .filter(l -> l.name().equals(name))
                .findFirst()
                .map(MeshLine::chains)
                .orElse(List.of());
    }

    /** The planes of walls, each with the parts its edge holds on to. */
    private List<Cut> cuts() {
        List<Cut> cuts = new ArrayList<>();
        for (JointRun run : structure.jointRuns()) {
            boolean ofWall = mesh.lines().stream()
                    .anyMatch(l -> l.name().equals(run.joint().line()) && l.kind() == MeshLine.Kind.WALL_EDGE);
            if (!ofWall || run.points().size() < 3) {
                continue;
            }
            Set<String> parts = new TreeSet<>();
            run.points().forEach(p -> parts.add(mesh.region(p.onto()).part()));
            cuts.add(new Cut(parts, run.points().getFirst().place(), normal(run.points())));
        }
        return cuts;
    }

    /** Normal of the plane through points, from the widest triangle with the first of them. */
    private static double[] normal(List<JointPoint> points) {
        double[] a = points.getFirst().place();
        double[] far = new double[3];
        for (JointPoint p : points) {
            double[] d = minus(p.place(), a);
            far = dot(d, d) > dot(far, far) ? d : far;
        }
        double[] n = new double[3];
        for (JointPoint p : points) {
            double[] d = minus(p.place(), a);
            double[] c = {far[1] * d[2] - far[2] * d[1], far[2] * d[0] - far[0] * d[2], far[0] * d[1] - far[1] * d[0]};
            n = dot(c, c) > dot(n, n) ? c : n;
        }
        return n;
    }

    private void panel(Tub tub, Laminate laminate, int[] elements) {
        double area = 0;
        double[] axis = new double[3];
        Set<String> parts = new TreeSet<>();
        Set<Integer> nodes = new HashSet<>();
        double y = 0;
        ShellKernel kernel = new ShellKernel(structure);
        for (int e : elements) {
            double own = mesh.area(e);
            double[] axes = kernel.strainPoints(e).axes(0);
            double[] x = PlyReserves.centre(mesh, e);
            area += own;
            y += own * x[1];
            for (int d = 0; d < 3; d++) {
                axis[d] += own * axes[d];
            }
            parts.add(mesh.region(e).part());
            for (int c = 0; c < mesh.cornerCount(e); c++) {
                nodes.add(mesh.elementNodes()[4 * e + c]);
            }
        }
        double size = Math.sqrt(dot(axis, axis));
        if (!(size > 0)) {
            return;
        }
        double low = Double.POSITIVE_INFINITY;
        double high = Double.NEGATIVE_INFINITY;
        double front = Double.POSITIVE_INFINITY;
        double rear = Double.NEGATIVE_INFINITY;
        for (int n : nodes) {
            double[] x = Arrays.copyOfRange(mesh.nodes(), 3 * n, 3 * n + 3);
            double s = dot(x, axis) / size;
            low = Math.min(low, s);
            high = Math.max(high, s);
            front = Math.min(front, x[0]);
            rear = Math.max(rear, x[0]);
        }
        Metal metal = (Metal) laminate.layers().getFirst().material();
        double t = laminate.thickness();
        double bars = 0;
        for (Stiffener stiffener : tub.stiffeners()) {
            long touched = line(stiffener.line()).stream()
                    .flatMapToInt(Arrays::stream)
                    .filter(nodes::contains)
                    .count();
            bars += touched > 2
                    ? stiffener.section().area() * stiffener.section().youngsModulus() / metal.youngsModulus()
                    : 0;
        }
        String half = y > 0.05 * area ? " right" : y < -0.05 * area ? " left" : "";
        panels.add(new SheetPanels.Panel(
                String.format(
                        Locale.ROOT,
                        "%s%s, x %.0f to %.0f mm",
                        String.join(" and ", parts),
                        half,
                        front * 1e3,
                        rear * 1e3),
                elements,
                new double[] {axis[0] / size, axis[1] / size, axis[2] / size},
                new ShearPanel(high - low, area / (high - low), t, metal, bars / 2 + EFFECTIVE_WIDTH * t * t)));
    }

    private static double[] minus(double[] a, double[] b) {
        return new double[] {a[0] - b[0], a[1] - b[1], a[2] - b[2]};
    }

    private static double dot(double[] a, double[] b) {
        return a[0] * b[0] + a[1] * b[1] + a[2] * b[2];
    }
}
