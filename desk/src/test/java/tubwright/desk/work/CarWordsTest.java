// SPDX-License-Identifier: Apache-2.0
package tubwright.desk.work;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import tubwright.engine.load.Car;
import tubwright.engine.load.Vehicle;
import tubwright.engine.load.Wheel;
import tubwright.engine.structure.Fittings;

class CarWordsTest {
    private static Wheel wheel(String name, boolean front, boolean left) {
        return new Wheel(
                name,
                front,
                left,
                new double[3],
                new double[] {0, 0, 0.28},
                10,
                Optional.empty(),
                Optional.of("frame"));
    }

    @Test
    void aTubWithNothingBoltedOnAndNoCarHasNoWords() {
        assertEquals(List.of(), CarWords.of(Fittings.NONE));
    }

    @Test
    void aCarIsSaidInTheFiguresADesignerChecksFirst() {
        Car car = new Car(300, 2, 1.2, 1.1, 0.25, 1.2, 0.55, Optional.empty());
        Vehicle vehicle = new Vehicle(
                car,
                new double[3],
                0.6,
                0,
                Optional.empty(),
                List.of(wheel("front L", true, true), wheel("front R", true, false)));
        Fittings fittings = new Fittings(
                List.of(),
                List.of(),
                List.of(),
                List.of(new Fittings.Mass("driver", 80, List.of(), List.of(), 0, 0)),
                Optional.of(vehicle));
        assertEquals(
                List.of(
                        "Bolted on: driver 80 kg; 80 kg in all.",
                        "Car: 300 kg ready to drive, 20 kg of it unsprung; 40 % on the front wheels; centre of mass 250 mm "
                                + "above the road; wheelbase 2000 mm, track 1200 mm and 1100 mm; the front takes 55 % of the "
                                + "load transfer in roll and 60 % of the braking.",
                        "Wheels: front L, front R: carried by the frame."),
                CarWords.of(fittings));
    }
}
