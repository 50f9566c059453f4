// SPDX-License-Identifier: Apache-2.0
package tubwright.engine.design;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import tubwright.engine.design.text.DesignError;
import tubwright.engine.material.Property;
import tubwright.engine.strength.Criterion;
import tubwright.engine.strength.StrengthBasis;

/** The choice of strengths as a designer writes it. */
class StrengthTextTest {
    @TempDir
    Path folder;

    private StrengthBasis read(String text) throws IOException {
        String template = Template.text("Bramble");
        Files.writeString(folder.resolve("tub.yaml"), template.replace("\ncases:\n", "\n" + text + "\ncases:\n"));
        return Design.read(folder).asDesigned().tub().strength();
    }

    private String refused(String text) {
        return assertThrows(DesignError.class, () -> read(text)).getMessage();
    }

    @Test
    void withoutTheSectionNothingIsTakenOffAndTheTableSaysSo() throws IOException {
        StrengthBasis basis = read("");
        assertTrue(basis.knockDown().factors().isEmpty());
        assertTrue(basis.words().contains("no knock-down chosen"), basis.words());
    }

    @Test
    void choicesMultiplyAndKeepTheirSources() throws IOException {
        StrengthBasis basis = read("""
                strength:
                  criteria: [Hashin, maximum strain]
                  environment: hot wet
                  scatter: b basis
                  damage: barely visible
                  in situ: yes
                  service temperature: 80 °C
                """);
        assertEquals(0.92 * 0.79, basis.knockDown().factor(Property.XT), 1e-12);
        assertEquals(0.70 * 0.84 * 0.31, basis.knockDown().factor(Property.XC), 1e-12);
        assertTrue(basis.words().contains("NCP-RP-2009-028"), basis.words());
        assertTrue(basis.inSitu());
        assertEquals(353.15, basis.serviceTemperature(), 1e-9);
        assertEquals(List.of(Criterion.HASHIN, Criterion.MAXIMUM_STRAIN), basis.unidirectional());
        assertEquals(List.of(Criterion.MAXIMUM_STRAIN), basis.cloth(), "Hashin does not hold for cloth");
        assertFalse(basis.gaps().isEmpty(), "adhesives and cores keep the strengths of another climate: said so");
    }

    @Test
    void ownFactorsSayWhereTheyComeFrom() throws IOException {
        StrengthBasis basis = read("""
                strength:
                  factors: {XT: 0.8, S12: 90 %}
                  factors from: panels tested at the works
                """);
        assertEquals(0.8, basis.knockDown().factor(Property.XT), 1e-12);
        assertEquals(0.9, basis.knockDown().factor(Property.S12), 1e-12);
        assertTrue(basis.words().contains("panels tested at the works"), basis.words());
        String told = refused("strength:\n  factors: {XT: 0.8}\n");
        assertTrue(told.contains("where they come from") && told.contains("tub.yaml:"), told);
    }

    @Test
    void aFactorAboveOneAndAnUnknownCriterionAreRefused() {
        String above = refused("strength:\n  factors: {XT: 1.2}\n  factors from: hope\n");
        assertTrue(above.contains("would raise the strength"), above);
        String unknown = refused("strength:\n  criteria: [Tsai-Woo]\n");
        assertTrue(unknown.contains("Tsai-Wu"), unknown);
    }
}
