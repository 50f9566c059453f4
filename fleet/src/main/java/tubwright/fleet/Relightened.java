// SPDX-License-Identifier: Apache-2.0
package tubwright.fleet;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.TreeMap;
import java.util.concurrent.CancellationException;
import java.util.function.BooleanSupplier;
import tubwright.engine.design.Design;
import tubwright.engine.laminate.Laminate;
import tubwright.engine.laminate.Layer;
import tubwright.engine.material.Metal;
import tubwright.engine.material.Ply;
import tubwright.engine.mesh.Mesh;
import tubwright.engine.structure.Case;
import tubwright.engine.structure.Structure;
import tubwright.engine.structure.Tub;
import tubwright.engine.trim.Borders;
import tubwright.engine.trim.Layup;
import tubwright.engine.trim.LayupRules;
import tubwright.engine.trim.Lighten;
import tubwright.engine.trim.LightenProblem;
import tubwright.engine.trim.Lightened;
import tubwright.engine.trim.LoadedTub;
import tubwright.engine.trim.OutOfReach;
import tubwright.engine.trim.Site;
import tubwright.engine.trim.Sites;
import tubwright.numerics.solver.Solvers;

/**
 * A design whose layup is made anew for a torsional stiffness or a mass: plies taken out and laid in by the design's layup
 * rules, one of each kind more a skin at least; in a tub of sheet metal all gauges by one factor. Every search begins
 * afresh and is limited by solutions, never by time, so that it comes to the same wherever it runs.
 */
final class Relightened {
    /** Short searches: a study asks for many, and what it shows are differences. */
    private static final Lighten.Budget BUDGET = new Lighten.Budget(10, 200, Double.POSITIVE_INFINITY, 0.01);

    /** Searches for the stiffness a mass can buy. */
    private static final int TRIES = 4;

    /** A first guess: stiffness goes with this power of the mass, what is not laid up counted in. */
    private static final double POWER = 1.6;

    /** Solutions for the gauge of a stiffness. */
    private static final int MOST_GAUGES = 12;

    private static final double GAUGE_TOLERANCE = 1e-6;

    /** What sums of masses are good to. */
    private static final double ROUNDING = 1e-9;

    /** A layup with what it comes to. */
    private record Made(Layup layup, double mass, double bound, double stiffness) {}

    private final Tub tub;
    private final LayupRules rules;
    private final Mesh mesh;
    private final BooleanSupplier stop;
    private final Case.Torsion torsion;
    private final Map<Double, Made> byStiffness = new LinkedHashMap<>();

    Relightened(Design.Variant variant, Mesh mesh, BooleanSupplier stop) {
        tub = variant.tub();
        this.mesh = mesh;
        this.stop = stop;
        rules = variant.layupRules().withAdded(Math.max(1, variant.layupRules().mostAdded()));
        torsion = tub.cases().stream()
                .filter(Case.Torsion.class::isInstance)
                .map(Case.Torsion.class::cast)
                .findFirst()
                .orElseThrow(() ->
                        new FleetException("there is no torsion case to lighten for", "write one under \"cases:\""));
    }

    double value(Reading reading) {
        double at = reading.at().orElseThrow();
        return switch (reading.kind()) {
            case LIGHTEST -> lightest(at).mass;
            case LIGHTEST_BOUND -> lightest(at).bound;
            case LIGHTEST_PLIES -> Measured.plies(lightest(at).layup, tub.laminates());
            case LIGHTEST_LAID -> Measured.laid(lightest(at).layup, tubwright.engine.trim.Blocks.of(mesh));
            case STIFFEST -> stiffest(at).stiffness;
            default -> throw new IllegalArgumentException(reading.text());
        };
    }

    private boolean sheet() {
        return tub.laminates().values().stream()
                .flatMap(l -> l.layers().stream())
                .noneMatch(l -> l.material() instanceof Ply);
    }

    /** Lightest with a stiffness between skin sections, N·m/rad. */
    private Made lightest(double stiffness) {
        Made known = byStiffness.get(stiffness);
        if (known == null) {
            known = sheet() ? gauge(stiffness) : search(stiffness);
            byStiffness.put(stiffness, known);
        }
        return known;
    }

    private Made search(double stiffness) {
        try (LoadedTub loaded = solve(Layup.of(tub))) {
            return search(problem(loaded), stiffness);
        }
    }

    private LoadedTub solve(Layup layup) {
        if (stop.getAsBoolean()) {
            throw new CancellationException("stopped");
        }
        Tub with = tub.with(layup.zones(), layup.patches(), tub.joints(), tub.hardpoints());
        return LoadedTub.solve(Structure.of(with, mesh), torsion, layup, Solvers.best());
    }

    private LightenProblem problem(LoadedTub loaded) {
        List<Site> sites = Sites.of(loaded, rules);
        return LightenProblem.of(List.of(loaded), sites, Borders.of(mesh).neighbours(sites, rules));
    }

