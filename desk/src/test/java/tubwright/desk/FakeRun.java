// SPDX-License-Identifier: Apache-2.0
package tubwright.desk;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import tubwright.desk.answer.RunAnswer;
import tubwright.engine.laminate.Laminate;
import tubwright.engine.laminate.Layer;
import tubwright.engine.material.Core;
import tubwright.engine.material.Material;
import tubwright.engine.material.Metal;
import tubwright.engine.material.Ply;
import tubwright.engine.material.Property;
import tubwright.engine.material.PropertyTable;
import tubwright.engine.material.PropertyValue;
import tubwright.engine.material.Provenance;
import tubwright.engine.material.Trust;
import tubwright.engine.mesh.Mesh;
import tubwright.engine.mesh.MeshQuality;
import tubwright.engine.mesh.Region;
import tubwright.engine.response.CaseAnswer;
import tubwright.engine.response.Converged;
import tubwright.engine.response.EnergyShare;
import tubwright.engine.response.InstalledAnswer;
import tubwright.engine.response.MassAnswer;
import tubwright.engine.response.Reserve;
import tubwright.engine.response.ReserveMap;
import tubwright.engine.response.ReserveTable;
import tubwright.engine.response.SheetState;
import tubwright.engine.response.Stability;
import tubwright.engine.response.TwistLine;
import tubwright.engine.response.VariantAnswer;
import tubwright.engine.strength.Check;
import tubwright.engine.structure.Part;

/** A make-believe answer of a run on a {@link FakeTub}. Every number is invented. */
public final class FakeRun {
    /** Couple of the torsion case, N·m. */
    public static final double COUPLE = 2000;

    private FakeRun() {}

    /** Two variants on a coarse mesh. */
    public static RunAnswer answer() {
        return answer(FakeTub.mesh(40, 5));
    }

    /** Two variants on the given mesh. */
    public static RunAnswer answer(Mesh mesh) {
        VariantAnswer carbon = variant("as designed", "carbon sandwich", mesh, 1, 31.42, 3, 0);
        VariantAnswer metal = variant("aluminium", "riveted sheet", mesh, 2.55, 32.9, 24, 1184);
        return new RunAnswer(
                "Larkspur",
                "Single-seat hillclimb car of Coombe Hill Works.",
                "2026-11-25T13:05:10Z",
                "0.1.0",
                List.of(
                        new RunAnswer.Target("torsional stiffness", true, 20, 21.34, 0.12, "kN·m/deg"),
                        new RunAnswer.Target("mass", false, 31, 31.42, 0, "kg"),
                        new RunAnswer.Target("bending stiffness", true, 8.5, 8.52, 0.07, "kN/mm")),
                List.of(carbon, metal),
                List.of(
                        new RunAnswer.Landmark("front bulkhead", RunAnswer.Landmark.Kind.WALL, 0, 0),
                        new RunAnswer.Landmark("dash", RunAnswer.Landmark.Kind.WALL, 0.9, 0.9),
                        new RunAnswer.Landmark("cockpit", RunAnswer.Landmark.Kind.OPENING, 0.92, 1.62),
                        new RunAnswer.Landmark("seat back", RunAnswer.Landmark.Kind.WALL, 1.5, 1.64),
                        new RunAnswer.Landmark("rear bulkhead", RunAnswer.Landmark.Kind.WALL, 2.15, 2.15)),
                layups(mesh),
                List.of(tape(), cloth(), honeycomb(), sheet()),
                List.of(
                        new RunAnswer.JointCard(
                                "as designed", "lower shell / upper shell", "bonded lap, 25 mm × 0.2 mm", 4.31, 0),
                        new RunAnswer.JointCard(
                                "aluminium", "shoulder row", "solid rivets, 3.2 mm at 25 mm", 4.31, 172)),
                Optional.empty(),
                List.of("Zone <chine>: 3 plies run together without a change of angle (practice allows 4)."),
                List.of("answer.json", "fields/as-designed.vtu", "fields/aluminium.vtu", "inputs/tub.yaml"));
    }

