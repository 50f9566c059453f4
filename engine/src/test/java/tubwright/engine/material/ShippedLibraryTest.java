// SPDX-License-Identifier: Apache-2.0
package tubwright.engine.material;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import org.junit.jupiter.api.Test;

class ShippedLibraryTest {
    private final MaterialLibrary library = MaterialLibrary.shipped();

    @Test
    void noMaterialDropsOutUnseen() {
        long plies = library.all().stream().filter(Ply.class::isInstance).count();
        long cores = library.all().stream().filter(Core.class::isInstance).count();
        long adhesives =
                library.all().stream().filter(Adhesive.class::isInstance).count();
        long metals = library.all().stream().filter(Metal.class::isInstance).count();
        assertEquals(
                "36 plies, 34 cores, 3 adhesives, 15 metals",
                plies + " plies, " + cores + " cores, " + adhesives + " adhesives, " + metals + " metals");
    }

    @Test
    void unitsOfTheSourcesBecomeSi() {
        // SI values beside the inch-pound ones in the reports themselves: NCP-RP-2009-028 (transcription).
        Ply tape = library.get("ud-im7-8552", Ply.class);
        assertEquals(158.5e9, tape.elasticity().e1(), 0.05e9);
        assertEquals(8.96e9, tape.elasticity().e2(), 0.005e9);
        assertEquals(4.69e9, tape.elasticity().g12(), 0.005e9);
        assertEquals(2501e6, tape.properties().require(Property.XT), 0.5e6);
        assertEquals(1716e6, tape.properties().require(Property.XC), 0.5e6);
        assertEquals(0.183e-3, tape.thickness(), 0.0005e-3);
        // 3.1 lb/ft³ core: 517/310/152 MPa (from memory).
        Core core = library.get("al-honeycomb-3.1", Core.class);
        assertEquals(517e6, core.properties().require(Property.E3), 0.5e6);
        assertEquals(310e6, core.elasticity().g13(), 0.5e6);
        assertEquals(152e6, core.elasticity().g23(), 0.5e6);
        assertEquals(49.7, core.density(), 0.05);
        // MIL-HDBK-17-2F plain weave: 71.7/68.9/5.5 GPa (transcription).
        Ply cloth = library.get("pw-t650-976", Ply.class);
        assertEquals(71.7e9, cloth.elasticity().e1(), 0.05e9);
        assertEquals(68.9e9, cloth.elasticity().e2(), 0.06e9);
        assertEquals(5.5e9, cloth.elasticity().g12(), 0.05e9);
    }

    @Test
    void whatTheSourceDoesNotGiveIsFilledByAStatedRule() {
        PropertyTable table = library.get("ud-im7-8552").properties();
        assertEquals(
                "assumed: G13 = G12",
                table.find(Property.G13).orElseThrow().provenance().source());
        assertEquals(
                "assumed: G23 = E2/(2(1+nu23)), nu23 = 0.4 (assumed)",
                table.find(Property.G23).orElseThrow().provenance().source());
        assertEquals(
                Trust.ASSUMED,
                table.find(Property.G23).orElseThrow().provenance().trust());
        assertEquals(
                Trust.TRANSCRIBED,
                table.find(Property.E1).orElseThrow().provenance().trust());
    }

    @Test
    void everyValueSaysWhereItComesFromAndEveryLayerMaterialHasWhatALaminateNeeds() {
        for (Material material : library.all()) {
            assertFalse(material.description().isBlank(), material.name());
            assertTrue(material.density() > 10 && material.density() < 9000, material.name());
            material.properties()
                    .values()
                    .forEach((property, value) ->
                            assertFalse(value.provenance().source().isBlank(), material.name() + " " + property));
            if (material instanceof Ply ply) {
                assertTrue(ply.thickness() > 5e-5 && ply.thickness() < 5e-4, material.name());
            }
        }
    }

    @Test
    void aMisspeltNameIsAnsweredWithTheNearest() {
        MaterialException unknown = assertThrows(MaterialException.class, () -> library.get("al-honycomb-3.1"));
        assertTrue(
                unknown.getMessage()
                        .startsWith("no material is called 'al-honycomb-3.1'; did you mean al-honeycomb-3.1"),
                unknown.getMessage());
        MaterialException wrongKind =
                assertThrows(MaterialException.class, () -> library.get("al-2024-t3", Core.class));
        assertEquals("'al-2024-t3' is a metal; a core is wanted here", wrongKind.getMessage());
    }

    @Test
    void aDesignMayAddItsOwn() {
        Material own = new MaterialBuilder("my-tape", "ply")
                .form("ud")
                .description("our own tape")
                .value("E1", "130 GPa", Provenance.STATED)
                .value("E2", "9 GPa", Provenance.STATED)
                .value("nu12", "0.3", Provenance.STATED)
                .value("G12", "5 GPa", Provenance.STATED)
                .value("areal mass", "240 g/m²", Provenance.STATED)
                .value("density", "1.6 g/cm³", Provenance.STATED)
                .build();
        assertEquals(0.15e-3, own.layerThickness().orElseThrow(), 1e-12);
        assertEquals(own, library.with(own).get("my-tape"));
        assertTrue(library.find("my-tape").isEmpty());
    }

    @Test
    void impossibleMaterialsAreRefused() {
        MaterialBuilder builder = new MaterialBuilder("bad", "ply").form("ud");
        assertThrows(MaterialException.class, () -> builder.value("E1", "-130 GPa", Provenance.STATED));
        MaterialException key =
                assertThrows(MaterialException.class, () -> builder.value("G_12", "5 GPa", Provenance.STATED));
        assertTrue(key.getMessage().contains("did you mean 'G12'?"), key.getMessage());
        MaterialException missing = assertThrows(
                MaterialException.class,
                () -> builder.value("E1", "130 GPa", Provenance.STATED).build());
        assertTrue(missing.getMessage().contains("E2 is missing"), missing.getMessage());
        assertThrows(MaterialException.class, () -> Elasticity.isotropic(70e9, 1.2));
        assertThrows(MaterialException.class, () -> new MaterialBuilder("x", "plie"));
    }
}
