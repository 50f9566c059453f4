// SPDX-License-Identifier: Apache-2.0
package tubwright.engine.safety.crush;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.Optional;
import java.util.OptionalDouble;
import org.junit.jupiter.api.Test;

/** Punches through faces and cores. */
class PenetrationTest {
    /** Student rules' bulkhead: 25 mm punch through 1.5 mm of steel of 365 MPa, π d t 0.577 σu = 24.8 kN. */
    @Test
    void aPunchShearsTheBulkheadPlateOfTheStudentRulesAtTheForceTheyCount() {
        Penetration.Face plate = new Penetration.Face(1.5e-3, OptionalDouble.of(0.577 * 365e6));
        assertEquals(24.8e3, plate.force(25e-3).orElseThrow(), 50);
    }

    @Test
    void energyIsThatOfTheFacesAndOfTheCrushedCore() {
        Penetration.Face face = new Penetration.Face(1e-3, OptionalDouble.of(100e6));
        CrushData core = CrushLibrary.cores().getFirst().crush();
        Penetration.Answer answer = Penetration.of(face, face, 20e-3, Optional.of(core), 25e-3, 1);
        double shear = Math.PI * 25e-3 * 1e-3 * 100e6 * 1e-3;
        double crushed = 255 * 6894.757 * Math.PI / 4 * 25e-3 * 25e-3 * 0.7 * 20e-3;
        assertEquals(shear + crushed, answer.energy(), 1e-4);
        assertTrue(answer.notChecked().isEmpty() && answer.validity().isEmpty());
    }

    @Test
    void whatIsMissingAndWhereItEndsIsSaid() {
        Penetration.Face face = new Penetration.Face(8e-3, OptionalDouble.empty());
        Penetration.Answer answer =
                Penetration.of(face, face, 20e-3, Optional.of(CrushLibrary.SANDWICH_EDGE), 25e-3, 40);
        assertEquals(3, answer.notChecked().size());
        assertTrue(answer.notChecked().toString().contains("not the bare strength"));
        assertEquals(3, answer.validity().size());
    }
}
