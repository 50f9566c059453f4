// SPDX-License-Identifier: Apache-2.0
package tubwright.desk.command;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.stream.Stream;
import tubwright.desk.FakeBench;
import tubwright.desk.Typed;

/**
 * A straight tray and lid that meet in the middle of a round corner: they unroll, so that sizes and areas are known. What is
 * made of it is told to commands as a design file.
 */
record RoundBox(Path folder, String text) {
    private static final String SHAPE = """
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
            pieces:
              tray: [floor, flank]
              lid: [deck]
            mesh: {size: 40 mm}
            """;

    /** A variant of sheet metal, for designs whose laminate is called skin. */
    static final String METAL = """
            variants:
              metal:
                construction: sheet
                replace laminates:
                  skin: {sheet: al-6061-t6, thickness: 1.2 mm}
            """;

    /** With walls, laminates and zones as told, written into the folder. */
    static RoundBox in(Path folder, String walls, String rest) throws IOException {
        String text = SHAPE.replace("pieces:\n", walls.indent(2) + "pieces:\n") + rest;
        Files.writeString(folder.resolve("tub.yaml"), text);
        return new RoundBox(folder, text);
    }

    /** What a command says to it. */
    Typed typed(String command, String... more) {
        return Typed.on(
                new FakeBench(),
                Stream.concat(Stream.of(command, folder.toString()), Stream.of(more))
                        .toArray(String[]::new));
    }
}
