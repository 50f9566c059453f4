// SPDX-License-Identifier: Apache-2.0
package tubwright.engine.mesh;

import java.util.List;

/** Meshes one chart: background grid, cuts, joining of triangles, smoothing. */
final class HalfMesher {
    /** Growth of the wanted edge length with distance from a detail. */
    private static final double GROWTH = 0.35;

    private HalfMesher() {}

    static PlaneMesh mesh(Chart chart, List<CutCurve> curves, MeshSettings settings) {
        CutCurve[] all = curves.toArray(CutCurve[]::new);
        MeshSettings.Spot[] spots = settings.spots().toArray(MeshSettings.Spot[]::new);
        double coarsening = settings.coarsening();
        double size = settings.size() / coarsening;
        PlaneMesh m = GridBuilder.build(chart, (a, b, p) -> {
            double h = size;
            for (CutCurve c : all) {
                double fine = c.size() / coarsening;
                if (fine < h && near(c, a, b)) {
                    double d = Math.abs(c.level().at(p[0], p[1], p[2]));
                    h = Math.min(h, fine + GROWTH * Math.max(0, d - 1.5 * fine));
                }
            }
            for (MeshSettings.Spot s : spots) {
                double dx = p[0] - s.x();
                double dy = Math.abs(p[1]) - Math.abs(s.y());
                double dz = p[2] - s.z();
                double d = Math.sqrt(dx * dx + dy * dy + dz * dz) - s.radius();
                double want = Math.clamp(0.7 * s.radius(), size / 8, size / 2);
                h = Math.min(h, want + GROWTH * Math.max(0, d));
            }
            return coarsening * h;
        });
        for (int i = 0; i < all.length; i++) {
            CurveCutter.cut(m, i, all);
        }
        Tidier.splitPoor(m);
        Tidier.collapse(m);
        TriangleMerger.merge(m);
        Smoother.smooth(m, all, 6);
        Tidier.splitPoor(m);
        return m;
    }

    private static boolean near(CutCurve c, double a, double b) {
        double margin = 3;
        for (double[] band : c.bands()) {
            if (a > band[0] - margin && a < band[1] + margin && b > band[2] - margin && b < band[3] + margin) {
                return true;
            }
        }
        return false;
    }
}
