// SPDX-License-Identifier: Apache-2.0
package tubwright.engine.design;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import tubwright.engine.design.text.DesignError;
import tubwright.engine.response.Progress;
import tubwright.engine.response.Study;
import tubwright.engine.structure.StructureException;
import tubwright.numerics.solver.Solvers;

/** The design a new project starts from. */
class TemplateTest {
    @TempDir
    Path folder;

    private Design template(String right, String wrong) throws IOException {
        String text = Template.text("Bramble");
        assertTrue(text.contains(right));
        Files.writeString(folder.resolve("tub.yaml"), text.replace(right, wrong));
        return Design.read(folder);
    }

    private static Study coarse() {
        return new Study(Solvers.pureJava(), List.of(2.5), Progress.silent());
    }

    @Test
    void itRunsAsItStands() throws IOException {
        Design design = template("tub: Bramble", "tub: Bramble");
        assertEquals("Bramble", design.name());
        var answer = coarse().answer(List.of(design.asDesigned().tub())).getFirst();
        double stiffness =
                answer.cases().getFirst().stiffness().samples().getFirst().value();
        double target =
                design.asDesigned().targets().torsionalStiffness().orElseThrow().si();
        assertTrue(stiffness > target, "it meets its own target: " + stiffness + " N·m/rad");
        assertTrue(Targets.met(
                design.asDesigned().targets().mass().orElseThrow(),
                answer.mass().whole().mass()));
    }

    @Test
    void itGivesNoWarnings() throws IOException {
        assertEquals(
                List.of(),
                template("tub: Bramble", "tub: Bramble").warnings().stream()
                        .map(Warning::text)
                        .toList());
    }

    @Test
    void namesThatYamlWouldReadOtherwiseAreQuoted() {
        assertTrue(Template.text("No. 7: \"Bee\"").contains("tub: \"No. 7: \\\"Bee\\\"\"\n"));
        assertTrue(Template.text("Larkspur").contains("tub: Larkspur\n"));
    }

    @Test
    void supportsThatLeaveAMotionFreeAreToldWithTheirCase() throws IOException {
        Design design = template(
                "{engine mount lower: \"x, y, z\", engine mount upper: \"x, y, z\"}", "{engine mount lower: z}");
        StructureException fault = assertThrows(
                StructureException.class,
                () -> coarse().answer(List.of(design.asDesigned().tub())));
        DesignError told = design.explain(fault);
        assertEquals(105, told.place().line());
        assertTrue(told.getMessage().contains("case 'torsion' leaves a motion free"), told.getMessage());
        assertTrue(told.getMessage().contains("along x (fore and aft)"), told.getMessage());
        assertTrue(told.getMessage().contains("hold more directions"), told.getMessage());
    }

    @Test
    void aVariantThatCannotBeSolvedIsNamed() throws IOException {
        Design design = template(
                "      skin: {core thickness: 20 mm}",
                "      skin: {core thickness: 20 mm}\n    cases: {torsion: {replace hold: {engine mount lower: z}}}");
        Design.Variant variant = design.variants().get(1);
        StructureException fault =
                assertThrows(StructureException.class, () -> coarse().answer(List.of(variant.tub())));
        String told = design.explain(variant, fault).getMessage();
        assertTrue(told.contains("variant \"thicker core\": case 'torsion' leaves a motion free"), told);
    }

    @Test
    void aWarningThatOnlyAVariantCallsForNamesIt() throws IOException {
        Design design = template("skin: {core thickness: 20 mm}", "skin: {stack: \"[0u_6/core/0u_6]\"}");
        assertTrue(
                design.warnings().stream()
                        .anyMatch(w -> w.text().startsWith("variant \"thicker core\": laminate \"skin\"")),
                () -> design.warnings().toString());
    }

    @Test
    void aDesignWithoutCasesIsToldThatItHasNone() throws IOException {
        String text = Template.text("Bramble");
        String cases = text.substring(text.indexOf("cases:\n"), text.indexOf("mesh:\n"));
        Design design = template(cases, "");
        StructureException fault = assertThrows(
                StructureException.class,
                () -> coarse().answer(List.of(design.asDesigned().tub())));
        assertEquals("there is no case in variant 'as designed'", fault.getMessage());
    }

    @Test
    void aLoadTooLargeForANumberIsRefused() throws IOException {
        Design design = template("couple: 1000 N·m", "couple: 1e300 N·m");
        assertThrows(
                StructureException.class,
                () -> coarse().answer(List.of(design.asDesigned().tub())));
    }

    @Test
    void elementsLargerThanTheTubAreRefused() throws IOException {
        Design design = template("  size: 30 mm", "  size: 3 m");
        StructureException fault = assertThrows(
                StructureException.class,
                () -> coarse().answer(List.of(design.asDesigned().tub())));
        assertTrue(design.explain(fault).getMessage().contains("too coarse"), fault.getMessage());
    }
}
