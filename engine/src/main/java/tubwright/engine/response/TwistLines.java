// SPDX-License-Identifier: Apache-2.0
package tubwright.engine.response;

import java.util.ArrayList;
import java.util.List;
import tubwright.engine.mesh.Mesh;
import tubwright.engine.mesh.MeshLine;

/** Draws the twist line: twist of the skin's sections at evenly spaced stations, its slope, and its jumps at joints. */
final class TwistLines {
    /** Points on a twist line, enough to see walls and openings in it. */
    private static final int STATIONS = 81;

    /** A seam flatter than this along the car counts as running round the section. */
    private static final double FLAT = 1e-6;

    private TwistLines() {}

    /**
     * The twist line of a solution.
     *
     * @param sections of the mesh
     * @param u displacements, 6 per node
     * @param couple applied about x, N·m
     * @param loadedStation mean station of the loaded hardpoints, m
     * @param heldStation mean station of the held ones, m
     */
    static TwistLine draw(
            SkinSections sections, Mesh mesh, double[] u, double couple, double loadedStation, double heldStation) {
        double[] extent = sections.extent();
        // A hair inside the ends, where the plane still cuts elements.
        double inset = 1e-6 * (extent[1] - extent[0]);
        double[] stations = new double[STATIONS];
        double[] angles = new double[STATIONS];
        for (int i = 0; i < STATIONS; i++) {
            double t = (double) i / (STATIONS - 1);
            stations[i] = extent[0] + inset + t * (extent[1] - extent[0] - 2 * inset);
            angles[i] = sections.at(stations[i], u).twist();
        }
        double[] slopes = new double[STATIONS];
        double[] rigidities = new double[STATIONS];
        double low = Math.min(loadedStation, heldStation);
        double high = Math.max(loadedStation, heldStation);
        for (int i = 0; i < STATIONS; i++) {
            int before = Math.max(0, i - 1);
            int after = Math.min(STATIONS - 1, i + 1);
            slopes[i] = (angles[after] - angles[before]) / (stations[after] - stations[before]);
            boolean loaded = stations[i] > low && stations[i] < high;
            rigidities[i] = loaded ? Math.abs(couple / slopes[i]) : Double.NaN;
        }
        return new TwistLine(stations, angles, slopes, rigidities, jumps(sections, mesh, u));
    }

    private static List<TwistLine.Jump> jumps(SkinSections sections, Mesh mesh, double[] u) {
        List<TwistLine.Jump> jumps = new ArrayList<>();
        for (MeshLine line : mesh.lines()) {
            if (line.kind() != MeshLine.Kind.SEAM) {
                continue;
            }
            double[] span = span(mesh, line);
            if (span[1] - span[0] > FLAT) {
                continue;
            }
            double x = span[0];
            double step = sections.at(x + 2 * FLAT, u).twist()
                    - sections.at(x - 2 * FLAT, u).twist();
            jumps.add(new TwistLine.Jump(x, step, line.name()));
        }
        return jumps;
    }

    private static double[] span(Mesh mesh, MeshLine line) {
        double low = Double.POSITIVE_INFINITY;
        double high = Double.NEGATIVE_INFINITY;
        for (int[] chain : line.chains()) {
            for (int n : chain) {
                low = Math.min(low, mesh.nodes()[3 * n]);
                high = Math.max(high, mesh.nodes()[3 * n]);
            }
        }
        return new double[] {low, high};
    }

    /** Twist at the first and second of two stations, rad. */
    static double[] between(SkinSections sections, double[] u, double first, double second) {
        return new double[] {
            motion(sections, u, first).twist(), motion(sections, u, second).twist()
        };
    }

    /** The motion of the section at a station, kept a hair inside the skin. */
    static SkinSections.Motion motion(SkinSections sections, double[] u, double station) {
        double[] extent = sections.extent();
        double inset = 1e-6 * (extent[1] - extent[0]);
        return sections.at(Math.clamp(station, extent[0] + inset, extent[1] - inset), u);
    }
}
