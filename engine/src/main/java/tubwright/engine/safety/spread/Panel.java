// SPDX-License-Identifier: Apache-2.0
package tubwright.engine.safety.spread;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.stream.IntStream;
import tubwright.engine.laminate.Laminate;
import tubwright.engine.laminate.LayerRole;
import tubwright.engine.material.Property;
import tubwright.engine.mesh.Mesh;
import tubwright.engine.mesh.Region;
import tubwright.engine.strength.StrengthBasis;
import tubwright.engine.structure.Springs;
import tubwright.engine.structure.Structure;
import tubwright.engine.structure.Surroundings;

/**
 * A flat rectangular panel pushed at its middle until little is left: across its whole width while two edges hold it (three-point
 * bending), or by a square pad while all four edges hold it. Edges are held against the push alone and may turn.
 *
 * @param laminate 1 along x
 * @param length along x, m
 * @param width along y, m
 * @param span between the supports in three-point bending, m, no more than the length; the length where all edges hold
 * @param allEdges whether all edges hold it
 * @param pad length (and on four edges width) of what pushes, m
 * @param along elements along x, even
 * @param across elements along y, even
 */
public record Panel(
        Laminate laminate,
        double length,
        double width,
        double span,
        boolean allEdges,
        double pad,
        int along,
        int across) {
    private static final String NAME = "panel";

    public Panel {
        if (!(length > 0 && width > 0 && pad > 0 && span > 0 && span <= length * (1 + 1e-9))) {
            throw new IllegalArgumentException(
                    "a panel needs a length, a width, a pad and a span greater than zero, the span"
                            + " no longer than the panel");
        }
        if (along < 2 || across < 2 || along % 2 != 0 || across % 2 != 0) {
            throw new IllegalArgumentException(
                    "a panel needs an even number of elements each way, not " + along + " x " + across);
        }
    }

    /** The model under a push of 1 N downward (−z); its outer face is the upper one. */
    public SpreadModel model(StrengthBasis basis, Energies energies) {
        Mesh mesh = mesh();
        Structure shells =
                Structure.ofShells(mesh, new double[][] {laminate.stiffness().matrix()});
        int n = mesh.nodeCount() + 1;
        // The pad is a node of its own, one past the panel's.
        int pusher = n - 1;
        double[] load = new double[6 * n];
        boolean[] fixed = new boolean[6 * n];
        hold(mesh, fixed);
        for (int d = 0; d < 6; d++) {
            fixed[6 * pusher + d] = d != 2;
        }
        load[6 * pusher + 2] = -1;
        Surroundings around =
                new Surroundings(IntStream.range(0, n).toArray(), new int[0], new double[0], load, 0, fixed);
        return new SpreadModel(
                shells,
                new Laminate[] {laminate},
                basis,
                energies,
                IntStream.range(0, mesh.elementCount()).toArray(),
                bedding(mesh, pusher),
                around);
    }

    /** Stations of nodes along one way, so that supports and the ends of the pad lie on them. */
    private static double[] stations(double length, int count, double... lines) {
        double[] x = new double[count + 1];
        for (int i = 0; i <= count; i++) {
            x[i] = -0.5 * length + length * i / count;
        }
        for (double line : lines) {
            for (double side : new double[] {-line, line}) {
                int nearest = 1;
                for (int i = 1; i < count; i++) {
                    if (Math.abs(x[i] - side) < Math.abs(x[nearest] - side)) {
                        nearest = i;
                    }
                }
                if (Math.abs(side) < 0.5 * length * (1 - 1e-9)) {
                    x[nearest] = side;
                }
            }
        }
        return x;
    }

    private Mesh mesh() {
        double[] x = allEdges ? stations(length, along, 0.5 * pad) : stations(length, along, 0.5 * span, 0.5 * pad);
        double[] y = allEdges ? stations(width, across, 0.5 * pad) : stations(width, across);
        double[] nodes = new double[3 * (along + 1) * (across + 1)];
        for (int j = 0; j <= across; j++) {
            for (int i = 0; i <= along; i++) {
                int at = 3 * (j * (along + 1) + i);
                nodes[at] = x[i];
                nodes[at + 1] = y[j];
            }
        }
        int elements = along * across;
        int[] corners = new int[4 * elements];
        double[] normals = new double[12 * elements];
        double[] directions = new double[3 * elements];
        for (int e = 0; e < elements; e++) {
            int a = e / along * (along + 1) + e % along;
            corners[4 * e] = a;
            corners[4 * e + 1] = a + 1;
            corners[4 * e + 2] = a + along + 2;
            corners[4 * e + 3] = a + along + 1;
            for (int c = 0; c < 4; c++) {
                normals[12 * e + 3 * c + 2] = 1;
            }
            directions[3 * e] = 1;
        }
        Region region = new Region(NAME, Region.Surface.WALL, NAME, List.of(), NAME, false);
        return new Mesh(nodes, corners, normals, directions, new int[elements], List.of(region), List.of());
    }

    private void hold(Mesh mesh, boolean[] fixed) {
        double near = 1e-9 * length;
        int middle = across / 2 * (along + 1) + along / 2;
        for (int n = 0; n < mesh.nodeCount(); n++) {
            double x = mesh.nodes()[3 * n];
            double y = mesh.nodes()[3 * n + 1];
            boolean ends = Math.abs(Math.abs(x) - 0.5 * span) < near;
            boolean sides = allEdges && Math.abs(Math.abs(y) - 0.5 * width) < near;
            fixed[6 * n + 2] |= ends || sides;
            // An edge that rests all along does not twist.
            fixed[6 * n + 3] |= allEdges && ends;
            fixed[6 * n + 4] |= sides;
        }
        // In its own plane it is free but for its middle, which neither moves nor turns.
        fixed[6 * middle] = true;
        fixed[6 * middle + 1] = true;
        fixed[6 * middle + 5] = true;
        fixed[6 * (middle + 1) + 1] = true;
    }

    /** The core under the pad, one bed a node, each as wide as the part of the panel round it that the pad covers. */
    private List<Bond> bedding(Mesh mesh, int pusher) {
        List<Bond> beds = new ArrayList<>();
        double[] areas = new double[mesh.nodeCount()];
        for (int e = 0; e < mesh.elementCount(); e++) {
            int[] corners = Arrays.copyOfRange(mesh.elementNodes(), 4 * e, 4 * e + 4);
            boolean under = Arrays.stream(corners).allMatch(n -> covered(mesh, n));
            for (int n : corners) {
                areas[n] += under ? mesh.area(e) / 4 : 0;
            }
        }
        double area = Arrays.stream(areas).sum();
        if (area == 0) {
            // A pad shorter than an element pushes along a line of nodes.
            for (int j = 0; j <= across; j++) {
                int n = j * (along + 1) + along / 2;
                areas[n] = allEdges && j != across / 2 ? 0 : pad * (allEdges ? pad : width / across);
                areas[n] *= !allEdges && (j == 0 || j == across) ? 0.5 : 1;
            }
        }
        var core = laminate.layersWith(LayerRole.CORE).stream().findFirst();
        double modulus = core.map(c -> c.material().properties().si(Property.E3).orElse(1e9) / c.thickness())
                .orElse(1e12);
        double strength = core.map(
                        c -> c.material().properties().si(Property.ZC).orElse(Double.POSITIVE_INFINITY))
                .orElse(Double.POSITIVE_INFINITY);
        for (int n = 0; n < areas.length; n++) {
            if (areas[n] > 0) {
                double[] row = new double[12];
                row[2] = 1;
                row[8] = -1;
                Springs bed =
                        new Springs(new int[] {n, pusher}, new double[][] {row}, new double[] {modulus * areas[n]});
                double[] place = Arrays.copyOfRange(mesh.nodes(), 3 * n, 3 * n + 3);
                beds.add(Bond.crushing(bed, strength * areas[n], "core under the pad", place));
            }
        }
        return beds;
    }

    private boolean covered(Mesh mesh, int n) {
        double reach = 0.5 * pad * (1 + 1e-9);
        return Math.abs(mesh.nodes()[3 * n]) <= reach && (!allEdges || Math.abs(mesh.nodes()[3 * n + 1]) <= reach);
    }
}
