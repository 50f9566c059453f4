// SPDX-License-Identifier: Apache-2.0
package tubwright.engine.design;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import tubwright.engine.design.text.DesignError;
import tubwright.engine.structure.Case;

/** Load cases as a designer writes them. */
class LoadCaseTextTest {
    @TempDir
    Path folder;

    private Design read(String text) throws IOException {
        String template = Template.text("Bramble");
        assertTrue(template.contains("\ncases:\n"));
        Files.writeString(folder.resolve("tub.yaml"), template.replace("\ncases:\n", "\ncases:\n" + text));
        return Design.read(folder);
    }

    private static Case.Force at(Case.Loads loads, String hardpoint) {
        return loads.forces().stream()
                .filter(f -> f.hardpoint().equals(hardpoint))
                .findFirst()
                .orElseThrow();
    }

    @Test
    void aForceOnBothSidesIsMirroredAndSoIsAMoment() throws IOException {
        Design design = read("""
                  push:
                    forces: {lower wishbone: "-100, 200, 3000 N"}
                    moments: {lower wishbone: "1, 2, 3 N·m"}
                    acceleration: 0, 0, -2 g0
                """);
        Case.Loads bump = (Case.Loads) design.asDesigned().tub().cases().getFirst();
        assertTrue(bump.free());
        assertEquals("not stated", bump.source());
        assertArrayEquals(new double[] {0, 0, -2 * 9.80665}, bump.acceleration(), 1e-12);
        assertArrayEquals(
                new double[] {-100, 200, 3000}, at(bump, "lower wishbone R").force());
        assertArrayEquals(
                new double[] {-100, -200, 3000}, at(bump, "lower wishbone L").force());
        assertArrayEquals(new double[] {1, 2, 3}, at(bump, "lower wishbone R").moment());
        // In a mirror across y a turn about x or z runs the other way round, one about y the same way.
        assertArrayEquals(new double[] {-1, 2, -3}, at(bump, "lower wishbone L").moment());
    }

    @Test
    void twoNumbersAreNoForce() {
        String told = assertThrows(DesignError.class, () -> read("""
                  push:
                    forces: {lower wishbone: "200, 3000 N"}
                """)).getMessage();
        assertTrue(told.contains("lower wishbone: 2 numbers are given"), told);
    }

    @Test
    void aCaseOfNoughtsIsRefused() {
        String told = assertThrows(DesignError.class, () -> read("""
                  push:
                    forces: {lower wishbone: "0, 0, 0 N"}
                """)).getMessage();
        assertTrue(told.contains("every load is zero"), told);
    }
}
