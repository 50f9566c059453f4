// SPDX-License-Identifier: Apache-2.0
package tubwright.desk.export;

import java.io.IOException;
import java.io.OutputStream;
import java.nio.ByteBuffer;
import java.nio.ByteOrder;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.Base64;
import java.util.List;
import java.util.Locale;
import java.util.StringJoiner;
import java.util.zip.Deflater;
import tubwright.desk.answer.RunAnswer;
import tubwright.engine.mesh.Mesh;
import tubwright.engine.mesh.Region;
import tubwright.engine.response.Buckle;
import tubwright.engine.response.CaseAnswer;
import tubwright.engine.response.CaseBuckling;
import tubwright.engine.response.VariantAnswer;
import tubwright.engine.response.Vibrations;
import tubwright.engine.structure.Mode;

/**
 * Writes a variant's mesh and fields as VTU, the open XML format for unstructured grids: all data in one appended
 * section, base64, each array packed by zlib in blocks.
 *
 * <p>Points carry displacement and rotation of every case and, where answered, shapes of buckling and vibration; cells carry energy density of every case, laminate thickness
 * and mass per area, and numbers for zone, piece and part whose names stand in the field data, in order; with load cases also the
 * lowest reserve factor over them, with its mode and case (-1 for none).
 */
public final class VtuWriter {
    private static final int BLOCK = 1 << 16;
    /** Reserve factors are cut off here, since viewers do not like infinity. */
    private static final double MOST_FACTOR = 1000;

    private static final byte QUADRILATERAL = 9;
    private static final byte TRIANGLE = 5;

    private final List<byte[]> packed = new ArrayList<>();
    private final StringBuilder xml = new StringBuilder();
    private long offset;

    private VtuWriter() {}

    /**
     * Writes one variant.
     *
     * @param variant mesh and fields
     * @param layups laminates, of which those of the variant are used
     * @param out where to; not closed
     */
    public static void write(VariantAnswer variant, List<RunAnswer.Layup> layups, OutputStream out) throws IOException {
        VtuWriter writer = new VtuWriter();
        writer.header(variant, layups);
        out.write(writer.xml.toString().getBytes(StandardCharsets.UTF_8));
        for (byte[] data : writer.packed) {
            out.write(data);
        }
        out.write("\n  </AppendedData>\n</VTKFile>\n".getBytes(StandardCharsets.UTF_8));
    }

    private void header(VariantAnswer variant, List<RunAnswer.Layup> layups) {
        Mesh mesh = variant.mesh();
        xml.append("<?xml version=\"1.0\" encoding=\"UTF-8\"?>\n");
        xml.append("<VTKFile type=\"UnstructuredGrid\" version=\"1.0\" byte_order=\"LittleEndian\""
                + " header_type=\"UInt32\" compressor=\"vtkZLibDataCompressor\">\n");
        xml.append("  <UnstructuredGrid>\n");
        List<String> zones =
                mesh.regions().stream().map(Region::zone).distinct().toList();
        List<String> pieces =
                mesh.regions().stream().map(Region::piece).distinct().toList();
        List<String> parts =
                mesh.regions().stream().map(Region::part).distinct().toList();
        names("zone", zones);
        names("piece", pieces);
        names("part", parts);
        variant.reserves().map().ifPresent(map -> {
            names("reserve mode", map.modes());
            names("reserve case", map.loads());
        });
        xml.append("    <Piece NumberOfPoints=\"" + mesh.nodeCount() + "\" NumberOfCells=\"" + mesh.elementCount()
                + "\">\n");
        pointData(variant);
        cellData(variant, layups, zones, pieces, parts);
        xml.append("      <Points>\n");
        doubles("position (m)", 3, mesh.nodes());
        xml.append("      </Points>\n");
        cells(mesh);
        xml.append("    </Piece>\n  </UnstructuredGrid>\n  <AppendedData encoding=\"base64\">\n_");
    }

