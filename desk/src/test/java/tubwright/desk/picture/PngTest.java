// SPDX-License-Identifier: Apache-2.0
package tubwright.desk.picture;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.awt.image.BufferedImage;
import java.io.ByteArrayInputStream;
import java.io.IOException;
import java.util.Random;
import javax.imageio.ImageIO;
import org.junit.jupiter.api.Test;

/** An independent reader, the JDK's ImageIO, sees the pixels that were written. */
class PngTest {
    @Test
    void everyPixelComesBack() throws IOException {
        Random random = new Random(7);
        int[] pixels = random.ints(61 * 37).toArray();
        BufferedImage read = ImageIO.read(new ByteArrayInputStream(Png.encode(new Image(61, 37, pixels))));
        assertEquals(61, read.getWidth());
        assertEquals(37, read.getHeight());
        for (int i = 0; i < pixels.length; i++) {
            assertEquals(pixels[i], read.getRGB(i % 61, i / 61), "pixel " + i);
        }
    }

    @Test
    void smoothPicturesPackWell() {
        int[] pixels = new int[200 * 200];
        for (int i = 0; i < pixels.length; i++) {
            pixels[i] = 0xff000000 | i % 200 << 16 | i / 200 << 8;
        }
        int size = Png.encode(new Image(200, 200, pixels)).length;
        assertEquals(true, size < 200 * 200 / 4, size + " bytes");
    }
}
