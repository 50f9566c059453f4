// SPDX-License-Identifier: Apache-2.0
package tubwright.desk.report;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.ByteArrayInputStream;
import java.io.StringReader;
import java.util.Base64;
import java.util.HashSet;
import java.util.Set;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import javax.imageio.ImageIO;
import javax.xml.parsers.DocumentBuilderFactory;
import org.junit.jupiter.api.Test;
import org.w3c.dom.Document;
import org.w3c.dom.Element;
import org.w3c.dom.NodeList;
import org.xml.sax.InputSource;
import tubwright.desk.FakeRun;
import tubwright.desk.answer.RunAnswer;

class NoteTest {
    private static final String PAGE = Note.write(FakeRun.answer());

    @Test
    void thePageIsWellFormed() throws Exception {
        Document document = parse();
        assertEquals("html", document.getDocumentElement().getTagName());
        assertTrue(document.getElementsByTagName("section").getLength() >= 9);
    }

    @Test
    void nothingIsLoadedFromElsewhere() throws Exception {
        NodeList all = parse().getElementsByTagName("*");
        for (int i = 0; i < all.getLength(); i++) {
            Element element = (Element) all.item(i);
            assertFalse(
                    Set.of("script", "link", "iframe", "object").contains(element.getTagName()), element.getTagName());
            for (String name : new String[] {"src", "href", "xlink:href", "srcset", "action"}) {
                String value = element.getAttribute(name);
                assertTrue(
                        value.isEmpty() || value.startsWith("data:image/png;base64,") || value.startsWith("#"),
                        element.getTagName() + " " + name + " " + value.substring(0, Math.min(60, value.length())));
            }
        }
        assertFalse(
                Pattern.compile("(url\\(|@import)\\s*['\"]?(?!#)").matcher(PAGE).find());
        assertTrue(PAGE.contains("default-src 'none'"));
    }

    @Test
    void everyPictureCanBeOpened() throws Exception {
        Matcher matcher =
                Pattern.compile("data:image/png;base64,([A-Za-z0-9+/=]+)").matcher(PAGE);
        int count = 0;
        while (matcher.find()) {
            assertTrue(ImageIO.read(new ByteArrayInputStream(Base64.getDecoder().decode(matcher.group(1))))
                            .getWidth()
                    > 300);
            count++;
        }
        assertTrue(count >= 8, count + " pictures");
    }

    @Test
    void theNumbersSomebodyCameForAreThere() {
        assertTrue(PAGE.contains("21\u202f340"), "stiffness");
        assertTrue(PAGE.contains("± 120"), "its error");
        assertTrue(PAGE.contains("15\u202f740 lbf·ft/deg"), "the same in inch-pound units");
        assertTrue(PAGE.contains("31.42"), "mass");
        assertTrue(PAGE.contains("proof-tested before it is driven"), "caution");
        assertTrue(PAGE.contains("from memory"), "trust of material values");
    }

    @Test
    void wordsFromTheDesignCannotBecomeMarkup() {
        assertTrue(PAGE.contains("Zone &lt;chine&gt;"));
        assertFalse(PAGE.contains("<chine>"));
    }

    @Test
    void everyReferenceInsideThePageLeadsSomewhere() throws Exception {
        Set<String> names = new HashSet<>();
        NodeList all = parse().getElementsByTagName("*");
        for (int i = 0; i < all.getLength(); i++) {
            names.add("#" + ((Element) all.item(i)).getAttribute("id"));
        }
        Matcher matcher = Pattern.compile("(?:href=\"|url\\()(#[A-Za-z0-9-]+)").matcher(PAGE);
        while (matcher.find()) {
            assertTrue(names.contains(matcher.group(1)), matcher.group(1));
        }
    }

    @Test
    void twoRunsGiveTheSamePageButForTheStamp() {
        RunAnswer later = FakeRun.answer().stamped("2027-01-01T00:00:00Z");
        assertEquals(
                PAGE,
                Note.write(later)
                        .replace("2027-01-01T00:00:00Z", FakeRun.answer().stamp()));
    }

    private static Document parse() throws Exception {
        return DocumentBuilderFactory.newDefaultInstance()
                .newDocumentBuilder()
                .parse(new InputSource(new StringReader(PAGE)));
    }
}
