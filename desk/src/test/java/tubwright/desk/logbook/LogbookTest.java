// SPDX-License-Identifier: Apache-2.0
package tubwright.desk.logbook;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.channels.FileChannel;
import java.nio.channels.FileLock;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardOpenOption;
import java.sql.Connection;
import java.sql.SQLException;
import java.sql.Statement;
import java.util.Properties;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** The logbook remembers, grows with the program, and is missed by nobody when it is lost. */
class LogbookTest {
    @TempDir
    Path folder;

    @Test
    void remembersFromOneDayToTheNext() {
        try (Logbook book = Logbook.open(folder)) {
            book.add(Logbook.Kind.NOTE, "tried 15 mm core", "abc");
            assertTrue(book.trouble().isEmpty());
        }
        try (Logbook book = Logbook.open(folder)) {
            book.add(Logbook.Kind.RUN, "12 762 N·m/deg", "abd");
            assertEquals(2, book.entries().size());
            assertEquals("12 762 N·m/deg", book.entries().getFirst().words());
            assertEquals(Logbook.Kind.NOTE, book.entries().getLast().kind());
        }
    }

    @Test
    void takesOverABookOfTheFirstVersion() throws SQLException {
        String url = "jdbc:h2:file:" + folder.resolve("logbook").toAbsolutePath();
        try (Connection old = new org.h2.Driver().connect(url, new Properties());
                Statement statement = old.createStatement()) {
            statement.execute("create table migration (step int primary key)");
            statement.execute("insert into migration values (1)");
            statement.execute(
                    "create table entry (id bigint generated always as identity primary key, stamp varchar(40) not"
                            + " null, kind varchar(16) not null, words varchar(4000) not null, revision varchar(32) not null)");
            statement.execute(
                    "insert into entry (stamp, kind, words, revision) values ('2026-01-01', 'note', 'old', 'r')");
        }
        try (Logbook book = Logbook.open(folder)) {
            assertTrue(book.trouble().isEmpty(), () -> book.trouble().toString());
            assertEquals("old", book.entries().getFirst().words());
        }
    }

    @Test
    void leavesABookOfANewerVersionAloneAndSaysSo() throws SQLException {
        String url = "jdbc:h2:file:" + folder.resolve("logbook").toAbsolutePath();
        try (Connection newer = new org.h2.Driver().connect(url, new Properties());
                Statement statement = newer.createStatement()) {
            statement.execute("create table migration (step int primary key)");
            statement.execute("insert into migration values (99)");
        }
        try (Logbook book = Logbook.open(folder)) {
            assertTrue(book.trouble().isPresent());
            book.add(Logbook.Kind.NOTE, "for now", "r");
            assertEquals(1, book.entries().size());
        }
    }

    @Test
    void keepsGoingWhenSomebodyElseHasTheBookOrItIsNoBook() throws IOException {
        try (Logbook first = Logbook.open(folder)) {
            first.add(Logbook.Kind.NOTE, "mine", "r");
        }
        // As another process would hold it.
        try (FileChannel channel = FileChannel.open(folder.resolve("logbook.mv.db"), StandardOpenOption.WRITE);
                FileLock lock = channel.lock();
                Logbook second = Logbook.open(folder)) {
            assertTrue(lock.isValid() && second.trouble().isPresent());
            second.add(Logbook.Kind.NOTE, "also mine", "r");
            assertEquals(1, second.entries().size());
        }
        Path other = Files.createDirectories(folder.resolve("other"));
        Files.writeString(other.resolve("logbook.mv.db"), "not a database");
        try (Logbook book = Logbook.open(other)) {
            assertTrue(book.trouble().isPresent());
        }
        assertEquals("not a database", Files.readString(other.resolve("logbook.mv.db")));
    }
}
