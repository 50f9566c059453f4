// SPDX-License-Identifier: Apache-2.0
package tubwright.engine.rig.plan;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.function.BooleanSupplier;
import java.util.stream.IntStream;
import tubwright.engine.laminate.Laminate;
import tubwright.engine.mesh.Mesh;
import tubwright.engine.mesh.Region;
import tubwright.engine.response.Reserve;
import tubwright.engine.response.ReserveTable;
import tubwright.engine.response.Reserves;
import tubwright.engine.response.Study;
import tubwright.engine.rig.explain.Doubt;
import tubwright.engine.rig.explain.Doubts;
import tubwright.engine.rig.explain.TubTwistModel;
import tubwright.engine.rig.statistics.Uncertainty;
import tubwright.engine.rig.statistics.Uncertainty.Contribution;
import tubwright.engine.strength.StrengthBasis;
import tubwright.engine.structure.Case;
import tubwright.engine.structure.Hardpoint;
import tubwright.engine.structure.Solution;
import tubwright.engine.structure.StaticSolver;
import tubwright.engine.structure.StepTimes;
import tubwright.engine.structure.Structure;
import tubwright.engine.structure.Tub;
import tubwright.numerics.DirectSolver;

/** Plans a torsion test on the model. */
public final class TestPlanner {
    /** Reserve factor that must be left at the greatest torque of a test: common practice, no source. */
    public static final double MARGIN = 2;

    /**
     * A rig this many times as stiff as the tub, itself known to a tenth, adds half a per cent to the stiffness's
     * uncertainty once it is taken out in series: u = (K/K_rig) · 10 %.
     */
    public static final double RIG = 20;

    /** The part of the uncertainty that gauges may make, as a share: no use in loading further. */
    private static final double GAUGES = 1e-3;

    /** Distance between the places a gauge pair may stand, m. */
    private static final double GRID = 0.05;

    private final Tub tub;
    private final Case.Torsion loading;
    private final double meshSize;
    private final DirectSolver solver;
    private final BooleanSupplier cancelled;
    private final Mesh mesh;

    /**
     * @param tub as designed
     * @param loading the case that stands for the test
     * @param meshSize m
     * @param solver backend
     * @param cancelled asked before each solution
     */
    public TestPlanner(Tub tub, Case.Torsion loading, double meshSize, DirectSolver solver, BooleanSupplier cancelled) {
        this.tub = tub;
        this.loading = loading;
        this.meshSize = meshSize;
        this.solver = solver;
        this.cancelled = cancelled;
        this.mesh = Study.mesh(tub, meshSize);
    }

    /** Plans with these means. */
    public TestPlan plan(Means means) {
        double held = mean(loading.hold().stream().map(Case.Support::hardpoint).toList());
        double loaded = mean(loading.loaded());
        double[] places = places(loaded, held);
        List<Doubt> doubts = new ArrayList<>(Doubts.of(tub, loading));
        doubts.add(Doubt.of(
                Doubt.Kind.TORQUE_SCALE, Math.hypot(means.scaleUncertainty(), means.armUncertainty() / means.arm())));
        TubTwistModel model = new TubTwistModel(
                tub, loading, doubts, places, OptionalDouble.of(held), meshSize, meshSize, solver, cancelled);
        int n = doubts.size();
        double[] nothing = new double[n];
        double[] angles = model.read(nothing);
        double stiffness = model.stiffness(nothing);
        double[][] derivative = model.derivative(nothing);
        double[] slope = model.slope(nothing);
        Structure structure = Structure.of(tub, mesh);
        Solution solution = StaticSolver.solve(structure, List.of(loading), solver, new StepTimes())
                .getFirst();
        Laminate[] laminates = mesh.regions().stream().map(tub::laminate).toArray(Laminate[]::new);
        ReserveTable reserves = Reserves.of(structure, laminates, List.of(solution), StrengthBasis.USUAL);
        Optional<Reserve> weakest = reserves.rows().stream().findFirst();
        double safe = weakest.map(r -> r.value() * Math.abs(loading.couple()) / MARGIN)
                .orElse(Double.NaN);
        int front = 0;
        double endSpacing = Math.min(spacing(places[front], means), spacing(held, means));
        Means settled =
                means.greatestTorque().isPresent() ? means : means.upTo(proposed(means, stiffness, endSpacing, safe));
        double torque = settled.greatestTorque().orElseThrow();
        double[] deviations = new double[places.length];
        for (int k = 0; k < places.length; k++) {
            double reading = Math.hypot(
                            settled.angleDeviation(spacing(places[k], settled)),
                            settled.angleDeviation(spacing(held, settled)))
                    / settled.torqueLength(torque);
            double place =
                    Math.abs(angles[k]) * Math.sqrt(2) * settled.placeUncertainty() / spacing(places[k], settled);
            deviations[k] = Math.hypot(reading, place);
        }
        double[] spreads = doubts.stream().mapToDouble(Doubt::spread).toArray();
        // Pairs closer than this read the same and are in each other's way.
        double apart = Math.abs(held - places[front]) / (settled.pairs() + 2);
        GaugeChoice choice = new GaugeChoice(
                derivative, deviations, spreads, slope, (a, b) -> Math.abs(places[a] - places[b]) >= apart);
        List<GaugePair> pairs = new ArrayList<>();
        pairs.add(new GaugePair(
                held,
                spacing(held, settled),
                middle(held),
                0,
                settled.angleDeviation(spacing(held, settled)) / settled.torqueLength(torque),
                0,
                spread(slope, spreads),
                "held end: what the rig gives is read here and subtracted"));
        for (GaugeChoice.Chosen chosen : choice.choose(List.of(front), settled.pairs() - 1)) {
            int k = chosen.place();
            pairs.add(new GaugePair(
                    places[k],
                    spacing(places[k], settled),
                    middle(places[k]),
                    angles[k] * torque,
                    deviations[k],
                    chosen.gain(),
                    chosen.spread(),
                    k == front ? "loaded end: gives the stiffness" : "tells most beside those before it"));
        }
        double[] left = choice.left();
        for (int d = 0; d < n; d++) {
            left[d] /= spreads[d];
        }
        return new TestPlan(
                tub.name(),
                loading,
                settled,
                held,
                loaded,
                weakest,
                reserves.notChecked().stream().map(Object::toString).toList(),
                safe,
                restraint(stiffness),
                stiffness,
                pairs,
                doubts,
                left,
                budget(settled, stiffness, endSpacing, torque),
                RIG * stiffness,
                outline());
    }

