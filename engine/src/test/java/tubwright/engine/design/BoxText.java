// SPDX-License-Identifier: Apache-2.0
package tubwright.engine.design;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;

/** Design text of closed boxes with flat sides and walls across, whose stiffness, loads and stresses are known by hand. */
public final class BoxText {
    private BoxText() {}

    /**
     * Name and shape: strips floor, side and deck, walls "front" and "rear" at its ends.
     *
     * @param width mm
     * @param height mm
     * @param length mm
     */
    public static String shape(int width, int height, int length) {
        String outline = "(0, 0) (%1$d, 0) (%1$d, %2$d) (0, %2$d) mm".formatted(width / 2, height);
        return """
                tub: box
                shape:
                  loft: ruled
                  strips: [floor, side, deck]
                  frames:
                    - {station: 0 mm, outline: "%1$s"}
                    - {station: %2$d mm, outline: "%1$s"}
                  walls:
                    front: {station: 0 mm}
                    rear: {station: %2$d mm}
                """.formatted(outline, length);
    }

    /** The same with a third wall, "middle", half way. */
    public static String shapeWithMiddle(int width, int height, int length) {
        return shape(width, height, length) + "    middle: {station: %d mm}\n".formatted(length / 2);
    }

    /**
     * Name and shape of a straight box 300 mm wide, 200 mm high and 500 mm long whose flanks end in corners of radius 60 mm:
     * it unrolls, so that sizes and areas are known. Strips floor, flank and deck; no walls, which may follow.
     */
    public static String rounded() {
        return """
                tub: box
                shape:
                  loft: ruled
                  strips: [floor, flank, deck]
                  frames:
                    - station: 0 mm
                      outline: (0, 100) (150, 100) (150, 300) (0, 300) mm
                      radii: 0, 60, 60, 0 mm
                    - station: 500 mm
                      outline: (0, 100) (150, 100) (150, 300) (0, 300) mm
                      radii: 0, 60, 60, 0 mm
                """;
    }

    /** Pieces "tray" and "lid" of strips floor, flank and deck, and a coarse mesh: the end of a design. */
    public static String trayAndLid() {
        return """
                pieces:
                  tray: [floor, flank]
                  lid: [deck]
                mesh: {size: 40 mm}
                """;
    }

    /** Hardpoint "pull" in the front wall of a box 300 mm high, "mount" and "top mount" in the rear one. */
    public static String heldAtTheRear() {
        return """
                hardpoints:
                  pull: {on: front, y: 150 mm, z: 150 mm}
                  mount: {on: rear, y: 150 mm, z: 150 mm}
                  top mount: {on: rear, y: 60 mm, z: 250 mm}
                """;
    }

    /** The design of that text, written into a folder and read again. */
    public static Design read(Path folder, String text) throws IOException {
        Files.writeString(folder.resolve(Design.FILE_NAME), text);
        return Design.read(folder);
    }
}
