// SPDX-License-Identifier: Apache-2.0
package tubwright.engine.design;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import tubwright.engine.design.text.DesignError;

/** Designs that cannot be built, each made from the template by one slip, and exactly what is said of it. */
class BadDesignTest {
    @TempDir
    Path folder;

    private String fault(String right, String wrong) throws IOException {
        String text = Template.text("Bramble");
        assertTrue(text.contains(right), "the template has: " + right);
        Path file = folder.resolve("tub.yaml");
        Files.writeString(file, text.replace(right, wrong));
        String message =
                assertThrows(DesignError.class, () -> Design.read(folder)).getMessage();
        return message.replace(file.toString(), "tub.yaml");
    }

    @Test
    void anUnknownKey() throws IOException {
        assertEquals(
                "tub.yaml:57:5: \"core thicknes\" is not a key of a laminate\n"
                        + "    did you mean \"core thickness\"? its keys: stack, plies, core, core thickness,"
                        + " film, sheet, thickness, reference",
                fault("    core thickness: 15 mm", "    core thicknes: 15 mm"));
    }

    @Test
    void aMissingUnit() throws IOException {
        assertEquals(
                "tub.yaml:57:21: core thickness: \"15\" is not a length: the unit is missing; a"
                        + " length is wanted\n"
                        + "    units that fit: mm, m, in",
                fault("core thickness: 15 mm", "core thickness: 15"));
    }

    @Test
    void aWrongUnit() throws IOException {
        assertEquals(
                "tub.yaml:12:33: torsional stiffness: \"4 kN·m\" is not a torsional stiffness: 'kN·m'"
                        + " measures moment; a torsional stiffness is wanted\n"
                        + "    units that fit: kN·m/deg, N·m/deg, N·m/rad, lbf·ft/deg",
                fault("at least 4 kN·m/deg", "at least 4 kN·m"));
    }

    @Test
    void aPoundOfMassInATorsionalStiffness() throws IOException {
        assertEquals(
                "tub.yaml:12:33: torsional stiffness: \"4000 lb·ft/deg\" is not a torsional"
                        + " stiffness: 'lb·ft/deg' is of another kind; a torsional stiffness is wanted\n"
                        + "    did you mean \"lbf·ft/deg\"? units that fit: kN·m/deg, N·m/deg, N·m/rad,"
                        + " lbf·ft/deg",
                fault("at least 4 kN·m/deg", "at least 4000 lb·ft/deg"));
    }

    @Test
    void aThicknessOfZero() throws IOException {
        assertEquals(
                "tub.yaml:57:21: core thickness: \"0 mm\" is not greater than zero\n"
                        + "    a length above zero is due here",
                fault("core thickness: 15 mm", "core thickness: 0 mm"));
    }

    @Test
    void aNegativeThickness() throws IOException {
        assertEquals(
                "tub.yaml:57:21: core thickness: \"-15 mm\" is not greater than zero\n"
                        + "    a length above zero is due here",
                fault("core thickness: 15 mm", "core thickness: -15 mm"));
    }

    @Test
    void aNumberThatIsNotFinite() throws IOException {
        assertEquals(
                "tub.yaml:57:21: core thickness: \".nan\" is not a finite number\n"
                        + "    write a number with a unit, for example in mm",
                fault("core thickness: 15 mm", "core thickness: .nan"));
    }

    @Test
    void aCoreThickerThanTheTub() throws IOException {
        assertTrue(
                fault("core thickness: 15 mm", "core thickness: 15 in")
                        .startsWith("tub.yaml:71:46: laminate \"skin\" is 382.3 mm thick, but the tub is only 270 mm"),
                "15 in + 2 films + 6 plies");
    }

    @Test
    void aStripInTwoPieces() throws IOException {
        assertEquals(
                "tub.yaml:86:23: \"floor\" is in piece \"lower shell\" already\n"
                        + "    each strip and each wall comes out of one mould",
                fault("upper shell: [deck]", "upper shell: [deck, floor]"));
    }

    @Test
    void aLoadOnWhatIsHeld() throws IOException {
        assertEquals(
                "tub.yaml:105:3: case \"torsion\": hardpoint \"engine mount lower L\" is held where it is loaded\n"
                        + "    its share of the load would go straight into the support; load other hardpoints",
                fault("load at: [lower wishbone, upper wishbone]", "load at: [lower wishbone, engine mount lower]"));
    }

    @Test
    void aVariantNamedAsTheDesignItself() throws IOException {
        assertEquals(
                "tub.yaml:158:3: \"as designed\" names the design as written\n    give the variant another name",
                fault("  thicker core:", "  as designed:"));
    }

