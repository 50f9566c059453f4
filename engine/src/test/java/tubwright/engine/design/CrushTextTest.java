// SPDX-License-Identifier: Apache-2.0
package tubwright.engine.design;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Arrays;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import tubwright.engine.design.text.DesignError;
import tubwright.engine.mesh.Mesh;
import tubwright.engine.response.Study;
import tubwright.engine.safety.crush.CrushStructure;
import tubwright.engine.safety.crush.CrushVerdicts;
import tubwright.engine.safety.crush.CrushVerdicts.Verdict;
import tubwright.engine.structure.Case;
import tubwright.engine.structure.StaticSolver;
import tubwright.engine.structure.StepTimes;
import tubwright.engine.structure.Structure;
import tubwright.engine.structure.Tub;
import tubwright.numerics.solver.Solvers;

/** Crush structures and pads as a designer writes them, and what becomes of them in the strength run. */
class CrushTextTest {
    private static final String NOSE = """
            crush data:
              wall:
                specific energy: 20 kJ/kg
                density: 1500 kg/m³
                usable share: 0.75
                at speed: 0.8
                at speed from: one drop
              core:
                crush stress: 1.2 MPa
                bare strength: 2.6 MPa
                at speed: 1
                at speed from: one drop
            crush:
              nose:
                hit: front
                mass: 300 kg
                speed: 7 m/s
                sections:
                  tip: {length: 500 mm, crushes as: wall, wall area: "800, 1600 mm²"}
                first peak: 1
                limits:
                  mean: at most 20 g0
                  peak: at most 40 g0
                  stages: [{first: 150 mm, mean: at most 12 g0}]
                  spikes: [{above: 15 g0, lasting: at most 3 ms}]
                onto: [lower wishbone]
                margin: 1.5
            """;

    @TempDir
    Path folder;

    private Design read(String more) throws IOException {
        Files.writeString(folder.resolve("tub.yaml"), Template.text("Bramble") + more);
        return Design.read(folder);
    }

    private String told(String more) {
        return assertThrows(DesignError.class, () -> read(more)).getMessage();
    }

    private static List<CrushVerdicts.Line> lines(Design design) {
        return CrushVerdicts.of(design.asDesigned().crush().getFirst());
    }

    /** F = e ρ A/s at speed: 20 kJ/kg · 1500 kg/m³ · 800 mm² · 0.8/0.75 = 25.6 kN at the tip. */
    @Test
    void theNoseCrushesAtWhatItsWallGives() throws IOException {
        CrushStructure nose = read(NOSE).asDesigned().crush().getFirst();
        assertEquals(25.6e3, nose.sections().getFirst().force(0), 1);
        assertEquals(7350, nose.whole().orElseThrow().energy(), 1e-6);
        // k = 25.6 kN over 375 mm: the stroke follows from ½ k x² + F x = 7350 J.
        double k = 25.6e3 / 0.375;
        double x = (-25.6e3 + Math.sqrt(25.6e3 * 25.6e3 + 2 * k * 7350)) / k;
        assertEquals(x, nose.whole().orElseThrow().stroke(), 1e-6);
        assertTrue(
                lines(read(NOSE)).stream().limit(4).allMatch(l -> l.verdict() == Verdict.MET),
                lines(read(NOSE)).toString());
    }

    /** Its highest force times the margin goes into the strength run, shared by the mounts, the tub a free body. */
    @Test
    void theCrushForceBecomesACaseOfTheStrengthRun() throws IOException {
        Design design = read(NOSE);
        double peak =
                design.asDesigned().crush().getFirst().whole().orElseThrow().peakForce();
        Case.Loads load = (Case.Loads) design.asDesigned().tub().cases().getLast();
        assertEquals("nose crush", load.name());
        assertTrue(load.free());
        double sum = load.forces().stream().mapToDouble(f -> f.force()[0]).sum();
        assertEquals(1.5 * peak, sum, 1e-6 * sum);
        assertEquals(2, load.forces().size());
        assertTrue(load.source().contains("highest crush force"), load.source());
    }

    @Test
    void missingCrushDataIsNoPass() throws IOException {
        Design design = read(NOSE.replace("    specific energy: 20 kJ/kg\n", ""));
        List<CrushVerdicts.Line> lines = lines(design);
        assertTrue(lines.stream().allMatch(l -> l.verdict() == Verdict.NOT_CHECKED), lines.toString());
        assertTrue(lines.getFirst().needs().getFirst().startsWith("crush stress or specific energy of \"wall\""));
        assertTrue(
                design.warnings().toString().contains("the strength run has no case of it"), "said where it is read");
        assertTrue(told(NOSE.replace("0.8\n    at speed from: one drop\n", "0.8\n"))
                .contains("where the factor at speed comes from"));
        design = read(NOSE.replace("    at speed: 0.8\n    at speed from: one drop\n", ""));
        assertTrue(lines(design).stream().allMatch(l -> l.verdict() == Verdict.NOT_CHECKED));
    }

