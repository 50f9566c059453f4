// SPDX-License-Identifier: Apache-2.0
package tubwright.desk.logbook;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.sql.Connection;
import java.sql.PreparedStatement;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.sql.Statement;
import java.time.Instant;
import java.time.temporal.ChronoUnit;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.Properties;

/** The logbook of a project. Safe for use by several threads. */
public final class Logbook implements AutoCloseable {
    /** Name of the database's file, without its ending. */
    private static final String NAME = "logbook";

    /** Most lines handed out. */
    private static final int MOST = 500;

    private final Connection connection;
    private final Optional<String> trouble;

    /** What a line is about. */
    public enum Kind {
        RUN,
        CHOICE,
        TEST,
        NOTE;

        /** As it is stored and shown. */
        public String word() {
            return name().toLowerCase(Locale.ROOT);
        }
    }

    /**
     * A line.
     *
     * @param id rising
     * @param stamp ISO 8601
     * @param kind what it is about
     * @param words what happened
     * @param revision fingerprint of the design file at that time
     */
    public record Entry(long id, String stamp, Kind kind, String words, String revision) {}

    private Logbook(Connection connection, Optional<String> trouble) {
        this.connection = connection;
        this.trouble = trouble;
    }

    /**
     * Opens the logbook of a folder, or makes one. Where that cannot be, because the folder cannot be written to or another
     * program has the logbook open, lines are kept for as long as the program runs, and {@link #trouble()} says why.
     */
    public static Logbook open(Path folder) {
        try {
            Files.createDirectories(folder);
            String path = folder.resolve(NAME).toAbsolutePath().toString();
            return new Logbook(migrated("jdbc:h2:file:" + path), Optional.empty());
        } catch (IOException | SQLException e) {
            String why = "The logbook in " + folder.getFileName() + "/" + NAME
                    + ".mv.db cannot be opened (is another page open on this folder?); lines are kept until the program ends.";
            try {
                return new Logbook(migrated("jdbc:h2:mem:"), Optional.of(why));
            } catch (SQLException impossible) {
                throw new IllegalStateException(impossible);
            }
        }
    }

    private static Connection migrated(String url) throws SQLException {
        // The driver is asked by hand: the list of drivers is filled from the class path at a time that is not ours.
        Connection connection = new org.h2.Driver().connect(url, new Properties());
        try {
            Migrations.apply(connection);
        } catch (SQLException | RuntimeException fault) {
            connection.close();
            throw fault;
        }
        return connection;
    }

    /** Why lines are not kept, where they are not. */
    public Optional<String> trouble() {
        return trouble;
    }

    /** Writes a line. */
    public void add(Kind kind, String words, String revision) {
        add(kind, words, revision, Map.of());
    }

    /**
     * Writes a line.
     *
     * @param enclosures texts of any length that belong to it, by name
     */
    public synchronized void add(Kind kind, String words, String revision, Map<String, String> enclosures) {
        insert(kind, words, revision, enclosures);
    }

    /**
     * Writes a line about a tub that was built, and keeps what was written down of it.
     *
     * @param record its words become the line; its stamp is given here
     * @param parts what was cut from which batch
     */
    public synchronized void keep(BuiltShelf.Kept record, List<BuiltShelf.Part> parts, String revision) {
        try {
            new BuiltShelf(connection).keep(insert(Kind.NOTE, record.words(), revision, Map.of()), record, parts);
        } catch (SQLException e) {
            throw new IllegalStateException(e);
        }
    }

    /** What was written down of tubs that were built. */
    public BuiltShelf built() {
        return new BuiltShelf(connection);
    }

    /** The number of the new line. */
    private long insert(Kind kind, String words, String revision, Map<String, String> enclosures) {
        try (PreparedStatement insert = connection.prepareStatement(
                        "insert into entry (stamp, kind, words, revision) values (?, ?, ?, ?)",
                        Statement.RETURN_GENERATED_KEYS);
                PreparedStatement enclose =
                        connection.prepareStatement("insert into enclosure (entry, name, content) values (?, ?, ?)")) {
            insert.setString(1, Instant.now().truncatedTo(ChronoUnit.SECONDS).toString());
            insert.setString(2, kind.word());
            insert.setString(3, words);
            insert.setString(4, revision);
            insert.executeUpdate();
            try (ResultSet keys = insert.getGeneratedKeys()) {
                keys.next();
                long entry = keys.getLong("id");
                for (Map.Entry<String, String> each : enclosures.entrySet()) {
                    enclose.setLong(1, entry);
                    enclose.setString(2, each.getKey());
                    enclose.setString(3, each.getValue());
                    enclose.executeUpdate();
                }
                return entry;
            }
        } catch (SQLException e) {
            throw new IllegalStateException(e);
        }
    }

    /** What was enclosed with a line under a name. */
    public synchronized Optional<String> enclosure(long entry, String name) {
        try (PreparedStatement select =
                connection.prepareStatement("select content from enclosure where entry = ? and name = ?")) {
            select.setLong(1, entry);
            select.setString(2, name);
            try (ResultSet rows = select.executeQuery()) {
                return rows.next() ? Optional.of(rows.getString(1)) : Optional.empty();
            }
        } catch (SQLException e) {
            throw new IllegalStateException(e);
        }
    }

    /** The lines, newest first. */
    public List<Entry> entries() {
        return entries("");
    }

    /** Those with an enclosure of a name. */
    public List<Entry> entriesWith(String enclosure) {
        return entries(enclosure);
    }

    /** Those with an enclosure of a name; all for an empty one. */
    private synchronized List<Entry> entries(String enclosure) {
        List<Entry> entries = new ArrayList<>();
        try (PreparedStatement select = connection.prepareStatement("select id, stamp, kind, words, revision from entry"
                + " where ? = '' or id in (select entry from enclosure where name = ?) order by id desc limit "
                + MOST)) {
            select.setString(1, enclosure);
            select.setString(2, enclosure);
            ResultSet rows = select.executeQuery();
            while (rows.next()) {
                entries.add(new Entry(
                        rows.getLong(1),
                        rows.getString(2),
                        Kind.valueOf(rows.getString(3).toUpperCase(Locale.ROOT)),
                        rows.getString(4),
                        rows.getString(5)));
            }
        } catch (SQLException e) {
            throw new IllegalStateException(e);
        }
        return entries;
    }

    @Override
    public synchronized void close() {
        try {
            connection.close();
        } catch (SQLException e) {
            throw new IllegalStateException(e);
        }
    }
}