    @Test
    void anAnchor() throws IOException {
        assertEquals(
                "tub.yaml:71:10: \"&x\" is a YAML anchor\n"
                        + "    a design document has no anchors and aliases; take it out, or put the text in quotes",
                fault("  shell: {on", "  shell: &x {on"));
    }

    @Test
    void aTag() throws IOException {
        assertEquals(
                "tub.yaml:7:6: a YAML tag, \"!\" and a word, stands here\n    take it out, or put the text in quotes",
                fault("tub: Bramble", "tub: !thing Bramble"));
    }

    @Test
    void aControlCharacter() throws IOException {
        assertEquals(
                "tub.yaml:7:7: the control character 0000 stands here\n    take it out",
                fault("tub: Bramble", "tub: B\0ramble"));
    }

    @Test
    void bracketsWithoutEnd() throws IOException {
        assertEquals(
                "tub.yaml:7:45: more than 40 levels deep\n    is this a design document?",
                fault("tub: Bramble", "tub: " + "[".repeat(100_000)));
    }

    @Test
    void pointsWithoutAUnit() throws IOException {
        assertEquals(
                "tub.yaml:21:55: outline: the unit is missing behind the last point\n"
                        + "    write it once, there: \"(0, 140) (130, 140) (150, 330) mm\"",
                fault("(0, 420) mm", "(0, 420)"));
    }

    @Test
    void aLaminateThatIsNotThere() throws IOException {
        assertEquals(
                "tub.yaml:73:75: there is no laminate called \"pannel\"\n"
                        + "    did you mean \"panel\"? known: skin, panel, rim",
                fault("laminate: panel}", "laminate: pannel}"));
    }

    @Test
    void aMaterialThatIsNotThere() throws IOException {
        assertEquals(
                "tub.yaml:55:16: there is no material called \"pw-t650-975\"\n"
                        + "    did you mean \"pw-t650-976\" or \"ud-t650-976\" or \"8hs-t650-976\"?",
                fault(
                        "    plies: {c: pw-t650-976, u: ud-as4-3502}\n    core",
                        "    plies: {c: pw-t650-975, u: ud-as4-3502}\n    core"));
    }

    @Test
    void aMaterialOfAnotherKind() throws IOException {
        assertEquals(
                "tub.yaml:56:11: \"ud-as4-3502\" is no core: standard-modulus carbon tape, 180 °C"
                        + " epoxy\n"
                        + "    known: al-honeycomb-1.6, al-honeycomb-2.0, al-honeycomb-2.3, al-honeycomb-3.1,"
                        + " al-honeycomb-3.1-small-cell, al-honeycomb-3.4, al-honeycomb-4.3, al-honeycomb-4.5,"
                        + " al-honeycomb-5.7, al-honeycomb-6.1, al-honeycomb-8.1, al-honeycomb-5056-1.6,"
                        + " al-honeycomb-5056-2.0, al-honeycomb-5056-2.3, al-honeycomb-5056-3.1,"
                        + " al-honeycomb-5056-3.4, al-honeycomb-5056-4.3, al-honeycomb-5056-4.5,"
                        + " al-honeycomb-5056-5.7, al-honeycomb-5056-6.1, al-honeycomb-5056-8.1,"
                        + " aramid-honeycomb-29, aramid-honeycomb-48, aramid-honeycomb-64,"
                        + " aramid-honeycomb-128, aramid-honeycomb-144, foam-pmi-52, foam-pmi-75, foam-pmi-110,"
                        + " foam-pvc-60, foam-pvc-80, foam-pvc-130, foam-pvc-200, balsa-150",
                fault(
                        "core: al-honeycomb-3.1-small-cell\n    core thickness: 15 mm",
                        "core: ud-as4-3502\n    core thickness: 15 mm"));
    }

    @Test
    void aTagThatIsNotInTheLegend() throws IOException {
        assertEquals(
                "tub.yaml:60:12: cannot make the layup [45c/0x/core/0c/45c]: nothing is named for the"
                        + " tag 'x'; did you mean 'c'?\n"
                        + "    a layup reads \"[45c/0_2/core/0_2/45c]\"; its tags are named under \"plies\"",
                fault("\"[45c/0c/core/0c/45c]\"", "\"[45c/0x/core/0c/45c]\""));
    }

    @Test
    void aStripThatIsNotThere() throws IOException {
        assertEquals(
                "tub.yaml:34:16: there is no strip called \"dekc\"\n"
                        + "    did you mean \"deck\"? known: floor, side, deck",
                fault("strips: [deck]", "strips: [dekc]"));
    }

    @Test
    void aHardpointThatIsNotThere() throws IOException {
        assertEquals(
                "tub.yaml:107:15: there is no hardpoint called \"lower whisbone\"\n"
                        + "    did you mean \"lower wishbone\"? known: lower wishbone, upper wishbone, engine"
                        + " mount lower, engine mount upper",
                fault("load at: [lower wishbone,", "load at: [lower whisbone,"));
    }

