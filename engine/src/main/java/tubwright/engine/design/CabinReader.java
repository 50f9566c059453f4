// SPDX-License-Identifier: Apache-2.0
package tubwright.engine.design;

import java.util.List;
import java.util.Optional;
import tubwright.engine.cabin.Cabin;
import tubwright.engine.cabin.Driver;
import tubwright.engine.cabin.Solid;
import tubwright.engine.cabin.Tank;
import tubwright.engine.design.text.Amounts;
import tubwright.engine.design.text.DesignError;
import tubwright.engine.design.text.Faults;
import tubwright.engine.design.text.Named;
import tubwright.engine.design.text.Place;
import tubwright.engine.design.text.Span;
import tubwright.engine.shape.TubShape;

/** What has to go into the tub, from text. */
final class CabinReader {
    private CabinReader() {}

    static Cabin read(Optional<CabinText> text, TubShape shape) {
        if (text.isEmpty()) {
            return Cabin.NONE;
        }
        CabinText cabin = text.get();
        Faults faults = new Faults();
        Optional<Optional<Driver>> driver = faults.attempt(() -> cabin.driver().map(d -> driver(d, shape)));
        Optional<Optional<Tank>> tank = faults.attempt(() -> cabin.tank().map(t -> tank(t, shape)));
        List<Solid> kept = cabin.kept().stream()
                .map(k -> faults.attempt(() -> kept(k)))
                .flatMap(Optional::stream)
                .toList();
        faults.throwIfAny();
        return new Cabin(
                driver.orElseThrow(), tank.orElseThrow(), kept, cabin.room().si());
    }

    private static Driver driver(DriverText text, TubShape shape) {
        double share = text.percentile().si();
        if (share < 0.01 || share > 0.99) {
            throw new DesignError(
                    text.percentile().place(),
                    "a percentile of " + text.percentile() + " is beyond what the survey tells",
                    "write 1 % to 99 %, e.g. \"percentile: 95 %\"");
        }
        if (text.back().si() >= Math.PI / 2) {
            throw new DesignError(
                    text.back().place(),
                    "a back at " + text.back() + " lies flat",
                    "it is measured aft of upright and stays below 90 deg");
        }
        double[] hips = inside(text.hips(), "hips", shape);
        double[] heels = inside(text.heels(), "heels", shape);
        if (hips[0] <= heels[0]) {
            throw new DesignError(
                    text.heels().place(), "the heels lie behind the hips", "x runs aft; the driver looks forward");
        }
        return new Driver(
                text.people(),
                share,
                hips,
                text.back().si(),
                heels,
                text.feetApart().si(),
                text.clothing().si());
    }

    private static double[] inside(Amounts amounts, String what, TubShape shape) {
        double[] point = numbers(amounts, 2, "\"" + what + "\" needs x and z: \"1480, 190 mm\"");
        if (point[0] < shape.front() || point[0] > shape.rear() || shape.distance(point[0], 0, point[1]) > 0) {
            throw new DesignError(
                    amounts.place(),
                    "\"" + what + "\" lie outside the tub",
                    "the tub reaches from x = " + Math.round(1000 * shape.front()) + " to "
                            + Math.round(1000 * shape.rear()) + " mm");
        }
        return point;
    }

    private static Tank tank(TankText text, TubShape shape) {
        if (text.x().from() < shape.front() || text.x().to() > shape.rear()) {
            throw new DesignError(
                    text.x().place(),
                    "the tank reaches out of the tub",
                    "the tub reaches from x = " + Math.round(1000 * shape.front()) + " to "
                            + Math.round(1000 * shape.rear()) + " mm");
        }
        return new Tank(
                text.holds().si(),
                text.x().from(),
                text.x().to(),
                text.z().from(),
                text.z().to(),
                text.gap().si());
    }

    private static Solid kept(Named<KeptText> named) {
        KeptText text = named.value();
        String name = named.name().text();
        if (text.x().isPresent()) {
            Span x = text.x().get();
            Span y = needed(text.y(), name, "y", text.place());
            Span z = needed(text.z(), name, "z", text.place());
            return Solid.box(name, new double[] {x.from(), y.from(), z.from()}, new double[] {x.to(), y.to(), z.to()});
        }
        Amounts to = needed(text.to(), name, "to", text.place());
        String help = "a point is \"x, y, z\": \"420, 0, 330 mm\"";
        double[] from = numbers(text.from().orElseThrow(), 3, help);
        double[] end = numbers(to, 3, help);
        double radius = needed(text.diameter(), name, "diameter", text.place()).si() / 2;
        if (Math.hypot(from[0] - end[0], from[2] - end[2]) < 1e-3) {
            throw new DesignError(
                    to.place(), "\"" + name + "\" begins where it ends", "its ends must differ in x or z; " + help);
        }
        return Solid.bar(name, from, end, radius);
    }

    private static <T> T needed(Optional<T> value, String name, String key, Place place) {
        return value.orElseThrow(() -> new DesignError(
                place,
                "\"" + name + "\": \"" + key + "\" is missing",
                "a box has x, y and z (\"x: 100 .. 300 mm\"); a bar has from, to and diameter"));
    }

    private static double[] numbers(Amounts amounts, int count, String help) {
        if (amounts.si().length != count) {
            throw new DesignError(amounts.place(), "read " + amounts.si().length + " numbers", help);
        }
        return amounts.si();
    }
}
