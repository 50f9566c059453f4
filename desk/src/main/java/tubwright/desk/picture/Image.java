// SPDX-License-Identifier: Apache-2.0
package tubwright.desk.picture;

/**
 * Pixels row by row from the top left.
 *
 * @param width pixels
 * @param height pixels
 * @param pixels one per pixel: alpha, red, green, blue from the highest byte down, colour not multiplied by alpha;
 *     shared, not to be modified
 */
public record Image(int width, int height, int[] pixels) {
    public Image {
        if (pixels.length != width * height) {
            throw new IllegalArgumentException("an image of " + width + " by " + height + " needs as many pixels");
        }
    }
}
