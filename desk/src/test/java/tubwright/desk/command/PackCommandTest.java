// SPDX-License-Identifier: Apache-2.0
package tubwright.desk.command;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.stream.Stream;
import org.apache.pdfbox.Loader;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.apache.pdfbox.text.PDFTextStripper;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import tools.jackson.databind.JsonNode;
import tools.jackson.databind.json.JsonMapper;
import tubwright.desk.FakeBench;
import tubwright.desk.Typed;

/** The pack of a tub made of a straight tray and lid, whose patterns are rectangles. */
class PackCommandTest {
    private static final String BOX = """
            tub: box
            shape:
              loft: ruled
              strips: [floor, flank, deck]
              frames:
                - station: 0 mm
                  outline: (0, 100) (150, 100) (150, 300) (0, 300) mm
                - station: 500 mm
                  outline: (0, 100) (150, 100) (150, 300) (0, 300) mm
            laminates:
              skin: {stack: "[0c/90c]", plies: {c: pw-t650-976}}
            zones:
              all: {on: [floor, flank, deck], laminate: skin}
            pieces:
              tray: [floor, flank]
              lid: [deck]
            hardpoints:
              foot: {on: floor, x: 250 mm, y: 70 mm, footprint: 40 mm, mass: 40 g}
            mesh: {size: 40 mm}
            """;

    @TempDir
    Path folder;

    @BeforeEach
    void writeTheBox() throws IOException {
        Files.writeString(folder.resolve("tub.yaml"), BOX);
    }

    private Typed typed(String... more) {
        return Typed.on(
                new FakeBench(),
                Stream.concat(
                                Stream.of("pack", folder.toString(), "--date", "2030-05-17", "--moves", "300"),
                                Stream.of(more))
                        .toArray(String[]::new));
    }

    @Test
    void pliesWeighWhatTheStructuralModelSays() {
        Typed typed = typed("--json");
        assertEquals(0, typed.code(), typed.err());
        JsonNode answer = JsonMapper.builder().build().readTree(typed.out());
        double model = answer.path("massInTheModel_kg").asDouble();
        // Both skins all round: girth 1 m, 0.5 m long, two plies.
        JsonNode material = answer.path("materials").get(0);
        assertEquals(2 * 1.0 * 0.5, material.path("laid_m2").asDouble(), 1e-3);
        assertEquals(model, answer.path("massOfPlies_kg").asDouble(), 1e-3 * model);
        assertEquals(0, answer.path("splices").asInt());
        assertTrue(material.path("rollUsed_m").asDouble() * 1.25
                >= material.path("laid_m2").asDouble());
        assertTrue(
                material.path("bought_kg").asDouble() > material.path("laid_kg").asDouble());
    }

    @Test
    void aPlyWiderThanTheRollIsCutInPartsThatOverlap() throws IOException {
        Typed typed = typed("--roll", "450 mm");
        assertEquals(0, typed.code(), typed.err());
        List<String> kit = Files.readAllLines(folder.resolve("runs/pack/kits.csv"));
        // Across its warp the tray's 0° ply is 700 mm wide (floor 300, flanks 200 each), its 90° ply 500.
        List<String> first = kit.stream().filter(l -> l.contains("tray 01")).toList();
        assertEquals(2, first.size(), String.join("\n", kit));
        double area = first.stream()
                .mapToDouble(l -> Double.parseDouble(l.split(",")[6]))
                .sum();
        assertEquals(0.5 * (0.7 + 0.020), area, 1e-3, "the parts overlap by 20 mm");
        assertEquals(2, kit.stream().filter(l -> l.contains("tray 02/")).count());
        assertTrue(typed.out().contains("splices along the warp"), typed.out());
    }