    private void pointData(VariantAnswer variant) {
        xml.append("      <PointData>\n");
        int count = variant.mesh().nodeCount();
        for (CaseAnswer answer : variant.cases()) {
            double[] u = answer.fields().displacements();
            float[] shifts = new float[3 * count];
            float[] turns = new float[3 * count];
            for (int n = 0; n < count; n++) {
                for (int d = 0; d < 3; d++) {
                    shifts[3 * n + d] = (float) u[6 * n + d];
                    turns[3 * n + d] = (float) u[6 * n + 3 + d];
                }
            }
            floats("displacement, " + answer.name() + " (m)", 3, shifts);
            floats("rotation, " + answer.name() + " (rad)", 3, turns);
        }
        for (CaseBuckling each : variant.stability().buckling()) {
            for (int k = 0; k < each.modes().size(); k++) {
                Buckle mode = each.modes().get(k);
                shape(
                        "buckling " + (k + 1) + ", " + each.load() + ", factor " + figure(mode.factor()),
                        mode.shape(),
                        count);
            }
        }
        variant.stability().free().ifPresent(v -> modes("free", v, count));
        variant.stability().held().ifPresent(v -> modes("held", v, count));
        xml.append("      </PointData>\n");
    }

    private void modes(String how, Vibrations vibrations, int count) {
        List<Mode> elastic = vibrations.modes().elastic();
        for (int k = 0; k < elastic.size(); k++) {
            Mode mode = elastic.get(k);
            shape(
                    "mode " + (k + 1) + ", " + how + ", " + figure(mode.frequency()) + " Hz, " + mode.name(),
                    mode.shape(),
                    count);
        }
    }

    private static String figure(double value) {
        return String.format(Locale.ROOT, "%.4g", value);
    }

    private void shape(String name, double[] shape, int count) {
        float[] shifts = new float[3 * count];
        for (int n = 0; n < count; n++) {
            for (int d = 0; d < 3; d++) {
                shifts[3 * n + d] = (float) shape[6 * n + d];
            }
        }
        floats(name, 3, shifts);
    }

    private void cellData(
            VariantAnswer variant,
            List<RunAnswer.Layup> layups,
            List<String> zones,
            List<String> pieces,
            List<String> parts) {
        Mesh mesh = variant.mesh();
        int regions = mesh.regions().size();
        int[] zone = new int[regions];
        int[] piece = new int[regions];
        int[] part = new int[regions];
        float[] thickness = new float[regions];
        float[] weight = new float[regions];
        for (int r = 0; r < regions; r++) {
            Region region = mesh.regions().get(r);
            zone[r] = zones.indexOf(region.zone());
            piece[r] = pieces.indexOf(region.piece());
            part[r] = parts.indexOf(region.part());
            for (RunAnswer.Layup layup : layups) {
                boolean here = layup.patch()
                        ? region.patches().contains(layup.name())
                        : region.zone().equals(layup.name());
                if (here && layup.variant().equals(variant.variant())) {
                    thickness[r] += (float) layup.laminate().thickness();
                    weight[r] += (float) layup.laminate().arealMass();
                }
            }
        }
        xml.append("      <CellData>\n");
        for (CaseAnswer answer : variant.cases()) {
            double[] w = answer.fields().energyDensities();
            float[] densities = new float[w.length];
            for (int e = 0; e < w.length; e++) {
                densities[e] = (float) w[e];
            }
            floats("energy density, " + answer.name() + " (J/m2)", 1, densities);
        }
        floats("laminate thickness (m)", 1, spread(mesh, thickness));
        floats("mass per area (kg/m2)", 1, spread(mesh, weight));
        ints("zone", spread(mesh, zone));
        ints("piece", spread(mesh, piece));
        ints("part", spread(mesh, part));
        float[] directions = new float[mesh.referenceDirections().length];
        for (int i = 0; i < directions.length; i++) {
            directions[i] = (float) mesh.referenceDirections()[i];
        }
        floats("reference direction", 3, directions);
        variant.reserves().map().ifPresent(map -> {
            float[] factors = new float[map.factor().length];
            for (int e = 0; e < factors.length; e++) {
                factors[e] = (float) Math.min(map.factor()[e], MOST_FACTOR);
            }
            floats("lowest reserve factor", 1, factors);
            ints("reserve mode", map.mode());
            ints("reserve case", map.load());
        });
        xml.append("      </CellData>\n");
    }

