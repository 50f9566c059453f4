// SPDX-License-Identifier: Apache-2.0
package tubwright.engine.joint;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import tubwright.engine.material.Metal;
import tubwright.engine.material.Property;
import tubwright.engine.strength.Check;

/**
 * What a bar of metal bears: tube, angle or flat, on its own between two points or held along its length by sheet.
 *
 * <p>Yield by σ = P/A + M c/I of both bendings at once and τ = T/Wt, von Mises; a bar on its own that is pressed has its
 * bending grown by 1/(1 − P/Pe), Pe = π² E I/L² (ends free to turn, which is to the safe side), and is looked at as a column:
 * Pe, or below the slenderness π √(2 E/σy) the parabola σy [1 − σy (L/ρ)²/(4 π² E)] (J. B. Johnson 1893, as in MIL-HDBK-5,
 * from memory).
 *
 * @param metal what it is made of
 * @param area A, m²
 * @param inertias I across (out of the surface it lies on) and in (within it), m⁴
 * @param reaches c, distance of the outermost fibre from the centroid likewise, m
 * @param torsionModulus Wt, torque over largest shear stress, m³
 * @param wall thickness of its leg or wall, m
 */
public record BarStrength(
        Metal metal, double area, double[] inertias, double[] reaches, double torsionModulus, double wall) {

    /** What is left of a bar's bending stiffness when it counts as none. */
    private static final double NEVER = 1e-6;

    /**
     * Forces in a bar.
     *
     * @param tension N, compression negative
     * @param across largest bending moment of that kind, N·m, without sign
     * @param in likewise
     * @param torque N·m, without sign
     */
    public record Load(double tension, double across, double in, double torque) {}

    /**
     * Everything that can be said of it.
     *
     * @param length between the points that hold it, m; empty where it is held along its length
     */
    public List<Check> checks(Load load, Optional<Double> length) {
        Optional<Double> tensile = strength(Property.TENSILE_YIELD);
        Optional<Double> compressive = strength(Property.COMPRESSIVE_YIELD).or(() -> tensile);
        List<Check> checks = new ArrayList<>();
        if (tensile.isEmpty()) {
            checks.add(new Check.NotChecked("yield of bars and tubes", List.of(needs(Property.TENSILE_YIELD))));
        } else {
            double allowable = Math.min(tensile.get(), compressive.get());
            double factor = LoadFactor.of(f -> equivalent(load, f, length) / allowable);
            checks.add(new Check.Reserve(
                    "yield of the bar",
                    factor,
                    equivalent(load, 1, length),
                    allowable,
                    "P/A + M c/I and T/Wt, von Mises"
                            + (length.isPresent() ? ", bending grown by thrust; " : "; ")
                            + "as drawn, no weld and no hole"));
        }
        if (length.isPresent() && load.tension() < 0) {
            double column = columnStress(length.get(), compressive);
            checks.add(Check.proportional(
                    "the bar as a column",
                    -load.tension() / area,
                    column,
                    "Euler, or Johnson's parabola where stocky; ends free to turn"));
        }
        return checks;
    }

    private Optional<Double> strength(Property property) {
        return metal.properties().find(property).map(v -> v.si());
    }

    private String needs(Property property) {
        return property.key() + " of " + metal.name() + " (" + property.meaning() + ")";
    }

    /** Von Mises stress under a multiple of the load, Pa; infinite from the Euler load on. */
    private double equivalent(Load load, double factor, Optional<Double> length) {
        double direct = Math.abs(load.tension()) / area;
        double[] moments = {load.across(), load.in()};
        for (int i = 0; i < 2; i++) {
            double grown = 1;
            if (length.isPresent() && load.tension() < 0) {
                double left = 1 + factor * load.tension() / euler(length.get(), inertias[i]);
                grown = 1 / Math.max(left, NEVER);
            }
            direct += moments[i] * reaches[i] / inertias[i] * grown;
        }
        double shear = load.torque() / torsionModulus;
        return factor * Math.sqrt(direct * direct + 3 * shear * shear);
    }

    private double euler(double length, double inertia) {
        return Math.PI * Math.PI * metal.youngsModulus() * inertia / (length * length);
    }

    /** Stress at which it gives way as a column with ends free to turn, Pa. */
    double columnStress(double length, Optional<Double> yield) {
        double euler = euler(length, Math.min(inertias[0], inertias[1])) / area;
        // The parabola touches Euler's curve at half the yield stress.
        return yield.filter(y -> euler > y / 2)
                .map(y -> y * (1 - y / (4 * euler)))
                .orElse(euler);
    }

    /**
     * Whether the folds of buckled sheet cripple its leg (NACA TN 2661: stress from the folds against C k^⅔ (tU/t)^⅓).
     *
     * @param panel the sheet it is riveted to
     * @param shearStress mean shear stress of that, Pa
     */
    public Check crippling(ShearPanel panel, double shearStress) {
        String mode = "crippling of the bar by folds of the sheet";
        Optional<Double> constant = strength(Property.FORCED_CRIPPLING);
        if (constant.isEmpty()) {
            return new Check.NotChecked(mode, List.of(needs(Property.FORCED_CRIPPLING)));
        }
        double factor = LoadFactor.of(f -> share(panel, f * shearStress, constant.get()));
        DiagonalTension now = panel.under(shearStress);
        return new Check.Reserve(
                mode,
                factor,
                Math.abs(now.flangeStress()),
                now.forcedCripplingStress(wall, constant.get()),
                "stress from the folds against C k^(2/3) (tU/t)^(1/3), as for a stringer; NACA TN 2661, C from memory");
    }

    private double share(ShearPanel panel, double shearStress, double constant) {
        DiagonalTension state = panel.under(shearStress);
        return state.factor() > 0
                ? Math.abs(state.flangeStress()) / state.forcedCripplingStress(wall, constant)
                : shearStress == 0 ? 0 : Double.MIN_NORMAL;
    }
}