    private static VariantAnswer variant(
            String name, String construction, Mesh mesh, double soft, double mass, int pieces, int fasteners) {
        double stiffness = 21_340 * 180 / Math.PI / soft;
        Converged converged = new Converged(
                stiffness,
                0.0056 * stiffness,
                1.9,
                "Three sizes, extrapolated.",
                List.of(
                        new Converged.Sample(0.040, 21_630, stiffness * 1.034),
                        new Converged.Sample(0.028, 43_900, stiffness * 1.0172),
                        new Converged.Sample(0.020, 86_410, stiffness * 1.0091)));
        Converged bending = new Converged(
                8.52e6 / soft,
                0.07e6 / soft,
                Double.NaN,
                "Two sizes, order taken as 2.",
                List.of(
                        new Converged.Sample(0.028, 43_900, 8.68e6 / soft),
                        new Converged.Sample(0.020, 86_410, 8.60e6 / soft)));
        double[] u = FakeTub.displacements(mesh, COUPLE * soft);
        double[] w = FakeTub.densities(mesh, COUPLE);
        for (int e = 0; e < w.length; e++) {
            w[e] *= soft;
        }
        CaseAnswer torsion = new CaseAnswer(
                "torsion",
                CaseAnswer.Kind.TORSION,
                converged,
                0.15,
                2.1,
                "skin, walls, joints, inserts; no engine, no suspension",
                COUPLE,
                Optional.of(line(soft)),
                energy(mesh, w),
                new CaseAnswer.Fields(u, w),
                soft == 1
                        ? Optional.empty()
                        : Optional.of(new SheetState(24, 3, "flank, x 900 to 1500 mm", 0.6, 0.91)));
        CaseAnswer bend = new CaseAnswer(
                "bending",
                CaseAnswer.Kind.BENDING,
                bending,
                1.1,
                1.1,
                "skin, walls, joints, inserts",
                1000,
                Optional.empty(),
                energy(mesh, w),
                new CaseAnswer.Fields(u, w));
        return new VariantAnswer(
                name,
                construction,
                mass(mesh, mass),
                List.of(torsion, bend),
                pieces,
                pieces + 3,
                fasteners,
                14.2,
                mesh,
                quality(mesh),
                reserves(mesh),
                Stability.NONE,
                installed(mass));
    }

    /** A tub with a hoop and an engine, on wheels. */
    private static Optional<InstalledAnswer> installed(double mass) {
        return Optional.of(new InstalledAnswer(
                Optional.of(new InstalledAnswer.WithAndWithout(
                        "torsion", 690e3, 724e3, 590e3, 618e3, List.of("main hoop", "engine"))),
                Optional.of(new InstalledAnswer.HubToHub(
                        310e3,
                        440e3,
                        List.of(
                                new InstalledAnswer.Spring("tub: skin, walls and stiffeners", 0.46, 310e3 / 0.46),
                                new InstalledAnswer.Spring("front links", 0.21, 310e3 / 0.21),
                                new InstalledAnswer.Spring("engine", 0.15, 310e3 / 0.15),
                                new InstalledAnswer.Spring("rear links", 0.09, 310e3 / 0.09),
                                new InstalledAnswer.Spring("inserts", 0.09, 310e3 / 0.09)))),
                List.of(
                        new InstalledAnswer.PickUp("lower front leg R", new double[] {0.3, 0.95, 0.08}, 42e6),
                        new InstalledAnswer.PickUp("rocker R", new double[] {-0.7, -0.65, 0.3}, 31e6)),
                List.of(
                        new InstalledAnswer.Lost("bump", "front L", 0.0007, -0.0003),
                        new InstalledAnswer.Lost("bump", "front R", 0.0007, -0.0003),
                        new InstalledAnswer.Lost("cornering", "front L", -0.0011, 0.0004)),
                new InstalledAnswer.Masses(mass, 280, 320)));
    }

    private static ReserveTable reserves(Mesh mesh) {
        Reserve crack = new Reserve(
                "bump",
                "Tsai-Wu",
                "matrix tension",
                true,
                "chine",
                "layer 4, tape at 0°",
                new double[] {0.45, -0.17, 0.16},
                1.32,
                "none",
                false,
                0,
                "Tsai and Wu 1971");
        Reserve insert = new Reserve(
                "braking",
                "insert pull-out by core shear",
                "",
                false,
                "lower front leg L",
                "",
                new double[] {0.11, -0.15, 0.19},
                2.4,
                "none",
                true,
                0.012,
                "ESA PSS-03-1202");
        return new ReserveTable(
                List.of(insert, crack),
                List.of(new Check.NotChecked("joints between pieces", List.of("a check by hand"))),
                Map.of("bump", "common practice, no source"),
                "Plies by maximum stress, at 20 °C; strengths as the materials give them (no knock-down chosen).",
                Optional.of(map(mesh)));
    }

