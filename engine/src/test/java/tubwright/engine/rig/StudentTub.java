// SPDX-License-Identifier: Apache-2.0
package tubwright.engine.rig;

import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.util.Locale;

/** A measured student tub, from twist_student_tub.csv (its source stands in its first line), as our own readings. */
final class StudentTub {
    private StudentTub() {}

    /** The readings of a series, {@code tub} or {@code hub_to_hub}. */
    static Readings series(String series) {
        StringBuilder text = new StringBuilder("test, " + series.replace('_', ' ') + "\n");
        text.append("gauge, twist, 0 mm, angle\nwheel-rate torsion, 171.92 N·m/deg\nwanted share, 0.90\n");
        text.append("cycle, torque [N·m], twist [deg]\n");
        for (String line : file().split("\\R")) {
            String[] cells = line.split(",");
            if (cells[0].equals(series)) {
                text.append(String.format(Locale.ROOT, "1, %s, %s%n", cells[3], cells[2]));
            }
        }
        return ReadingsReader.read(series + ".csv", text.toString());
    }

    private static String file() {
        try (InputStream in = StudentTub.class.getResourceAsStream("twist_student_tub.csv")) {
            return new String(in.readAllBytes(), StandardCharsets.UTF_8);
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }
}
