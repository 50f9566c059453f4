// SPDX-License-Identifier: Apache-2.0
package tubwright.engine.strength.sandwich;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import tubwright.engine.material.Core;
import tubwright.engine.material.Property;
import tubwright.engine.strength.Check;
import tubwright.engine.strength.KnockDown;

/**
 * All checks of a sandwich that need no more than its laminate and its load. Cure stresses of the faces are left out.
 *
 * <p>Each face is taken at its largest principal compression, in that direction; the core's shear modulus and strength
 * follow the ribbon.
 */
public final class SandwichChecks {
    private final Sandwich sandwich;
    private final PanelLoad load;
    private final KnockDown knockDown;
    private final double[] strains;
    private final double[] outerForce;
    private final double[] innerForce;
    private final List<Check> checks = new ArrayList<>();

    private SandwichChecks(Sandwich sandwich, PanelLoad load, KnockDown knockDown) {
        this.sandwich = sandwich;
        this.load = load;
        this.knockDown = knockDown;
        strains = sandwich.strains(load.resultants());
        outerForce = sandwich.faceForce(true, strains);
        innerForce = sandwich.faceForce(false, strains);
    }

    /** Every check, made or not made. */
    public static List<Check> of(Sandwich sandwich, PanelLoad load, KnockDown knockDown) {
        SandwichChecks all = new SandwichChecks(sandwich, load, knockDown);
        for (boolean outside : new boolean[] {true, false}) {
            Principal stress = Principal.of(all.faceStress(outside));
            all.wrinkling(outside, stress);
            all.dimpling(outside, stress);
        }
        all.crimping();
        all.coreShear();
        all.corePressure();
        return List.copyOf(all.checks);
    }

    /** Mean membrane stress of a face (x, y, xy), Pa. */
    private double[] faceStress(boolean outside) {
        double[] force = outside ? outerForce : innerForce;
        double t = sandwich.face(outside).thickness();
        return new double[] {force[0] / t, force[1] / t, force[2] / t};
    }

    private void wrinkling(boolean outside, Principal stress) {
        String mode = "wrinkling of the " + side(outside) + " face";
        Core core = sandwich.core();
        if (!core.properties().has(Property.E3)) {
            checks.add(missing(mode, Property.E3));
            return;
        }
        double ec = core.properties().require(Property.E3);
        Face face = sandwich.face(outside);
        double ef = face.flexuralModulus(stress.direction());
        double tf = face.thickness();
        double tc = sandwich.coreThickness();
        double biaxial = Wrinkling.biaxialFactor(stress.biaxiality());
        double design;
        double theory;
        String basis;
        if (core.form() == Core.Form.HONEYCOMB) {
            design = Wrinkling.onHoneycomb(Wrinkling.DESIGN_HONEYCOMB, ef, tf, ec, tc);
            theory = Wrinkling.onHoneycomb(Wrinkling.THEORY_HONEYCOMB, ef, tf, ec, tc);
            basis = "k Ef sqrt(Ec tf/(Ef tc)), design k = 0.33, theory 0.82; NASA CR-1457";
        } else {
            double gc = sandwich.coreShearModulus(stress.direction());
            design = Wrinkling.onIsotropicCore(Wrinkling.DESIGN_ISOTROPIC, ef, ec, gc);
            theory = Wrinkling.onIsotropicCore(Wrinkling.THEORY_ISOTROPIC, ef, ec, gc);
            double limit = Wrinkling.thickCoreLimit(tf, ef, ec, gc);
            basis = "Q (Ef Ec Gc)^(1/3), design Q = 0.50, theory 0.91; Hoff and Mautner 1945"
                    + (tc < limit
                            ? String.format(
                                    Locale.ROOT,
                                    "; core thinner than %.1f mm, where the formula is meant",
                                    1000 * limit)
                            : "");
        }
        checks.add(Check.proportional(mode + ", design value", stress.compression(), design * biaxial, basis));
        checks.add(Check.proportional(mode + ", theory", stress.compression(), theory * biaxial, basis));
    }

    private void dimpling(boolean outside, Principal stress) {
        Core core = sandwich.core();
        if (core.form() != Core.Form.HONEYCOMB) {
            return;
        }
        String mode = "dimpling of the " + side(outside) + " face";
        if (!core.properties().has(Property.CELL_SIZE)) {
            checks.add(missing(mode, Property.CELL_SIZE));
            return;
        }
        Face face = sandwich.face(outside);
        double allowable = Dimpling.stress(
                face.bending(stress.direction()),
                face.thickness(),
                core.properties().require(Property.CELL_SIZE));
        checks.add(Check.proportional(
                mode, stress.compression(), allowable, "orthotropic plate over a cell x 0.6; NASA CR-1457"));
    }