    /** A bare strength never stands where a crush stress belongs. */
    @Test
    void bareStrengthIsNoCrushStress() throws IOException {
        String core = NOSE.replace(
                "crushes as: wall, wall area: \"800, 1600 mm²\"", "crushes as: core, gross area: 30000 mm²");
        assertEquals(
                36e3,
                read(core).asDesigned().crush().getFirst().sections().getFirst().force(0),
                1);
        List<CrushVerdicts.Line> bare = lines(read(core.replace("    crush stress: 1.2 MPa\n", "")));
        assertEquals(Verdict.NOT_CHECKED, bare.getFirst().verdict());
        assertTrue(bare.getFirst().needs().toString().contains("bare strength is the peak before it crushes"));
        assertTrue(told(core.replace("1.2 MPa", "2.6 MPa").replace("bare strength: 2.6", "bare strength: 1.2"))
                .contains("were they exchanged?"));
    }

    @ParameterizedTest
    @CsvSource(
            delimiter = '|',
            value = {
                "mean: at most 20 g0|mean: at most 20|unit",
                "mean: at most 20 g0|mean: 20 g0|which way it binds",
                "mean: at most 20 g0|mean: at least 20 g0|binds the wrong way",
                "mean: at most 20 g0|mean: at most -20 g0|not greater than zero",
                "specific energy: 20 kJ/kg|specific energy: -20 kJ/kg|not greater than zero",
                "specific energy: 20 kJ/kg|specific energy: 20 kJ|energy per mass",
                "first: 150 mm, mean|first energy: -3 kJ, mean|not greater than zero",
                "speed: 7 m/s|speed: 7|velocity",
                "crushes as: wall|crushes as: well|did you mean \"wall\"?",
                "wall area: \"800, 1600 mm²\"|gross area: 800 mm²|not the area over all",
                "usable share: 0.75|usable share: 1.2|more than all of it",
                "density: 1500 kg/m³|density: 1500 kg|density",
                "margin: 1.5|margin: 0.5|less than the crush force",
                "onto: [lower wishbone]|onto: [lower wishbon]|no hardpoint",
                "hit: front|hit: top|not a choice",
                "mass: 300 kg|mas: 300 kg|mass",
            })
    void whatCannotBeIsRefusedWithItsPlace(String good, String bad, String words) {
        String text = NOSE.replace(good, bad);
        assertTrue(!text.equals(NOSE), "nothing replaced: " + good);
        String told = told(text);
        assertTrue(told.contains(words), told);
        assertTrue(told.matches("(?s).*tub\\.yaml:\\d+:\\d+.*"), told);
    }

    private static Structure structure(Tub tub) {
        Mesh mesh = Study.mesh(tub, 0.04);
        return Structure.of(tub, mesh);
    }

    /** A pad pushes with its whole force, on what lies under it. */
    @Test
    void aPadPushesWithItsWholeForce() throws IOException {
        String template = Template.text("Bramble");
        String pad = "\ncases:\n  pad:\n    pads: {side: {at: \"%s\", size: \"150, 200, 200 mm\","
                + " force: \"0, -5, 0 kN\"}}\n";
        Design plain = read("");
        double rear = plain.asDesigned().tub().shape().rear();
        double[] at = plain.asDesigned().tub().hardpoints().stream()
                .filter(h -> h.name().equals("lower wishbone R"))
                .findFirst()
                .orElseThrow()
                .position();
        String where = "%.0f, %.0f, %.0f mm".formatted(1e3 * at[0], 1e3 * at[1], 1e3 * at[2]);
        Files.writeString(folder.resolve("tub.yaml"), template.replace("\ncases:\n", pad.formatted(where)));
        Design design = Design.read(folder);
        Tub tub = design.asDesigned().tub();
        Case.Loads pushed = (Case.Loads) tub.cases().getFirst();
        Case held = new Case.Loads("pad", tub.cases().get(1).hold(), List.of(), new double[3], "test")
                .with(pushed.spreads());
        double[] reactions = StaticSolver.solve(structure(tub), List.of(held), Solvers.best(), new StepTimes())
                .getFirst()
                .reactions();
        double[] sum = new double[3];
        for (int i = 0; i < reactions.length; i++) {
            if (i % 6 < 3) {
                sum[i % 6] += reactions[i];
            }
        }
        assertArrayEquals(new double[] {0, 5000, 0}, sum, 1e-3, Arrays.toString(sum));
        Files.writeString(
                folder.resolve("tub.yaml"),
                template.replace("\ncases:\n", pad.formatted("%.0f, 0, 0 mm".formatted(1e3 * rear + 400))));
        String told = assertThrows(DesignError.class, () -> Design.read(folder)).getMessage();
        assertTrue(told.contains("lies outside the tub") && told.matches("(?s).*tub\\.yaml:\\d+:\\d+.*"), told);
    }
}
