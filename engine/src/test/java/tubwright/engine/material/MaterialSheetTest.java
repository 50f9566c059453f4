// SPDX-License-Identifier: Apache-2.0
package tubwright.engine.material;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import org.junit.jupiter.api.Test;

class MaterialSheetTest {
    private static final Path PAGE = Path.of("..", "docs", "materials.md");

    /** Run with -Dtubwright.write=true on the test JVM to write the page anew after a change to the library. */
    @Test
    void thePageOfMaterialsIsThatOfTheLibrary() throws IOException {
        String page = MaterialSheet.markdown(MaterialLibrary.shipped());
        if (Boolean.getBoolean("tubwright.write")) {
            Files.writeString(PAGE, page);
        }
        assertEquals(page, Files.readString(PAGE));
    }

    @Test
    void whatWasNotReadInItsSourceIsShownForChecking() {
        Material tape = MaterialLibrary.shipped().get("ud-im7-8552");
        assertEquals(
                "areal mass, G13, G23, alpha1, alpha2, stress-free temperature",
                String.join(
                        ", ",
                        MaterialSheet.toBeChecked(tape).stream()
                                .map(MaterialSheet.Row::key)
                                .toList()));
        assertTrue(MaterialSheet.rows(tape).getFirst().toString().contains("[transcription]"));
    }
}
