// SPDX-License-Identifier: Apache-2.0
package tubwright.engine.make.cure;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import org.junit.jupiter.api.Test;
import tubwright.engine.material.MaterialLibrary;
import tubwright.engine.material.Ply;
import tubwright.engine.material.Trust;
import tubwright.engine.verification.ladder.Family;
import tubwright.engine.verification.ladder.Ladder;
import tubwright.engine.verification.ladder.Mark;

class CureLibraryTest {
    private static final CureLibrary LIBRARY = CureLibrary.shipped();

    @Test
    void everyShippedPlyThatHasAResinIsInTheMaterialLibrary() {
        LIBRARY.plies().values().forEach(ply -> {
            MaterialLibrary.shipped().get(ply.ply(), Ply.class);
            assertTrue(LIBRARY.resins().containsKey(ply.resin()), ply.ply());
            assertTrue(LIBRARY.fibres().containsKey(ply.fibre()), ply.ply());
        });
    }

    @Test
    void aResinThatStandsInForAnotherIsAnAssumption() {
        LIBRARY.plies().values().stream()
                .filter(ply -> ply.standsInFor().isPresent())
                .forEach(ply -> assertEquals(Trust.ASSUMED, ply.provenance().trust(), ply.ply()));
    }

    @Test
    void heatAcrossFibresFindsItsWayAsSpringerAndTsaiSay() {
        Ladder ladder = Ladder.of(Family.CURE, "Springer and Tsai 1967, as an open notebook has it", Mark.TRANSCRIBED);
        ladder.equal("8552 and carbon at 57.4 %, W/m/K", 0.6386, HeatProperties.across(3.96, 0.21265, 0.574), 5.1e-5);
    }

    @Test
    void fibresThatConductLikeTheResinChangeNothing() {
        assertEquals(0.25, HeatProperties.across(0.25 * (1 + 1e-6), 0.25, 0.5), 1e-4);
    }

    @Test
    void anOwnFileAddsToTheShippedDataAndReplacesWhatHasTheSameName() {
        CureLibrary own = LIBRARY.with("cure.yaml", """
                sources:
                  sheet: {source: "our sheet", trust: stated}
                cycles:
                  slow-120:
                    description: "one hold"
                    source: sheet
                    start: 20 °C
                    steps:
                      - {to: 120 °C, rate: 1 K/min, hold: 4 h, hold from: air, pressure: 3 bar, bag: 0.2 bar}
                """);
        assertEquals(LIBRARY.cycles().size() + 1, own.cycles().size());
        assertEquals(393.15, own.cycle("slow-120").hottest(), 1e-9);
        assertEquals(3e5, own.cycle("slow-120").highestPressure(), 1e-6);
    }

    @Test
    void aFaultNamesFileAndLineAndWhatWouldBeRight() {
        told("cure.yaml:4: 'lagging place'", """
                sources:
                  s: {source: "x", trust: stated}
                cycles:
                  c: {description: d, source: s, start: 20 °C, steps: [{to: 90 °C, rate: 1 K/min, hold: 1 h, hold from: lagging place, pressure: 1 bar, bag: 1 bar}]}
                """, "'lagging'");
        told("cure.yaml:6:", """
                sources:
                  s: {source: "x", trust: stated}
                fibres:
                  f:
                    description: d
                    values: {density: 1800 kg/m³, specific heat: 900 J/kg, conductivity: 3 W/m/K}
                    source: s
                """, "J/kg/K");
        told("cure.yaml:1:", "resin: {}", "knows no 'resin'");
        told("no resin is called '3501'", """
                sources:
                  s: {source: "x", trust: stated}
                plies:
                  mine: {resin: "3501", fibre: carbon, source: s}
                """, "did you mean '3501-6'");
        told("no cycle is called", LIBRARY, "solid-181", "did you mean 'solid-180'");
    }

    private static void told(String start, CureLibrary library, String name, String hint) {
        CureException fault = assertThrows(CureException.class, () -> library.cycle(name));
        assertTrue(fault.getMessage().startsWith(start), fault.getMessage());
        assertTrue(fault.getMessage().contains(hint), fault.getMessage());
    }

    private static void told(String start, String yaml, String hint) {
        CureException fault = assertThrows(CureException.class, () -> LIBRARY.with("cure.yaml", yaml));
        String readable = fault.getMessage();
        assertTrue(readable.contains(start.replace(": 'lagging place'", ":")), readable);
        assertTrue(readable.contains(hint), readable);
    }
}
