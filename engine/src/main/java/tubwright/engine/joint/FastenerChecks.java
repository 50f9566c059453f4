// SPDX-License-Identifier: Apache-2.0
package tubwright.engine.joint;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.OptionalDouble;
import tubwright.engine.joint.FastenerFlexibility.Plate;
import tubwright.engine.material.Metal;
import tubwright.engine.material.Property;
import tubwright.engine.strength.Check;
import tubwright.engine.strength.KnockDown;

/**
 * Reserves of rows of fasteners between two sheets of metal or laminate, at one place of the joint.
 *
 * <p>Each pitch of the line goes through one fastener of each row. Square to the line the rows share as bars and springs
 * ({@link FastenerRow}); along it likewise, with the sheets sheared. A force out of the surface is shared evenly; a moment
 * about the line pulls the fasteners over the edge of the flange (lever: edge distance, and the rows).
 */
public final class FastenerChecks {
    /** Bearing values of metals hold at this edge distance over diameter; nearer, they are taken in proportion. */
    private static final double EDGE_OF_BEARING = 2;

    private final JointDetail.Fasteners row;
    private final List<Sheet> sheets;
    private final KnockDown knockDown;
    private final double[] across;
    private final double[] along;
    /** Resultants at which either sheet fails without a hole, pulled across and sheared, N/m. */
    private final OptionalDouble[] pulled = new OptionalDouble[2];

    private final OptionalDouble[] sheared = new OptionalDouble[2];

    /**
     * @param row the fasteners
     * @param one the sheet that ends there
     * @param two the sheet it is joined onto
     * @param knockDown of laminates; metals keep their strengths
     */
    public FastenerChecks(JointDetail.Fasteners row, Sheet one, Sheet two, KnockDown knockDown) {
        this.row = row;
        sheets = List.of(one, two);
        this.knockDown = knockDown;
        across = shares(false);
        along = shares(true);
        for (int s = 0; s < 2; s++) {
            Sheet sheet = sheets.get(s);
            pulled[s] = sheet.metal()
                    ? OptionalDouble.empty()
                    : sheet.unnotched(new double[] {1, 0, 0, 0, 0, 0}, knockDown);
            sheared[s] = sheet.metal()
                    ? times(sheet.least(Property.S12), sheet.thickness())
                    : sheet.unnotched(new double[] {0, 0, 1, 0, 0, 0}, knockDown);
        }
    }

    /** Everything that can be said of the rows at one place. */
    public List<Check> under(LineLoad load) {
        List<Check> checks = new ArrayList<>();
        double pull = Math.abs(load.across()) * row.pitch();
        double flow = Math.abs(load.along()) * row.pitch();
        double largest = 0;
        for (int i = 0; i < row.rows(); i++) {
            largest = Math.max(largest, Math.hypot(across[i] * pull, along[i] * flow));
        }
        String share = row.rows() == 1
                ? "one row"
                : String.format(
                        Locale.ROOT,
                        "rows share %.0f %% at most",
                        100 * java.util.Arrays.stream(across).max().orElse(1));
        double lever = row.edge() + (row.rows() - 1) * row.rowSpacing();
        double tension = (Math.max(0, load.normal()) / row.rows() + Math.abs(load.moment()) / lever) * row.pitch();
        checks.add(fastener(largest, tension, share));
        for (int s = 0; s < 2; s++) {
            Sheet sheet = sheets.get(s);
            String side = s == 0 ? "in the piece that ends there" : "in the piece it is joined onto";
            checks.add(bearing(sheet, largest, side, share));
            if (load.across() > 0) {
                checks.add(netSection(s, load.across(), s == 0 ? across[0] : across[row.rows() - 1], side));
                checks.add(shearOut(s, load.across(), s == 0 ? across[row.rows() - 1] : across[0], side));
            }
            if (tension > 0) {
                checks.add(pullThrough(sheet, tension, side));
            }
        }
        return List.copyOf(checks);
    }

    private double[] shares(boolean sheared) {
        Sheet one = sheets.get(0);
        Sheet two = sheets.get(1);
        Plate p = new Plate(
                one.thickness(), sheared ? one.shearModulus() : one.adherend().modulus());
        Plate q = new Plate(
                two.thickness(), sheared ? two.shearModulus() : two.adherend().modulus());
        double flexibility = row.flexibility()
                .singleShear(
                        new Plate(one.thickness(), one.adherend().modulus()),
                        new Plate(two.thickness(), two.adherend().modulus()),
                        row.diameter(),
                        row.metal().youngsModulus());
        return FastenerRow.even(p, q, row.rows(), row.rowSpacing(), row.pitch(), flexibility)
                .shares();
    }

