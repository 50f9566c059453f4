// SPDX-License-Identifier: Apache-2.0
package tubwright.engine.design.text;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;

import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import tubwright.engine.quantity.Dimension;

/** From a tree to records, and what is said when they do not fit. */
class BinderTest {
    record PanelText(
            @Says("How thick.") @In(value = Dimension.LENGTH, positive = true)
            Amount skinThickness,

            @In(Dimension.LENGTH) Optional<Points> outline,
            @In(Dimension.LENGTH) Optional<Amounts> radii,
            @In(Dimension.LENGTH) Optional<Span> x,
            @In(value = Dimension.MASS, positive = true) Optional<Limit> mass,
            @Otherwise("2") int rows,
            @Otherwise("long way") Way way,
            List<Named<List<Name>>> pieces,
            Place place) {}

    enum Way {
        LONG_WAY,
        ACROSS
    }

    private static PanelText bind(String text) {
        return Binder.bind(YamlReader.read(text, "p.yaml"), PanelText.class);
    }

    private static String fault(String text) {
        return assertThrows(DesignError.class, () -> bind(text)).getMessage();
    }

    @Test
    void everyKindOfValue() {
        PanelText panel = bind("""
                skin thickness: 1/2 in
                outline: (0, 140) (130.5, -140) mm
                radii: 0, 40, 5 mm
                x: 950 .. 1650 mm
                mass: at most 30 kg
                way: across
                pieces:
                  lower: [floor, flank]
                  upper: deck
                """);
        assertEquals(0.0127, panel.skinThickness().si(), 1e-15);
        assertArrayEquals(
                new double[] {0.1305, -0.14}, panel.outline().orElseThrow().si()[1], 1e-15);
        assertArrayEquals(
                new double[] {0, 0.04, 0.005}, panel.radii().orElseThrow().si(), 1e-15);
        assertEquals(0.95, panel.x().orElseThrow().from(), 1e-15);
        assertEquals(1.65, panel.x().orElseThrow().to(), 1e-15);
        assertEquals(30, panel.mass().orElseThrow().si(), 1e-12);
        assertEquals(2, panel.rows());
        assertEquals(Way.ACROSS, panel.way());
        assertEquals("deck", panel.pieces().get(1).value().getFirst().text());
    }

    @Test
    void aSectionOfThreeSizes() {
        assertArrayEquals(
                new double[] {0.025, 0.02, 0.0016},
                bind("{skin thickness: 1 mm, radii: 25 x 20 x 1.6 mm}")
                        .radii()
                        .orElseThrow()
                        .si(),
                1e-15);
    }

    @Test
    void valuesKnowTheirPlaces() {
        PanelText panel = bind("skin thickness: 1 mm\noutline: (0, 140) (130, 140) mm\n");
        assertEquals("p.yaml:2:19", panel.outline().orElseThrow().places()[1].toString());
    }

    @Test
    void anUnknownKey() {
        assertEquals(
                "p.yaml:1:1: \"skin thicknes\" is not a key of a panel\n    did you mean \"skin thickness\"? its keys: skin"
                        + " thickness, outline, radii, x, mass, rows, way, pieces",
                fault("skin thicknes: 1 mm"));
    }

    @Test
    void aMissingKey() {
        assertEquals(
                "p.yaml:1:1: panel: the key \"skin thickness\" is missing from this panel\n"
                        + "    skin thickness: How thick.",
                fault("rows: 3"));
    }

    @Test
    void aMissingUnit() {
        assertEquals(
                "p.yaml:1:17: skin thickness: \"20\" is not a length: the unit is missing; a length is wanted\n"
                        + "    units that fit: mm, m, in",
                fault("skin thickness: 20"));
    }

    @Test
    void aWrongUnit() {
        assertEquals(
                "p.yaml:1:17: skin thickness: \"20 kg\" is not a length: 'kg' measures mass; a length is wanted\n"
                        + "    units that fit: mm, m, in",
                fault("skin thickness: 20 kg"));
    }

    @Test
    void aMisspeltUnit() {
        assertEquals(
                "p.yaml:1:17: skin thickness: \"20 mmn\" is not a length: 'mmn' is not a unit\n"
                        + "    did you mean \"mm\"? units that fit: mm, m, in",
                fault("skin thickness: 20 mmn"));
    }

