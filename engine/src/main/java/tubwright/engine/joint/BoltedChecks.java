// SPDX-License-Identifier: Apache-2.0
package tubwright.engine.joint;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.OptionalDouble;
import tubwright.engine.material.Property;
import tubwright.engine.strength.Check;
import tubwright.engine.strength.KnockDown;

/**
 * Reserves of a hardpoint bolted through a solid laminate or sheet: the bolts share force evenly, torque and moment by their
 * circle of radius R: Q/n + T/(n R), P/n + 2 M/(n R). A single bolt takes a moment by its washer.
 */
public final class BoltedChecks {
    private BoltedChecks() {}

    /**
     * Everything that can be said of the bolts under one load.
     *
     * @param sheet 1 along the load in its plane, doublers included
     * @param knockDown of plies
     */
    public static List<Check> of(
            InsertDetail detail, InsertSite site, Sheet sheet, InsertLoad load, KnockDown knockDown) {
        if (detail.bolts().isEmpty()) {
            return List.of(new Check.NotChecked(
                    "bolts of hardpoints in solid laminate or sheet",
                    List.of("their diameter and number (insert: bolt, bolts, bolt circle)")));
        }
        List<Check> checks = new ArrayList<>();
        InsertDetail.Bolts bolts = detail.bolts().get();
        double radius = bolts.circle() / 2;
        boolean several = bolts.count() > 1 && radius > 0;
        double washer = detail.flange().orElse(2 * bolts.diameter());
        double shear = load.inPlane() / bolts.count();
        double tension = Math.max(0, load.pull()) / bolts.count();
        if (several) {
            shear += load.torque() / (bolts.count() * radius);
            tension += 2 * load.moment() / (bolts.count() * radius);
        } else {
            tension += 2 * load.moment() / washer;
            if (load.torque() > 0 && detail.tested().torque().isEmpty()) {
                checks.add(
                        new Check.NotChecked("bolted hardpoint turned", List.of("a second bolt, or a tested torque")));
            }
        }
        String share = several
                ? String.format(Locale.ROOT, "%d bolts on a circle of %.0f mm", bolts.count(), bolts.circle() * 1e3)
                : "one bolt";
        checks.add(bearing(sheet, shear / (bolts.diameter() * sheet.thickness()), share, knockDown));
        shearOut(site, sheet, bolts, shear, knockDown).ifPresent(checks::add);
        checks.add(pullThrough(sheet, tension, washer, share, knockDown));
        return List.copyOf(checks);
    }

    private static Check bearing(Sheet sheet, double stress, String share, KnockDown knockDown) {
        String mode = "bearing at bolts of the hardpoint";
        OptionalDouble strength = sheet.least(Property.BEARING_ULTIMATE);
        if (strength.isEmpty()) {
            return new Check.NotChecked(mode, sheet.needs(Property.BEARING_ULTIMATE));
        }
        double factor = sheet.metal() ? 1 : knockDown.factor(Property.XC);
        return Check.proportional(
                mode, stress, strength.getAsDouble() * factor, "load over diameter x thickness; " + share);
    }

    private static Optional<Check> shearOut(
            InsertSite site, Sheet sheet, InsertDetail.Bolts bolts, double shear, KnockDown knockDown) {
        double edge = site.edge() - bolts.circle() / 2;
        if (edge > 10 * bolts.diameter()) {
            return Optional.empty();
        }
        String mode = "shear-out from bolts of the hardpoint to the edge";
        OptionalDouble flow =
                sheet.metal() ? sheet.least(Property.S12) : sheet.unnotched(new double[] {0, 0, 1, 0, 0, 0}, knockDown);
        if (flow.isEmpty()) {
            return Optional.of(new Check.NotChecked(mode, sheet.needs(Property.S12)));
        }
        double perLength = sheet.metal() ? flow.getAsDouble() * sheet.thickness() : flow.getAsDouble();
        double length = Math.max(0, edge - bolts.diameter() / 2);
        return Optional.of(Check.proportional(
                mode, shear, 2 * length * perLength, "two planes of length e - d/2 of the bolt nearest the edge"));
    }

    private static Check pullThrough(Sheet sheet, double tension, double washer, String share, KnockDown knockDown) {
        String mode = "pull-through at bolts of the hardpoint";
        Property property = sheet.metal() ? Property.S12 : Property.S13;
        OptionalDouble strength = sheet.least(property);
        if (strength.isEmpty()) {
            return new Check.NotChecked(mode, sheet.needs(property));
        }
        double factor = sheet.metal() ? 1 : knockDown.factor(Property.S13);
        return Check.proportional(
                mode,
                tension,
                Math.PI * washer * sheet.thickness() * strength.getAsDouble() * factor,
                "shear round head or washer, common practice, no source; " + share);
    }
}
