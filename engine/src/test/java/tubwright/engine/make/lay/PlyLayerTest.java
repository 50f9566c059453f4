// SPDX-License-Identifier: Apache-2.0
package tubwright.engine.make.lay;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Path;
import java.util.concurrent.CancellationException;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import tubwright.engine.design.BoxText;
import tubwright.engine.make.ply.LaidPly;
import tubwright.engine.structure.Tub;
import tubwright.numerics.solver.Solvers;

/**
 * A box of one section from end to end, with round corners: it unrolls, so nothing laid on it may shear, stretch or turn,
 * and its patterns are as large as its faces.
 */
class PlyLayerTest {
    private static final String BOX = BoxText.rounded() + """
              walls:
                front: {station: 0 mm}
            laminates:
              skin:
                stack: "[45c/0u/0c/core/45c]"
                plies: {c: pw-t650-976, u: ud-as4-3502}
                core: al-honeycomb-3.1-small-cell
                core thickness: 10 mm
                film: film-epoxy-150
              plate: {stack: "[0c/30c]", plies: {c: pw-t650-976}}
            zones:
              lower: {on: [floor, flank], laminate: skin}
              upper: {on: deck, laminate: skin}
              wall: {on: front, laminate: plate}
            """ + BoxText.trayAndLid();

    private static LaidTub laid(Path folder) throws IOException {
        return PlyLayer.lay(tub(folder), 0.025, Solvers.pureJava(), (ply, done, all) -> {});
    }

    private static Tub tub(Path folder) throws IOException {
        return BoxText.read(folder, BOX).asDesigned().tub();
    }

    @Test
    void nothingShearsOrTurnsOnABoxThatUnrolls(@TempDir Path folder) throws IOException {
        LaidTub box = laid(folder);
        // Tray: 45c over the whole, tape, 0c, film, core, film, 45c; the lid the same; the wall two plies.
        assertEquals(16, box.plies().size());
        for (DrapedPly each : box.plies()) {
            String name = each.ply().name();
            boolean inner = each.ply().depths()[0] > 0.005;
            assertEquals(0, each.figures().bare(), 1e-9, name);
            // The net's threads are straight; told in an element they are chords over a fillet: up to a tenth of a
            // degree.
            assertEquals(0, Math.toDegrees(each.figures().largestShear()), inner ? 1 : 0.1, name);
            if (each.ply().cloth() || each.ply().tape()) {
                assertEquals(0, Math.toDegrees(each.figures().largestTurn()), inner ? 1 : 0.1, name);
            }
            // Half a corner of the lid, one and a half of the tray on each side turn inward; the wall is flat.
            double turned = name.startsWith("front") ? 0 : name.startsWith("lid") ? Math.PI / 2 : 3 * Math.PI / 2;
            double expected = each.figures().area() - turned * each.ply().depths()[0] * 0.5;
            assertEquals(expected, each.flat().area(), 0.003 * expected, name);
        }
    }

    /** An inner face of a box with corners turned through 180° in all is shorter round by π times its depth. */
    @Test
    void innerPliesAreCutSmallerByTheTurnOfTheSectionTimesTheirDepth(@TempDir Path folder) throws IOException {
        LaidTub box = laid(folder);
        DrapedPly outer = find(box, "tray 01");
        DrapedPly inner = find(box, "tray 07");
        double depth = inner.ply().depths()[0];
        double removed = (outer.flat().area() - inner.flat().area()) / 0.5;
        // From the centreline to the waist the tray turns through 90° and half of the next corner's 90°, on each side.
        assertEquals(2 * (Math.PI / 2 + Math.PI / 4) * depth, removed, 0.02 * removed);
    }

    @Test
    void aListenerMayStopTheWork(@TempDir Path folder) throws IOException {
        Tub tub = tub(folder);
        assertThrows(
                CancellationException.class,
                () -> PlyLayer.lay(tub, 0.03, Solvers.pureJava(), new PlyLayer.Progress() {
                    @Override
                    public void laid(LaidPly ply, int done, int all) {
                        assertTrue(done <= all);
                    }

                    @Override
                    public boolean cancelled() {
                        return true;
                    }
                }));
    }

    private static DrapedPly find(LaidTub tub, String name) {
        return tub.plies().stream()
                .filter(p -> p.ply().name().equals(name))
                .findFirst()
                .orElseThrow();
    }
}
