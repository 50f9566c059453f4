// SPDX-License-Identifier: Apache-2.0
package tubwright.desk.page;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.charset.MalformedInputException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Instant;
import java.time.temporal.ChronoUnit;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.function.BooleanSupplier;
import java.util.function.Consumer;
import java.util.stream.Stream;
import tubwright.desk.answer.RigExplainAnswer;
import tubwright.desk.answer.StiffnessUnit;
import tubwright.desk.export.KeptPrediction;
import tubwright.desk.logbook.Logbook;
import tubwright.desk.text.Figures;
import tubwright.desk.work.RigWork;
import tubwright.desk.work.TrimWork;
import tubwright.desk.work.UserMistake;
import tubwright.engine.rig.ReadingsException;
import tubwright.engine.rig.ReadingsReader;
import tubwright.engine.rig.TorsionReading;
import tubwright.engine.rig.TorsionReduction;

/** Torsion tests of the project: its files of readings, and the test that was explained last. */
final class TestBook {
    private static final String ENDING = ".csv";
    private static final long LOOKED_AT = 100;
    private static final List<String> ITS_LINES = List.of("gauge", "cycle", "held station", "loaded station", "test,");

    private final OpenProject project;
    private final Logbook logbook;
    private final String version;
    private final Consumer<Happening> hear;
    private final Errand errand;
    private ExplainedView view = ExplainedView.NONE;
    private Optional<Told> last = Optional.empty();

    /** What was explained, and of which workings. */
    private record Told(Workings workings, RigExplainAnswer answer) {}

    TestBook(OpenProject project, Logbook logbook, Queue queue, String version, Consumer<Happening> hear) {
        this.project = project;
        this.logbook = logbook;
        this.version = version;
        this.hear = hear;
        errand = new Errand("an explanation", Happening.What.TEST, queue, hear);
    }

    RunView work() {
        return errand.view();
    }

    RunView stop() {
        return errand.stop();
    }

    synchronized ExplainedView view() {
        return view;
    }

    /** Tables in the project's folder and in its folder {@code rig}. */
    List<TestView.FileView> files() {
        List<TestView.FileView> files = new ArrayList<>();
        Path home = project.folder();
        for (Path folder : List.of(home, home.resolve("rig"))) {
            if (Files.isDirectory(folder)) {
                try (Stream<Path> all = Files.list(folder)) {
                    all.filter(f -> f.getFileName().toString().endsWith(ENDING) && Files.isRegularFile(f))
                            .filter(TestBook::speaksOfATest)
                            .sorted()
                            .forEach(f -> files.add(new TestView.FileView(
                                    home.relativize(f).toString().replace('\\', '/'))));
                } catch (IOException e) {
                    throw new UncheckedIOException(e);
                }
            }
        }
        return files;
    }

    /** Whether a table has a line that only readings have, so that lists of weights are not offered; if in doubt, yes. */
    private static boolean speaksOfATest(Path file) {
        try (Stream<String> lines = Files.lines(file)) {
            return lines.limit(LOOKED_AT)
                    .map(l -> l.strip().toLowerCase(Locale.ROOT))
                    .anyMatch(l -> ITS_LINES.stream().anyMatch(l::startsWith));
        } catch (IOException | UncheckedIOException unreadable) {
            return true;
        }
    }

    /** A test as it was read. */
    TestView read(String file, boolean withoutBedIn) {
        return TestViews.of(file, withoutBedIn, reading(file, withoutBedIn));
    }

    private TorsionReading reading(String file, boolean withoutBedIn) {
        if (!files().contains(new TestView.FileView(file))) {
            throw new UserMistake("there is no table " + file + " in the project's folder or in its folder rig");
        }
        try {
            return TorsionReduction.of(
                    ReadingsReader.read(file, Files.readString(project.folder().resolve(file))), withoutBedIn);
        } catch (MalformedInputException e) {
            throw new UserMistake(file + ": is not text in UTF-8; save the table as CSV in UTF-8");
        } catch (ReadingsException mistake) {
            throw new UserMistake(mistake.getMessage());
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    /** Begins to explain a test. */
    RunView start(TestView.ExplainRequest asked) {
        TorsionReading reading = reading(asked.file(), asked.withoutBedIn());
        if (reading.readings().setup().hubToHub()) {
            throw new UserMistake(
                    asked.file() + " is a test from hub to hub, suspension and all; choose the test of the tub alone");
        }
        return errand.start(steps -> explain(asked, reading, steps));
    }

    private String explain(TestView.ExplainRequest asked, TorsionReading reading, Errand.Steps steps)
            throws IOException {
        Workings workings = project.workings();
        RigExplainAnswer answer = RigWork.explain(
                workings.design(),
                new TrimWork.Request(
                        Optional.of(asked.variant()),
                        Optional.empty(),
                        OptionalDouble.of(workings.meshSize(asked.variant())),
                        false),
                reading,
                Map.of(),
                KeptPrediction.all(project.folder()),
                Optional.empty(),
                Instant.now().truncatedTo(ChronoUnit.SECONDS).toString(),
                version,
                steps::stage,
                counted(steps));
        set(asked.file(), new Told(workings, answer));
        logbook.add(Logbook.Kind.TEST, words(asked.file(), answer), workings.revision());
        hear.accept(new Happening(Happening.What.LOGBOOK, workings.revision(), ""));
        return "explained in " + answer.explanation().solutions() + " solutions";
    }

    /** Whether to stop, asked before each solution: nobody knows how many it takes, so the bar nears its end ever slower. */
    private static BooleanSupplier counted(Errand.Steps steps) {
        return new BooleanSupplier() {
            private int solutions;

            @Override
            public boolean getAsBoolean() {
                if (!steps.stopping()) {
                    solutions++;
                    steps.step("solution " + solutions, 1 - Math.exp(-solutions / 25.0));
                }
                return steps.stopping();
            }
        };
    }

    private synchronized void set(String file, Told told) {
        view = TestViews.of(file, told.workings.revision(), told.answer);
        last = Optional.of(told);
    }

    /** Keeps what was learnt as the project's calibration. */
    synchronized ExplainedView keep() {
        Told told = last.orElseThrow(() -> new UserMistake("no test has been explained yet"));
        try {
            RigExplainAnswer kept = RigWork.kept(told.workings.design(), told.answer, project.folder());
            set(view.file(), new Told(told.workings, kept));
        } catch (IOException e) {
            throw new UserMistake("rig/calibration.json cannot be written: " + e.getMessage());
        }
        logbook.add(
                Logbook.Kind.TEST, "kept what " + view.file() + " has taught as calibration", told.workings.revision());
        hear.accept(new Happening(Happening.What.LOGBOOK, told.workings.revision(), ""));
        return view;
    }

    private static String words(String file, RigExplainAnswer answer) {
        return file + ", " + answer.variant() + ": measured "
                + text(
                        answer.reading().best().stiffness(),
                        answer.reading().best().expanded()) + ", as designed "
                + text(answer.explanation().predicted(), Double.NaN) + ", as built "
                + text(answer.explanation().calibrated(), answer.explanation().expanded()) + " N·m/deg";
    }

    private static String text(double stiffness, double error) {
        return Figures.plusMinus(
                StiffnessUnit.TORSION.of(stiffness), StiffnessUnit.TORSION.of(error), Figures.NARROW_SPACE);
    }
}
