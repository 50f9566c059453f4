// SPDX-License-Identifier: Apache-2.0
package tubwright.engine.make.lay;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import tubwright.engine.laminate.LayerRole;
import tubwright.engine.make.flat.FlatPattern;
import tubwright.engine.make.flat.Mark;
import tubwright.engine.make.flat.Sheets;
import tubwright.engine.make.ply.LaidPly;
import tubwright.engine.make.surface.MeshSurface;
import tubwright.engine.make.surface.PointLocator;
import tubwright.engine.mesh.Mesh;
import tubwright.engine.structure.Hardpoint;

/**
 * What a core's pattern is marked with: where the ramp of its edge begins, along every edge at which no other core follows,
 * and the outlines of blocks or potting of inserts.
 */
final class CoreMarks {
    /**
     * Steepest ramp of a core's edge, rad: 20 to 30° keep pressure from crushing its side (from memory).
     */
    static final double RAMP = Math.toRadians(30);

    private static final int CIRCLE = 32;
    /** A hardpoint farther from the core's face than this is not in it, m. */
    private static final double ON = 0.005;

    private final Mesh mesh;
    private final Rims rims;
    private final List<Hardpoint> hardpoints;
    private final boolean[] cored;

    CoreMarks(Mesh mesh, Rims rims, List<LaidPly> plies, List<Hardpoint> hardpoints) {
        this.mesh = mesh;
        this.rims = rims;
        this.hardpoints = hardpoints;
        cored = new boolean[mesh.elementCount()];
        plies.stream()
                .filter(p -> p.role() == LayerRole.CORE)
                .flatMapToInt(p -> Arrays.stream(p.elements()))
                .forEach(e -> cored[e] = true);
    }

    /** The pattern with its marks. */
    FlatPattern on(LaidPly ply, FlatPattern pattern, MeshSurface outer, double[] flat) {
        List<Mark> marks = new ArrayList<>(pattern.marks());
        List<double[]> open = new ArrayList<>();
        for (int[] edge : rims.edges(ply.elements())) {
            if (edge[2] < 0 || !cored[edge[2]]) {
                int a = 2 * outer.pointOfNode()[edge[0]];
                int b = 2 * outer.pointOfNode()[edge[1]];
                open.add(new double[] {flat[a], flat[a + 1], flat[b], flat[b + 1]});
            }
        }
        Sheets.inwardOf(pattern, open, ply.thickness() / Math.tan(RAMP))
                .forEach(line -> marks.add(new Mark(Mark.Kind.CHAMFER, line)));
        PointLocator locator = new PointLocator(outer.surface());
        for (Hardpoint each : hardpoints) {
            PointLocator.Found found = locator.nearest(each.position()[0], each.position()[1], each.position()[2]);
            boolean here = found.distance() < ON
                    && each.part()
                            .equals(mesh.region(outer.element()[found.point().triangle()])
                                    .part());
            if (here && each.footprintRadius() > 0) {
                marks.add(new Mark(Mark.Kind.POTTING, circle(outer, flat, found, each.footprintRadius())));
            }
        }
        return pattern.withMarks(marks);
    }

    private static double[] circle(MeshSurface outer, double[] flat, PointLocator.Found found, double radius) {
        double[] w = outer.surface().weights(found.point());
        double[] weights = {1 - w[0] - w[1], w[0], w[1]};
        double x = 0;
        double y = 0;
        for (int k = 0; k < 3; k++) {
            int p = 2 * outer.surface().corners()[3 * found.point().triangle() + k];
            x += weights[k] * flat[p];
            y += weights[k] * flat[p + 1];
        }
        double[] circle = new double[2 * (CIRCLE + 1)];
        for (int i = 0; i <= CIRCLE; i++) {
            circle[2 * i] = x + radius * Math.cos(2 * Math.PI * i / CIRCLE);
            circle[2 * i + 1] = y + radius * Math.sin(2 * Math.PI * i / CIRCLE);
        }
        return circle;
    }
}