    /** Uncertainty of the stiffness that the means will give, put together as the reduction of readings does it. */
    static Uncertainty budget(Means means, double stiffness, double spacing, double torque) {
        int freedom = Math.max(1, means.readings() - 1 - means.cycles());
        double angle = Math.sqrt(2) * means.angleDeviation(spacing);
        double slope = angle * stiffness / means.torqueLength(torque);
        double resolution = means.resolution() * means.resolution() / 12;
        double share = resolution / (resolution + means.repeat() * means.repeat());
        List<Contribution> parts = new ArrayList<>();
        parts.add(Contribution.known("scale of the load", stiffness * means.scaleUncertainty()));
        parts.add(Contribution.known("arm", stiffness * means.armUncertainty() / means.arm()));
        // Both pairs turn with the rig, whose give is that of a rig just stiff enough: each is wrong by its own
        // turning.
        double turning = Math.hypot(1 + 1 / RIG, 1 / RIG);
        parts.add(Contribution.known(
                "gauge spacing", stiffness * turning * Math.sqrt(2) * means.placeUncertainty() / spacing));
        parts.add(Contribution.known("gauge resolution", stiffness * slope * Math.sqrt(share)));
        parts.add(new Contribution("scatter of readings", stiffness * slope * Math.sqrt(1 - share), freedom));
        if (means.cycles() > 1) {
            parts.add(new Contribution(
                    "repeat of cycles",
                    stiffness * means.cycleScatter() / Math.sqrt(means.cycles()),
                    means.cycles() - 1.0));
        } else {
            parts.add(Contribution.known("repeat of cycles", stiffness * means.cycleScatter()));
        }
        return new Uncertainty(parts);
    }

    /** A round torque, safe, and no greater than gauges need. */
    private static double proposed(Means means, double stiffness, double spacing, double safe) {
        double angle = Math.sqrt(2) * means.angleDeviation(spacing);
        double enough = angle * stiffness / (GAUGES * means.torqueLength(1));
        double most = Double.isNaN(safe) ? enough : Math.min(enough, safe);
        double ten = Math.pow(10, Math.floor(Math.log10(most)));
        for (double round : new double[] {8, 6, 5, 4, 3, 2.5, 2, 1.5, 1.2, 1}) {
            if (round * ten <= most * (1 + 1e-9)) {
                return round * ten;
            }
        }
        return ten;
    }

    private Restraint restraint(double stiffness) {
        record Held(String hardpoint, int direction) {}
        List<Held> held = new ArrayList<>();
        List<double[]> rows = new ArrayList<>();
        double[] centre = new double[3];
        for (Case.Support support : loading.hold()) {
            double[] p = position(support.hardpoint());
            for (int d = 0; d < 3; d++) {
                centre[d] += p[d] / loading.hold().size();
            }
        }
        int count = 0;
        for (Case.Support support : loading.hold()) {
            for (int d = 0; d < 6; d++) {
                if (support.directions()[d]) {
                    count++;
                }
                if (d < 3 && support.directions()[d]) {
                    held.add(new Held(support.hardpoint(), d));
                    double[] row = Restraint.row(position(support.hardpoint()), d, centre);
                    // Rotations in units of a quarter of a metre of arm, so that they weigh like translations.
                    for (int r = 3; r < 6; r++) {
                        row[r] /= 0.25;
                    }
                    rows.add(row);
                }
            }
        }
        List<Integer> six = Restraint.six(rows);
        if (six.size() < 6 || count <= 6) {
            return new Restraint(count, stiffness, List.of(), count <= 6 ? stiffness : Double.NaN);
        }
        List<Case.Support> least = new ArrayList<>();
        List<String> words = new ArrayList<>();
        for (Case.Support support : loading.hold()) {
            boolean[] directions = new boolean[6];
            List<String> names = new ArrayList<>();
            for (int i : six.stream().sorted().toList()) {
                if (held.get(i).hardpoint.equals(support.hardpoint())) {
                    directions[held.get(i).direction] = true;
                    names.add("xyz".substring(held.get(i).direction, held.get(i).direction + 1));
                }
            }
            if (!names.isEmpty()) {
                least.add(new Case.Support(support.hardpoint(), directions));
                words.add(support.hardpoint() + ": " + String.join(", ", names));
            }
        }
        Case.Torsion just = new Case.Torsion(
                loading.name(),
                least,
                loading.loaded(),
                loading.couple(),
                loading.frontStation(),
                loading.rearStation());
        TubTwistModel model = new TubTwistModel(
                tub, just, List.of(), new double[0], OptionalDouble.empty(), meshSize, meshSize, solver, cancelled);
        return new Restraint(count, stiffness, words, model.stiffness(new double[0]));
    }

