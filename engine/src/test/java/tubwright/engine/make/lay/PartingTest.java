// SPDX-License-Identifier: Apache-2.0
package tubwright.engine.make.lay;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Path;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import tubwright.engine.design.BoxText;
import tubwright.engine.design.Design;
import tubwright.engine.design.text.DesignError;
import tubwright.engine.laminate.LayerRole;
import tubwright.engine.structure.StructureException;
import tubwright.numerics.solver.Solvers;

/** A tub that swells: round its fillets no film lies in one sheet, and its core is deeper than they are wide. */
class PartingTest {
    private static final String SWOLLEN = """
            tub: swollen
            shape:
              strips: [floor, flank, deck]
              frames:
                - station: 0 mm
                  outline: (0, 100) (120, 100) (140, 300) (0, 300) mm
                  radii: 0, 20, 20, 0 mm
                - station: 300 mm
                  outline: (0, 75) (143, 75) (163, 308) (0, 308) mm
                  radii: 0, 20, 20, 0 mm
                - station: 600 mm
                  outline: (0, 100) (120, 100) (140, 300) (0, 300) mm
                  radii: 0, 20, 20, 0 mm
            laminates:
              skin:
                stack: "[45c/core/45c]"
                plies: {c: pw-t650-976}
                core: al-honeycomb-3.1-small-cell
                core thickness: 20 mm
                film: film-epoxy-150
            zones:
              all: {on: [floor, flank, deck], laminate: skin}
            %s
            """ + BoxText.trayAndLid();

    private static Design design(Path folder, String laying) throws IOException {
        return BoxText.read(folder, SWOLLEN.formatted(laying));
    }

    private static LaidTub laid(Design design) {
        Design.Variant tub = design.asDesigned();
        return PlyLayer.lay(tub.tub(), tub.laying(), 0.02, Solvers.pureJava(), (ply, done, all) -> {});
    }

    /** In one sheet the films of the tray are off by per cents; cut along the fillet each part keeps its lengths. */
    @Test
    void filmIsCutAlongTheFilletsAndThenKeepsItsLengths(@TempDir Path folder) throws IOException {
        LaidTub tub = laid(design(folder, ""));
        for (int step : new int[] {2, 4}) {
            List<DrapedPly> parts = tub.plies().stream()
                    .filter(p -> p.ply().piece().equals("tray") && p.ply().sequence() == step)
                    .toList();
            assertTrue(parts.size() > 1, "step " + step);
            double area = 0;
            double mould = 0;
            for (DrapedPly part : parts) {
                assertEquals(LayerRole.FILM, part.ply().role());
                assertTrue(
                        part.flat().distortion().beyond() <= DrapedPly.CRUMBS,
                        part.ply().name() + part.flat().distortion());
                assertTrue(
                        Math.abs(part.flat().distortion().area()) < 2e-3,
                        part.ply().name());
                assertTrue(
                        part.advice().getLast().startsWith("cut in " + parts.size() + " parts"),
                        part.advice().toString());
                area += part.figures().area();
            }
            for (int e = 0; e < tub.mesh().elementCount(); e++) {
                mould +=
                        tub.mesh().region(e).piece().equals("tray") ? tub.mesh().area(e) : 0;
            }
            assertEquals(mould, area, 1e-9);
        }
    }

    /** Twenty millimetres of core leave nothing of a fillet of 20 mm: there the inner face is raised, but evenly. */
    @Test
    void clothOnTheInnerFaceShearsLittleMoreThanOnTheMould(@TempDir Path folder) throws IOException {
        LaidTub tub = laid(design(folder, ""));
        List<DrapedPly> cloth = tub.plies().stream()
                .filter(p -> p.ply().piece().equals("tray") && p.ply().cloth())
                .toList();
        double outer = cloth.getFirst().figures().meanShear();
        double inner = cloth.getLast().figures().meanShear();
        assertTrue(inner < 1.5 * outer, Math.toDegrees(inner) + " against " + Math.toDegrees(outer));
        assertEquals(
                0,
                cloth.getLast().figures().bare(),
                1e-3 * cloth.getLast().figures().area());
    }

    @Test
    void theDesignerChoosesWhereClothIsLaidFromAndHowItIsTurned(@TempDir Path folder) throws IOException {
        LaidTub tub = laid(design(folder, """
                laying:
                  tray: {start: "300, 0, 75 mm"}
                  tray 01: {start: "200, 100, 80 mm", turned: 3 deg}"""));
        DrapedPly first = tub.plies().getFirst();
        assertEquals(0.2, first.start()[0], 0.03);
        assertEquals(Math.toRadians(3), first.turned(), 1e-12);
        DrapedPly last = tub.plies().stream()
                .filter(p -> p.ply().piece().equals("tray") && p.ply().cloth())
                .reduce((a, b) -> b)
                .orElseThrow();
        assertEquals(0.3, last.start()[0], 0.03);
        assertEquals(0, last.turned(), 1e-12);
    }

    @Test
    void aStartOnNothingIsRefusedWithItsLineAndWhatWouldBeRight(@TempDir Path folder) throws IOException {
        String beside = told(folder, "laying: {tray: {start: \"300, 0, 500 mm\"}}");
        assertTrue(beside.contains("tub.yaml:23:"), beside);
        assertTrue(beside.contains("lies "), beside);
        assertTrue(beside.contains("nearest to it is"), beside);
        String unknown = told(folder, "laying: {tary: {start: \"300, 0, 75 mm\"}}");
        assertTrue(unknown.contains("there is no piece and no cloth ply of the skin of that name"), unknown);
        assertTrue(unknown.contains("lid, tray"), unknown);
    }

    private static String told(Path folder, String laying) throws IOException {
        Design design = design(folder, laying);
        StructureException fault = assertThrows(StructureException.class, () -> laid(design));
        DesignError told = design.explain(design.asDesigned(), fault);
        return told.getMessage();
    }
}
