// SPDX-License-Identifier: Apache-2.0
package tubwright.desk.page;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertNotEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.nio.ByteBuffer;
import java.nio.ByteOrder;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import tubwright.desk.logbook.Logbook;
import tubwright.desk.work.UserMistake;
import tubwright.engine.design.Template;

/** A run of another day can be laid beside what there is now, with the tub it was made from. */
class StoredRunsTest {
    @TempDir
    Path folder;

    private static AnswerView answer(String variant) {
        AnswerView.TwistView twist = new AnswerView.TwistView(
                new double[] {0, 1, 2}, new double[] {0.02, 0.01, 0}, new double[] {-0.01, -0.01, -0.01});
        return new AnswerView(
                variant,
                "0123456789abcdef",
                "carbon sandwich",
                "2026-01-01T10:00:00Z",
                true,
                21.5,
                List.of(new TubView.PieceView("lower shell", 12)),
                List.of(new AnswerView.CaseView(
                        "torsion",
                        AnswerView.Kind.TORSION,
                        7e5,
                        Optional.of(2e3),
                        6e5,
                        1000,
                        0,
                        2,
                        "skin",
                        Optional.of(twist),
                        List.of(new AnswerView.ShareView("floor", 0.4)))),
                List.of());
    }

    @Test
    void isRememberedWithItsAnswersAndItsTub() {
        try (Queue queue = new Queue();
                Logbook book = Logbook.open(folder);
                StoredRuns runs = new StoredRuns(book, size -> 3 * size, queue)) {
            book.add(Logbook.Kind.RUN, "a run of an older program, which kept its words alone", "r");
            runs.keep("as designed: 12 200 N·m/deg", "r", List.of(answer("as designed")), Template.text("Trial"));
            assertEquals(1, runs.list().size(), "a line without answers is no run that can be compared");
            String name = runs.list().getFirst().names().getFirst();
            assertTrue(StoredRuns.isName(name) && !StoredRuns.isName("as designed"), name);
            AnswerView back = runs.answers(runs.list().getFirst().id()).getFirst();
            assertEquals(name, back.variant());
            assertEquals(21.5, back.mass());
            assertEquals(Optional.of(2e3), back.cases().getFirst().error());
            assertArrayEquals(
                    new double[] {0.02, 0.01, 0},
                    back.cases().getFirst().twist().orElseThrow().angles());
            String head = new String(runs.surface(name), StandardCharsets.UTF_8).substring(0, 400);
            assertTrue(head.contains("\"variant\":\"" + name + "\""), head);
        }
    }

    @Test
    void isSolvedAnewForItsFieldsFromTheDesignAsItStoodThen() {
        try (Queue queue = new Queue();
                Logbook book = Logbook.open(folder);
                StoredRuns runs = new StoredRuns(book, size -> 3 * size, queue)) {
            runs.keep("as designed", "r", List.of(answer("as designed")), Template.text("Trial"));
            String thicker = Template.text("Trial").replace("core thickness: 15 mm", "core thickness: 40 mm");
            assertNotEquals(Template.text("Trial"), thicker);
            runs.keep("as designed", "s", List.of(answer("as designed")), thicker);
            double plain = largest(runs.fields("run 1: as designed", "torsion"));
            double thick = largest(runs.fields("run 2: as designed", "torsion"));
            assertTrue(plain > 0 && plain < 0.1, "a tub under its couple moves millimetres, not " + plain + " m");
            assertTrue(thick < plain, "a thicker core moves less: " + thick + " against " + plain);
            UserMistake none = assertThrows(UserMistake.class, () -> runs.fields("run 1: as designed", "tension"));
            assertTrue(none.getMessage().contains("tension"), none.getMessage());
        }
    }

    private static double largest(byte[] fields) {
        int length = ByteBuffer.wrap(fields).order(ByteOrder.LITTLE_ENDIAN).getInt(4);
        String head = new String(fields, 8, length, StandardCharsets.UTF_8);
        Matcher found = Pattern.compile("\"largest\":([0-9.E-]+)").matcher(head);
        assertTrue(found.find(), head);
        return Double.parseDouble(found.group(1));
    }

    @Test
    void thatIsNotThereOrCannotBeReadIsSaidSo() {
        try (Queue queue = new Queue();
                Logbook book = Logbook.open(folder);
                StoredRuns runs = new StoredRuns(book, size -> 3 * size, queue)) {
            runs.keep("as designed", "r", List.of(answer("as designed")), "tbu: Trial\n");
            String name = runs.list().getFirst().names().getFirst();
            UserMistake grown = assertThrows(UserMistake.class, () -> runs.surface(name));
            assertTrue(grown.getMessage().contains("another version"), grown.getMessage());
            assertThrows(UserMistake.class, () -> runs.surface("run 99: as designed"));
            assertThrows(UserMistake.class, () -> runs.answers(99));
            assertFalse(StoredRuns.isName("run 1"));
        }
    }
}
