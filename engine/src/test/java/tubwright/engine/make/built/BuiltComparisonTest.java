// SPDX-License-Identifier: Apache-2.0
package tubwright.engine.make.built;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.nio.file.Path;
import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.Test;
import tubwright.engine.design.Design;
import tubwright.engine.make.built.BuiltComparison.Factor;
import tubwright.engine.make.data.DataException;
import tubwright.engine.material.Ply;
import tubwright.engine.structure.Case;
import tubwright.engine.structure.Tub;

/** What a shop wrote down, against its plan. */
class BuiltComparisonTest {
    private static final String PLAN = """
            kind,piece,pattern,material,batch,planned mass (g),mass (g),planned areal mass (g/m²),areal mass (g/m²),planned thickness (mm),thickness (mm),words,released by
            batch,,,cloth,,,,300,,0.2,,,
            batch,,,comb,,,,500,,10,,,
            ply,tray,tray 01,cloth,,100,,,,,,,
            ply,tray,tray 02,cloth,,300,,,,,,,
            ply,tray,tray 03,comb,,200,,,,,,,
            piece,tray,,,,600,,,,,,,
            tub,,,,,,,,,,,,
            deviation,,,,,,,,,,,,
            concession,,,,,,,,,,,,
            """;

    private static BuiltComparison against(String csv) {
        return BuiltComparison.of(BuiltReader.read("back.csv", csv), BuiltReader.read("plan.csv", PLAN));
    }

    private static String refused(String csv) {
        return assertThrows(DataException.class, () -> against(csv)).getMessage();
    }

    @Test
    void whatWasWeighedIsHeldAgainstThePlanAndWhatIsOutOfLimitNamed() {
        BuiltComparison c = against("""
                kind,pattern,piece,batch,material,mass (kg),areal mass (oz/yd²),thickness (in),words,released by
                batch,,,B7,cloth,,9.1,,,
                ply,tray 01,,B7,,0.103,,,,
                ply,tray 02,,,,0.330,,,,
                piece,,tray,,,0.640,,,,
                deviation,tray 02,,,,,,,"wrinkle, 5 mm",
                concession,tray 02,,,,,,,left as it is,the designer
                """);
        assertEquals(0.03, c.plies().getFirst().over(), 1e-9);
        assertEquals(640.0 / 600, c.massFactor(), 1e-9);
        assertEquals(List.of("tray 02", "tray 03"), c.without());
        assertEquals(List.of("tray 01"), c.batches().get("B7").plies());
        // 9.1 oz/yd² are 308.5 g/m² (avoirdupois ounce and international yard).
        double batch = 9.1 * 28.349523125 / (0.9144 * 0.9144) / 300;
        assertEquals(batch, c.batches().get("B7").areal().getAsDouble(), 1e-6);
        // A batch that was measured goes before a ply that was weighed: 100 g at the batch's, 300 g at 1.1.
        assertEquals((100 * batch + 300 * 1.1) / 400, c.materials().get("cloth").factor(), 1e-9);
        assertEquals(1, c.materials().get("cloth").known(), 1e-12);
        assertTrue(!c.materials().containsKey("comb"), "nobody weighed the core");
        String beyond = String.join("\n", c.beyond());
        assertTrue(
                beyond.contains("'tray 02' weighs 10.0 % more") && beyond.contains("'tray' weighs 6.7 % more"), beyond);
        assertTrue(!beyond.contains("tray 01"), beyond);
    }

    @Test
    void aPlyOfTheWrongMaterialsBatchIsNamed() {
        BuiltComparison c = against("""
                kind,pattern,batch,material
                batch,,C1,comb
                ply,tray 01,C1,
                """);
        assertTrue(
                c.beyond().getFirst().contains("batch C1, which is comb and not cloth"),
                c.beyond().toString());
    }

    @Test
    void whatCannotBeReadIsToldWithLineAndWhatWouldBeRight() {
        String[][] wrong = {
            {"pattern,mass (g)\ntray 01,3", "back.csv:1", "'kind' is missing"},
            {"kind,patern\nply,tray 01", "back.csv:1", "did you mean 'pattern'"},
            {"kind,pattern,mass\nply,tray 01,3", "back.csv:1", "has no unit"},
            {"kind,pattern,mass (mm)\nply,tray 01,3", "back.csv:1", "no unit of mass"},
            {"kind,pattern,mass (g)\nply,tray 01,-3", "back.csv:2", "nothing weighs"},
            {"kind,pattern,mass (g)\nply,tray 01,heavy", "back.csv:2", "no number"},
            {"kind,pattern,mass (g)\nply,tray 01", "back.csv:2", "2 cells under 3 headings"},
            {"kind,pattern\nply,tray 09", "back.csv:2", "no pattern is called 'tray 09'; did you mean 'tray 0"},
            {"kind,pattern,batch\nply,tray 01,B9", "back.csv:2", "line of kind batch first"},
            {"kind,material\nbatch,cloth", "", ""},
            {"kind,batch,material\nbatch,B1,clothe", "back.csv:2", "did you mean 'cloth'"},
            {"kind,pattern\nplie,tray 01", "back.csv:2", "'plie' is no kind of line"},
            {"kind,pattern\nply,tray 01\nply,tray 01", "back.csv:3", "there twice"},
            {"kind,words\nconcession,\"fine, so", "back.csv:2", "not closed"},
            {"kind,words\nconcession,so be it", "back.csv:2", "released"},
            {"kind,piece,mass (g)\n\npiece,lid,5", "back.csv:3", "no piece is called 'lid'"},
            {"", "back.csv", "fill in the form"}
        };
        for (String[] each : wrong) {
            if (each[1].isEmpty()) {
                against(each[0]);
                continue;
            }
            String message = refused(each[0]);
            assertTrue(message.startsWith(each[1]) && message.contains(each[2]), each[0] + "\n" + message);
        }
    }

    @Test
    void clothThatIsHeavierBySomeShareIsStifferByItInThePlane() {
        Tub tub = Design.read(Path.of("../examples/larkspur")).asDesigned().tub();
        Case.Torsion loading = tub.cases().stream()
                .filter(Case.Torsion.class::isInstance)
                .map(Case.Torsion.class::cast)
                .findFirst()
                .orElseThrow();
        // Half of it was weighed, and that 6 % over.
        List<WeighedTub.Known> known = WeighedTub.known(
                tub, loading, Map.of("pw-t650-976", new Factor(1.06, 0.5), "nobody has it", new Factor(2, 1)));
        assertEquals(1, known.size());
        assertEquals(1.03, known.getFirst().factor(), 1e-12);
        Tub weighed = WeighedTub.of(tub, loading, known);
        int cloths = 0;
        for (String zone : tub.laminates().keySet()) {
            for (int i = 0; i < tub.laminates().get(zone).layers().size(); i++) {
                if (tub.laminates().get(zone).layers().get(i).material() instanceof Ply ply
                        && weighed.laminates().get(zone).layers().get(i).material() instanceof Ply heavier) {
                    boolean cloth = ply.name().equals("pw-t650-976");
                    cloths += cloth ? 1 : 0;
                    assertEquals(
                            (cloth ? 1.03 : 1) * ply.elasticity().e1(),
                            heavier.elasticity().e1(),
                            1,
                            ply.name());
                }
            }
        }
        assertTrue(cloths > 0);
    }
}