    @Test
    void aDirectionThatIsNotThere() throws IOException {
        assertEquals(
                "tub.yaml:106:32: \"w\" is not a direction\n"
                        + "    directions: x, y, z, rx, ry, rz; several with commas: \"x, y, z\"",
                fault("engine mount lower: \"x, y, z\"", "engine mount lower: \"x, y, w\""));
    }

    @Test
    void aSeamThatIsNotThere() throws IOException {
        assertEquals(
                "tub.yaml:90:12: there is no seam called \"lower shell / uper shell\"\n"
                        + "    did you mean \"lower shell / upper shell\"? known: lower shell / upper shell",
                fault("seams: all", "seams: lower shell / uper shell"));
    }

    @Test
    void anOutlineThatCrossesItself() throws IOException {
        assertEquals(
                "tub.yaml:24:36: the outline of frame 2 crosses itself: the side from corner 1 to 2"
                        + " meets the side from corner 3 to 4\n"
                        + "    frames run from front to rear; an outline runs from the bottom centre to the top"
                        + " centre without crossing itself",
                fault("(0, 100) (170, 100) (190, 460) (0, 490) mm", "(0, 100) (170, 460) (190, 100) (0, 300) mm"));
    }

    @Test
    void anOutlineThatLacksACorner() throws IOException {
        assertEquals(
                "tub.yaml:23:7: frame 2 has 3 outline corners, but frame 1 has 4; every frame needs"
                        + " the same number\n"
                        + "    frames run from front to rear; an outline runs from the bottom centre to the top"
                        + " centre without crossing itself",
                fault(
                        "(0, 100) (170, 100) (190, 460) (0, 490) mm\n      radii: 0, 40, 60, 0 mm",
                        "(0, 100) (170, 100) (0, 490) mm\n      radii: 0, 40, 0 mm"));
    }

    @Test
    void aRadiusTooMany() throws IOException {
        assertEquals(
                "tub.yaml:25:14: 5 radii stand beside 4 corners\n"
                        + "    give one radius for each corner, first and last included; 0 for a sharp one",
                fault("radii: 0, 40, 60, 0 mm", "radii: 0, 40, 60, 0, 0 mm"));
    }

    @Test
    void framesOutOfOrder() throws IOException {
        assertEquals(
                "tub.yaml:26:7: frame 3 at x = 500.0 mm comes before frame 2 at x = 600.0 mm; list"
                        + " frames from front to rear\n"
                        + "    frames run from front to rear; an outline runs from the bottom centre to the top"
                        + " centre without crossing itself",
                fault("station: 1200 mm", "station: 500 mm"));
    }

    @Test
    void anOpeningLargerThanItsStrip() throws IOException {
        assertEquals(
                "tub.yaml:33:5: opening \"cockpit\" is larger than its strip \"deck\": at x = 800.0"
                        + " mm it reaches y = -270.0 mm, but there the strip runs from 0.0 to 194.7 mm\n"
                        + "    an opening lies wholly inside the strips it names and inside the tub",
                fault("width: 330 mm", "width: 700 mm"));
    }

    @Test
    void aWallOutsideTheTub() throws IOException {
        assertEquals(
                "tub.yaml:41:5: wall \"dash\" lies outside the tub: x = 2720.0 mm, but the tub runs"
                        + " from 0.0 to 1900.0 mm\n"
                        + "    a wall stands inside the tub, between its front and its rear end",
                fault("station: 720 mm", "station: 2720 mm"));
    }

    @Test
    void aHoleOutsideItsWall() throws IOException {
        assertEquals(
                "tub.yaml:44:9: hole \"leg hole\" leaves wall \"dash\": x = 720.0, y = 120.0, z ="
                        + " 488.8 mm is outside the panel\n"
                        + "    a hole lies wholly inside its wall",
                fault("z: 160 .. 400 mm", "z: 160 .. 700 mm"));
    }

    @Test
    void aHardpointOffItsStrip() throws IOException {
        assertEquals(
                "tub.yaml:98:3: hardpoint \"lower wishbone\": z = 600.0 mm is not on strip \"side\""
                        + " at x = 250.0 mm, where it runs from 139.1 to 415.7 mm\n"
                        + "    move it onto the part",
                fault(
                        "lower wishbone: {on: side, x: 250 mm, z: 180 mm}",
                        "lower wishbone: {on: side, x: 250 mm, z: 600 mm}"));
    }

