// SPDX-License-Identifier: Apache-2.0
package tubwright.engine.design;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Random;
import java.util.Set;
import java.util.TreeSet;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import tubwright.engine.design.text.DesignError;
import tubwright.engine.laminate.Laminate;
import tubwright.engine.laminate.Layer;
import tubwright.engine.laminate.LayerRole;
import tubwright.engine.trim.Layup;

/** Writing a choice back changes the lines it must and no other byte. */
class DesignFileTest {
    private static final Path LARKSPUR = Path.of("..", "examples", "larkspur", "tub.yaml");
    private static final Path BRAMBLE = Path.of("..", "examples", "bramble", "tub.yaml");

    @TempDir
    private Path folder;

    private Path copy(Path from) throws IOException {
        return Files.copy(from, folder.resolve("tub.yaml"));
    }

    private static Layup layup(DesignFile file, String variant) {
        return Layup.of(file.design().variant(variant).orElseThrow().tub());
    }

    private static Layup without(Layup layup, String zone, int place) {
        Laminate laminate = layup.zones().get(zone);
        List<Layer> layers = new ArrayList<>(laminate.layers());
        layers.remove(place);
        return layup.withZone(zone, new Laminate(layers, laminate.reference()));
    }

    /** One to three plies less, the core of another thickness now and then. */
    private static Laminate thinner(Laminate laminate, Random random) {
        List<Layer> layers = new ArrayList<>(laminate.layers());
        for (int gone = 1 + random.nextInt(3); gone > 0; ) {
            int at = random.nextInt(layers.size());
            if (layers.get(at).role() == LayerRole.PLY) {
                layers.remove(at);
                gone--;
            }
        }
        double core = new double[] {0.01, 0.0125, 0.02}[random.nextInt(3)];
        layers.replaceAll(l -> l.role() == LayerRole.CORE ? new Layer(l.material(), core, l.angle(), l.role()) : l);
        return new Laminate(layers, laminate.reference());
    }

    /** Lines of one text that the other does not have at all. */
    private static Set<String> onlyIn(String text, String other) {
        Set<String> lines = new TreeSet<>(text.lines().toList());
        other.lines().toList().forEach(lines::remove);
        return lines;
    }

    @Test
    void aStackThatItsOnlyZoneChangesIsChangedInItsLineAlone() throws IOException {
        DesignFile file = DesignFile.open(copy(LARKSPUR));
        DesignFile edited = file.withLayup(Design.AS_DESIGNED, without(layup(file, Design.AS_DESIGNED), "floor", 1));
        int floor = file.text().indexOf("[45c/0c/45c/core", file.text().indexOf("  floor skin:"));
        assertEquals(
                file.text().substring(0, floor)
                        + file.text().substring(floor).replaceFirst("45c/0c/45c/core", "45c_2/core"),
                edited.text());
    }

    @Test
    void zonesThatPartFromTheirLaminateGetACopyRightBehindIt() throws IOException {
        DesignFile file = DesignFile.open(copy(LARKSPUR));
        Layup layup = without(without(layup(file, Design.AS_DESIGNED), "nose deck", 2), "nose flank", 2);
        DesignFile edited = file.withLayup(Design.AS_DESIGNED, layup);
        // All that is gone is the reference of the two zones; the copy adds lines.
        assertEquals(
                Set.of(
                        "  nose deck:      {on: deck, x: 0 .. 750 mm, laminate: nose skin}",
                        "  nose flank:     {on: flank, x: 0 .. 950 mm, laminate: nose skin}"),
                onlyIn(file.text(), edited.text()));
        assertTrue(edited.text()
                .contains("  nose deck:      {on: deck, x: 0 .. 750 mm, laminate: nose skin of nose deck}"));
        assertTrue(edited.text().indexOf("  nose skin of nose deck:")
                < edited.text().indexOf("  side skin:"));
        assertEquals(6, edited.text().lines().count() - file.text().lines().count());
    }

    @Test
    void commentsQuotesLineEndsAndTheByteOrderMarkStay() throws IOException {
        String text = "\ufeff"
                + Files.readString(LARKSPUR)
                        .replace("\n", "\r\n")
                        .replace("core thickness: 15 mm", "core thickness: '15 mm'   # gr\u00fc\u00dfe \ud83d\ude97");
        Path path = folder.resolve("tub.yaml");
        Files.writeString(path, text);
        DesignFile.open(path)
                .withCoreThickness(Design.AS_DESIGNED, "scuttle skin", "12 mm")
                .withTarget(Design.AS_DESIGNED, "mass", "at most 16.5 kg")
                .save();
        String expected = text.replaceFirst("core thickness: '15 mm'", "core thickness: '12 mm'")
                .replace("mass: at most 18 kg", "mass: at most 16.5 kg");
        assertEquals(expected, new String(Files.readAllBytes(path), StandardCharsets.UTF_8));
    }

