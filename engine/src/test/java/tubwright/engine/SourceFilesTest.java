// SPDX-License-Identifier: Apache-2.0
package tubwright.engine;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.function.Predicate;
import java.util.regex.Pattern;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;

/** What CONTRIBUTING.md asks of every source file, of all modules. */
class SourceFilesTest {
    private static final Path ROOT = root();
    private static final List<Path> SOURCES = sources();
    private static final Pattern TEST_METHOD = Pattern.compile(
            "^\\s*@(Test|ParameterizedTest|TestFactory|RepeatedTest|TestTemplate)\\b", Pattern.MULTILINE);

    @Test
    void theSourcesAreFoundThisOneIncluded() {
        Path here = ROOT.resolve("engine/src/test/java/tubwright/engine/SourceFilesTest.java");
        assertTrue(SOURCES.contains(here), () -> SOURCES.size() + " source files below " + ROOT + ", but not " + here);
    }

    @Test
    void everyFileOpensWithTheLicence() {
        offenders(file -> !text(file).startsWith("// SPDX-License-Identifier: Apache-2.0\n"));
    }

    @Test
    void noFileIsLongerThanSixHundredLines() {
        offenders(file -> text(file).lines().count() > 600);
    }

    @Test
    void everyPackageSaysWhatItIsFor() {
        offenders(file -> isMain(file)
                && !Files.exists(file.resolveSibling("package-info.java"))
                && !file.endsWith("package-info.java"));
    }

    /** The build runs the classes whose name ends in Test; a test elsewhere would drop out unseen. */
    @Test
    void everyTestIsInAFileTheBuildRuns() {
        offenders(file -> !isMain(file)
                && TEST_METHOD.matcher(text(file)).find()
                && !file.getFileName().toString().endsWith("Test.java"));
    }

    private static void offenders(Predicate<Path> offence) {
        assertEquals(
                List.of(),
                SOURCES.stream()
                        .filter(offence)
                        .map(ROOT::relativize)
                        .map(Path::toString)
                        .toList());
    }

    private static boolean isMain(Path file) {
        return ROOT.relativize(file).toString().replace('\\', '/').contains("/src/main/");
    }

    /** The checkout: the nearest folder above with the launcher in it. */
    private static Path root() {
        Path folder = Path.of("").toAbsolutePath();
        while (!Files.exists(folder.resolve("tubwright.cmd"))) {
            folder = folder.getParent();
        }
        return folder;
    }

    private static List<Path> sources() {
        try (Stream<Path> modules = Files.list(ROOT)) {
            return modules.map(module -> module.resolve("src"))
                    .filter(Files::isDirectory)
                    .flatMap(SourceFilesTest::javaFilesBelow)
                    .sorted()
                    .toList();
        } catch (IOException e) {
            throw new IllegalStateException("Cannot list " + ROOT, e);
        }
    }

    private static Stream<Path> javaFilesBelow(Path folder) {
        try (Stream<Path> files = Files.walk(folder)) {
            return files.filter(file -> file.toString().endsWith(".java")).toList().stream();
        } catch (IOException e) {
            throw new IllegalStateException("Cannot walk " + folder, e);
        }
    }

    private static String text(Path file) {
        try {
            return Files.readString(file).replace("\r\n", "\n");
        } catch (IOException e) {
            throw new IllegalStateException("Cannot read " + file, e);
        }
    }
}