    /** Places for gauges: the loaded end first, then evenly on towards the held end and beyond the load. */
    private double[] places(double loaded, double held) {
        double[] extent = extent();
        double towards = Math.signum(held - loaded);
        int count = (int) Math.floor(Math.abs(held - loaded) / GRID - 0.5);
        List<Double> places = new ArrayList<>(List.of(Math.clamp(loaded, extent[0], extent[1])));
        for (int i = 1; i <= count; i++) {
            places.add(Math.round((loaded + towards * GRID * i) * 100) / 100.0);
        }
        return places.stream().mapToDouble(Double::doubleValue).toArray();
    }

    private List<double[]> outline() {
        double window = Math.max(meshSize, GRID);
        double[] extent = extent();
        int count = Math.max(2, (int) Math.ceil((extent[1] - extent[0]) / window));
        double[][] rows = new double[count + 1][];
        for (int i = 0; i <= count; i++) {
            rows[i] = new double[] {
                extent[0] + (extent[1] - extent[0]) * i / count, Double.POSITIVE_INFINITY, Double.NEGATIVE_INFINITY, 0
            };
        }
        skinNodes().forEach(n -> {
            for (double[] row : rows) {
                if (Math.abs(mesh.nodes()[3 * n] - row[0]) <= 0.75 * window) {
                    row[1] = Math.min(row[1], mesh.nodes()[3 * n + 2]);
                    row[2] = Math.max(row[2], mesh.nodes()[3 * n + 2]);
                    row[3] = Math.max(row[3], Math.abs(mesh.nodes()[3 * n + 1]));
                }
            }
        });
        return java.util.Arrays.stream(rows).filter(r -> Double.isFinite(r[1])).toList();
    }

    private double[] extent() {
        double[] extent = {Double.POSITIVE_INFINITY, Double.NEGATIVE_INFINITY};
        skinNodes().forEach(n -> {
            extent[0] = Math.min(extent[0], mesh.nodes()[3 * n]);
            extent[1] = Math.max(extent[1], mesh.nodes()[3 * n]);
        });
        return extent;
    }

    private IntStream skinNodes() {
        return IntStream.range(0, mesh.elementCount())
                .filter(e -> mesh.region(e).surface() == Region.Surface.SKIN)
                .flatMap(e -> IntStream.range(0, mesh.cornerCount(e)).map(c -> mesh.elementNodes()[4 * e + c]))
                .distinct();
    }

    private double spacing(double station, Means means) {
        double half = skinNodes()
                .filter(n -> Math.abs(mesh.nodes()[3 * n] - station) < Math.max(meshSize, GRID))
                .mapToDouble(n -> Math.abs(mesh.nodes()[3 * n + 1]))
                .max()
                .orElse(0.2);
        return Math.round(2 * (half + means.overhang()) * 100) / 100.0;
    }

    private double middle(double station) {
        double[] z = skinNodes()
                .filter(n -> Math.abs(mesh.nodes()[3 * n] - station) < Math.max(meshSize, GRID))
                .mapToDouble(n -> mesh.nodes()[3 * n + 2])
                .sorted()
                .toArray();
        return z.length == 0 ? 0 : (z[0] + z[z.length - 1]) / 2;
    }

    private double[] position(String hardpoint) {
        return tub.hardpoints().stream()
                .filter(h -> h.name().equals(hardpoint))
                .map(Hardpoint::position)
                .findFirst()
                .orElseThrow();
    }

    private double mean(List<String> hardpoints) {
        return hardpoints.stream()
                .distinct()
                .mapToDouble(name -> position(name)[0])
                .average()
                .orElseThrow();
    }

    private static double spread(double[] slope, double[] spreads) {
        double sum = 0;
        for (int i = 0; i < slope.length; i++) {
            sum += slope[i] * slope[i] * spreads[i] * spreads[i];
        }
        return Math.sqrt(sum);
    }
}
