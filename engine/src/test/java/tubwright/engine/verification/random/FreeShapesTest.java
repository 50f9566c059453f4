// SPDX-License-Identifier: Apache-2.0
package tubwright.engine.verification.random;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;
import static org.junit.jupiter.api.Assertions.fail;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import tubwright.engine.design.Design;
import tubwright.engine.design.text.DesignError;
import tubwright.engine.response.Progress;
import tubwright.engine.response.Study;
import tubwright.engine.response.VariantAnswer;
import tubwright.engine.shape.ShapeException;
import tubwright.engine.structure.StructureException;
import tubwright.engine.structure.Tub;
import tubwright.numerics.solver.Solvers;

/**
 * Designs of free shape drawn from seeds: each is answered or refused in words, never anything else, and the answers obey
 * the laws. {@code -Dtubwright.designs=300 -Dtubwright.seed=1000} draws more of them, or one again that failed.
 */
class FreeShapesTest {
    private static final long FIRST = Long.getLong("tubwright.seed", 100);
    private static final int DESIGNS = Integer.getInteger("tubwright.designs", 6);

    @TempDir
    Path folder;

    @Test
    void everyDesignIsRefusedInWordsOrAnsweredLawfully() throws IOException {
        int answered = 0;
        Map<String, Integer> refused = new TreeMap<>();
        List<String> faults = new ArrayList<>();
        for (long seed = FIRST; seed < FIRST + DESIGNS; seed++) {
            String where = "seed " + seed;
            try {
                obeys(seed, where);
                answered++;
            } catch (DesignError | StructureException | ShapeException e) {
                assertTrue(e.getMessage().length() > 20, where + " is refused without words: " + e.getMessage());
                refused.merge(
                        e.getMessage().lines().findFirst().orElse("").replaceAll(".*yaml[:0-9]* |[0-9.]+", ""),
                        1,
                        Integer::sum);
            } catch (RuntimeException | AssertionError e) {
                faults.add(where + ": " + e);
                System.out.println(faults.getLast());
                if (faults.size() == 1 && DESIGNS < 20) {
                    fail(where + " (draw it again with -Dtubwright.designs=1 -Dtubwright.seed=" + seed + ")", e);
                }
            }
        }
        if (DESIGNS >= 20) {
            System.out.println(answered + " of " + DESIGNS + " answered, " + faults.size() + " at fault; refused:");
            refused.forEach((k, v) -> System.out.println("  " + v + " " + k));
        }
        assertEquals(List.of(), faults);
        assertTrue(answered >= DESIGNS / 3, "only " + answered + " of " + DESIGNS + " could be built: " + refused);
    }

    private Design read(String text) throws IOException {
        Files.writeString(folder.resolve(Design.FILE_NAME), text);
        return Design.read(folder);
    }

    private void obeys(long seed, String where) throws IOException {
        DrawnDesign drawn = new DrawnDesign(seed);
        Design design = read(drawn.text(Units.METRIC));
        for (Design.Variant variant : design.variants()) {
            VariantAnswer answer = answer(variant.tub());
            assertTrue(answer.mass().whole().mass() > 0, where + " has no mass");
        }
        Tub tub = design.variants().getLast().tub();
        Laws laws = new Laws(tub, where, seed);
        laws.anotherPlyNeverMakesItSofter();
        laws.stifferJointsNeverMakeItSofter();
        laws.aHoleInTheSameMeshNeverMakesItStiffer();
        laws.fillingAnOpeningNeverMakesItSofter();
        same(laws, read(drawn.mirrored(Units.METRIC)), seed, where + ", mirror image");
        same(laws, read(drawn.text(Units.INCH)), seed, where + ", inches and pounds");
    }

    /**
     * The same tub written otherwise has the same stiffness. Where the last digit of a coordinate has tipped the mesher the
     * other way (a diagonal, say), which about one in thirty designs shows, the answers differ by the mesh's error.
     */
    private static void same(Laws whole, Design other, long seed, String what) {
        Laws again = new Laws(other.variants().getLast().tub(), what, seed);
        double allowed = whole.hasMeshLike(again) ? 1e-5 : 2e-3;
        assertEquals(1, again.compliance() / whole.compliance(), allowed, what);
    }

    private static VariantAnswer answer(Tub tub) {
        return new Study(Solvers.best(), List.of(1.0), Progress.silent())
                .answer(List.of(tub))
                .getFirst();
    }
}