    /** Factors that fall along the tub, two modes and two cases by halves. */
    private static ReserveMap map(Mesh mesh) {
        int elements = mesh.elementCount();
        double[] factor = new double[elements];
        int[] mode = new int[elements];
        int[] load = new int[elements];
        for (int e = 0; e < elements; e++) {
            factor[e] = 1 + 5.0 * e / elements;
            mode[e] = e % 3 == 0 ? 1 : 0;
            load[e] = 2 * e < elements ? 0 : 1;
        }
        return new ReserveMap(
                factor, mode, load, List.of("fibre compression", "shear of the core"), List.of("braking", "bump"));
    }

    private static MeshQuality quality(Mesh mesh) {
        MeshQuality.Spread spread = new MeshQuality.Spread(1, 1.5, 4, 0, new double[] {0.1, 0.2, 0.3});
        return new MeshQuality(
                mesh.nodeCount(),
                mesh.elementCount(),
                0,
                spread,
                spread,
                spread,
                spread,
                List.of(new MeshQuality.PartArea("flank", 0.998, 1.0)));
    }

    private static TwistLine line(double soft) {
        int count = 87;
        double[] x = new double[count];
        double[] angle = new double[count];
        double[] slope = new double[count];
        double[] rigidity = new double[count];
        for (int i = 0; i < count; i++) {
            x[i] = 2.15 * i / (count - 1);
            double step = x[i] < 0.9 ? 1.1e-4 * soft * COUPLE / 2000 : 0;
            angle[i] = COUPLE * soft * (FakeTub.twist(2.15) - FakeTub.twist(x[i])) + step;
            slope[i] = -COUPLE * soft * FakeTub.rate(x[i]);
            rigidity[i] = x[i] < 0.15 || x[i] > 2.1 ? Double.NaN : COUPLE / Math.abs(slope[i]);
        }
        return new TwistLine(x, angle, slope, rigidity, List.of(new TwistLine.Jump(0.9, 1.1e-4 * soft, "dash edge")));
    }

    private static List<EnergyShare> energy(Mesh mesh, double[] w) {
        Map<String, Double> byZone = new java.util.LinkedHashMap<>();
        Map<String, Part.Kind> kinds = new java.util.HashMap<>();
        double whole = 0;
        for (int e = 0; e < w.length; e++) {
            Region region = mesh.region(e);
            double energy = w[e] * mesh.area(e);
            whole += energy;
            byZone.merge(region.zone(), energy, Double::sum);
            kinds.put(region.zone(), region.surface() == Region.Surface.WALL ? Part.Kind.WALL : Part.Kind.ZONE);
        }
        List<EnergyShare> shares = new ArrayList<>();
        double all = whole / 0.86;
        byZone.forEach((zone, energy) -> shares.add(new EnergyShare(kinds.get(zone), zone, energy, energy / all)));
        shares.add(new EnergyShare(Part.Kind.JOINT, "lower shell / upper shell", 0.06 * all, 0.06));
        shares.add(new EnergyShare(Part.Kind.HARDPOINT, "front lower rear leg R", 0.03 * all, 0.03));
        shares.add(new EnergyShare(Part.Kind.HARDPOINT, "front lower rear leg L", 0.03 * all, 0.03));
        shares.add(new EnergyShare(Part.Kind.STIFFENER, "cockpit rim", 0.02 * all, 0.02));
        shares.sort(Comparator.comparingDouble(EnergyShare::share).reversed());
        return shares;
    }

