// SPDX-License-Identifier: Apache-2.0
package tubwright.desk.page;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Optional;
import tubwright.desk.work.UserMistake;
import tubwright.engine.design.Design;
import tubwright.engine.design.DesignFile;
import tubwright.engine.design.text.DesignError;
import tubwright.engine.trim.Layup;

/** Puts a draft into the design file, and leaves the file alone where it is no longer the one the draft departed from. */
final class Keeping {
    private Keeping() {}

    /**
     * Keeps.
     *
     * @param design as the draft knows it
     * @param from the variant the draft departs from
     * @param name of the variant to add; empty to change the variant it departs from
     * @param layup the draft's
     * @throws UserMistake where it cannot be written as a design
     */
    static DraftView.KeptView keep(Design design, String from, String name, Layup layup) {
        if (!name.isEmpty()) {
            checkName(name);
        }
        if (!name.isEmpty() && !from.equals(Design.AS_DESIGNED)) {
            throw new UserMistake("a variant departs from the design as written; a change of \"" + from
                    + "\" is written into that variant itself");
        }
        DesignFile file;
        try {
            file = DesignFile.of(design);
        } catch (DesignError changed) {
            return refused(design, from, name, layup, changed);
        }
        DesignFile written = written(file, design, from, name, layup);
        try {
            written.save();
        } catch (DesignError changed) {
            return refused(design, from, name, layup, changed);
        }
        return new DraftView.KeptView(
                true,
                name.isEmpty() ? "written into \"" + from + "\"" : "kept as variant \"" + name + "\"",
                Optional.empty(),
                Optional.empty());
    }

    /** @throws UserMistake if a variant should not be called that */
    static void checkName(String name) {
        if (!name.matches("[\\p{L}\\p{Nd}][\\p{L}\\p{Nd}._ -]{0,59}")) {
            throw new UserMistake("name the variant with letters, digits, points, hyphens and blanks");
        }
    }

    private static DesignFile written(DesignFile file, Design design, String from, String name, Layup layup) {
        if (name.isEmpty()) {
            return file.withLayup(from, layup);
        }
        String construction = design.asDesigned().tub().construction();
        return file.withVariant(name, construction).withLayup(name, layup);
    }

    /** What is there and what would have been, for the reader to put together. */
    private static DraftView.KeptView refused(Design design, String from, String name, Layup layup, DesignError why) {
        try {
            Path known = Files.createTempFile("tubwright-", ".yaml");
            try {
                Files.writeString(known, design.text());
                String ours = written(DesignFile.open(known), design, from, name, layup)
                        .text();
                return new DraftView.KeptView(
                        false, why.getMessage(), Optional.of(Files.readString(design.file())), Optional.of(ours));
            } finally {
                Files.deleteIfExists(known);
            }
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }
}
