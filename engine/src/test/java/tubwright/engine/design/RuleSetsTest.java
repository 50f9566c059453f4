// SPDX-License-Identifier: Apache-2.0
package tubwright.engine.design;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Locale;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;
import tubwright.engine.design.text.DesignError;
import tubwright.engine.material.Trust;
import tubwright.engine.safety.rules.Finding;
import tubwright.engine.safety.rules.Finding.Verdict;
import tubwright.engine.safety.rules.PanelBending;
import tubwright.engine.safety.rules.PanelTest;
import tubwright.engine.safety.rules.Pushes;
import tubwright.engine.safety.rules.RuleSet;
import tubwright.engine.safety.rules.RuledTub;
import tubwright.engine.safety.rules.Scrutiny;
import tubwright.engine.strength.sandwich.Indentation;
import tubwright.numerics.solver.Solvers;

/** Rule sets as data, and a tub held against them. */
class RuleSetsTest {
    private static final String OWN = """
            rule set: ours
            about: a set of our own
            source: the works
            year: 2026
            clauses:
              a1:
                says: a side as stiff as a little
                trust: stated
                bends: {places: [side], bending: %s}
              a2:
                says: pushed
                trust: stated
                pushed: {place: pad, force: "0, -2, 0 kN", pad: "150, 200, 200 mm", moves: at most 15 mm, hold: 10 s}
              a3:
                says: seen
                trust: stated
                shown by: a look
            """;

    @TempDir
    Path folder;

    private Design read(String rules, String own) throws IOException {
        Files.writeString(folder.resolve("ours.yaml"), own);
        Files.writeString(folder.resolve("tub.yaml"), Template.text("Bramble") + rules);
        return Design.read(folder);
    }

    private static String rules(Design template, String more) {
        String zone = template.asDesigned().tub().laminates().keySet().stream()
                .sorted()
                .findFirst()
                .orElseThrow();
        String hold = template.asDesigned().tub().cases().getFirst().hold().stream()
                .map(h -> h.hardpoint().replaceFirst(" [LR]$", ""))
                .distinct()
                .map(h -> h + ": \"x, y, z\"")
                .reduce((a, b) -> a + ", " + b)
                .orElseThrow();
        return "\nrules:\n  own:\n    set: ours.yaml\n    hold: {" + hold + "}\n    places:\n      side: {zones: [\""
                + zone + "\"], height: 300 mm" + more + "}\n";
    }

    private static List<Finding> findings(Design design) {
        RuledTub rules = design.asDesigned().rules().getFirst();
        Pushes pushes = Pushes.solve(design.asDesigned().tub(), rules, 0.05, Solvers.best());
        return Scrutiny.of(design.asDesigned().tub(), design.asDesigned().crush(), rules, pushes);
    }

    /** Student rules 2026, tube sizes A to D by their second moments (public transcription): EI 2264, 1702, 1339, 3603 N·m². */
    @ParameterizedTest
    @CsvSource({"11320, 2264", "8509, 1702", "6695, 1339", "18015, 3603"})
    void tubesOfTheStudentRulesBendAsTheirSecondMomentsSay(double inertia, double ei) {
        assertEquals(ei, 200e9 * inertia * 1e-12, 1);
    }

    /** A 25.4 x 1.6 mm and a 25.4 x 1.2 mm tube exceed the sizes they are usual for, B (8509 mm⁴) and C (6695 mm⁴). */
    @Test
    void usualTubesAreJustAsStiffAsTheRulesAsk() {
        assertEquals(1, PanelBending.tube(25.4e-3, 1.6e-3) / 1702, 0.01);
        assertEquals(1, PanelBending.tube(25.4e-3, 1.2e-3) / 1339, 0.01);
    }

