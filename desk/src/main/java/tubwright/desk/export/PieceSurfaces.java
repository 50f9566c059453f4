// SPDX-License-Identifier: Apache-2.0
package tubwright.desk.export;

import java.io.IOException;
import java.io.OutputStream;
import java.nio.ByteBuffer;
import java.nio.ByteOrder;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import tubwright.engine.make.mould.PieceFace;
import tubwright.engine.make.mould.SplitLines;
import tubwright.engine.make.surface.MeshSurface;
import tubwright.engine.make.surface.TriangleSurface;
import tubwright.engine.mesh.Mesh;
import tubwright.engine.shape.Frame;
import tubwright.engine.shape.Section;
import tubwright.engine.shape.SkinPoint;
import tubwright.engine.shape.TubShape;
import tubwright.engine.structure.Tub;

/**
 * The outer faces of the pieces as triangles (binary STL, in mm, normals outward) and the curves they were drawn by (ASCII
 * DXF, 3-D polylines in mm): frames on layer FRAMES, split lines on SPLIT, open edges on EDGES. No library on Maven Central
 * that writes exact surfaces (STEP) was found; the frames' curves let a shop build its own.
 */
public final class PieceSurfaces {
    private static final int PER_STRIP = 24;

    private PieceSurfaces() {}

    /**
     * Writes the files into {@code surfaces/}.
     *
     * @param about for the head of each file: tub, issue, fingerprint
     */
    public static void write(RunFolder folder, Mesh mesh, Tub tub, String about) throws IOException {
        for (PieceFace face : PieceFace.all(mesh)) {
            String name = face.piece().replaceAll("[^\\p{L}\\p{N}]+", "-");
            try (OutputStream out = folder.open("surfaces/" + name + ".stl")) {
                out.write(stl(face, about));
            }
        }
        folder.text("surfaces/frames.dxf", curves(mesh, tub.shape(), about));
    }

    /** The face of a piece as binary STL. */
    public static byte[] stl(PieceFace face, String about) {
        boolean[] in = new boolean[face.mesh().elementCount()];
        Arrays.stream(face.elements()).forEach(e -> in[e] = true);
        TriangleSurface surface = MeshSurface.of(face.mesh(), e -> in[e]).surface();
        ByteBuffer stl = ByteBuffer.allocate(84 + 50 * surface.triangles()).order(ByteOrder.LITTLE_ENDIAN);
        byte[] head = ("units mm; x aft, y right, z up; " + face.piece() + ", " + about)
                .replaceAll("[^ -~]", "_")
                .getBytes(StandardCharsets.US_ASCII);
        stl.put(Arrays.copyOf(head, 80)).putInt(surface.triangles());
        for (int t = 0; t < surface.triangles(); t++) {
            for (double n : surface.normal(t)) {
                stl.putFloat((float) n);
            }
            for (int k = 0; k < 3; k++) {
                int p = 3 * surface.corners()[3 * t + k];
                for (int i = 0; i < 3; i++) {
                    stl.putFloat((float) (1e3 * surface.points()[p + i]));
                }
            }
            stl.putShort((short) 0);
        }
        return stl.array();
    }

