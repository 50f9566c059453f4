// SPDX-License-Identifier: Apache-2.0
package tubwright.engine;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;
import static tubwright.engine.Checkout.text;

import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.function.Predicate;
import java.util.regex.Pattern;
import org.junit.jupiter.api.Test;

/** What CONTRIBUTING.md asks of every source file, of all modules. */
class SourceFilesTest {
    private static final List<Path> SOURCES = Checkout.modules().stream()
            .flatMap(module -> Checkout.filesBelow(module.resolve("src"), ".java").stream())
            .toList();
    private static final Pattern TEST_METHOD = Pattern.compile(
            "^\\s*@(Test|ParameterizedTest|TestFactory|RepeatedTest|TestTemplate)\\b", Pattern.MULTILINE);

    @Test
    void theSourcesAreFoundThisOneIncluded() {
        Path here = Checkout.ROOT.resolve("engine/src/test/java/tubwright/engine/SourceFilesTest.java");
        assertTrue(SOURCES.contains(here), () -> SOURCES.size() + " source files, but not " + here);
    }

    @Test
    void everyFileOpensWithTheLicence() {
        nobody(file -> !text(file).startsWith("// SPDX-License-Identifier: Apache-2.0\n"));
    }

    @Test
    void noFileIsLongerThanSixHundredLines() {
        nobody(file -> text(file).lines().count() > 600);
    }

    @Test
    void everyPackageSaysWhatItIsFor() {
        nobody(file -> isMain(file) && !Files.exists(file.resolveSibling("package-info.java")));
    }

    /** The build runs the classes whose name ends in Test; a test elsewhere would drop out unseen. */
    @Test
    void everyTestIsInAFileTheBuildRuns() {
        nobody(file -> !isMain(file)
                && TEST_METHOD.matcher(text(file)).find()
                && !file.getFileName().toString().endsWith("Test.java"));
    }

    private static void nobody(Predicate<Path> offence) {
        assertEquals(
                List.of(),
                SOURCES.stream().filter(offence).map(Checkout::nameOf).toList());
    }

    private static boolean isMain(Path file) {
        return Checkout.nameOf(file).contains("/src/main/");
    }
}
