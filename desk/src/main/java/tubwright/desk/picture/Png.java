// SPDX-License-Identifier: Apache-2.0
package tubwright.desk.picture;

import java.io.ByteArrayOutputStream;
import java.nio.ByteBuffer;
import java.nio.charset.StandardCharsets;
import java.util.zip.CRC32;
import java.util.zip.Deflater;

/** Writes images as PNG (ISO/IEC 15948:2004), 8 bits each of red, green, blue and alpha. */
public final class Png {
    private static final byte[] SIGNATURE = {(byte) 0x89, 'P', 'N', 'G', '\r', '\n', 0x1a, '\n'};
    private static final int BYTES_PER_PIXEL = 4;

    private Png() {}

    /** The bytes of a PNG file that shows {@code image}. */
    public static byte[] encode(Image image) {
        ByteArrayOutputStream out = new ByteArrayOutputStream(1 << 16);
        out.writeBytes(SIGNATURE);
        ByteBuffer header = ByteBuffer.allocate(13);
        header.putInt(image.width()).putInt(image.height());
        header.put((byte) 8).put((byte) 6).put((byte) 0).put((byte) 0).put((byte) 0);
        chunk(out, "IHDR", header.array(), 13);
        byte[] filtered = filter(image);
        Deflater deflater = new Deflater(4);
        try {
            deflater.setInput(filtered);
            deflater.finish();
            byte[] packed = new byte[filtered.length + filtered.length / 100 + 64];
            int length = 0;
            while (!deflater.finished()) {
                length += deflater.deflate(packed, length, packed.length - length);
            }
            chunk(out, "IDAT", packed, length);
        } finally {
            deflater.end();
        }
        chunk(out, "IEND", new byte[0], 0);
        return out.toByteArray();
    }

    /** Each row is written as the difference from the pixel before or above, whichever leaves the smaller numbers. */
    private static byte[] filter(Image image) {
        int row = image.width() * BYTES_PER_PIXEL;
        byte[] result = new byte[(row + 1) * image.height()];
        byte[] above = new byte[row];
        byte[] here = new byte[row];
        for (int y = 0; y < image.height(); y++) {
            for (int x = 0; x < image.width(); x++) {
                int p = image.pixels()[y * image.width() + x];
                here[4 * x] = (byte) (p >> 16);
                here[4 * x + 1] = (byte) (p >> 8);
                here[4 * x + 2] = (byte) p;
                here[4 * x + 3] = (byte) (p >> 24);
            }
            long bySide = 0;
            long byAbove = 0;
            for (int i = 0; i < row; i++) {
                byte left = i < BYTES_PER_PIXEL ? 0 : here[i - BYTES_PER_PIXEL];
                bySide += Math.abs((byte) (here[i] - left));
                byAbove += Math.abs((byte) (here[i] - above[i]));
            }
            boolean side = bySide < byAbove;
            int at = y * (row + 1);
            result[at++] = (byte) (side ? 1 : 2);
            for (int i = 0; i < row; i++) {
                byte left = i < BYTES_PER_PIXEL ? 0 : here[i - BYTES_PER_PIXEL];
                result[at + i] = (byte) (here[i] - (side ? left : above[i]));
            }
            byte[] swap = above;
            above = here;
            here = swap;
        }
        return result;
    }

    private static void chunk(ByteArrayOutputStream out, String type, byte[] data, int length) {
        byte[] name = type.getBytes(StandardCharsets.US_ASCII);
        CRC32 crc = new CRC32();
        crc.update(name);
        crc.update(data, 0, length);
        out.writeBytes(ByteBuffer.allocate(4).putInt(length).array());
        out.writeBytes(name);
        out.write(data, 0, length);
        out.writeBytes(ByteBuffer.allocate(4).putInt((int) crc.getValue()).array());
    }
}