    @ParameterizedTest
    @ValueSource(strings = {"student structural 2026", "junior single-seater 2014"})
    void theShippedSetsSayWhereTheyComeFromAndNothingIsCalledSafe(String name) {
        RuleSet set = RuleSetReader.shipped(name);
        assertEquals(name, set.name());
        assertTrue(set.clauses().size() >= 9 && set.year() > 2000);
        for (RuleSet.Clause clause : set.clauses()) {
            assertTrue(clause.provenance().source().contains(set.source()));
            assertTrue(!clause.says().toLowerCase(Locale.ROOT).contains("safe"), clause.says());
            if (clause.number().startsWith("17") || clause.number().startsWith("18")) {
                assertEquals(Trust.FROM_MEMORY, clause.provenance().trust(), clause.number());
            }
        }
    }

    /** 3 · 1702 = 5105 N·m²; π · 25 mm · 1.5 mm · 0.577 · 365 MPa = 24.8 kN: what the set carries is what closed forms give. */
    @Test
    void theStudentSetCarriesWhatItsFormulasGive() {
        RuleSet set = RuleSetReader.shipped("student structural 2026");
        assertEquals(3 * 200e9 * 8509e-12, ((RuleSet.Bends) demand(set, "F.7.5.2")).bending(), 1);
        assertEquals(6 * 200e9 * 6695e-12, ((RuleSet.Bends) demand(set, "F.7.3.1")).bending(), 1);
        assertEquals(Math.PI * 25e-3 * 1.5e-3 * 0.577 * 365e6, ((RuleSet.Punched) demand(set, "F.7.2.3")).force(), 50);
        RuleSet.Stopped front = (RuleSet.Stopped) demand(set, "F.8.8.2");
        assertEquals(7350, front.stop().impact().energy(), 1e-9);
    }

    private static RuleSet.Demand demand(RuleSet set, String clause) {
        return set.clauses().stream()
                .filter(c -> c.number().equals(clause))
                .findFirst()
                .orElseThrow()
                .demand();
    }

    @Test
    void aPanelWithinTheScatterOfItsLimitIsNotChecked() throws IOException {
        Design template = Design.read(Files.writeString(folder.resolve("t.yaml"), Template.text("Bramble")));
        String zone = template.asDesigned().tub().laminates().keySet().stream()
                .sorted()
                .findFirst()
                .orElseThrow();
        double ei =
                0.3 * PanelBending.along(template.asDesigned().tub().laminates().get(zone));
        double[] limits = {ei / 2, ei / 1.1, 2 * ei};
        Verdict[] expected = {Verdict.MET, Verdict.NOT_CHECKED, Verdict.NOT_MET};
        for (int i = 0; i < 3; i++) {
            Finding found = findings(read(
                            rules(template, ""), OWN.formatted(String.format(Locale.ROOT, "%.4f N·m²", limits[i]))))
                    .getFirst();
            assertEquals(expected[i], found.verdict(), found.toString());
            assertEquals(ei / limits[i], found.reserve(), 1e-3 * found.reserve());
        }
        Finding tested = findings(read(
                        rules(template, ", tested bending: 1 N·m², tested from: a panel of ours"),
                        OWN.formatted("2 N·m²")))
                .getFirst();
        assertEquals(Verdict.NOT_MET, tested.verdict(), "a test goes before what is computed");
    }

    @Test
    void whatTheDesignDoesNotSayIsNotCheckedAndSaysWhatItNeeds() throws IOException {
        Design template = Design.read(Files.writeString(folder.resolve("t.yaml"), Template.text("Bramble")));
        List<Finding> found = findings(read(rules(template, ""), OWN.formatted("1 N·m²")));
        assertEquals(Verdict.NOT_CHECKED, found.get(1).verdict());
        assertTrue(
                found.get(1).needs().getFirst().contains("\"at\" of place \"pad\""),
                found.get(1).toString());
        assertEquals(List.of("a look"), found.get(2).needs());
    }

