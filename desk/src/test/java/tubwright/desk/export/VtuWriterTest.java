// SPDX-License-Identifier: Apache-2.0
package tubwright.desk.export;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;

import java.io.ByteArrayInputStream;
import java.io.ByteArrayOutputStream;
import java.nio.ByteBuffer;
import java.nio.ByteOrder;
import java.nio.charset.StandardCharsets;
import java.util.Base64;
import java.util.HashMap;
import java.util.Map;
import java.util.zip.Inflater;
import javax.xml.parsers.DocumentBuilderFactory;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.w3c.dom.Document;
import org.w3c.dom.Element;
import org.w3c.dom.NodeList;
import tubwright.desk.FakeRun;
import tubwright.desk.answer.RunAnswer;
import tubwright.engine.mesh.Mesh;
import tubwright.engine.response.VariantAnswer;

/** A small reader of its own, made from the format's description, gets back what was written. */
class VtuWriterTest {
    private static final RunAnswer ANSWER = FakeRun.answer();
    private static final VariantAnswer VARIANT = ANSWER.main();
    private static final Map<String, ByteBuffer> ARRAYS = new HashMap<>();
    private static String zoneNames = "";
    private static Element piece;

    @BeforeAll
    static void read() throws Exception {
        ByteArrayOutputStream out = new ByteArrayOutputStream();
        VtuWriter.write(VARIANT, ANSWER.layups(), out);
        Document document = DocumentBuilderFactory.newDefaultInstance()
                .newDocumentBuilder()
                .parse(new ByteArrayInputStream(out.toByteArray()));
        piece = (Element) document.getElementsByTagName("Piece").item(0);
        String appended = document.getElementsByTagName("AppendedData").item(0).getTextContent();
        appended = appended.substring(appended.indexOf('_') + 1).strip();
        NodeList arrays = document.getElementsByTagName("DataArray");
        for (int i = 0; i < arrays.getLength(); i++) {
            Element array = (Element) arrays.item(i);
            ARRAYS.put(array.getAttribute("Name"), unpack(appended, Integer.parseInt(array.getAttribute("offset"))));
        }
        String text = out.toString(StandardCharsets.UTF_8);
        int from = text.indexOf("<!-- zone: ") + "<!-- zone: ".length();
        zoneNames = text.substring(from, text.indexOf(" -->", from));
    }

    /** Header and blocks are two runs of base64: numbers of 4 bytes, little end first, then the packed blocks. */
    private static ByteBuffer unpack(String appended, int offset) throws Exception {
        int blocks = ByteBuffer.wrap(Base64.getDecoder().decode(appended.substring(offset, offset + 8)))
                .order(ByteOrder.LITTLE_ENDIAN)
                .getInt();
        int headerChars = (4 * (3 + blocks) + 2) / 3 * 4;
        ByteBuffer header = ByteBuffer.wrap(
                        Base64.getDecoder().decode(appended.substring(offset, offset + headerChars)))
                .order(ByteOrder.LITTLE_ENDIAN);
        int block = header.getInt(4);
        int last = header.getInt(8);
        int size = blocks == 0 ? 0 : last == 0 ? blocks * block : (blocks - 1) * block + last;
        int packed = 0;
        for (int b = 0; b < blocks; b++) {
            packed += header.getInt(12 + 4 * b);
        }
        int from = offset + headerChars;
        byte[] body = Base64.getDecoder().decode(appended.substring(from, from + (packed + 2) / 3 * 4));
        byte[] data = new byte[size];
        int in = 0;
        int done = 0;
        for (int b = 0; b < blocks; b++) {
            Inflater inflater = new Inflater();
            inflater.setInput(body, in, header.getInt(12 + 4 * b));
            done += inflater.inflate(data, done, size - done);
            assertEquals(true, inflater.finished());
            inflater.end();
            in += header.getInt(12 + 4 * b);
        }
        assertEquals(size, done);
        return ByteBuffer.wrap(data).order(ByteOrder.LITTLE_ENDIAN);
    }

    @Test
    void pointsComeBackExactly() {
        Mesh mesh = VARIANT.mesh();
        assertEquals(Integer.toString(mesh.nodeCount()), piece.getAttribute("NumberOfPoints"));
        double[] read = new double[mesh.nodes().length];
        ARRAYS.get("position (m)").asDoubleBuffer().get(read);
        assertArrayEquals(mesh.nodes(), read);
    }

    @Test
    void cellsHaveTheirCornersAndTypes() {
        Mesh mesh = VARIANT.mesh();
        assertEquals(Integer.toString(mesh.elementCount()), piece.getAttribute("NumberOfCells"));
        ByteBuffer types = ARRAYS.get("types");
        ByteBuffer offsets = ARRAYS.get("offsets");
        ByteBuffer corners = ARRAYS.get("connectivity");
        int from = 0;
        for (int e = 0; e < mesh.elementCount(); e++) {
            int to = offsets.getInt(4 * e);
            assertEquals(mesh.cornerCount(e), to - from);
            assertEquals(mesh.isTriangle(e) ? 5 : 9, types.get(e));
            for (int i = 0; i < mesh.cornerCount(e); i++) {
                assertEquals(mesh.elementNodes()[4 * e + i], corners.getInt(4 * (from + i)));
            }
            from = to;
        }
        assertEquals(4 * from, corners.capacity());
    }

    @Test
    void fieldsOfEveryCaseAreThere() {
        double[] u = VARIANT.cases().getFirst().fields().displacements();
        double[] w = VARIANT.cases().getFirst().fields().energyDensities();
        ByteBuffer shifts = ARRAYS.get("displacement, torsion (m)");
        ByteBuffer turns = ARRAYS.get("rotation, torsion (rad)");
        ByteBuffer densities = ARRAYS.get("energy density, torsion (J/m2)");
        int node = VARIANT.mesh().nodeCount() / 2;
        for (int d = 0; d < 3; d++) {
            assertEquals((float) u[6 * node + d], shifts.getFloat(4 * (3 * node + d)));
            assertEquals((float) u[6 * node + 3 + d], turns.getFloat(4 * (3 * node + d)));
        }
        assertEquals(4 * w.length, densities.capacity());
        assertEquals((float) w[17], densities.getFloat(4 * 17));
        assertEquals(true, ARRAYS.containsKey("displacement, bending (m)"));
    }

    @Test
    void zonesAreNumberedInTheOrderOfTheirNames() {
        String[] names = zoneNames.split("; ");
        Mesh mesh = VARIANT.mesh();
        ByteBuffer zones = ARRAYS.get("zone");
        for (int e = 0; e < mesh.elementCount(); e += 7) {
            assertEquals(mesh.region(e).zone(), names[zones.getInt(4 * e)].replaceFirst("^\\d+ = ", ""));
        }
    }
}
