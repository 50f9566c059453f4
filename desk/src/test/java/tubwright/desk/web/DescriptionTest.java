// SPDX-License-Identifier: Apache-2.0
package tubwright.desk.web;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.TreeSet;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import tools.jackson.databind.JsonNode;
import tools.jackson.databind.json.JsonMapper;
import tubwright.desk.page.OpenProject;

/** The page is built against what the program answers. */
class DescriptionTest {
    private static final Path DOCUMENT = Path.of("../page/openapi.json");
    private static final String REFRESH = " is not what the routes say; refresh it with: ./mvnw -pl desk -am test"
            + " -Dtest=DescriptionTest -Drefresh=true -Dsurefire.failIfNoSpecifiedTests=false";

    @TempDir
    Path folder;

    private String description() throws IOException {
        Files.writeString(folder.resolve("tub.yaml"), "tub: unfinished\n");
        try (OpenProject project = new OpenProject(folder, size -> size, "test")) {
            return Description.of(Routes.of(project));
        }
    }

    @Test
    void theDocumentThatThePageIsBuiltFromIsThatOfTheRoutes() throws IOException {
        String now = description();
        if (Boolean.getBoolean("refresh")) {
            Files.writeString(DOCUMENT, now);
        }
        assertEquals(now, Files.readString(DOCUMENT).replace("\r\n", "\n"), DOCUMENT + REFRESH);
    }

    @Test
    void everyReferenceInItLeadsSomewhere() throws IOException {
        JsonNode document = JsonMapper.builder().build().readTree(description());
        TreeSet<String> lost = new TreeSet<>();
        for (JsonNode reference : document.findValues("$ref")) {
            String pointer = reference.asString().substring(1);
            if (document.at(pointer).isMissingNode()) {
                lost.add(pointer);
            }
        }
        assertEquals(new TreeSet<String>(), lost);
    }
}