    private static MassAnswer mass(Mesh mesh, double whole) {
        double[] centre = {1.183, 0.0, 0.262};
        double[] inertia = {2.1, 11.7, 12.4, 0, 0, 0.31};
        List<MassAnswer.Item> items = List.of(
                new MassAnswer.Item(Part.Kind.ZONE, "floor", "lower shell", 1.1, 0.55 * whole),
                new MassAnswer.Item(Part.Kind.WALL, "seat back", "seat back", 0.3, 0.25 * whole),
                new MassAnswer.Item(Part.Kind.JOINT, "shoulder seam", "lower shell", 0, 0.05 * whole),
                new MassAnswer.Item(Part.Kind.HARDPOINT, "pick-ups", "lower shell", 0, 0.15 * whole));
        List<MassAnswer.Body> pieces = List.of(
                new MassAnswer.Body("lower shell", 0.56 * whole, centre, inertia),
                new MassAnswer.Body("upper shell", 0.26 * whole, centre, inertia),
                new MassAnswer.Body("walls", 0.18 * whole, centre, inertia));
        return new MassAnswer(items, pieces, new MassAnswer.Body("Larkspur", whole, centre, inertia));
    }

    private static List<RunAnswer.Layup> layups(Mesh mesh) {
        Laminate skin = Laminate.of(
                Layer.ofDegrees(cloth(), 45),
                Layer.ofDegrees(tape(), 0),
                Layer.ofDegrees(tape(), 90),
                new Layer(honeycomb(), 0.020, 0),
                Layer.ofDegrees(tape(), 90),
                Layer.ofDegrees(tape(), 0),
                Layer.ofDegrees(cloth(), 45));
        Laminate solid = Laminate.of(
                Layer.ofDegrees(cloth(), 45),
                Layer.ofDegrees(tape(), 45),
                Layer.ofDegrees(tape(), -45),
                Layer.ofDegrees(cloth(), 0));
        List<RunAnswer.Layup> layups = new ArrayList<>();
        for (Region region : mesh.regions()) {
            boolean thin = region.zone().startsWith("chine");
            if (layups.stream().noneMatch(l -> l.name().equals(region.zone()))) {
                layups.add(new RunAnswer.Layup(
                        "as designed",
                        region.zone(),
                        false,
                        thin ? "[45c/±45/0c]" : "[45c/0/90/core/90/0/45c]",
                        0.41,
                        thin ? solid : skin));
            }
        }
        layups.add(new RunAnswer.Layup(
                "aluminium", "flank rear", false, "1.2 mm sheet", 0.6, Laminate.of(new Layer(sheet(), 0.0012, 0))));
        return layups;
    }

    private static Material tape() {
        return Ply.of(
                "ud-demo",
                "unidirectional carbon, invented",
                Ply.Form.UNIDIRECTIONAL,
                table(Map.of(
                        Property.E1,
                        130e9,
                        Property.E2,
                        9e9,
                        Property.G12,
                        4.8e9,
                        Property.NU12,
                        0.3,
                        Property.DENSITY,
                        1560.0,
                        Property.THICKNESS,
                        0.000131)));
    }

    private static Material cloth() {
        return Ply.of(
                "cloth-demo",
                "carbon cloth, invented",
                Ply.Form.CLOTH,
                table(Map.of(
                        Property.E1,
                        62e9,
                        Property.E2,
                        61e9,
                        Property.G12,
                        4.2e9,
                        Property.NU12,
                        0.05,
                        Property.DENSITY,
                        1540.0,
                        Property.THICKNESS,
                        0.00022)));
    }

    private static Material honeycomb() {
        return Core.of(
                "honeycomb-demo",
                "aluminium honeycomb, invented",
                Core.Form.HONEYCOMB,
                table(Map.of(Property.G13, 310e6, Property.G23, 150e6, Property.E3, 500e6, Property.DENSITY, 50.0)));
    }

    private static Material sheet() {
        return Metal.of(
                "sheet-demo",
                "aluminium sheet, invented",
                table(Map.of(Property.E1, 71e9, Property.NU12, 0.33, Property.DENSITY, 2780.0)));
    }

    private static PropertyTable table(Map<Property, Double> values) {
        Map<Property, PropertyValue> table = new EnumMap<>(Property.class);
        values.forEach((property, si) -> table.put(
                property,
                new PropertyValue(
                        si,
                        property == Property.G12
                                ? new Provenance("remembered for the demonstration", Trust.FROM_MEMORY)
                                : new Provenance("invented for the demonstration", Trust.INVENTED))));
        return new PropertyTable(table);
    }
}
