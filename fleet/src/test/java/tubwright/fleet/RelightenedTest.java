// SPDX-License-Identifier: Apache-2.0
package tubwright.fleet;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import java.util.Locale;
import org.junit.jupiter.api.Test;

/** Tubs laid up anew for a stiffness or a mass. */
class RelightenedTest {
    private static Row row(String document, String... readings) {
        Job job = new Job(document, "box.yaml", "as designed", List.of(readings), 0, "test");
        return new Computation(job).row(new Blueprint(job).point(List.of()), () -> false);
    }

    private static String at(String what, double value, String unit) {
        return String.format(Locale.ROOT, "%s at %.12f %s", what, value, unit);
    }

    /** A thin tube's stiffness goes with its gauge (Bredt 1896): asked for what it has, a sheet tub stays as it is. */
    @Test
    void aSheetTubFindsItsOwnGaugeAgain() {
        Row own = row(Tubes.BOX, "torsional stiffness", "mass");
        double stiffness = own.value("torsional stiffness");
        double mass = own.value("mass");
        String lightest = at("lightest mass", stiffness, "N·m/rad");
        String more = at("lightest mass", 1.3 * stiffness, "N·m/rad");
        String stiffest = at("stiffest", mass, "kg");
        Row made = row(Tubes.BOX, lightest, more, stiffest);
        assertTrue(made.ok(), made::toString);
        assertEquals(mass, made.value(lightest), 1e-5 * mass);
        assertEquals(stiffness, made.value(stiffest), 1e-5 * stiffness);
        assertTrue(made.value(more) > 1.1 * mass && made.value(more) < 1.4 * mass, made::toString);
    }

    private static final String CARBON = Tubes.BOX
            .replace(
                    "skin: {sheet: al-6061-t6, thickness: 2 mm}",
                    "skin: {stack: \"[45c/0c/45c/core/45c/0c/45c]\", plies: {c: pw-t650-976},"
                            + " core: al-honeycomb-3.1-small-cell, core thickness: 10 mm, film: film-epoxy-150}")
            .replace("  thick:\n    laminates:\n      skin: {thickness: 4 mm}", "  other: {construction: another}");

    @Test
    void plyByPlyTheLightestKeepsItsTargetAndItsBound() {
        Row own = row(CARBON, "torsional stiffness", "mass", "plies");
        assertTrue(own.ok(), own::toString);
        double asked = 0.8 * own.value("torsional stiffness");
        String lightest = at("lightest mass", asked, "N·m/rad");
        String bound = at("bound of the lightest mass", asked, "N·m/rad");
        String plies = at("plies of the lightest", asked, "N·m/rad");
        String stiffest = at("stiffest", own.value("mass"), "kg");
        Row made = row(CARBON, lightest, bound, plies, stiffest);
        assertTrue(made.ok(), made::toString);
        assertTrue(made.value(lightest) < own.value("mass"), made::toString);
        assertTrue(made.value(bound) <= made.value(lightest), made::toString);
        assertTrue(made.value(plies) < own.value("plies"), made::toString);
        assertTrue(made.value(stiffest) >= 0.98 * own.value("torsional stiffness"), made + " against " + own);
        String beyond = at("lightest mass", 50 * asked, "N·m/rad");
        Row none = row(CARBON, beyond);
        assertFalse(none.ok());
        assertTrue(none.reason().orElseThrow().contains("no layup found"), none::toString);
    }
}
