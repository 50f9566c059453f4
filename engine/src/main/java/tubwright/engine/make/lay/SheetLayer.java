// SPDX-License-Identifier: Apache-2.0
package tubwright.engine.make.lay;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.Comparator;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import tubwright.engine.laminate.LayerRole;
import tubwright.engine.make.drape.LayLimits;
import tubwright.engine.make.flat.Distortion;
import tubwright.engine.make.flat.FlatPattern;
import tubwright.engine.make.flat.Flattening;
import tubwright.engine.make.flat.Notches;
import tubwright.engine.make.flat.Outlines;
import tubwright.engine.make.ply.LaidPly;
import tubwright.engine.make.surface.MeshSurface;
import tubwright.engine.make.surface.TriangleSurface;
import tubwright.engine.material.Adhesive;
import tubwright.engine.mesh.Mesh;
import tubwright.engine.mesh.Region;
import tubwright.numerics.DirectSolver;

/**
 * Lays what does not shear: tape, film and core are flattened with their lengths kept as well as can be. Fibres run
 * straight in the flat, so tape lies as straight as it can; how hard it would be steered to keep its nominal direction is
 * told beside. Also everything on flat walls, where nothing needs to stretch or shear.
 */
final class SheetLayer {
    private final Mesh mesh;
    private final OutlineFlats flats;
    private final DirectSolver solver;
    private final Rims rims;

    private final CoreMarks cores;

    SheetLayer(Mesh mesh, OutlineFlats flats, DirectSolver solver, Rims rims, CoreMarks cores) {
        this.flats = flats;
        this.cores = cores;
        this.rims = rims;
        this.mesh = mesh;
        this.solver = solver;
    }

    /**
     * A sheet in the plane, not yet turned or marked.
     *
     * @param outer the mould's face under it
     * @param face the face it lies on
     * @param points 2 coordinates a point of either, m
     */
    record Sheet(MeshSurface outer, TriangleSurface face, double[] points, Distortion distortion) {}

    DrapedPly lay(LaidPly ply) {
        return lay(ply, flat(ply));
    }

    Sheet flat(LaidPly ply) {
        double[] depthAt = new double[mesh.elementCount()];
        for (int i = 0; i < ply.elements().length; i++) {
            depthAt[ply.elements()[i]] = ply.depths()[i];
        }
        OutlineFlats.Flat mould = flats.of(ply.elements());
        MeshSurface outer = mould.face();
        boolean wall = mesh.region(ply.elements()[0]).surface() == Region.Surface.WALL;
        TriangleSurface face = wall ? outer.surface() : outer.inward(depths(outer, depthAt));
        double[] points = wall ? mould.flat().clone() : Flattening.isometric(face, mould.flat(), solver);
        return new Sheet(outer, face, points, Distortion.of(face, points));
    }

    /** With its sheet, whose points are turned. */
    DrapedPly lay(LaidPly ply, Sheet sheet) {
        LayLimits limits = LayLimits.of(ply.material());
        double area = 0;
        for (int e : ply.elements()) {
            area += mesh.area(e);
        }
        MeshSurface outer = sheet.outer();
        TriangleSurface face = sheet.face();
        double[] flat = sheet.points();
        Distortion distortion = sheet.distortion();
        int middle = middle(ply.elements());
        turn(flat, outer, face, middle, Directions.of(mesh, middle, Directions.nominal(mesh, middle, ply)));
        double[] start = Mould.centre(mesh, middle);
        FlatPattern pattern = pattern(ply, outer, flat, middle, distortion);
        if (ply.role() == LayerRole.CORE) {
            pattern = cores.on(ply, pattern, outer, flat);
        }
        pattern = Notches.on(pattern);
        DrapedPly.Fibres fibres = fibres(ply, outer, face, flat);
        double largest = 0;
        double mean = 0;
        for (int i = 0; i < ply.elements().length; i++) {
            int e = ply.elements()[i];
            double off = Math.abs(Math.IEEEremainder(fibres.warp()[i] - Directions.nominal(mesh, e, ply), Math.PI));
            largest = Math.max(largest, off);
            mean += mesh.area(e) * off / area;
        }
        boolean directed = !(ply.material() instanceof Adhesive);
        Optional<DrapedPly.Steering> steering =
                ply.tape() ? Optional.of(Steered.of(mesh, ply, outer, limits)) : Optional.empty();
        DrapedPly.Figures figures =
                new DrapedPly.Figures(area, 0, 0, 0, 0, 0, directed ? largest : 0, directed ? mean : 0, 1, steering);
        return new DrapedPly(ply, limits, start, 0, fibres, figures, pattern, List.of());
    }

    private static double[] depths(MeshSurface outer, double[] depthAt) {
        double[] sum = new double[outer.surface().pointCount()];
        int[] count = new int[sum.length];
        int[] c = outer.surface().corners();
        for (int i = 0; i < c.length; i++) {
            sum[c[i]] += depthAt[outer.element()[i / 3]];
            count[c[i]]++;
        }
        for (int p = 0; p < sum.length; p++) {
            sum[p] /= Math.max(1, count[p]);
        }
        return sum;
    }

