// SPDX-License-Identifier: Apache-2.0
package tubwright.desk.command;

import java.nio.file.Path;
import java.util.Optional;
import picocli.CommandLine.Option;
import tubwright.desk.logbook.BuiltShelf;
import tubwright.desk.logbook.Logbook;
import tubwright.desk.work.BuiltWork;
import tubwright.desk.work.UserMistake;
import tubwright.engine.make.built.BuiltComparison;
import tubwright.engine.make.built.BuiltReader;

/** Asks for a tub as it was weighed while it was built. */
final class BuiltOption {
    @Option(
            names = "--built",
            paramLabel = "N",
            description = "Take the materials of tub N as they were weighed (see \"tubwright built\").")
    private Optional<Integer> number = Optional.empty();

    /** What was entered, where it is asked for. */
    Optional<BuiltWork> read(Path project) {
        return number.map(n -> {
            try (Logbook book = open(project)) {
                BuiltShelf.Kept kept = book.built()
                        .of(n)
                        .orElseThrow(() -> new UserMistake("no tub " + n
                                + " was entered as built; enter it with\n    tubwright built " + project
                                + " FILE --tub " + n));
                return new BuiltWork(n, comparison(kept));
            }
        });
    }

    /** Opens the logbook for what was built; refuses where it cannot be kept. */
    static Logbook open(Path project) {
        Logbook book = Logbook.open(project.resolve("runs"));
        if (book.trouble().isPresent()) {
            book.close();
            throw new UserMistake("the logbook, " + project.resolve("runs").resolve("logbook")
                    + ".mv.db, cannot be opened, and what was built stands in it\n    close the page that is open on this"
                    + " folder, and try again");
        }
        return book;
    }

    /** What a record says against its plan. */
    static BuiltComparison comparison(BuiltShelf.Kept kept) {
        return BuiltComparison.of(
                BuiltReader.read("tub " + kept.number() + " in the logbook", kept.content()),
                BuiltReader.read("its plan", kept.plan()));
    }
}