    private Made search(LightenProblem problem, double stiffness) {
        LoadedTub loaded = problem.tubs().getFirst();
        // What lies between the skin sections and the hardpoints is taken as it is.
        double around = 1 / loaded.stiffness(loaded.compliance()) - 1 / loaded.sectionStiffness();
        Lighten.Target target = new Lighten.Target(loaded, 1 / (1 / stiffness + around));
        Lightened found;
        try {
            found = Lighten.run(problem, List.of(target), BUDGET, new Lighten.Listener() {
                @Override
                public boolean stop() {
                    return stop.getAsBoolean();
                }
            });
        } catch (OutOfReach beyond) {
            throw new FleetException(
                    String.format(
                            Locale.ROOT,
                            "no layup found has %.2f kN·m/deg: %s",
                            stiffness * Math.PI / 180e3,
                            beyond.getMessage()),
                    "allow more plies (\"layup rules:\", \"most added\")");
        }
        if (stop.getAsBoolean()) {
            throw new CancellationException("stopped");
        }
        double reached = 1 / (1 / found.stiffness().getFirst().low() - around);
        return new Made(found.layup(), found.mass(), found.bound(), reached);
    }

    /** Stiffest that weighs no more, kg, by searching for the stiffness whose lightest layup weighs just that. */
    private Made stiffest(double mass) {
        if (sheet()) {
            return ofMass(mass);
        }
        try (LoadedTub loaded = solve(Layup.of(tub))) {
            TreeMap<Double, Double> masses = new TreeMap<>();
            // Kept for all tries: what one has solved serves the next.
            LightenProblem problem = problem(loaded);
            double target = loaded.sectionStiffness() * Math.pow(mass / loaded.mass(loaded.nominal()), POWER);
            List<Made> fitting = new ArrayList<>();
            double heavy = Double.POSITIVE_INFINITY;
            for (int i = 0; i < TRIES; i++) {
                try {
                    Made made = search(problem, target);
                    masses.put(target, made.mass);
                    if (made.mass <= mass * (1 + ROUNDING)) {
                        fitting.add(made);
                    } else {
                        heavy = Math.min(heavy, target);
                    }
                } catch (FleetException beyond) {
                    heavy = Math.min(heavy, target);
                }
                double light =
                        fitting.stream().mapToDouble(Made::stiffness).max().orElse(0);
                target = next(masses, mass, light, heavy, target);
            }
            return fitting.stream()
                    .max(java.util.Comparator.comparingDouble(Made::stiffness))
                    .orElseThrow(() -> new FleetException(
                            String.format(Locale.ROOT, "no layup of %.2f kg or less was found", mass),
                            "ask for a mass nearer to that of the design"));
        }
    }

    /** Between what fits and what is too heavy; where one of the two is not known yet, on by the ratio of the masses. */
    private static double next(TreeMap<Double, Double> masses, double mass, double light, double heavy, double last) {
        if (light > 0 && heavy < Double.POSITIVE_INFINITY) {
            return 0.5 * (light + heavy);
        }
        double ratio = masses.containsKey(last) ? mass / masses.get(last) : 0.9;
        return light > 0 ? light * Math.max(1.02, ratio * ratio) : last * Math.min(0.97, ratio * ratio);
    }

    private Layup gauged(double factor) {
        Map<String, Laminate> zones = new TreeMap<>();
        tub.laminates()
                .forEach((zone, laminate) -> zones.put(
                        zone,
                        new Laminate(
                                laminate.layers().stream()
                                        .map(l -> l.material() instanceof Metal
                                                ? new Layer(l.material(), l.thickness() * factor, l.angle(), l.role())
                                                : l)
                                        .toList(),
                                laminate.reference())));
        return new Layup(zones, tub.patchPlies(), Map.of());
    }

    private Made made(double factor) {
        Layup layup = gauged(factor);
        try (LoadedTub loaded = solve(layup)) {
            double mass = loaded.mass(layup);
            return new Made(layup, mass, mass, loaded.sectionStiffness());
        }
    }

    /** Secant steps in logarithms: stiffness is nearly a power of the gauge. */
    private Made gauge(double stiffness) {
        double last = 0;
        Made was = made(1);
        double now = Math.log(stiffness / was.stiffness);
        for (int i = 0; i < MOST_GAUGES; i++) {
            Made is = made(Math.exp(now));
            double missed = Math.log(stiffness / is.stiffness);
            if (Math.abs(missed) < GAUGE_TOLERANCE) {
                return is;
            }
            double slope = Math.log(is.stiffness / was.stiffness) / (now - last);
            if (!(slope > 0.01) || Math.abs(now) > 3) {
                break;
            }
            last = now;
            was = is;
            now += missed / slope;
        }
        throw new FleetException(
                String.format(Locale.ROOT, "no gauge found gives %.2f kN·m/deg", stiffness * Math.PI / 180e3),
                "ask for a stiffness nearer to that of the design");
    }

    /** Mass is linear in the gauge. */
    private Made ofMass(double mass) {
        Made one = made(1);
        double slope = made(2).mass - one.mass;
        double factor = 1 + (mass - one.mass) / slope;
        if (!(factor > 0.05)) {
            throw new FleetException(
                    String.format(Locale.ROOT, "%.2f kg is less than what is no sheet weighs", mass),
                    "ask for a mass nearer to that of the design");
        }
        return made(factor);
    }
}