    @Test
    void theBookHasAPageAStepAndCarriesIssueDateAndFingerprintOnEverySheet() throws IOException {
        assertEquals(0, typed("--issue", "C").code());
        try (PDDocument book = Loader.loadPDF(Files.readAllBytes(folder.resolve("runs/pack/ply-book.pdf")))) {
            String print = JsonMapper.builder()
                    .build()
                    .readTree(Files.readString(folder.resolve("runs/pack/answer.json")))
                    .path("fingerprint")
                    .asString();
            int steps = 0;
            for (int page = 1; page <= book.getNumberOfPages(); page++) {
                PDFTextStripper text = new PDFTextStripper();
                text.setStartPage(page);
                text.setEndPage(page);
                String words = text.getText(book);
                assertTrue(words.contains("issue C") && words.contains("2030-05-17") && words.contains(print), words);
                steps += words.contains("Step ") && words.contains("of 2: ") ? 1 : 0;
            }
            assertEquals(4, steps, "two plies each of tray and lid");
        }
        try (PDDocument cures = Loader.loadPDF(Files.readAllBytes(folder.resolve("runs/pack/cures.pdf")))) {
            String words = new PDFTextStripper().getText(cures);
            assertTrue(words.contains("Cycle solid-180"), words);
            assertTrue(words.contains("leading place") && words.contains("peak temperature"), words);
        }
    }

    @Test
    void theSameDesignIssueAndDateGiveTheSameBytes() throws IOException {
        assertEquals(0, typed("--out", folder.resolve("one").toString()).code());
        assertEquals(0, typed("--out", folder.resolve("two").toString()).code());
        try (Stream<Path> files = Files.walk(folder.resolve("one"))) {
            List<Path> all = files.filter(Files::isRegularFile).toList();
            assertTrue(all.size() > 8, all.toString());
            for (Path file : all) {
                Path twin = folder.resolve("two").resolve(folder.resolve("one").relativize(file));
                assertArrayEquals(Files.readAllBytes(file), Files.readAllBytes(twin), file.toString());
            }
        }
    }

    @Test
    void everyListPatternNestAndSheetCarriesIssueAndFingerprint() throws IOException {
        assertEquals(0, typed("--issue", "C9", "--tubs", "2").code());
        Path pack = folder.resolve("runs/pack");
        String print = JsonMapper.builder()
                .build()
                .readTree(Files.readString(pack.resolve("answer.json")))
                .path("fingerprint")
                .asString();
        try (Stream<Path> files = Files.walk(pack)) {
            for (Path file : files.filter(Files::isRegularFile).toList()) {
                String name = file.getFileName().toString();
                if (name.endsWith(".csv")) {
                    List<String> lines = Files.readAllLines(file);
                    assertTrue(lines.size() > 1, name);
                    lines.subList(1, lines.size())
                            .forEach(l -> assertTrue(l.endsWith("C9,2030-05-17," + print), name + ": " + l));
                } else if (name.matches(".*\\.(svg|dxf|txt)")) {
                    String text = Files.readString(file);
                    assertTrue(text.contains("issue C9") && text.contains(print), name);
                }
            }
        }
        try (java.util.zip.ZipFile book =
                new java.util.zip.ZipFile(pack.resolve("lists.xlsx").toFile())) {
            for (int sheet = 1; sheet <= 4; sheet++) {
                String xml = new String(
                        book.getInputStream(book.getEntry("xl/worksheets/sheet" + sheet + ".xml"))
                                .readAllBytes(),
                        java.nio.charset.StandardCharsets.UTF_8);
                assertTrue(xml.contains("issue C9") && xml.contains(print), "foot of sheet " + sheet);
            }
            book.stream().forEach(e -> assertEquals(1980, e.getTimeLocal().getYear(), e.getName()));
        }
        String calendar = Files.readString(pack.resolve("calendar.csv"));
        assertTrue(calendar.contains("tub 2 delivered") && calendar.contains(",yes,"), calendar);
    }

    @Test
    void aRunOfNoTubsAndADayThatIsNoneAreRefused() {
        assertTrue(typed("--tubs", "0").err().contains("--tubs 0"));
        assertTrue(typed("--begin", "soon").err().contains("year-month-day"));
        assertFalse(Files.exists(folder.resolve("runs/pack")));
    }

    @Test
    void aRollWithoutWidthIsRefusedAndNothingIsWritten() {
        Typed typed = typed("--roll", "-3 mm");
        assertFalse(typed.code() == 0);
        assertTrue(typed.err().contains("--roll"), typed.err());
        assertFalse(Files.exists(folder.resolve("runs/pack")));
    }
}