    private void cells(Mesh mesh) {
        int count = mesh.elementCount();
        int[] ends = new int[count];
        byte[] types = new byte[count];
        int end = 0;
        for (int e = 0; e < count; e++) {
            end += mesh.cornerCount(e);
            ends[e] = end;
            types[e] = mesh.isTriangle(e) ? TRIANGLE : QUADRILATERAL;
        }
        int[] corners = new int[end];
        int at = 0;
        for (int e = 0; e < count; e++) {
            for (int i = 0; i < mesh.cornerCount(e); i++) {
                corners[at++] = mesh.elementNodes()[4 * e + i];
            }
        }
        xml.append("      <Cells>\n");
        ints("connectivity", corners);
        ints("offsets", ends);
        array("UInt8", "types", 1, types);
        xml.append("      </Cells>\n");
    }

    private static float[] spread(Mesh mesh, float[] byRegion) {
        float[] result = new float[mesh.elementCount()];
        for (int e = 0; e < result.length; e++) {
            result[e] = byRegion[mesh.elementRegions()[e]];
        }
        return result;
    }

    private static int[] spread(Mesh mesh, int[] byRegion) {
        int[] result = new int[mesh.elementCount()];
        for (int e = 0; e < result.length; e++) {
            result[e] = byRegion[mesh.elementRegions()[e]];
        }
        return result;
    }

    /** What the numbers mean, as a comment: arrays of text are legal, but not every reader takes them. */
    private void names(String what, List<String> values) {
        StringJoiner list = new StringJoiner("; ", "    <!-- " + what + ": ", " -->\n");
        for (int i = 0; i < values.size(); i++) {
            list.add(i + " = " + values.get(i).replace("--", "- -"));
        }
        xml.append(list);
    }

    private void doubles(String name, int components, double[] values) {
        ByteBuffer buffer = ByteBuffer.allocate(8 * values.length).order(ByteOrder.LITTLE_ENDIAN);
        buffer.asDoubleBuffer().put(values);
        array("Float64", name, components, buffer.array());
    }

    private void floats(String name, int components, float[] values) {
        ByteBuffer buffer = ByteBuffer.allocate(4 * values.length).order(ByteOrder.LITTLE_ENDIAN);
        buffer.asFloatBuffer().put(values);
        array("Float32", name, components, buffer.array());
    }

    private void ints(String name, int[] values) {
        ByteBuffer buffer = ByteBuffer.allocate(4 * values.length).order(ByteOrder.LITTLE_ENDIAN);
        buffer.asIntBuffer().put(values);
        array("Int32", name, 1, buffer.array());
    }

    private void array(String type, String name, int components, byte[] data) {
        xml.append("        <DataArray type=\"" + type + "\" Name=\"" + escape(name) + "\" NumberOfComponents=\""
                + components + "\" format=\"appended\" offset=\"" + offset + "\"/>\n");
        append(data);
    }

    /** Number of blocks, size of a block, size of a short last one or 0, packed sizes; then the packed blocks. */
    private void append(byte[] data) {
        int blocks = (data.length + BLOCK - 1) / BLOCK;
        int[] sizes = new int[blocks];
        byte[] all = new byte[data.length + 64 * (blocks + 1)];
        int length = 0;
        Deflater deflater = new Deflater(1);
        try {
            for (int b = 0; b < blocks; b++) {
                deflater.reset();
                deflater.setInput(data, b * BLOCK, Math.min(BLOCK, data.length - b * BLOCK));
                deflater.finish();
                int from = length;
                while (!deflater.finished()) {
                    length += deflater.deflate(all, length, all.length - length);
                }
                sizes[b] = length - from;
            }
        } finally {
            deflater.end();
        }
        ByteBuffer header = ByteBuffer.allocate(4 * (3 + blocks)).order(ByteOrder.LITTLE_ENDIAN);
        header.putInt(blocks).putInt(BLOCK).putInt(data.length % BLOCK);
        for (int size : sizes) {
            header.putInt(size);
        }
        byte[] front = Base64.getEncoder().encode(header.array());
        byte[] body = Base64.getEncoder().encode(java.util.Arrays.copyOf(all, length));
        packed.add(front);
        packed.add(body);
        offset += front.length + body.length;
    }

    private static String escape(String text) {
        return text.replace("&", "&amp;").replace("<", "&lt;").replace("\"", "&quot;");
    }
}