    private int middle(int[] elements) {
        double[] mean = new double[3];
        for (int e : elements) {
            double[] at = Mould.centre(mesh, e);
            for (int k = 0; k < 3; k++) {
                mean[k] += at[k] / elements.length;
            }
        }
        return Arrays.stream(elements)
                .boxed()
                .min(Comparator.comparingDouble(e -> {
                    double[] at = Mould.centre(mesh, e);
                    return Math.hypot(at[0] - mean[0], Math.hypot(at[1] - mean[1], at[2] - mean[2]));
                }))
                .orElseThrow();
    }

    /** Turns the flat so that a direction in space at an element runs along x, sets that element at the origin, mirrors. */
    private static void turn(double[] flat, MeshSurface outer, TriangleSurface face, int element, double[] along) {
        int t = 0;
        while (outer.element()[t] != element) {
            t++;
        }
        double local = face.angle(t, along);
        double[] map = map(face, flat, t);
        double x = Math.cos(local) * map[0] + Math.sin(local) * map[1];
        double y = Math.cos(local) * map[2] + Math.sin(local) * map[3];
        int[] c = face.corners();
        int a = 2 * c[3 * t];
        int b = 2 * c[3 * t + 1];
        int d = 2 * c[3 * t + 2];
        double l = Math.hypot(x, y);
        double ox = (flat[a] + flat[b] + flat[d]) / 3;
        double oy = (flat[a + 1] + flat[b + 1] + flat[d + 1]) / 3;
        for (int i = 0; i < flat.length; i += 2) {
            double px = flat[i] - ox;
            double py = flat[i + 1] - oy;
            flat[i] = (x * px + y * py) / l;
            flat[i + 1] = -(x * py - y * px) / l;
        }
    }

    /** Fibres that run along x in the flat, as they lie: laid straight. */
    private DrapedPly.Fibres fibres(LaidPly ply, MeshSurface outer, TriangleSurface face, double[] flat) {
        double[] warp = new double[ply.elements().length];
        double[] weft = new double[warp.length];
        Map<Integer, Integer> triangleOf = new HashMap<>();
        for (int t = 0; t < face.triangles(); t++) {
            triangleOf.putIfAbsent(outer.element()[t], t);
        }
        double[] d = new double[3];
        for (int i = 0; i < warp.length; i++) {
            int t = triangleOf.get(ply.elements()[i]);
            double[] map = map(face, flat, t);
            // The direction (x, y) of the triangle that the map takes to (1, 0): a turn for a map that nearly is one.
            face.direction(t, Math.atan2(-map[2], map[3]) + (map[0] * map[3] - map[1] * map[2] < 0 ? Math.PI : 0), d);
            warp[i] = Directions.angle(mesh, ply.elements()[i], d);
            weft[i] = warp[i] + Math.PI / 2;
        }
        return new DrapedPly.Fibres(warp, weft);
    }

    /** Derivatives of the flat's x and y along x and y of a triangle's plane: xx, xy, yx, yy. */
    private static double[] map(TriangleSurface face, double[] flat, int t) {
        int[] c = face.corners();
        double[] corners = face.localCorners(t);
        int a = 2 * c[3 * t];
        int b = 2 * c[3 * t + 1];
        int d = 2 * c[3 * t + 2];
        double ux = (flat[b] - flat[a]) / corners[0];
        double vx = (flat[b + 1] - flat[a + 1]) / corners[0];
        double uy = (flat[d] - flat[a] - corners[1] * ux) / corners[2];
        double vy = (flat[d + 1] - flat[a + 1] - corners[1] * vx) / corners[2];
        return new double[] {ux, uy, vx, vy};
    }

    private FlatPattern pattern(LaidPly ply, MeshSurface outer, double[] flat, int middle, Distortion distortion) {
        List<double[]> outlines = new ArrayList<>();
        rims.of(ply.elements()).forEach(loop -> outlines.add(flat(loop, outer, flat)));
        List<double[]> lines = new ArrayList<>();
        rims.borders(ply.elements()).forEach(chain -> lines.add(flat(chain, outer, flat)));
        outlines.sort(Comparator.comparingDouble(o -> -Math.abs(Outlines.area(o))));
        return new FlatPattern(
                ply.name(), outlines, lines, new double[] {0, 0}, Directions.nominal(mesh, middle, ply), distortion, 0);
    }

    private static double[] flat(int[] nodes, MeshSurface outer, double[] flat) {
        double[] line = new double[2 * nodes.length];
        for (int i = 0; i < nodes.length; i++) {
            int p = outer.pointOfNode()[nodes[i]];
            line[2 * i] = flat[2 * p];
            line[2 * i + 1] = flat[2 * p + 1];
        }
        return line;
    }
}
