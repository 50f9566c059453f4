// SPDX-License-Identifier: Apache-2.0
package tubwright.desk.logbook;

import java.sql.Connection;
import java.sql.PreparedStatement;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/** What was written down of tubs while they were built, with what went into them by batch. Part of a {@link Logbook}. */
public final class BuiltShelf {
    private final Connection connection;

    BuiltShelf(Connection connection) {
        this.connection = connection;
    }

    /**
     * A record.
     *
     * @param number of the tub
     * @param stamp when it was entered, ISO 8601
     * @param words its line in the logbook
     * @param issue of the plan it was built to
     * @param design fingerprint of that plan's design
     * @param plan the form as it left
     * @param content the form as it came back
     */
    public record Kept(
            int number, String stamp, String words, String issue, String design, String plan, String content) {}

    /**
     * Something cut from a batch.
     *
     * @param number of the tub it is in
     * @param piece which
     * @param pattern which
     * @param material of it
     * @param batch of the material
     */
    public record Part(int number, String piece, String pattern, String material, String batch) {}

    /** Keeps a record under an entry of the logbook, in place of an earlier one of the same tub; wholly or not at all. */
    void keep(long entry, Kept record, List<Part> parts) throws SQLException {
        boolean alone = connection.getAutoCommit();
        connection.setAutoCommit(false);
        try (PreparedStatement old = connection.prepareStatement("delete from built where number = ?");
                PreparedStatement built = connection.prepareStatement(
                        "insert into built (number, entry, issue, design, plan, content) values (?, ?, ?, ?, ?, ?)");
                PreparedStatement part = connection.prepareStatement(
                        "insert into built_part (number, piece, pattern, material, batch) values (?, ?, ?, ?, ?)")) {
            old.setInt(1, record.number());
            old.executeUpdate();
            built.setInt(1, record.number());
            built.setLong(2, entry);
            built.setString(3, record.issue());
            built.setString(4, record.design());
            built.setString(5, record.plan());
            built.setString(6, record.content());
            built.executeUpdate();
            for (Part each : parts) {
                part.setInt(1, record.number());
                part.setString(2, each.piece());
                part.setString(3, each.pattern());
                part.setString(4, each.material());
                part.setString(5, each.batch());
                part.executeUpdate();
            }
            connection.commit();
        } catch (SQLException | RuntimeException fault) {
            connection.rollback();
            throw fault;
        } finally {
            connection.setAutoCommit(alone);
        }
    }

    /** The record of one tub. */
    public Optional<Kept> of(int number) {
        return all().stream().filter(k -> k.number() == number).findFirst();
    }

    /** All records by number. */
    public List<Kept> all() {
        synchronized (connection) {
            List<Kept> kept = new ArrayList<>();
            try (PreparedStatement select = connection.prepareStatement(
                            "select b.number, e.stamp, e.words, b.issue,"
                                    + " b.design, b.plan, b.content from built b join entry e on b.entry = e.id order by b.number");
                    ResultSet rows = select.executeQuery()) {
                while (rows.next()) {
                    kept.add(new Kept(
                            rows.getInt(1),
                            rows.getString(2),
                            rows.getString(3),
                            rows.getString(4),
                            rows.getString(5),
                            rows.getString(6),
                            rows.getString(7)));
                }
            } catch (SQLException e) {
                throw new IllegalStateException(e);
            }
            return kept;
        }
    }

    /** Everything that was cut from a batch, whatever tub it went into. */
    public List<Part> from(String batch) {
        synchronized (connection) {
            List<Part> parts = new ArrayList<>();
            try (PreparedStatement select = connection.prepareStatement("select number, piece, pattern, material, batch"
                    + " from built_part where batch = ? order by number, piece, pattern")) {
                select.setString(1, batch);
                try (ResultSet rows = select.executeQuery()) {
                    while (rows.next()) {
                        parts.add(new Part(
                                rows.getInt(1),
                                rows.getString(2),
                                rows.getString(3),
                                rows.getString(4),
                                rows.getString(5)));
                    }
                }
            } catch (SQLException e) {
                throw new IllegalStateException(e);
            }
            return parts;
        }
    }

    /** Names of all batches. */
    public List<String> batches() {
        synchronized (connection) {
            List<String> names = new ArrayList<>();
            try (PreparedStatement select =
                            connection.prepareStatement("select distinct batch from built_part order by batch");
                    ResultSet rows = select.executeQuery()) {
                while (rows.next()) {
                    names.add(rows.getString(1));
                }
            } catch (SQLException e) {
                throw new IllegalStateException(e);
            }
            return names;
        }
    }
}