    /** A pad on the side: it moves with the force, and twice the force moves it twice as far. */
    @Test
    void aPadThatPushesMovesTheSide() throws IOException {
        Design template = Design.read(Files.writeString(folder.resolve("t.yaml"), Template.text("Bramble")));
        double[] at = template.asDesigned().tub().hardpoints().stream()
                .filter(h -> h.name().equals("lower wishbone R"))
                .findFirst()
                .orElseThrow()
                .position();
        String pad = rules(template, "")
                + "      pad: {at: \"%.0f, %.0f, %.0f mm\"}\n".formatted(1e3 * at[0], 1e3 * at[1], 1e3 * at[2]);
        Finding once = findings(read(pad, OWN.formatted("1 N·m²"))).get(1);
        Finding twice = findings(read(pad, OWN.formatted("1 N·m²").replace("0, -2, 0 kN", "0, -4, 0 kN")))
                .get(1);
        assertTrue(once.found().contains("moves"), once.toString());
        assertEquals(2, once.reserve() / twice.reserve(), 1e-6);
    }

    @ParameterizedTest
    @CsvSource(
            delimiter = '|',
            value = {
                "moves: at most 15 mm|moves: at most 15|unit",
                "moves: at most 15 mm|moves: at least 15 mm|binds the wrong way",
                "force: \"0, -2, 0 kN\"|force: \"0, -2 kN\"|numbers are given",
                "force: \"0, -2, 0 kN\"|force: \"0, 0, 0 kN\"|it is zero",
                "bending: 1 N·m²|bending: -1 N·m²|not greater than zero",
                "trust: stated|trust: sure|not a choice",
                "shown by: a look|carries: {place: p, force: 3}|unit",
                "year: 2026|yeer: 2026|year",
            })
    void aSetThatCannotBeIsRefusedWithItsPlace(String good, String bad, String words) {
        String text = OWN.formatted("1 N·m²").replace(good, bad);
        String told = assertThrows(DesignError.class, () -> RuleSetReader.read(text, "ours.yaml"))
                .getMessage();
        assertTrue(told.contains(words), told);
        assertTrue(told.matches("(?s).*ours\\.yaml:\\d+:\\d+.*"), told);
    }

    @Test
    void placesAndSetsThatAreNotKnownAreRefused() throws IOException {
        Design template = Design.read(Files.writeString(folder.resolve("t.yaml"), Template.text("Bramble")));
        String rules = rules(template, "");
        for (String[] each : new String[][] {
            {rules.replace("side: {", "syde: {"), "did you mean \"side\"?"},
            {rules.replace("ours.yaml", "theirs.yaml"), "there is no file"},
            {rules.replace("ours.yaml", "student structural 2062"), "student structural 2026"},
            {rules(template, ", tested punch: 3 kN"), "do not say where they come from"},
        }) {
            String told = assertThrows(DesignError.class, () -> read(each[0], OWN.formatted("1 N·m²")))
                    .getMessage();
            assertTrue(told.contains(each[1]) && told.matches("(?s).*tub\\.yaml:\\d+:\\d+.*"), told);
        }
    }

    /** The worked sandwich of the reference (faces 0.6 mm of 60 GPa, core 5052 3.1 pcf, L = 400, b = 60): core crushed at its line load. */
    @Test
    void aPanelGivesWayWhereItsWeakestLinkSays() throws IOException {
        Design template = Design.read(Files.writeString(folder.resolve("t.yaml"), Template.text("Bramble")));
        PanelTest panel = template.asDesigned().tub().laminates().values().stream()
                .flatMap(l -> PanelTest.of("any", l, 0.4, 0.275).stream())
                .findFirst()
                .orElseThrow();
        assertTrue(panel.low() < panel.stiffness() && panel.stiffness() < panel.high());
        for (int i = 1; i < panel.ways().size(); i++) {
            assertTrue(panel.ways().get(i - 1).load() <= panel.ways().get(i).load());
        }
        // tf (π² d Ef σc²/(3 L))^⅓ with tf .6 mm, d 20.6 mm, Ef 60 GPa, σc 2 MPa, L 400 mm.
        assertEquals(
                0.6e-3 * Math.cbrt(Math.PI * Math.PI * 20.6e-3 * 60e9 * 4e12 / (3 * 0.4)),
                Indentation.elasticFacePlasticCore(0.6e-3, 60e9, 2e6, 20.6e-3, 0.4),
                1);
    }
}
