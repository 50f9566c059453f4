// SPDX-License-Identifier: Apache-2.0
package tubwright.engine.joint;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.function.DoubleUnaryOperator;
import tubwright.engine.material.Adhesive;
import tubwright.engine.material.Ply;
import tubwright.engine.material.Property;
import tubwright.engine.strength.Check;
import tubwright.engine.strength.KnockDown;

/**
 * Reserves of a bond line. Stresses do not quite grow with the load (a lap straightens), so the load itself is scaled.
 *
 * <p>Elastic checks allow no stress above the adhesive's strength; they hold for loads that come again and again. A
 * ductile adhesive carries more once: a check of its own.
 */
public final class BondChecks {
    private static final String LAP =
            "Goland and Reissner 1944, moment factor Hart-Smith 1973, Volkersen 1938; along the line with G t";

    private final JointDetail.Bond bond;
    private final BondLine line;
    private final Sheet one;
    private final Sheet two;
    private final KnockDown knockDown;
    private final LineLoad load;
    private final List<Check> checks = new ArrayList<>();

    private BondChecks(JointDetail.Bond bond, Sheet one, Sheet two, KnockDown knockDown, LineLoad load) {
        this.bond = bond;
        Adhesive adhesive = bond.adhesive();
        line = new BondLine(
                bond.thickness(), adhesive.shearModulus(), adhesive.properties().require(Property.E1));
        this.one = one;
        this.two = two;
        this.knockDown = knockDown;
        this.load = load;
    }

    /**
     * Everything that can be said of a bond line at one place.
     *
     * @param one the sheet that ends in it (in a tee the wall)
     * @param two the sheet it is joined onto
     * @param knockDown of the adhesive
     */
    public static List<Check> of(JointDetail.Bond bond, Sheet one, Sheet two, LineLoad load, KnockDown knockDown) {
        BondChecks all = new BondChecks(bond, one, two, knockDown, load);
        switch (bond.lie()) {
            case SINGLE_LAP -> all.lap(one, two, load);
            case DOUBLE_LAP -> all.doubleLap();
            case TEE -> all.tee();
        }
        return List.copyOf(all.checks);
    }

    /** Shear and peel at the ends of a lap of two like sheets pulled across. */
    public static List<Check> singleLap(
            Adherend sheet,
            Adhesive adhesive,
            double thickness,
            double overlap,
            double loadPerWidth,
            KnockDown knockDown) {
        var lap = new SingleLap(
                sheet,
                new BondLine(
                        thickness,
                        adhesive.shearModulus(),
                        adhesive.properties().require(Property.E1)),
                overlap);
        String basis = "Goland and Reissner 1944, moment factor Hart-Smith 1973";
        return List.of(
                check(
                        "shear at the end of the bond line",
                        adhesive,
                        Property.S12,
                        knockDown,
                        f -> shear(lap, f * loadPerWidth),
                        basis),
                check(
                        "peel at the end of the bond line",
                        adhesive,
                        Property.ZT,
                        knockDown,
                        f -> f * loadPerWidth > 0
                                ? lap.peakPeel(f * loadPerWidth, lap.momentFactorHartSmith(f * loadPerWidth))
                                : 0,
                        basis));
    }

    private static double shear(SingleLap lap, double p) {
        return p > 0 ? lap.peakShear(p, lap.momentFactorHartSmith(p)) : 0;
    }

    private void lap(Sheet a, Sheet b, LineLoad carried) {
        BondedLap lap = new BondedLap(a, b, line, bond.overlap());
        checks.add(shear(f -> lap.peakShear(carried.times(f)), LAP));
        peel(f -> lap.peakPeel(carried.times(f)), LAP);
        ductile(a, b);
    }

    private void doubleLap() {
        Optional<Sheet> tape = tape();
        Sheet outer = tape.filter(t -> t.adherend().stiffness() < two.adherend().stiffness())
                .orElse(two);
        checks.add(new Check.NotChecked(
                "peel of a double lap", List.of("a test: the outer sheets are taken thin enough not to peel")));
        String words = "elastic ends of a double lap, Hart-Smith 1973; the softer outer sheet stands for both";
        DuctileBond elastic = ductileOf(one, outer, 0);
        checks.add(
                strength(Property.S12).isPresent()
                        ? Check.proportional("shear at the end of the bond line", elastic.used(load), 1, words)
                        : missing("shear at the end of the bond line", Property.S12));
        ductile(one, outer);
    }