    @Test
    void zeroAndNegativeThickness() {
        assertEquals(
                "p.yaml:1:17: skin thickness: \"0 mm\" is not greater than zero\n    a length above zero is due here",
                fault("skin thickness: 0 mm"));
        assertEquals(
                "p.yaml:1:17: skin thickness: \"-2 mm\" is not greater than zero\n    a length above zero is due here",
                fault("skin thickness: -2 mm"));
    }

    @Test
    void numbersThatAreNotFinite() {
        for (String bad : List.of(".inf mm", "nan mm", "-.inf", "Infinity mm")) {
            assertEquals(
                    "p.yaml:1:17: skin thickness: \"" + bad + "\" is not a finite number\n"
                            + "    write a number with a unit, for example in mm",
                    fault("skin thickness: " + bad));
        }
        assertEquals(
                "p.yaml:1:17: skin thickness: \"1e999 mm\" is not a length: the number is not finite\n"
                        + "    units that fit: mm, m, in",
                fault("skin thickness: 1e999 mm"));
    }

    @Test
    void anUnknownChoice() {
        assertEquals(
                "p.yaml:2:6: way: \"acros\" is not a choice here\n"
                        + "    did you mean \"across\"? \"long way\" or \"across\"",
                fault("skin thickness: 1 mm\nway: acros"));
    }

    @Test
    void aLimitThatDoesNotSayWhichWay() {
        assertEquals(
                "p.yaml:2:7: mass: \"30 kg\" does not say which way it binds\n"
                        + "    write \"at least ...\" or \"at most ...\" before the quantity",
                fault("skin thickness: 1 mm\nmass: 30 kg"));
    }

    @Test
    void aSpanTheWrongWayRound() {
        assertEquals(
                "p.yaml:2:4: x: \"900 .. 20 mm\" ends before it starts\n    the smaller end comes first",
                fault("skin thickness: 1 mm\nx: 900 .. 20 mm"));
    }

    @Test
    void aPointWithThreeCoordinates() {
        assertEquals(
                "p.yaml:2:17: outline: \"(1, 2, 3)\" is not a point\n"
                        + "    write points as \"(0, 140) (130, 140) (150, 330) mm\"",
                fault("skin thickness: 1 mm\noutline: (0, 1) (1, 2, 3) mm"));
    }

    @Test
    void severalFaultsAreToldTogetherInTheOrderOfTheFile() {
        DesignError error = assertThrows(DesignError.class, () -> bind("rows: 0\nskin thickness: 3\nwya: across"));
        assertEquals(
                List.of(1, 2, 3),
                error.faults().stream().map(f -> f.place().line()).toList());
    }

    @Test
    void aVariantIsLaidOverEntryByEntry() {
        Tree.Mapping base = YamlReader.read("a: {x: 1, y: 2}\nb: {k: 1}\nc: 3", "base");
        Tree.Mapping over = YamlReader.read("a: {y: 5}\nreplace b: {m: 2}\nc: none\nd: 4", "over");
        Tree.Mapping laid = Overlay.lay(base, over);
        assertEquals(
                List.of("a", "b", "d"),
                laid.entries().stream().map(e -> e.key().text()).toList());
        Tree.Mapping a = (Tree.Mapping) laid.get("a").orElseThrow();
        assertEquals("1", ((Tree.Scalar) a.get("x").orElseThrow()).text());
        assertEquals("over:1:8", a.get("y").orElseThrow().place().toString());
        assertEquals(1, ((Tree.Mapping) laid.get("b").orElseThrow()).entries().size());
    }

    @Test
    void takingOutWhatIsNotThereIsAFault() {
        Tree.Mapping base = YamlReader.read("flank: 1", "base");
        Tree.Mapping over = YamlReader.read("flnk: none", "over");
        assertEquals(
                "over:1:1: \"flnk: none\" takes out what is not there\n    did you mean \"flank\"? ",
                assertThrows(DesignError.class, () -> Overlay.lay(base, over)).getMessage());
    }
}
