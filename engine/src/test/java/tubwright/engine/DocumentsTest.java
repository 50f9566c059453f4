// SPDX-License-Identifier: Apache-2.0
package tubwright.engine;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.regex.Pattern;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;

/** The written pages lead where they say. */
class DocumentsTest {
    private static final Pattern LINK = Pattern.compile("\\]\\(([^)#\\s]+)(#[^)]*)?\\)");
    private static final List<Path> PAGES = Stream.concat(
                    Stream.of("README.md", "CONTRIBUTING.md", "CHANGELOG.md").map(Checkout.ROOT::resolve),
                    Checkout.filesBelow(Checkout.ROOT.resolve("docs"), ".md").stream())
            .toList();

    @Test
    void everyLinkWithinTheProjectLeadsSomewhere() {
        var dead = new ArrayList<String>();
        int links = 0;
        for (Path page : PAGES) {
            var matcher = LINK.matcher(Checkout.text(page));
            while (matcher.find()) {
                String target = matcher.group(1);
                if (target.contains("://")) {
                    continue;
                }
                links++;
                if (!Files.exists(page.resolveSibling(target).normalize())) {
                    dead.add(Checkout.nameOf(page) + " -> " + target);
                }
            }
        }
        assertEquals(List.of(), dead);
        assertTrue(links > 10, "Only " + links + " links were found in " + PAGES.size() + " pages");
    }
}