    /** Frames, split lines and open edges. */
    static String curves(Mesh mesh, TubShape shape, String about) {
        StringBuilder dxf = new StringBuilder(1 << 16);
        pair(dxf, 999, about.replaceAll("[^ -~]", "_") + "; mm; x aft, y right, z up");
        pair(dxf, 0, "SECTION");
        pair(dxf, 2, "HEADER");
        pair(dxf, 9, "$ACADVER");
        pair(dxf, 1, "AC1009");
        pair(dxf, 9, "$INSUNITS");
        pair(dxf, 70, "4");
        pair(dxf, 0, "ENDSEC");
        pair(dxf, 0, "SECTION");
        pair(dxf, 2, "ENTITIES");
        for (Frame frame : shape.frames()) {
            polyline(dxf, "FRAMES", frame(shape, frame.x()), true);
        }
        SplitLines lines = new SplitLines(mesh);
        List<String> done = new ArrayList<>();
        for (PieceFace face : PieceFace.all(mesh)) {
            if (face.plate()) {
                continue;
            }
            Map<String, List<SplitLines.Edge>> byBeside = new LinkedHashMap<>();
            lines.of(face)
                    .forEach(e -> byBeside.computeIfAbsent(e.beside(), b -> new ArrayList<>())
                            .add(e));
            byBeside.forEach((beside, edges) -> {
                boolean open = beside.equals("opening") || beside.endsWith(" end");
                if (open || !done.contains(beside)) {
                    chains(mesh, edges).forEach(c -> polyline(dxf, open ? "EDGES" : "SPLIT", c, false));
                }
            });
            done.add(face.piece());
        }
        pair(dxf, 0, "ENDSEC");
        pair(dxf, 0, "EOF");
        return dxf.toString();
    }

    /** A frame all round: up the right-hand side and down the left. */
    private static List<double[]> frame(TubShape shape, double x) {
        Section section = shape.section(x);
        List<double[]> right = new ArrayList<>();
        SkinPoint p = new SkinPoint();
        for (int strip = 0; strip < section.stripCount(); strip++) {
            for (int i = 0; i <= PER_STRIP; i++) {
                if (i > 0 || strip == 0) {
                    section.at(strip, i / (double) PER_STRIP, p);
                    right.add(new double[] {x, p.y, p.z});
                }
            }
        }
        List<double[]> all = new ArrayList<>(right);
        for (double[] each : right.subList(1, right.size() - 1).reversed()) {
            all.add(new double[] {each[0], -each[1], each[2]});
        }
        return all;
    }

    /** Edges one behind the other as chains of points. */
    private static List<List<double[]>> chains(Mesh mesh, List<SplitLines.Edge> edges) {
        Map<Integer, SplitLines.Edge> from = new HashMap<>();
        Map<Integer, Integer> into = new HashMap<>();
        edges.forEach(e -> {
            from.put(e.from(), e);
            into.merge(e.to(), 1, Integer::sum);
        });
        List<List<double[]>> chains = new ArrayList<>();
        List<SplitLines.Edge> starts = new ArrayList<>(
                edges.stream().filter(e -> !into.containsKey(e.from())).toList());
        starts.addAll(edges);
        for (SplitLines.Edge start : starts) {
            List<double[]> chain = new ArrayList<>();
            SplitLines.Edge at = from.remove(start.from());
            while (at != null) {
                if (chain.isEmpty()) {
                    chain.add(point(mesh, at.from()));
                }
                chain.add(point(mesh, at.to()));
                at = from.remove(at.to());
            }
            if (!chain.isEmpty()) {
                chains.add(chain);
            }
        }
        return chains;
    }

    private static double[] point(Mesh mesh, int node) {
        return Arrays.copyOfRange(mesh.nodes(), 3 * node, 3 * node + 3);
    }

    private static void polyline(StringBuilder dxf, String layer, List<double[]> points, boolean closed) {
        pair(dxf, 0, "POLYLINE");
        pair(dxf, 8, layer);
        pair(dxf, 66, "1");
        place(dxf, new double[3]);
        pair(dxf, 70, closed ? "9" : "8");
        for (double[] p : points) {
            pair(dxf, 0, "VERTEX");
            pair(dxf, 8, layer);
            place(dxf, p);
            pair(dxf, 70, "32");
        }
        pair(dxf, 0, "SEQEND");
        pair(dxf, 8, layer);
    }

    private static void place(StringBuilder dxf, double[] p) {
        for (int i = 0; i < 3; i++) {
            pair(dxf, 10 * (i + 1), String.format(Locale.ROOT, "%.4f", 1e3 * p[i]));
        }
    }

    private static void pair(StringBuilder dxf, int code, String value) {
        dxf.append(String.format(Locale.ROOT, "%3d\n", code)).append(value).append('\n');
    }
}