    /**
     * Two legs of tape at the edge of a wall. Flow along the line and the wall's push sideways shear both legs; a pull on the
     * wall and its moment peel them: {@link TeeLegs}, with 1/D = 1/Dtape + 1/Dsheet. The ties hold the wall as if the legs did
     * not bend, so the moment is more than a real tee lets in.
     */
    private void tee() {
        double mean = load.inSurface() / (2 * bond.overlap());
        Optional<Sheet> tape = tape();
        if (tape.isEmpty()) {
            checks.add(check(
                    "mean shear of the bond line",
                    bond.adhesive(),
                    Property.S12,
                    knockDown,
                    f -> f * mean,
                    "load over both legs; the ends carry more"));
            checks.add(new Check.NotChecked(
                    "ends of the legs of a tee", List.of("its tape: name its laminate under \"bonded\"")));
            return;
        }
        Sheet leg = tape.get();
        LineLoad half = new LineLoad(0, load.inSurface() / 2, 0, 0);
        for (Sheet onto : List.of(two, one)) {
            BondedLap lap = new BondedLap(leg, onto, line, bond.overlap());
            String where = onto == two ? "" : " on the wall";
            checks.add(shear(
                    "shear at the end of the bond line" + where,
                    f -> lap.peakAlong(half.times(f).along()),
                    "two legs, Volkersen 1938 along the line with G t"));
        }
        double d = 1 / (1 / leg.adherend().bending() + 1 / two.adherend().bending());
        double bedding = Math.pow(line.modulus() / (4 * d * line.thickness()), 0.25);
        double peel = new TeeLegs(bedding, one.built()).peel(load.normal(), load.moment());
        peel(
                f -> f * peel,
                "legs as beams on the adhesive, Hetényi 1946; the wall's moment as of legs that do not bend, more than a"
                        + " real tee lets in: where it is low, test the tee");
        ductile(leg, two);
    }

    private void ductile(Sheet a, Sheet b) {
        Adhesive adhesive = bond.adhesive();
        OptionalDouble limit = adhesive.properties().si(Property.SHEAR_STRAIN_LIMIT);
        String mode = "shear of the bond line beyond yield";
        if (limit.isEmpty() || strength(Property.S12).isEmpty()) {
            checks.add(missing(mode, limit.isEmpty() ? Property.SHEAR_STRAIN_LIMIT : Property.S12));
            return;
        }
        DuctileBond ductile = ductileOf(a, b, limit.getAsDouble());
        double sensible = ductile.sensibleOverlap(load.inSurface());
        String advice = bond.overlap() < sensible
                ? String.format(Locale.ROOT, "; overlap short: about %.0f mm is sensible for this load", sensible * 1e3)
                : "";
        checks.add(Check.proportional(
                mode, ductile.used(load), 1, "elastic-plastic, Hart-Smith 1973, bending left out" + advice));
    }

    private DuctileBond ductileOf(Sheet a, Sheet b, double limit) {
        double tau = strength(Property.S12).orElse(1);
        double elastic = tau / line.shearModulus();
        return DuctileBond.of(bond.lie(), a, b, line, bond.overlap(), tau, elastic, Math.max(0, limit - elastic));
    }

    private Optional<Sheet> tape() {
        return bond.tape().map(t -> Sheet.of(t, 0));
    }

    private Check shear(DoubleUnaryOperator stress, String basis) {
        return shear("shear at the end of the bond line", stress, basis);
    }

    private Check shear(String mode, DoubleUnaryOperator stress, String basis) {
        return check(mode, bond.adhesive(), Property.S12, knockDown, stress, basis);
    }

    /**
     * Peel of the adhesive, or of the ply beside it where its strength is known and lower. An adhesive without a strength is
     * not checked; the ply beside it still is.
     */
    private void peel(DoubleUnaryOperator stress, String basis) {
        String mode = "peel at the end of the bond line";
        if (stress.applyAsDouble(1) <= 0) {
            checks.add(new Check.Reserve(mode, Double.POSITIVE_INFINITY, 0, Double.NaN, basis));
            return;
        }
        OptionalDouble glue = strength(Property.ZT);
        if (glue.isEmpty()) {
            checks.add(missing(mode, Property.ZT));
        }
        double allowable = glue.orElse(Double.POSITIVE_INFINITY);
        String by = "";
        for (Sheet sheet : List.of(one, two)) {
            for (var layer : sheet.solid().layers()) {
                if (layer.material() instanceof Ply ply) {
                    double zt = ply.properties().si(Property.ZT).orElse(Double.POSITIVE_INFINITY);
                    if (zt < allowable) {
                        allowable = zt;
                        by = "; the ply beside it parts first";
                    }
                }
            }
        }
        if (allowable == Double.POSITIVE_INFINITY) {
            return;
        }
        double reach = allowable;
        checks.add(new Check.Reserve(
                glue.isEmpty() ? "peel of the ply beside the bond line" : mode,
                LoadFactor.of(f -> stress.applyAsDouble(f) / reach),
                stress.applyAsDouble(1),
                allowable,
                basis + by));
    }

    private OptionalDouble strength(Property property) {
        OptionalDouble value = bond.adhesive().properties().si(property);
        return value.isPresent() ? OptionalDouble.of(value.getAsDouble() * knockDown.factor(property)) : value;
    }

    private Check missing(String mode, Property property) {
        return missing(mode, bond.adhesive(), property);
    }

    private static Check missing(String mode, Adhesive adhesive, Property property) {
        return new Check.NotChecked(
                mode, List.of(property.key() + " of " + adhesive.name() + " (" + property.meaning() + ")"));
    }

    private static Check check(
            String mode,
            Adhesive adhesive,
            Property property,
            KnockDown knockDown,
            DoubleUnaryOperator stress,
            String basis) {
        var strength = adhesive.properties().si(property);
        if (strength.isEmpty()) {
            return missing(mode, adhesive, property);
        }
        double allowable = strength.getAsDouble() * knockDown.factor(property);
        return new Check.Reserve(
                mode,
                LoadFactor.of(f -> stress.applyAsDouble(f) / allowable),
                stress.applyAsDouble(1),
                allowable,
                basis);
    }
}