    private void crimping() {
        double[] n = load.resultants();
        Principal force = Principal.of(new double[] {n[0], n[1], n[2]});
        double g = sandwich.coreShearModulus(force.direction());
        checks.add(Check.proportional(
                "shear crimping",
                force.compression(),
                ShearCrimping.compression(g, sandwich.distance(), sandwich.coreThickness()),
                "G d^2/tc in the direction of the compression; NASA CR-1457"));
    }

    private void coreShear() {
        String mode = "shear of the core";
        Core core = sandwich.core();
        List<String> needs = new ArrayList<>();
        for (Property property : List.of(Property.S13, Property.S23)) {
            if (!core.properties().has(property)) {
                needs.add(need(property));
            }
        }
        if (!needs.isEmpty()) {
            checks.add(new Check.NotChecked(mode, needs));
            return;
        }
        double c = Math.cos(sandwich.ribbon());
        double s = Math.sin(sandwich.ribbon());
        double[] q = load.shear();
        double along = (c * q[0] + s * q[1]) / sandwich.distance();
        double across = (c * q[1] - s * q[0]) / sandwich.distance();
        double l = along / (core.properties().require(Property.S13) * knockDown.factor(Property.S13));
        double w = across / (core.properties().require(Property.S23) * knockDown.factor(Property.S23));
        checks.add(Check.proportional(
                mode,
                Math.hypot(l, w),
                1,
                "V/d against the strengths along and across the ribbon, squares added; tabulated strengths hold near"
                        + " 12.7 mm thickness, thicker cores have less"));
    }

    private void corePressure() {
        // The outer face presses inward with N·κ, the inner one outward; bending adds to the curvature as the load
        // grows.
        double[] bend = {strains[3], strains[4], strains[5]};
        double largest = 0;
        double least = 0;
        double crushing = Double.POSITIVE_INFINITY;
        double opening = Double.POSITIVE_INFINITY;
        var table = sandwich.core().properties();
        double zc = table.si(Property.ZC).orElse(Double.NaN) * knockDown.factor(Property.ZC);
        double zt = table.si(Property.ZT).orElse(Double.NaN) * knockDown.factor(Property.ZT);
        for (int sign : new int[] {1, -1}) {
            double[] force = sign > 0 ? outerForce : innerForce;
            double linear = sign * product(force, load.initialCurvature());
            double quadratic = sign * product(force, bend);
            largest = Math.max(largest, linear + quadratic);
            least = Math.min(least, linear + quadratic);
            crushing = Math.min(crushing, factor(quadratic, linear, zc));
            opening = Math.min(opening, factor(-quadratic, -linear, zt));
        }
        String basis = "face force x curvature, that of bending included";
        checks.add(
                table.has(Property.ZC)
                        ? new Check.Reserve("crushing of the core by curvature", crushing, largest, zc, basis)
                        : missing("crushing of the core by curvature", Property.ZC));
        checks.add(
                table.has(Property.ZT)
                        ? new Check.Reserve("flatwise tension by curvature", opening, -least, zt, basis)
                        : missing("flatwise tension by curvature", Property.ZT));
    }

    private static double product(double[] force, double[] curvature) {
        return force[0] * curvature[0] + force[1] * curvature[1] + force[2] * curvature[2];
    }

    /** Smallest positive λ with a λ² + b λ = limit; infinite if there is none or the limit is not known. */
    private static double factor(double a, double b, double limit) {
        double discriminant = b * b + 4 * a * limit;
        if (!(discriminant >= 0)) {
            return Double.POSITIVE_INFINITY;
        }
        double denominator = b + Math.sqrt(discriminant);
        return denominator > 0 ? 2 * limit / denominator : Double.POSITIVE_INFINITY;
    }

    private static String side(boolean outside) {
        return outside ? "outer" : "inner";
    }

    private Check missing(String mode, Property property) {
        return new Check.NotChecked(mode, List.of(need(property)));
    }

    private String need(Property property) {
        return property.key() + " of " + sandwich.core().name() + " (" + property.meaning() + ")";
    }
}
