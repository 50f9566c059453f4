// SPDX-License-Identifier: Apache-2.0
package tubwright.engine.trim;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import tubwright.engine.design.Design;
import tubwright.engine.response.Study;
import tubwright.engine.structure.Structure;
import tubwright.engine.structure.Tub;
import tubwright.numerics.solver.Solvers;

/**
 * A short tapered box of four zones, two walls, a patch, two pieces and a bonded seam; small enough that thousands of
 * layups can be solved. Tape at an angle makes left and right differ.
 */
final class SmallTub {
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
            patches:
              doublers:
                at: [front leg, rear leg]
                diameter: 160 mm
                stack: "[20u/0c]"
                plies: {c: pw-t650-976, u: ud-as4-3502}
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
            mesh:
              size: 110 mm
            """;

    private static final Tub TUB = read();
    private static final Structure STRUCTURE = Structure.of(TUB, Study.mesh(TUB, TUB.meshSize()));

    private SmallTub() {}

    static Tub tub() {
        return TUB;
    }

    static Structure structure() {
        return STRUCTURE;
    }

    static LoadedTub loaded() {
        return LoadedTub.solve(STRUCTURE, TUB.cases().getFirst(), Layup.of(TUB), Solvers.pureJava());
    }

    /** The structure assembled, factorised and solved anew with a layup (no joints changed): compliance in J. */
    static double solvedAnew(Layup layup) {
        double[][] laminates = STRUCTURE.mesh().regions().stream()
                .map(r -> {
                    var whole = layup.laminate(new Blocks.Block(r.zone(), r.patches(), false, 0));
                    return (r.mirrored() ? whole.mirrored() : whole).stiffness().matrix();
                })
                .toArray(double[][]::new);
        return solvedAnew(laminates);
    }

    /** The same with given laminates of the regions. */
    static double solvedAnew(double[][] laminates) {
        var solution = tubwright.engine.structure.StaticSolver.solve(
                        STRUCTURE.withLaminates(laminates),
                        List.of(TUB.cases().getFirst()),
                        Solvers.pureJava(),
                        new tubwright.engine.structure.StepTimes())
                .getFirst();
        return 2 * solution.work();
    }

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
