// SPDX-License-Identifier: Apache-2.0
package tubwright.desk.web;

import static org.junit.jupiter.api.Assertions.assertTrue;
import static org.junit.jupiter.api.Assertions.fail;
import static org.junit.jupiter.api.Assumptions.assumeTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.concurrent.TimeUnit;
import java.util.stream.Stream;
import org.junit.jupiter.api.DynamicTest;
import org.junit.jupiter.api.TestFactory;
import org.junit.jupiter.api.io.TempDir;
import tools.jackson.databind.JsonNode;
import tools.jackson.databind.json.JsonMapper;
import tubwright.desk.export.StudyJson;
import tubwright.desk.page.OpenProject;
import tubwright.desk.work.StudyWork;
import tubwright.engine.design.Design;
import tubwright.fleet.findings.StudyRun;
import tubwright.fleet.plan.StudyPlan;

/**
 * An afternoon on the Larkspur in a real browser. Skipped, with the reason, where there is no browser or the page was not
 * built. {@code -Dpictures=../docs/pictures} takes the pictures of the documents anew.
 */
class BrowserTest {
    private static final Path SCRIPT =
            Path.of("../page/src/test/browser/afternoon.mjs").toAbsolutePath();

    /** Multiple of the design's mesh size: what is tested is the page. */
    private static final double COARSER = 2;

    @TempDir
    Path folder;

    @TestFactory
    List<DynamicTest> anAfternoonOnTheLarkspur() throws Exception {
        Optional<Path> browser = browser();
        assumeTrue(
                browser.isPresent(),
                "there is no Chromium: install it (Debian: apt-get install chromium; Ubuntu: chromium-browser)");
        assumeTrue(PageServer.hasPage(), "the page was not built: Node.js 20.19 or newer with npm is needed for it");
        assumeTrue(
                Files.isDirectory(Path.of("../page/node_modules/playwright-core")),
                "the page's test libraries are not installed");
        Path place = Files.createDirectories(folder.resolve("mylarkspur"));
        Path file = Files.copy(Path.of("../examples/larkspur/tub.yaml"), place.resolve("tub.yaml"));
        study(file);
        String pictures = Optional.ofNullable(System.getProperty("pictures"))
                .map(p -> Path.of(p).toAbsolutePath().toString())
                .orElse("-");
        Path out = folder.resolve("steps.jsonl");
        Path err = folder.resolve("err.log");
        // Pictures in the documents are taken on the design's own mesh, which takes its time.
        try (OpenProject project =
                        new OpenProject(place, size -> pictures.equals("-") ? COARSER * size : size, "test");
                PageServer server = new PageServer(project, 0)) {
            Process script = new ProcessBuilder(
                            "node",
                            SCRIPT.toString(),
                            server.address(),
                            file.toString(),
                            browser.get().toString(),
                            pictures)
                    .redirectOutput(out.toFile())
                    .redirectError(err.toFile())
                    .start();
            if (!script.waitFor(pictures.equals("-") ? 30 : 60, TimeUnit.MINUTES)) {
                script.descendants().forEach(ProcessHandle::destroyForcibly);
                script.destroyForcibly();
            }
        }
        List<DynamicTest> tests = new ArrayList<>();
        JsonMapper mapper = JsonMapper.builder().build();
        for (String line : Files.readAllLines(out)) {
            JsonNode step = mapper.readTree(line);
            String said = step.get("said").asString();
            String name = step.get("step").asString()
                    + (said.isEmpty() || !step.get("ok").asBoolean() ? "" : ": " + said);
            System.out.println("  browser: " + name);
            tests.add(DynamicTest.dynamicTest(name, () -> {
                if (!step.get("ok").asBoolean()) {
                    fail(said);
                }
            }));
        }
        int fewest = pictures.equals("-") ? 31 : 14;
        assertTrue(tests.size() >= fewest, () -> "only " + tests.size() + " steps were made: " + text(err));
        return tests;
    }

    /** A study of a few coarse designs, as if somebody had run it before. */
    private static void study(Path file) throws IOException {
        Path place = file.getParent();
        Files.writeString(Files.createDirectories(place.resolve("studies")).resolve("waist.yaml"), """
                about: What a narrower waist costs.
                vary:
                  given back: {frames: 950 .. 2050 mm, change: narrower, values: "0, 40, 80 mm"}
                read: [torsional stiffness, mass, ply area]
                mesh: 120 mm
                """);
        Design design = Design.read(file);
        Path out = Files.createDirectories(place.resolve("runs/study-waist"));
        Files.writeString(
                out.resolve("answer.json"),
                StudyJson.write(StudyWork.run(
                        design,
                        StudyPlan.read(design, "waist", "test"),
                        new StudyWork.Request(0, Optional.empty()),
                        "test",
                        new StudyRun.Listener() {})));
    }

    private static Optional<Path> browser() {
        return Stream.of("/usr/bin/chromium", "/usr/bin/chromium-browser")
                .map(Path::of)
                .filter(Files::isExecutable)
                .findFirst();
    }

    private static String text(Path file) {
        try {
            return Files.readString(file);
        } catch (IOException e) {
            return e.toString();
        }
    }
}
