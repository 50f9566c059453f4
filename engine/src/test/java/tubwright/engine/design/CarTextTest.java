// SPDX-License-Identifier: Apache-2.0
package tubwright.engine.design;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import tubwright.engine.design.text.DesignError;
import tubwright.engine.load.Car;
import tubwright.engine.load.Vehicle;
import tubwright.engine.mesh.Mesh;
import tubwright.engine.response.Study;
import tubwright.engine.structure.Case;
import tubwright.engine.structure.Fittings;
import tubwright.engine.structure.Structure;
import tubwright.engine.structure.Tub;

/** The car, its suspension and what is bolted to the tub, as the Larkspur writes them. */
class CarTextTest {
    private static final Path FILE = Path.of("../examples/larkspur/tub.yaml");
    private static final Tub LARKSPUR = Design.read(FILE).asDesigned().tub();

    @TempDir
    Path folder;

    private static Case.Loads load(String name) {
        return (Case.Loads) LARKSPUR.cases().stream()
                .filter(c -> c.name().equals(name))
                .findFirst()
                .orElseThrow();
    }

    private static double[] place(String name) {
        Fittings fittings = LARKSPUR.fittings();
        return LARKSPUR.hardpoints().stream()
                .filter(h -> h.name().equals(name))
                .map(h -> h.position())
                .findFirst()
                .or(() -> fittings.bodies().stream()
                        .filter(b -> b.name().equals(name))
                        .map(b -> b.centre())
                        .findFirst())
                .or(() -> fittings.bodies().stream()
                        .flatMap(b -> b.points().stream())
                        .filter(n -> n.name().equals(name))
                        .map(n -> n.position())
                        .findFirst())
                .orElseThrow();
    }

    /**
     * Newton and Euler, with nothing taken from the program but points and forces: all that the case brings to the body is
     * the inertia and weight of the car less that of its wheels, in force and in moment about the road.
     */
    @ParameterizedTest
    @CsvSource({
        "braking, 1.7, 0, 0",
        "braking into a bend, 1.3, 1.3, 0",
        "driving out of a bend, -0.9, 1.2, 0",
        "bump, 0, 0, 2"
    })
    void theBodyGetsWhatTheRoadGives(String name, double along, double right, double up) {
        double g = Car.GRAVITY;
        double[] felt = {along * g, right * g, (up + 1) * g};
        double[] expected = wrench(new double[] {1.69, 0, 0.29}, scaled(465, felt));
        for (double[] hub : new double[][] {{0.31, 0.66, 0.265}, {0.31, -0.66, 0.265}}) {
            add(expected, wrench(hub, scaled(-17, felt)));
        }
        for (double[] hub : new double[][] {{2.75, 0.65, 0.275}, {2.75, -0.65, 0.275}}) {
            add(expected, wrench(hub, scaled(-21, felt)));
        }
        double[] got = new double[6];
        for (Case.Force each : load(name).forces()) {
            double[] w = wrench(place(each.hardpoint()), each.force());
            for (int d = 0; d < 3; d++) {
                w[3 + d] += each.moment()[d];
            }
            add(got, w);
        }
        assertArrayEquals(expected, got, 1e-7);
    }

    private static double[] scaled(double factor, double[] v) {
        return new double[] {factor * v[0], factor * v[1], factor * v[2]};
    }

    private static double[] wrench(double[] p, double[] f) {
        return new double[] {
            f[0], f[1], f[2], p[1] * f[2] - p[2] * f[1], p[2] * f[0] - p[0] * f[2], p[0] * f[1] - p[1] * f[0]
        };
    }

    private static void add(double[] sum, double[] other) {
        for (int i = 0; i < 6; i++) {
            sum[i] += other[i];
        }
    }

    /** The pressure that statics gives the tyres is the pressure that the mesh gives the skin. */
    @Test
    void airPressesTheMeshAsItPressesTheTyres() {
        Case.Loads speed = load("top speed");
        double[] tyres = new double[3];
        speed.wheels().forEach(w -> {
            for (int d = 0; d < 3; d++) {
                tyres[d] += w.force()[d];
            }
        });
        double points = 0;
        for (Case.Force each : speed.forces()) {
            if (each.hardpoint().startsWith("nose mount") || each.hardpoint().startsWith("rear wing")) {
                points += each.force()[2];
            }
        }
        double air = 465 * Car.GRAVITY + 2 * (-700 - 1300) * -1 - tyres[2];
        assertEquals(-4000, points, 1e-9);
        // What is left of the tyres' load is the floor's: 1.2 kPa down over its area in plan between the stations.
        Mesh mesh = Study.mesh(LARKSPUR, 0.06);
        double plan = 0;
        for (int e = 0; e < mesh.elementCount(); e++) {
            if (mesh.region(e).part().equals("floor")) {
                double[] centre = new double[3];
                double down = 0;
                for (int c = 0; c < mesh.cornerCount(e); c++) {
                    centre[0] += mesh.nodes()[3 * mesh.elementNodes()[4 * e + c]] / mesh.cornerCount(e);
                    down -= mesh.cornerNormals()[12 * e + 3 * c + 2] / mesh.cornerCount(e);
                }
                plan += centre[0] >= 0.95 ? mesh.area(e) * down : 0;
            }
        }
        assertEquals(1200 * plan, -air, 0.02 * 1200 * plan);
    }

    @Test
    void theMassesPlacedAreThoseOfTheCar() {
        Vehicle vehicle = LARKSPUR.fittings().vehicle().orElseThrow();
        double tub = tubwright.engine.response.MassRollUp.of(Structure.of(LARKSPUR, Study.mesh(LARKSPUR, 0.06)))
                .whole()
                .mass();
        assertEquals(vehicle.sprungMass(), tub + LARKSPUR.fittings().mass(), 0.03 * vehicle.sprungMass());
    }

