// SPDX-License-Identifier: Apache-2.0
package tubwright.desk.page;

import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.OutputStream;
import java.nio.ByteBuffer;
import java.nio.ByteOrder;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.List;
import tools.jackson.databind.json.JsonMapper;

/**
 * A record with long arrays beside it, which a browser can lay its typed arrays over without reading a digit.
 *
 * <p>Eight bytes of prelude: the letters TWB1 and the length of the head (little-endian, as all numbers here). Then the
 * head, JSON of {@link Head} padded with blanks to a multiple of eight bytes, then the arrays in their order, each padded
 * with zeros to a multiple of eight.
 */
public final class BinaryDocument {
    private static final int MAGIC = 'T' | 'W' << 8 | 'B' << 16 | '1' << 24;

    private final Object document;
    private final List<Entry> entries = new ArrayList<>();
    private final List<byte[]> blocks = new ArrayList<>();
    private int offset;

    /** An array. */
    @Meaning("An array beside the document")
    public record Entry(
            String name,
            Type type,
            @Meaning("of numbers") int count,

            @Meaning("of its first byte, counted from the end of the head")
            int offset) {}

    /** Kinds of number. */
    public enum Type {
        FLOAT32,
        INT32
    }

    /**
     * The head.
     *
     * @param document the record
     * @param arrays what follows
     */
    public record Head(Object document, List<Entry> arrays) {}

    public BinaryDocument(Object document) {
        this.document = document;
    }

    /** Adds numbers, rounded to single precision. */
    public BinaryDocument floats(String name, double[] values) {
        ByteBuffer bytes = block(4 * values.length);
        for (double value : values) {
            bytes.putFloat((float) value);
        }
        return add(name, Type.FLOAT32, values.length, bytes);
    }

    /** Adds whole numbers. */
    public BinaryDocument ints(String name, int[] values) {
        ByteBuffer bytes = block(4 * values.length);
        bytes.asIntBuffer().put(values);
        return add(name, Type.INT32, values.length, bytes);
    }

    /** The whole of it. */
    public byte[] bytes() {
        byte[] head = JsonMapper.builder().build().writeValueAsBytes(new Head(document, entries));
        int padded = padded(head.length);
        ByteArrayOutputStream stream = new ByteArrayOutputStream(8 + padded + offset);
        try {
            write(head, padded, stream);
        } catch (IOException impossible) {
            throw new IllegalStateException(impossible);
        }
        return stream.toByteArray();
    }

    private void write(byte[] head, int padded, OutputStream stream) throws IOException {
        stream.write(ByteBuffer.allocate(8)
                .order(ByteOrder.LITTLE_ENDIAN)
                .putInt(MAGIC)
                .putInt(padded)
                .array());
        stream.write(head);
        stream.write(" ".repeat(padded - head.length).getBytes(StandardCharsets.US_ASCII));
        for (byte[] block : blocks) {
            stream.write(block);
        }
    }

    private BinaryDocument add(String name, Type type, int count, ByteBuffer bytes) {
        entries.add(new Entry(name, type, count, offset));
        blocks.add(bytes.array());
        offset += bytes.capacity();
        return this;
    }

    private static ByteBuffer block(int length) {
        return ByteBuffer.allocate(padded(length)).order(ByteOrder.LITTLE_ENDIAN);
    }

    private static int padded(int length) {
        return (length + 7) / 8 * 8;
    }
}
