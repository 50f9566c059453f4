// SPDX-License-Identifier: Apache-2.0
package tubwright.desk.logbook;

import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.sql.Connection;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.sql.Statement;
import java.util.List;

/**
 * Brings a logbook of any age to the present layout: numbered steps of SQL, each made once and remembered. Steps are
 * only ever added.
 */
final class Migrations {
    /** The steps, as resources beside this class, in their order. */
    private static final List<String> STEPS =
            List.of("0001-entries.sql", "0002-entry-stamps.sql", "0003-enclosures.sql", "0004-built.sql");

    private Migrations() {}

    /**
     * Makes the steps that are missing, each wholly or not at all.
     *
     * @throws SQLException also where a newer program has made steps that are not known here
     */
    static void apply(Connection connection) throws SQLException {
        try (Statement statement = connection.createStatement()) {
            statement.execute("create table if not exists migration (step int primary key)");
            int made;
            try (ResultSet rows = statement.executeQuery("select coalesce(max(step), 0) from migration")) {
                rows.next();
                made = rows.getInt(1);
            }
            if (made > STEPS.size()) {
                throw new SQLException("the logbook was written by a newer version");
            }
            for (int step = made; step < STEPS.size(); step++) {
                for (String sql : text(STEPS.get(step)).split(";")) {
                    if (!sql.isBlank()) {
                        statement.execute(sql);
                    }
                }
                statement.execute("insert into migration values (" + (step + 1) + ")");
            }
        }
    }

    private static String text(String name) {
        try (InputStream stream = Migrations.class.getResourceAsStream(name)) {
            return new String(stream.readAllBytes(), StandardCharsets.UTF_8);
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }
}
