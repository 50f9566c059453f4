// SPDX-License-Identifier: Apache-2.0
package tubwright.engine.safety.damage;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import tubwright.engine.design.Design;
import tubwright.engine.structure.Tub;
import tubwright.numerics.solver.Solvers;

/** A short box of carbon sandwich with two walls, a bonded seam and cases of every kind, to be hit. */
final class HitBox {
    private static final String TEXT = """
            tub: box
            shape:
              loft: ruled
              strips: [floor, flank, deck]
              frames:
                - station: 0 mm
                  outline: (0, 150) (160, 150) (160, 400) (0, 400) mm
                - station: 900 mm
                  outline: (0, 100) (220, 100) (230, 460) (0, 460) mm
              walls:
                front: {station: 0 mm}
                rear: {station: 900 mm}
            laminates:
              skin:
                stack: "[45c/30u/0c/core/0c/30u/45c]"
                plies: {c: pw-t650-976, u: ud-as4-3502}
                core: al-honeycomb-3.1-small-cell
                core thickness: 15 mm
                film: film-epoxy-150
              tape:
                stack: "[45c/45c]"
                plies: {c: pw-t650-976}
            zones:
              floor: {on: floor, laminate: skin}
              flank: {on: flank, laminate: skin}
              deck:  {on: deck, laminate: skin}
              walls: {on: [front, rear], laminate: skin}
            pieces:
              lower: [floor, flank]
              upper: [deck]
            joints:
              waist:
                seams: all
                bonded: {overlap: 30 mm, adhesive: paste-epoxy, bond line: 0.25 mm, tape: tape}
              edges:
                walls: all
                bonded: {arrangement: tee, overlap: 30 mm, adhesive: paste-epoxy, bond line: 0.25 mm, tape: tape}
            hardpoints:
              front leg: {on: flank, x: 120 mm, z: 280 mm, footprint: 60 mm, mass: 50 g}
              rear leg:  {on: flank, x: 780 mm, z: 280 mm, footprint: 60 mm, mass: 50 g}
              top front: {on: deck, x: 150 mm, y: 80 mm, footprint: 60 mm, mass: 50 g}
              low rear:  {on: floor, x: 750 mm, y: 80 mm, footprint: 60 mm, mass: 50 g}
            cases:
              torsion:
                hold: {rear leg: "x, y, z", low rear: "x, y, z"}
                load at: [front leg, top front]
                couple: 1000 N·m
                front station: 120 mm
                rear station: 780 mm
              bending:
                hold: {rear leg: "x, y, z", low rear: "x, y, z", front leg: z}
                load at: [top front]
                force: 1000 N
                direction: down
                station: 450 mm
              strapped:
                hold: {rear leg: "x, y, z", low rear: "x, y, z", top front: "y, z"}
                forces: {front leg: "500, 100, -900 N"}
                acceleration: 0, 0, -1 g0
              thrown:
                forces: {front leg R: "0, 0, 900 N", rear leg L: "200, 0, -900 N"}
            mesh:
              size: 90 mm
            """;

    private static final Tub TUB = read();
    private static final DamageModel MODEL = DamageModel.of(TUB, TUB.meshSize(), Solvers.pureJava());

    private HitBox() {}

    static Tub tub() {
        return TUB;
    }

    static DamageModel model() {
        return MODEL;
    }

    private static Tub read() {
        try {
            Path folder = Files.createTempDirectory("hit");
            Path file = folder.resolve(Design.FILE_NAME);
            try {
                Files.writeString(file, TEXT);
                return Design.read(folder).asDesigned().tub();
            } finally {
                Files.delete(file);
                Files.delete(folder);
            }
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }
}
