// SPDX-License-Identifier: Apache-2.0
package tubwright.desk.command;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Set;
import java.util.TreeSet;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import tools.jackson.databind.JsonNode;
import tools.jackson.databind.json.JsonMapper;
import tubwright.desk.FakeBench;
import tubwright.desk.Typed;

/** Studies as they are typed. */
class StudyCommandTest {
    private static final String TUB = """
            tub: Box
            shape:
              loft: ruled
              strips: [floor, flank, deck]
              frames:
                - {station: 0 mm, outline: "(0, 0) (200, 0) (200, 300) (0, 300) mm"}
                - {station: 900 mm, outline: "(0, 0) (200, 0) (200, 300) (0, 300) mm"}
              walls: {front: {station: 0 mm}, rear: {station: 900 mm}}
            targets: {torsional stiffness: at least 2 kN·m/deg, mass: at most 12 kg}
            laminates:
              skin:
                stack: "[45c/0c/core/0c/45c]"
                plies: {c: pw-t650-976}
                core: al-honeycomb-3.1-small-cell
                core thickness: 10 mm
                film: film-epoxy-150
            zones: {skins: {on: [floor, flank, deck], laminate: skin}, ends: {on: [front, rear], laminate: skin}}
            joints:
              edges: {walls: all, bonded: {arrangement: tee, overlap: 30 mm, adhesive: paste-epoxy}}
            hardpoints:
              front: {on: front, y: 80 mm, z: 150 mm, footprint: 40 mm}
              low: {on: rear, y: 80 mm, z: 80 mm, footprint: 40 mm}
              high: {on: rear, y: 80 mm, z: 220 mm, footprint: 40 mm}
            cases:
              torsion:
                hold: {low: "x, y, z", high: "x, y, z"}
                load at: [front]
                couple: 1000 N·m
                front station: 200 mm
                rear station: 700 mm
            mesh: {size: 70 mm}
            """;

    @TempDir
    Path folder;

    @BeforeEach
    void writeADesign() throws IOException {
        Files.writeString(folder.resolve("tub.yaml"), TUB);
        Files.createDirectories(folder.resolve("studies"));
        study("narrow", """
                about: Narrower.
                vary:
                  given back: {frames: 0 .. 900 mm, change: narrower, values: "0, 20, 40, 60, 80, 500 mm"}
                read: [torsional stiffness, mass, ply area, lightest mass at 2 kN·m/deg]
                money: {currency: £, ply per square metre: 40}
                """);
        study("sure", """
                vary:
                  width: {frames: 0 .. 900 mm, change: wider, spread: 4 mm}
                  core: {at: [laminates, skin, core thickness], within: 1 mm}
                read: [torsional stiffness, mass]
                layout: indices
                points: 4
                layup scatter: {draws: 400}
                front: [least mass, most torsional stiffness]
                verify: 2
                """);
    }

    private void study(String name, String text) throws IOException {
        Files.writeString(folder.resolve("studies").resolve(name + ".yaml"), text);
    }

    private Typed typed(String... more) {
        String[] all = new String[more.length + 2];
        all[0] = "study";
        all[1] = folder.toString();
        System.arraycopy(more, 0, all, 2, more.length);
        return Typed.on(new FakeBench(), all);
    }

    @Test
    void aStudyIsWrittenAsPageTableAndJsonAndTheSameAgainWithoutComputing() throws IOException {
        Typed typed = typed("narrow");
        assertEquals(0, typed.code(), typed.err());
        assertTrue(typed.out().contains("1 designs are no tub"), typed.out());
        Path out = folder.resolve("runs").resolve("study-narrow");
        String csv = Files.readString(out.resolve("rows.csv"));
        assertEquals(7, csv.lines().filter(l -> l.matches("\\d+,.*|point,.*")).count(), csv);
        String json = Files.readString(out.resolve("answer.json"));
        String page = Files.readString(out.resolve("study.html"));
        assertTrue(page.contains("<svg") && page.contains("given back"), "the page has its chart");
        byte[] rows = Files.readAllBytes(folder.resolve("runs/rows/rows.tsv"));
        assertEquals(0, typed("narrow", "--workers", "1").code());
        assertEquals(csv, Files.readString(out.resolve("rows.csv")));
        assertEquals(json, Files.readString(out.resolve("answer.json")));
        assertEquals(page, Files.readString(out.resolve("study.html")));
        org.junit.jupiter.api.Assertions.assertArrayEquals(
                rows, Files.readAllBytes(folder.resolve("runs/rows/rows.tsv")));
        // From nothing, on one worker: what was computed on two comes again byte for byte.
        Files.delete(folder.resolve("runs/rows/rows.tsv"));
        assertEquals(0, typed("narrow", "--workers", "1").code());
        assertEquals(json, Files.readString(out.resolve("answer.json")));
    }

    @Test
    void whatIsSureIsToldWithItsIntervalAndEveryKeyIsExplained() throws IOException {
        Typed typed = typed("sure", "--json");
        assertEquals(0, typed.code(), typed.err());
        JsonNode answer = JsonMapper.builder().build().readTree(typed.out());
        JsonNode variant = answer.get("variants").get(0);
        assertEquals(2, variant.get("chances").size());
        assertEquals(2, variant.get("indices").size());
        assertTrue(variant.get("front").size() > 0);
        assertTrue(variant.get("points").size() > 16, "the front's points are computed too");
        assertEquals(400, variant.get("layups").get("draws").asInt());
        Set<String> written = new TreeSet<>();
        collect(answer, written);
        Set<String> explained = new TreeSet<>();
        Matcher matcher =
                Pattern.compile("`([A-Za-z0-9_]+)(\\[\\])?`").matcher(Files.readString(Path.of("../docs/json.md")));
        while (matcher.find()) {
            explained.add(matcher.group(1));
        }
        written.removeAll(explained);
        assertEquals(Set.of(), written, "keys missing in docs/json.md");
        assertTrue(
                Files.readString(folder.resolve("runs/study-sure/study.html")).contains("Every draw is a layup"));
    }

    private static void collect(JsonNode node, Set<String> keys) {
        node.propertyNames().forEach(keys::add);
        node.forEach(child -> collect(child, keys));
    }

    @Test
    void wrongStudiesAreRefusedInWords() throws IOException {
        assertTrue(typed("narow").err().contains("did you mean \"narrow\""));
        assertTrue(typed().out().contains("narrow"));
        study("wrong", "vary:\n  x: {at: [laminates, skim, core thickness], range: 1 .. 2 mm}\nread: [mass]\n");
        Typed wrong = typed("wrong");
        assertEquals(ExitCode.WRONG_INPUT, wrong.code());
        assertTrue(
                wrong.err().contains("wrong.yaml:2:3") && wrong.err().contains("did you mean \"skin\""), wrong.err());
        assertTrue(typed("narrow", "--master", "nowhere").err().contains("--master"));
    }
}
