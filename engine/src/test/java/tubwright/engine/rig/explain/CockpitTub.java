// SPDX-License-Identifier: Apache-2.0
package tubwright.engine.rig.explain;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import tubwright.engine.design.Design;
import tubwright.engine.structure.Case;
import tubwright.engine.structure.Tub;

/** A two-metre box with a cockpit between two walls: small enough to be solved some hundred times in a test. */
public final class CockpitTub {
    private static final String TEXT = """
            tub: box
            shape:
              loft: ruled
              strips: [floor, flank, deck]
              frames:
                - station: 0 mm
                  outline: (0, 150) (160, 150) (160, 400) (0, 400) mm
                - station: 2000 mm
                  outline: (0, 100) (240, 100) (250, 460) (0, 460) mm
              openings:
                cockpit: {view: above, strips: [deck], x: 750 .. 1350 mm, width: 300 mm, corner: 60 mm}
              walls:
                front: {station: 0 mm}
                dash: {station: 700 mm}
                seat back: {station: 1400 mm}
                rear: {station: 2000 mm}
            laminates:
              skin:
                stack: "[45c/0u/45c/core/45c/0u/45c]"
                plies: {c: pw-t650-976, u: ud-as4-3502}
                core: al-honeycomb-3.1-small-cell
                core thickness: 12 mm
                film: film-epoxy-150
              tape:
                stack: "[45c/45c]"
                plies: {c: pw-t650-976}
            zones:
              skin: {on: [floor, flank, deck], laminate: skin}
              walls: {on: [front, dash, seat back, rear], laminate: skin}
            pieces:
              lower: [floor, flank]
              upper: [deck]
            joints:
              waist:
                seams: all
                riveted: {diameter: 4 mm, pitch: 40 mm, fastener: al-2024-t3, sheets: "1.2, 1.2 mm", sheet material: al-6061-t6, flange: 18 mm}
              edges:
                walls: all
                riveted: {diameter: 4 mm, pitch: 40 mm, fastener: al-2024-t3, sheets: "1.2, 1.2 mm", sheet material: al-6061-t6, flange: 18 mm}
            hardpoints:
              front leg: {on: flank, x: 150 mm, z: 280 mm, footprint: 60 mm, mass: 50 g}
              top front: {on: deck, x: 150 mm, y: 80 mm, footprint: 60 mm, mass: 50 g}
              rear leg:  {on: flank, x: 1850 mm, z: 280 mm, footprint: 60 mm, mass: 50 g}
              low rear:  {on: floor, x: 1850 mm, y: 120 mm, footprint: 60 mm, mass: 50 g}
            cases:
              torsion:
                hold: {rear leg: "x, y, z", low rear: "x, y, z"}
                load at: [front leg, top front]
                couple: 1000 N·m
                front station: 150 mm
                rear station: 1850 mm
            mesh:
              size: 120 mm
            """;

    public static final Tub TUB = read();
    public static final Case.Torsion TORSION = (Case.Torsion) TUB.cases().getFirst();

    /** Gauge pairs of a test; the last is at the held end. */
    public static final double[] STATIONS = {0.15, 0.5, 0.72, 1.0, 1.38, 1.6};

    public static final double HELD = 1.85;

    private CockpitTub() {}

    private static Tub read() {
        try {
            Path file = Files.createTempFile("box", ".yaml");
            try {
                Files.writeString(file, TEXT);
                return Design.read(file).asDesigned().tub();
            } finally {
                Files.delete(file);
            }
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }
}