    @Test
    void aHardpointInTheCockpit() throws IOException {
        assertEquals(
                "tub.yaml:98:3: hardpoint \"lower wishbone\" lies in the opening \"cockpit\"\n"
                        + "    move it onto the skin beside it",
                fault(
                        "lower wishbone: {on: side, x: 250 mm, z: 180 mm}",
                        "lower wishbone: {on: deck, x: 1100 mm, y: 50 mm}"));
    }

    @Test
    void aStripWithoutALaminate() throws IOException {
        assertEquals(
                "tub.yaml:18:19: strip \"side\" has no laminate over some of its length\n"
                        + "    write a zone on it, or a laminate called \"side\"",
                fault(
                        "  shell: {on: [floor, side, deck], laminate: skin}",
                        "  shell: {on: [floor, deck], laminate: skin}"));
    }

    @Test
    void aStationOutsideTheTub() throws IOException {
        assertEquals(
                "tub.yaml:110:19: rear station: \"2900 mm\" lies outside the tub\n"
                        + "    the tub runs from 0 to 1900 mm",
                fault("rear station: 1900 mm", "rear station: 2900 mm"));
    }

    @Test
    void aCaseThatNeitherTwistsNorBends() throws IOException {
        assertEquals(
                "tub.yaml:106:5: torsion: none of these keys is given: couple, force, forces, pads,"
                        + " pressures, car, wheels\n"
                        + "    give at least one of them",
                fault("    couple: 1000 N·m\n", ""));
    }

    @Test
    void aVariantThatChangesWhatIsNotThere() throws IOException {
        assertEquals(
                "tub.yaml:160:12: variant \"thicker core\": skn: neither \"stack\" nor \"sheet\" is given\n"
                        + "    did you mean \"skin\"? give one of them",
                fault("      skin: {core thickness: 20 mm}", "      skn: {core thickness: 20 mm}"));
    }

    @Test
    void aVariantWithAnUnknownKey() throws IOException {
        assertEquals(
                "tub.yaml:160:14: variant \"thicker core\": \"core thicknes\" is not a key of a laminate\n"
                        + "    did you mean \"core thickness\"? its keys: stack, plies, core, core thickness,"
                        + " film, sheet, thickness, reference",
                fault("      skin: {core thickness: 20 mm}", "      skin: {core thicknes: 20 mm}"));
    }

    @Test
    void aVariantThatBreaksWhatTheDesignItselfSays() throws IOException {
        // The fault lies in a line that is right without the variant.
        assertTrue(
                fault("      skin: {core thickness: 20 mm}", "      skin: {core thickness: 20 in}")
                        .startsWith("tub.yaml:71:46: variant \"thicker core\": laminate \"skin\" is 509.3 mm thick"),
                "20 in + 2 films + 6 plies");
    }

    @Test
    void aFaultOfTheDesignIsToldOnceAndNotOfEachVariant() throws IOException {
        assertEquals(
                "tub.yaml:57:21: core thickness: \"0 mm\" is not greater than zero\n"
                        + "    a length above zero is due here",
                fault("core thickness: 15 mm", "core thickness: 0 mm"));
        assertEquals(
                "tub.yaml:71:46: there is no laminate called \"skim\"\n" + "    did you mean \"skin\"? known: skin",
                fault("laminate: skin}", "laminate: skim}")
                        .lines()
                        .limit(2)
                        .reduce((a, b) -> a + "\n" + b)
                        .orElseThrow()
                        .replaceFirst("known: skin.*", "known: skin"));
    }

    @Test
    void aMisspeltSectionOfAVariant() throws IOException {
        assertEquals(
                "tub.yaml:159:5: variant \"thicker core\": \"laminats\" is not a key of a design\n"
                        + "    did you mean \"laminates\"?",
                fault("  thicker core:\n    laminates:", "  thicker core:\n    laminats:")
                        .replaceFirst("(?s) its keys:.*", ""));
    }

    @Test
    void aVariantOfAnotherName() throws IOException {
        assertEquals(
                "tub.yaml:159:5: variant \"thicker core\": \"tub\" cannot differ in a variant\n"
                        + "    a variant is the same tub built in another way; start another design file for"
                        + " another tub",
                fault("  thicker core:\n", "  thicker core:\n    tub: Tamarisk\n"));
    }

    @Test
    void aFolderWithoutADesign() {
        assertEquals(
                folder + ": the folder has no tub.yaml\n    \"tubwright new DIR\" starts a design that runs",
                assertThrows(DesignError.class, () -> Design.read(folder)).getMessage());
    }

    @Test
    void anInsertOverAnEdge() throws IOException {
        String message = fault("lower wishbone: {on: side, x: 250 mm", "lower wishbone: {on: side, x: 12 mm");
        assertTrue(message.contains("\"lower wishbone\": its insert reaches over the edge of the front end"), message);
        assertTrue(message.contains("12 mm from its middle; its radius is 25 mm"), message);
    }
}