    @Test
    void everyStarterCaseSaysWhereItsFactorsComeFrom() {
        List<Case> loads = LARKSPUR.cases().stream()
                .filter(Case.Loads.class::isInstance)
                // What a crush pushes with is computed, and says from what.
                .filter(c -> !c.name().endsWith(" crush"))
                .toList();
        assertTrue(loads.size() >= 12);
        loads.forEach(c -> assertTrue(
                ((Case.Loads) c).source().contains("no source")
                        || ((Case.Loads) c).source().contains("(invented)"),
                c.name()));
    }

    /** What to find in the example, what to put in its place, and what must be told, with the line of the fault. */
    @ParameterizedTest
    @CsvSource(
            delimiter = '|',
            value = {
                "mass: 465 kg|mass: -465 kg|is not greater than zero",
                "wheel mass: 17 kg|wheel mass: -1 kg|wheel mass: the mass \"-1 kg\" is negative",
                "{mass: 80 kg, on|{mass: -80 kg, on|driver: the mass \"-80 kg\" is negative",
                "mass: 90 g,|mass: -90 g,|the mass \"-90 g\" is negative",
                "inner: steering rack,|inner: steering rak,|did you mean \"steering rack\"",
                "outer: \"402, 580, 186 mm\"|outer: \"311.5, 581, 253.5 mm\"|leave the upright free to move",
                "outer: \"308, 548, 188 mm\"|outer: \"305, -548, 165 mm\"|lies on the left",
                "mounts: [engine mount lower, engine mount upper]|mounts: [engine mount lower]|a mechanism",
                "through: [hoop side, hoop stay foot]|through: [hoop side]|fewer than two points",
                "through: [hoop side, hoop stay foot]|through: [hoop side, hoop stay fot]|did you mean \"hoop stay foot\"",
                "car: {cornering: 2 g0}|car: {cornering: 4 g0}|case \"cornering\": the front right wheel leaves the road",
                "car: {braking: 1.7 g0}|hold: {lap belt: x}\\n    car: {braking: 1.7 g0}|is held as well",
                "car: {vertical: 2 g0}|wheels: {middle R: \"0, 0, 1 kN\"}|there is no wheel called \"middle R\"",
                "brakes at front: 58 %|brakes at front: 158 %|is no share",
                "rear axle:  {x: 2750 mm|rear axle:  {x: 275 mm|the rear axle is not behind the front one",
                "couple: 1000 N·m|couple: 1000 N·m\\n    car: {braking: 1 g0}|exclude each other",
                "material: steel-4130\\n  rear:|material: al-honeycomb-4.5\\n  rear:|is no metal",
                "damper at: \"310, 206, 348 mm\"|damper at: \"310, 152.6, 377.3 mm\"|the damper passes",
                "at rocker: \"372, 158, 378 mm\"|at rocker: \"311, 152, 377 mm\"|the rod passes",
                "diameter: 16 mm, flange: 40 mm|diameter: 16 mm, flange: 90 mm|reaches beyond its footprint of 40 mm",
                "torsional stiffness: 30 kN·m/deg|torsional stiffness: 0 kN·m/deg|is not greater than zero"
            })
    void whatCannotBeIsToldWithItsPlace(String found, String instead, String told) throws IOException {
        String text = Files.readString(FILE).replaceAll("(?s)\nvariants:.*", "\n");
        String from = found.replace("\\n", "\n");
        assertTrue(text.contains(from), from);
        Files.writeString(folder.resolve("tub.yaml"), text.replace(from, instead.replace("\\n", "\n")));
        DesignError error = assertThrows(DesignError.class, () -> Design.read(folder));
        assertTrue(error.getMessage().contains(told), error.getMessage());
        assertTrue(error.getMessage().matches("(?s).*tub\\.yaml:\\d+:\\d+: .*"), error.getMessage());
    }

    @Test
    void aLinkTooThinForItsCaseIsWarnedOf() throws IOException {
        String text = Files.readString(FILE).replaceAll("(?s)\nvariants:.*", "\n");
        Files.writeString(folder.resolve("tub.yaml"), text.replace("round tube: 19 x 1.6 mm", "round tube: 8 x 1 mm"));
        List<Warning> warnings = Design.read(folder).warnings();
        assertTrue(
                warnings.stream()
                        .anyMatch(w -> w.text().startsWith("case \"kerb\": the link at")
                                && w.text().contains("of front R is pressed")
                                && w.place().line() > 0),
                warnings.toString());
    }

    @Test
    void aSuspensionNeedsACar() throws IOException {
        String text = Files.readString(FILE);
        String without = text.replaceAll("(?s)\ncar:\n.*?\nsuspension:", "\nsuspension:");
        Files.writeString(folder.resolve("tub.yaml"), without);
        DesignError error = assertThrows(DesignError.class, () -> Design.read(folder));
        assertTrue(error.getMessage().contains("there is a suspension but no car"), error.getMessage());
    }

    @Test
    void anAxleThatNothingHoldsIsTold() throws IOException {
        String text = Files.readString(FILE).replaceAll("(?s)\n  rear:\n    upper wishbone.*?\n\ncases:", "\n\ncases:");
        Files.writeString(folder.resolve("tub.yaml"), text);
        DesignError error = assertThrows(DesignError.class, () -> Design.read(folder));
        assertTrue(error.getMessage().contains("nothing holds the wheels of the rear axle"), error.getMessage());
    }
}