    @Test
    void randomChoicesReadBackAsTheyWereChosenInPlaceAndAsAVariant() throws IOException {
        long seed = 20_261_126;
        Random random = new Random(seed);
        DesignFile file = DesignFile.open(copy(LARKSPUR));
        Layup nominal = layup(file, Design.AS_DESIGNED);
        for (int trial = 0; trial < 4; trial++) {
            Layup chosen = nominal;
            for (String zone : new TreeSet<>(nominal.zones().keySet())) {
                if (random.nextInt(3) > 0) {
                    chosen = chosen.withZone(zone, thinner(nominal.zones().get(zone), random));
                }
            }
            DesignFile inPlace = file.withLayup(Design.AS_DESIGNED, chosen);
            assertEquals(chosen, layup(inPlace, Design.AS_DESIGNED), "seed " + seed + ", trial " + trial);
            DesignFile beside =
                    file.withVariant("lighter", "carbon sandwich, lighter").withLayup("lighter", chosen);
            assertEquals(chosen, layup(beside, "lighter"), "seed " + seed + ", trial " + trial);
            assertEquals(nominal, layup(beside, Design.AS_DESIGNED));
            assertTrue(beside.text().startsWith(file.text().stripTrailing()), "a variant is added at the end");
        }
    }

    @Test
    void aVariantTakesTheChangesOfItsOwnLayup() throws IOException {
        DesignFile file = DesignFile.open(copy(BRAMBLE));
        Layup foam = layup(file, "foam core");
        Layup chosen = without(foam, "shell", 1);
        DesignFile edited = file.withLayup("foam core", chosen);
        assertEquals(layup(file, Design.AS_DESIGNED), layup(edited, Design.AS_DESIGNED));
        assertEquals(
                chosen.zones().get("shell").layers().size(),
                layup(edited, "foam core").zones().get("shell").layers().size());
        assertTrue(edited.text().contains("skin: {core: foam-pmi-75, stack: \"[45c/0c/core/0c_2/45c]\"}"));
    }

    @Test
    void anotherPlyOfAPatchAndANewMaterialOfAStackAreWrittenWithTheirLegend() throws IOException {
        DesignFile file = DesignFile.open(copy(LARKSPUR));
        Layup nominal = layup(file, Design.AS_DESIGNED);
        Layer tape = nominal.zones().get("sill").layers().stream()
                .filter(l -> l.material().name().equals("ud-as4-3502"))
                .findFirst()
                .orElseThrow();
        List<Layer> floor = new ArrayList<>(nominal.zones().get("floor").layers());
        floor.add(1, tape);
        Layup chosen = nominal.withZone(
                        "floor",
                        new Laminate(floor, nominal.zones().get("floor").reference()))
                .withPatch(
                        "hatch frame",
                        nominal.patchesByName().get("hatch frame").subList(0, 1));
        DesignFile edited = file.withLayup(Design.AS_DESIGNED, chosen);
        assertEquals(chosen, layup(edited, Design.AS_DESIGNED));
        assertTrue(edited.text().contains("plies: {c: pw-t650-976, a: ud-as4-3502}"));
    }

    @Test
    void whatCannotBeWrittenIsRefusedWithNothingChanged() throws IOException {
        Path path = copy(LARKSPUR);
        DesignFile file = DesignFile.open(path);
        Layup nominal = layup(file, Design.AS_DESIGNED);
        for (Layup bad : List.of(
                nominal.withJoint("waist", 0.5),
                nominal.withPatch("hatch frame", List.of()),
                nominal.withZone(
                        "floor",
                        new Laminate(
                                nominal.zones().get("floor").layers().stream()
                                        .filter(l -> l.role() == LayerRole.PLY)
                                        .toList(),
                                nominal.zones().get("floor").reference())))) {
            DesignError refused = assertThrows(DesignError.class, () -> file.withLayup(Design.AS_DESIGNED, bad));
            assertFalse(refused.faults().getFirst().help().isEmpty());
        }
        assertThrows(DesignError.class, () -> file.withVariant("aluminium", "again"));
        assertThrows(
                DesignError.class,
                () -> file.withStack(Design.AS_DESIGNED, "floor skin", "[45c/oops]")
                        .save());
        assertEquals(file.text(), Files.readString(path));
    }

    @Test
    void aFileThatSomebodyElseChangedMeanwhileIsLeftAlone() throws IOException {
        Path path = copy(LARKSPUR);
        DesignFile file = DesignFile.open(path);
        Design design = Design.read(path);
        Files.writeString(path, Files.readString(path) + "# a colleague was here\n");
        String theirs = Files.readString(path);
        DesignError refused = assertThrows(
                DesignError.class,
                () -> file.withTarget(Design.AS_DESIGNED, "mass", "at most 17 kg")
                        .save());
        assertTrue(refused.getMessage().contains("meanwhile"));
        assertThrows(DesignError.class, () -> DesignFile.of(design));
        assertThrows(DesignError.class, () -> file.saveAs(path));
        assertEquals(theirs, Files.readString(path));
        Path other = folder.resolve("lighter.yaml");
        file.withTarget(Design.AS_DESIGNED, "mass", "at most 17 kg").saveAs(other);
        assertEquals(file.text().replace("at most 18 kg", "at most 17 kg"), Files.readString(other));
        try (var files = Files.list(folder)) {
            assertEquals(2, files.count(), "no scrap is left behind");
        }
    }
}
