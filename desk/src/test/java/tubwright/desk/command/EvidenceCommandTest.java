// SPDX-License-Identifier: Apache-2.0
package tubwright.desk.command;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Locale;
import java.util.regex.Pattern;
import org.apache.pdfbox.Loader;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.apache.pdfbox.text.PDFTextStripper;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import tubwright.desk.FakeBench;
import tubwright.desk.Typed;
import tubwright.desk.answer.EvidenceAnswer;

/** The dossier of the Bramble, made twice. */
class EvidenceCommandTest {
    private static final Pattern SAFE = Pattern.compile("\\bsafe(ly)?\\b");

    @TempDir
    Path folder;

    private Typed typed(String... more) throws IOException {
        Path design = folder.resolve("tub.yaml");
        if (!Files.exists(design)) {
            Files.copy(Path.of("..", "examples", "bramble", "tub.yaml"), design);
        }
        String[] all = new String[more.length + 2];
        all[0] = "evidence";
        all[1] = folder.toString();
        System.arraycopy(more, 0, all, 2, more.length);
        return Typed.on(new FakeBench(), all);
    }

    @Test
    void theSameFilesGiveTheSameBytesAndEveryPageIsCautioned() throws IOException {
        Typed typed = typed("--mesh", "75 mm", "--positions", "3");
        assertEquals(0, typed.code(), typed.err());
        byte[] pdf = Files.readAllBytes(folder.resolve("runs/evidence/evidence.pdf"));
        byte[] html = Files.readAllBytes(folder.resolve("runs/evidence/evidence.html"));
        assertEquals(0, typed("--mesh", "75 mm", "--positions", "3").code());
        assertArrayEquals(pdf, Files.readAllBytes(folder.resolve("runs/evidence/evidence.pdf")));
        assertArrayEquals(html, Files.readAllBytes(folder.resolve("runs/evidence/evidence.html")));
        assertArrayEquals(
                Files.readAllBytes(folder.resolve("tub.yaml")),
                Files.readAllBytes(folder.resolve("runs/evidence/inputs/tub.yaml")));
        try (PDDocument document = Loader.loadPDF(pdf)) {
            PDFTextStripper stripper = new PDFTextStripper();
            for (int page = 1; page <= document.getNumberOfPages(); page++) {
                stripper.setStartPage(page);
                stripper.setEndPage(page);
                String text = stripper.getText(document);
                assertTrue(text.contains(EvidenceAnswer.CAUTION), "page " + page);
                assertFalse(SAFE.matcher(text.toLowerCase(Locale.ROOT)).find(), "page " + page);
            }
            stripper.setStartPage(1);
            String all = stripper.getText(document);
            for (String part : new String[] {
                "What this was made from",
                "Materials and where their values come from",
                "Margins",
                "If a patch is torn out",
                "Crush: nose",
                "Rules: student structural 2026",
                "Tests done",
                "What is not covered",
                "not checked: needs"
            }) {
                assertTrue(all.contains(part), part);
            }
        }
        String page = new String(html, java.nio.charset.StandardCharsets.UTF_8);
        int sections = page.split("<section>", -1).length - 1;
        int cautions = page.split(Pattern.quote(EvidenceAnswer.CAUTION), -1).length - 1;
        assertTrue(cautions > sections, cautions + " cautions in " + sections + " sections");
        assertFalse(SAFE.matcher(page.toLowerCase(Locale.ROOT)).find());
    }

    @Test
    void whatCannotBeIsRefusedAndNothingIsWritten() throws IOException {
        assertEquals(1, typed("--size", "-3 mm").code());
        assertEquals(1, typed("--positions", "0").code());
        assertFalse(Files.exists(folder.resolve("runs")));
    }
}
