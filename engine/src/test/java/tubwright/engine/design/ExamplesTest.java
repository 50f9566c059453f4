// SPDX-License-Identifier: Apache-2.0
package tubwright.engine.design;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.nio.file.Path;
import java.util.List;
import org.junit.jupiter.api.Test;
import tubwright.engine.laminate.LayupAdvice.Severity;
import tubwright.engine.material.Trust;

/** Every example reads without a warning, and none drops out unseen. */
class ExamplesTest {
    @Test
    void thereAreTwo() {
        assertEquals(
                List.of("bramble", "larkspur"),
                SchemaTest.examples().stream()
                        .map(p -> p.getParent().getFileName().toString())
                        .toList());
    }

    @Test
    void noneIsAgainstPractice() {
        for (Path example : SchemaTest.examples()) {
            assertEquals(
                    List.of(),
                    Design.read(example).warnings().stream()
                            .filter(w -> w.severity() == Severity.WARNING)
                            .toList(),
                    example.toString());
        }
    }

    @Test
    void theBrambleIsWrittenInInchPound() {
        Design bramble = Design.read(Path.of("../examples/bramble"));
        // 1 lbf·ft = 1.3558179483 N·m
        assertEquals(
                3000 * 1.3558179483,
                Math.toRadians(1)
                        * bramble.asDesigned()
                                .targets()
                                .torsionalStiffness()
                                .orElseThrow()
                                .si(),
                1e-3);
        assertEquals(
                26 * 0.45359237,
                bramble.asDesigned().targets().mass().orElseThrow().si(),
                1e-9);
    }

    @Test
    void itsOwnMaterialSaysWhereItsValuesComeFrom() {
        Design bramble = Design.read(Path.of("../examples/bramble"));
        var cloth = bramble.asDesigned()
                .tub()
                .laminates()
                .get("shell")
                .layers()
                .getFirst()
                .material();
        assertEquals("works-cloth", cloth.name());
        assertTrue(cloth.properties().values().values().stream()
                .anyMatch(v -> v.provenance().trust() == Trust.STATED
                        && v.provenance().source().equals("invented for the demonstration")));
    }

    @Test
    void aVariantChangesOneThingAndKeepsTheRest() {
        Design bramble = Design.read(Path.of("../examples/bramble"));
        var honeycomb = bramble.asDesigned().tub().laminates().get("shell");
        var foam = bramble.variant("foam core").orElseThrow().tub().laminates().get("shell");
        assertEquals(honeycomb.layers().size(), foam.layers().size());
        assertEquals(honeycomb.thickness(), foam.thickness(), 1e-12);
        assertEquals("foam-pmi-75", foam.layers().get(4).material().name());
    }
}
