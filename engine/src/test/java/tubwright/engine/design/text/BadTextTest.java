// SPDX-License-Identifier: Apache-2.0
package tubwright.engine.design.text;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** Files that are no design documents, and what is said of them. */
class BadTextTest {
    @TempDir
    Path folder;

    private static String fault(String text) {
        return assertThrows(DesignError.class, () -> YamlReader.read(text, "tub.yaml"))
                .getMessage();
    }

    private String faultOfFile(byte[] bytes) throws IOException {
        Path file = folder.resolve("tub.yaml");
        Files.write(file, bytes);
        String message =
                assertThrows(DesignError.class, () -> YamlReader.read(file)).getMessage();
        return message.replace(folder + "/", "");
    }

    @Test
    void anEmptyFile() {
        assertEquals("tub.yaml: the file is empty\n    \"tubwright new DIR\" starts a design that runs", fault("  \n"));
    }

    @Test
    void onlyComments() {
        assertEquals(
                "tub.yaml: the file holds only comments\n    \"tubwright new DIR\" starts a design that runs",
                fault("# to be done\n"));
    }

    @Test
    void aListInsteadOfAMapping() {
        assertEquals(
                "tub.yaml:1:1: the document is not a mapping\n"
                        + "    a design starts with keys at the left edge, such as \"tub: Larkspur\"",
                fault("- frames\n- strips\n"));
    }

    @Test
    void aTab() {
        assertEquals(
                "tub.yaml:2:1: the line is indented with a tab\n    indent with blanks",
                fault("shape:\n\tloft: smooth\n"));
    }

    @Test
    void aNameWrittenTwice() {
        assertEquals(
                "tub.yaml:3:3: \"floor\" is written a second time\n"
                        + "    it stands already in line 2; keep one of the two",
                fault("laminates:\n  floor: {}\n  floor: {}\n"));
    }

    @Test
    void aBombOfAliases() {
        StringBuilder bomb = new StringBuilder("a0: &a0 [lol, lol, lol, lol, lol, lol, lol, lol, lol]\n");
        for (int i = 1; i < 30; i++) {
            bomb.append("a" + i + ": &a" + i + " [");
            bomb.append(("*a" + (i - 1) + ", ").repeat(8)).append("*a" + (i - 1) + "]\n");
        }
        long start = System.nanoTime();
        assertEquals(
                "tub.yaml:2:10: \"*a0\" is a YAML alias\n    a design document has no anchors and aliases; name the thing"
                        + " once (a laminate, a section) and use its name",
                fault(bomb.toString()));
        assertTrue(System.nanoTime() - start < 5e9, "refused at once");
    }

    @Test
    void aHeapOfBrackets() {
        String fault = fault("a: " + "[".repeat(5000));
        assertTrue(fault.startsWith("tub.yaml:1:"), fault);
    }

    @Test
    void anOpenBracket() {
        assertEquals(
                "tub.yaml:2:2: this is not YAML: expected ',' or ']', but got :\n    while parsing a flow sequence",
                fault("strips: [floor, deck\nx: 3"));
    }

    @Test
    void aSecondColonOnALine() {
        assertEquals(
                "tub.yaml:1:13: a second \": \" on one line\n"
                        + "    start a new line for the key, or put the text in quotes",
                fault("notes: first: build"));
    }

    @Test
    void aSecondDocument() {
        assertEquals(
                "tub.yaml:2:1: a second document starts here\n    one file holds one design; take the \"---\" out",
                fault("tub: A\n---\ntub: B\n"));
    }

    @Test
    void anotherEncoding() throws IOException {
        assertEquals(
                "tub.yaml:2:14: byte B7 is not UTF-8 text\n    save the file as UTF-8 (signs such as ·, ° and ² are often"
                        + " written in an older encoding)",
                faultOfFile("tub: A\nstiffness: 1N·m".getBytes(StandardCharsets.ISO_8859_1)));
    }

    @Test
    void sixteenBitText() throws IOException {
        assertEquals(
                "tub.yaml: the file is written in UTF-16\n    save it as UTF-8",
                faultOfFile("tub: A".getBytes(StandardCharsets.UTF_16)));
    }

    @Test
    void aByteOrderMarkIsNoFault() throws IOException {
        Path file = folder.resolve("marked.yaml");
        Files.writeString(file, "\ufefftub: A");
        assertEquals("tub", YamlReader.read(file).entries().getFirst().key().text());
    }

    @Test
    void aFileThatIsNotThere() {
        Path missing = folder.resolve("none.yaml");
        assertEquals(
                missing + ": there is no such file\n    name a design file, or a folder with a tub.yaml in it",
                assertThrows(DesignError.class, () -> YamlReader.read(missing)).getMessage());
    }

    @Test
    void aFolderInsteadOfAFile() {
        String message =
                assertThrows(DesignError.class, () -> YamlReader.read(folder)).getMessage();
        assertTrue(message.startsWith(folder + ": the file cannot be read"), message);
    }

    @Test
    void aFileTooLargeToBeADesign() throws IOException {
        byte[] large = new byte[YamlReader.LARGEST_FILE + 1];
        java.util.Arrays.fill(large, (byte) '#');
        assertEquals(
                "tub.yaml: the file holds 2000001 bytes\n"
                        + "    a design document is a text of at most 2000000 characters; is this the right file?",
                faultOfFile(large));
    }
}
