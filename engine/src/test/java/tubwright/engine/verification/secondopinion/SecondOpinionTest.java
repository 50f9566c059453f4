// SPDX-License-Identifier: Apache-2.0
package tubwright.engine.verification.secondopinion;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.function.Function;
import org.junit.jupiter.api.condition.EnabledIfSystemProperty;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/**
 * The torsional stiffness of a sandwich box by shells, from design text, and as a solid of orthotropic layers: both on
 * three meshes, both carried to size zero, no further apart than one part in a hundred. What the page
 * docs/verification/second-opinion.md tells is printed by this test.
 */
@EnabledIfSystemProperty(
        named = "tubwright.second-opinion",
        matches = "on",
        disabledReason = "wants a library that is not needed otherwise; run with -Psecond-opinion")
class SecondOpinionTest {
    private static final double FACE = .0008;
    private static final double CORE = .010;
    /** Shell mesh sizes, m, each half of the one before. */
    private static final List<Double> SIZES = List.of(.05, .025, .0125);
    /** Solid meshes, each twice as fine along and round. */
    private static final List<Integer> CELLS = List.of(1, 2, 4);

    @TempDir
    Path folder;

    /** Values on three meshes, each twice as fine, and where they are going. */
    private record Sequence(List<Double> values) {
        double last() {
            return values.getLast();
        }

        /** By Richardson, with the order the three show, no less than 1 and no more than 4; else the last. */
        double limit() {
            double coarse = values.get(1) - values.get(0);
            double fine = values.get(2) - values.get(1);
            double ratio = coarse / fine;
            return ratio > 1 ? last() + fine / (Math.min(16, Math.max(2, ratio)) - 1) : last();
        }

        @Override
        public String toString() {
            StringBuilder text = new StringBuilder();
            values.forEach(v -> text.append(String.format(Locale.ROOT, "%.2f  ", v / 1e3)));
            return text + String.format(Locale.ROOT, "limit %.2f kN·m/rad", limit() / 1e3);
        }
    }

    private static <T> Sequence sequence(List<T> meshes, Function<T, Double> value) {
        return new Sequence(meshes.stream().map(value).toList());
    }

    private Sequence shells(SandwichBox box, boolean mitred) {
        return sequence(SIZES, size -> {
            try {
                return box.stiffness(folder, size, mitred);
            } catch (IOException e) {
                throw new UncheckedIOException(e);
            }
        });
    }

    private static Sequence solid(SandwichBox box) {
        List<Integer> unknowns = new ArrayList<>();
        Sequence sequence = sequence(CELLS, n -> {
            SolidModel.Answer answer = SolidModel.solve(box.request(n));
            unknowns.add(answer.unknowns());
            return answer.stiffness();
        });
        System.out.println(box + "\n  solid   " + sequence + "; unknowns " + unknowns);
        return sequence;
    }

    /** Neither answer may rest on its mesh: the last step moves it by less than a third of what is allowed between them. */
    private static void settled(String which, Sequence s) {
        assertEquals(1, s.last() / s.limit(), .0033, () -> which + " has not settled: " + s);
    }

    private static void agree(double share, String which, Sequence shells, Sequence solid) {
        System.out.printf(
                Locale.ROOT, "  %s %s; %+.2f %%%n", which, shells, 100 * (shells.limit() / solid.limit() - 1));
        settled("solid", solid);
        settled("shells", shells);
        assertEquals(1, shells.limit() / solid.limit(), share, () -> which + " " + shells + " against solid " + solid);
    }

    @ParameterizedTest
    @CsvSource({"0, 0, false", "0, 0, true", ".4, .24, false", ".4, .24, true"})
    void shellsAndSolidAgreeWithinOnePerCent(double openingLength, double openingWidth, boolean held) {
        SandwichBox box = new SandwichBox(FACE, CORE, openingLength, openingWidth, held);
        Sequence solid = solid(box);
        agree(.01, "shells  ", shells(box, false), solid);
    }

    /**
     * A thicker wall differs by more than one per cent, and this is why: two faces apart carry a twisting moment round a
     * mitred corner, which shells, free in their rotation about the surface normal, do not. Joining the normals of both
     * walls at the corner, which is what the mitre does, closes the gap; and a closed form tells how wide it is.
     */
    @ParameterizedTest
    @CsvSource({"8e-4, .010", "1e-3, .018"})
    void whatIsLeftIsTheTwistingMomentThatAMitreCarriesRoundTheCorner(double face, double core) {
        SandwichBox box = new SandwichBox(face, core, 0, 0, false);
        Sequence plain = shells(box, false);
        Sequence tied = shells(box, true);
        Sequence solid = solid(box);
        agree(.02, "shells  ", plain, solid);
        agree(.004, "tied    ", tied, solid);
        double gained = (tied.limit() - plain.limit()) * SandwichBox.LENGTH;
        System.out.printf(Locale.ROOT, "  mitre    %.1f kN·m²; closed form %.1f%n", gained / 1e3, box.mitre() / 1e3);
        assertEquals(1, gained / box.mitre(), .03, "what the mitre adds to GJ");
    }
}
