// SPDX-License-Identifier: Apache-2.0
package tubwright.fleet;

import java.util.List;
import tubwright.engine.design.Design;

/** Small designs for tests. */
public final class Tubes {
    private Tubes() {}

    /** A square tube of sheet metal with end walls, half a metre wide and two long, under torsion and bending. */
    public static final String BOX = """
            tub: Box
            shape:
              loft: ruled
              strips: [floor, flank, deck]
              frames:
                - {station: 0 mm, outline: "(0, 0) (250, 0) (250, 500) (0, 500) mm"}
                - {station: 2000 mm, outline: "(0, 0) (250, 0) (250, 500) (0, 500) mm"}
              walls:
                front: {station: 0 mm}
                rear: {station: 2000 mm}
            laminates:
              skin: {sheet: al-6061-t6, thickness: 2 mm}
              plate: {sheet: al-6061-t6, thickness: 20 mm}
            zones:
              skin: {on: [floor, flank, deck], laminate: skin}
              ends: {on: [front, rear], laminate: plate}
            pieces:
              tube: [floor, flank, deck]
            joints:
              edges: {walls: all, bonded: {arrangement: tee, overlap: 40 mm, adhesive: paste-epoxy, bond line: 0.2 mm}}
            hardpoints:
              front: {on: front, y: 100 mm, z: 250 mm, footprint: 40 mm}
              rear low: {on: rear, y: 100 mm, z: 150 mm, footprint: 40 mm}
              rear high: {on: rear, y: 100 mm, z: 350 mm, footprint: 40 mm}
            cases:
              torsion:
                hold: {rear low: "x, y, z", rear high: "x, y, z"}
                load at: [front]
                couple: 1000 N·m
                front station: 500 mm
                rear station: 1500 mm
            mesh: {size: 100 mm}
            variants:
              thick:
                laminates:
                  skin: {thickness: 4 mm}
            """;

    /** A job on the box. */
    public static Job job(String... readings) {
        return new Job(BOX, "box.yaml", Design.AS_DESIGNED, List.of(readings), 0, "test");
    }

    /** Both frames so wide, mm. */
    public static List<Patch> width(double millimetres) {
        String outline = String.format(
                java.util.Locale.ROOT, "(0, 0) (%1$s, 0) (%1$s, 500) (0, 500) mm", Double.toString(millimetres / 2));
        return List.of(
                new Patch(List.of("shape", "frames", "0", "outline"), outline),
                new Patch(List.of("shape", "frames", "1", "outline"), outline));
    }

    /** The skin so thick. */
    public static List<Patch> gauge(String thickness) {
        return List.of(new Patch(List.of("laminates", "skin", "thickness"), thickness));
    }
}
