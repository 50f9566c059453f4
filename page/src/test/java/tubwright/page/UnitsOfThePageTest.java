// SPDX-License-Identifier: Apache-2.0
package tubwright.page;

import static org.junit.jupiter.api.Assertions.assertTrue;
import static org.junit.jupiter.api.Assertions.fail;
import static org.junit.jupiter.api.Assumptions.assumeTrue;

import java.io.File;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.DynamicTest;
import org.junit.jupiter.api.TestFactory;
import tools.jackson.databind.JsonNode;
import tools.jackson.databind.json.JsonMapper;

/** The tests of the page's own code, run by Node.js; skipped, with the reason, where the page could not be built. */
class UnitsOfThePageTest {
    @TestFactory
    List<DynamicTest> whatTheCodeOfThePageIsTestedFor() throws IOException, InterruptedException {
        Path pending = Path.of("target/page.pending");
        assumeTrue(
                Files.isDirectory(Path.of("node_modules")) && !Files.exists(pending),
                () -> "the page was not built: " + reason(pending));
        Path report = Path.of("target/unit-tests.json");
        Files.deleteIfExists(report);
        List<String> command = new ArrayList<>();
        if (File.separatorChar == '\\') {
            command.addAll(List.of("cmd", "/c"));
        }
        command.addAll(List.of("npx", "vitest", "run", "--reporter=json", "--outputFile=" + report));
        Path log = Path.of("target/unit-tests.log");
        new ProcessBuilder(command)
                .redirectErrorStream(true)
                .redirectOutput(log.toFile())
                .start()
                .waitFor();
        assertTrue(Files.exists(report), () -> "the tests did not run: " + text(log));
        List<DynamicTest> tests = new ArrayList<>();
        JsonNode files =
                JsonMapper.builder().build().readTree(Files.readString(report)).get("testResults");
        for (JsonNode file : files) {
            if (file.get("assertionResults").isEmpty()) {
                tests.add(DynamicTest.dynamicTest(
                        file.get("name").asString(),
                        () -> fail(file.get("message").asString())));
            }
            for (JsonNode each : file.get("assertionResults")) {
                tests.add(DynamicTest.dynamicTest(each.get("fullName").asString(), () -> {
                    if (!each.get("status").asString().equals("passed")) {
                        fail(each.get("failureMessages").toString());
                    }
                }));
            }
        }
        assertTrue(tests.size() > 10, () -> "only " + tests.size() + " tests were found");
        return tests;
    }

    private static String reason(Path pending) {
        return Files.exists(pending) ? text(pending).strip() : "its libraries are not installed";
    }

    private static String text(Path file) {
        try {
            return Files.readString(file);
        } catch (IOException e) {
            return e.toString();
        }
    }
}