    /** Shank in shear and tension, squares added (from memory of common practice). */
    private Check fastener(double shear, double tension, String share) {
        String mode = "fasteners in shear and tension";
        Metal metal = row.metal();
        List<String> needs = new ArrayList<>();
        for (Property property : List.of(Property.S12, Property.XT)) {
            if (!metal.properties().has(property)) {
                needs.add(property.key() + " of " + metal.name() + " (" + property.meaning() + ")");
            }
        }
        if (!needs.isEmpty()) {
            return new Check.NotChecked(mode, needs);
        }
        double area = Math.PI / 4 * row.diameter() * row.diameter();
        double s = shear / (area * metal.properties().require(Property.S12));
        double t = tension / (area * metal.properties().require(Property.XT));
        return Check.proportional(
                mode,
                Math.hypot(s, t),
                1,
                "shank area, squares of both shares added; strength of heads and threads" + " by the maker's test; "
                        + share);
    }

    private Check bearing(Sheet sheet, double largest, String side, String share) {
        String mode = "bearing " + side;
        OptionalDouble strength = sheet.least(Property.BEARING_ULTIMATE);
        if (strength.isEmpty()) {
            return new Check.NotChecked("bearing of fasteners", sheet.needs(Property.BEARING_ULTIMATE));
        }
        double edge = Math.min(1, row.edge() / (EDGE_OF_BEARING * row.diameter()));
        return Check.proportional(
                mode,
                largest / (row.diameter() * sheet.thickness()),
                strength.getAsDouble() * edge * factor(sheet, Property.XC),
                "load over diameter x thickness; " + share
                        + (edge < 1 ? "; strength in proportion to an edge distance below 2 d" : ""));
    }

    /** Bearing and bypass together on the section through the row where the sheet still carries all. */
    private Check netSection(int s, double across, double share, String side) {
        Sheet sheet = sheets.get(s);
        double pull = across * row.pitch();
        String mode = "net section through the holes " + side;
        if (sheet.metal()) {
            OptionalDouble strength = sheet.least(Property.XT);
            if (strength.isEmpty()) {
                return new Check.NotChecked(mode, sheet.needs(Property.XT));
            }
            double net = (row.pitch() - row.diameter()) * sheet.thickness();
            return Check.proportional(mode, pull / net, strength.getAsDouble(), "ductile metal: no concentration");
        }
        OptionalDouble tension = pulled[s];
        if (tension.isEmpty()) {
            return new Check.NotChecked(mode, List.of("strengths of the plies beside the joint"));
        }
        BearingBypass section =
                new BearingBypass(row.diameter(), row.pitch(), row.edge(), BearingBypass.QUASI_ISOTROPIC);
        Check made = section.checks(
                        sheet.thickness(),
                        share * pull,
                        (1 - share) * pull,
                        tension.getAsDouble() / sheet.thickness(),
                        OptionalDouble.empty())
                .getFirst();
        return switch (made) {
            case Check.Reserve r ->
                new Check.Reserve(
                        mode, r.reserveFactor(), r.applied(), r.allowable(), r.basis() + ", bearing and bypass added");
            case Check.NotChecked not -> not;
        };
    }

    /** Two shear planes from the hole to the edge, each e − d/2 long. */
    private Check shearOut(int s, double across, double share, String side) {
        Sheet sheet = sheets.get(s);
        String mode = "shear-out to the edge " + side;
        OptionalDouble flow = sheared[s];
        if (flow.isEmpty()) {
            return new Check.NotChecked(mode, sheet.needs(Property.S12));
        }
        double length = row.edge() - row.diameter() / 2;
        double capacity = 2 * length * flow.getAsDouble();
        return Check.proportional(mode, share * across * row.pitch(), capacity, "two planes of length e - d/2");
    }

    /** Head punched through the sheet: π dh t S, S of a laminate through its thickness. */
    private Check pullThrough(Sheet sheet, double tension, String side) {
        OptionalDouble strength = sheet.least(sheet.metal() ? Property.S12 : Property.S13);
        String mode = "pull-through of heads";
        if (strength.isEmpty()) {
            return new Check.NotChecked(mode, sheet.needs(sheet.metal() ? Property.S12 : Property.S13));
        }
        return Check.proportional(
                mode + " " + side,
                tension,
                Math.PI * row.headDiameter() * sheet.thickness() * strength.getAsDouble() * factor(sheet, Property.S13),
                "shear round the head, common practice, no source");
    }

    /**
     * Buckling of a sheet between two fasteners of a row.
     *
     * @param compression stress along the row, Pa, positive
     */
    public static Check interRivet(JointDetail.Fasteners row, Metal metal, double thickness, double compression) {
        Adherend sheet = new Adherend(
                thickness, metal.youngsModulus(), metal.elasticity().nu12());
        double elastic = InterRivetBuckling.stress(sheet, row.pitch(), row.head());
        double yield = metal.properties().si(Property.COMPRESSIVE_YIELD).orElse(Double.POSITIVE_INFINITY);
        return Check.proportional(
                "buckling of the sheet between fasteners",
                compression,
                Math.min(elastic, yield),
                String.format(
                        Locale.ROOT,
                        "wide column between fasteners, c = %.1f, no more than yield",
                        row.head().fixity()));
    }

    private static OptionalDouble times(OptionalDouble value, double factor) {
        return value.isPresent() ? OptionalDouble.of(value.getAsDouble() * factor) : value;
    }

    private double factor(Sheet sheet, Property property) {
        return sheet.metal() ? 1 : knockDown.factor(property);
    }
}
