// SPDX-License-Identifier: Apache-2.0
package tubwright.engine.joint;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.OptionalDouble;
import tubwright.engine.laminate.EngineeringConstants;
import tubwright.engine.material.Core;
import tubwright.engine.material.Property;
import tubwright.engine.strength.Check;
import tubwright.engine.strength.KnockDown;
import tubwright.engine.strength.sandwich.Indentation;

/**
 * Reserves of a hardpoint in a sandwich: pulled out, pushed along the skin, both together, turned, bent, pressed in.
 *
 * <p>A moment about an axis in the skin is the pull 2M/bp: shear of the core that goes with the cosine around the potting.
 * Pull and in-plane load together: (P/Pu)² + (Q/Qu)² = 1 (ECSS-E-HB-32-22A 2011, from memory).
 */
public final class InsertChecks {
    private final InsertDetail detail;
    private final InsertSite site;
    private final Sheet face;
    private final Sheet other;
    private final Core core;
    private final double coreThickness;
    private final KnockDown knockDown;
    private final InsertLoad load;
    private final List<Check> checks = new ArrayList<>();

    private InsertChecks(
            InsertDetail detail,
            InsertSite site,
            Sheet face,
            Sheet other,
            Core core,
            double coreThickness,
            InsertLoad load,
            KnockDown knockDown) {
        this.detail = detail;
        this.site = site;
        this.face = face;
        this.other = other;
        this.core = core;
        this.coreThickness = coreThickness;
        this.load = load;
        this.knockDown = knockDown;
    }

    /**
     * Everything that can be said of one insert under one load.
     *
     * @param face the face at which the load enters, 1 along the load in its plane
     * @param other the other face
     * @param knockDown of plies
     */
    public static List<Check> of(
            InsertDetail detail,
            InsertSite site,
            Sheet face,
            Sheet other,
            Core core,
            double coreThickness,
            InsertLoad load,
            KnockDown knockDown) {
        InsertChecks all = new InsertChecks(detail, site, face, other, core, coreThickness, load, knockDown);
        if (detail.kind() == InsertDetail.Kind.PAD) {
            all.pad();
        } else {
            all.throughTheCore();
        }
        return List.copyOf(all.checks);
    }

    private void throughTheCore() {
        double potting = pottingRadius();
        OptionalDouble strength = core.properties().si(Property.S23);
        double pull = Math.abs(load.pull()) + 2 * load.moment() / potting;
        OptionalDouble pullStrength = detail.tested().pull();
        if (pullStrength.isPresent()) {
            checks.add(Check.proportional("insert pull-out", pull, pullStrength.getAsDouble(), "tested strength"));
        } else if (strength.isEmpty()) {
            checks.add(missing("insert pull-out by core shear", Property.S23));
        } else {
            Sheet thinner = face.thickness() <= other.thickness() ? face : other;
            double modulus = Math.min(
                    core.properties().require(Property.G13), core.properties().require(Property.G23));
            InsertPullOut pullOut = new InsertPullOut(potting, weaker(thinner), coreThickness, modulus);
            double ratio = pullOut.largestShearRatio();
            double share = site.pullShare(potting, ratio);
            double capacity = share * pullOut.coreShearCapacity(strength.getAsDouble(), ratio);
            pullStrength = OptionalDouble.of(capacity);
            checks.add(Check.proportional(
                    "insert pull-out by core shear",
                    pull,
                    capacity,
                    String.format(
                            Locale.ROOT,
                            "ESA PSS-03-1202 formulas, faces clamped to the potting, W-direction strength, radius %.1f mm;"
                                    + " edge and neighbours leave %.0f %%",
                            potting * 1e3,
                            100 * share)));
            checks.add(new Check.NotChecked(
                    "bond of the potting", List.of("pull-out strength by test (insert: tested pull)")));
        }
        OptionalDouble shearStrength = inPlane(potting, strength);
        if (pullStrength.isPresent() && shearStrength.isPresent()) {
            checks.add(Check.proportional(
                    "insert under pull and in-plane load together",
                    Math.hypot(pull / pullStrength.getAsDouble(), load.inPlane() / shearStrength.getAsDouble()),
                    1,
                    "squares of both shares added; ECSS-E-HB-32-22A 2011, from memory"));
        }
        bearing();
        shearOut(potting);
        torque();
    }

    /** 8 bp² τ + 2 bp f σ of the face at which the load enters (ESA PSS-03-1202, from memory), N; empty if not known. */
    private OptionalDouble inPlane(double potting, OptionalDouble strength) {
        String mode = "insert along the skin";
        OptionalDouble tested = detail.tested().shear();
        if (tested.isPresent()) {
            checks.add(Check.proportional(mode, load.inPlane(), tested.getAsDouble(), "tested strength"));
            return tested;
        }
        OptionalDouble force = face.unnotched(new double[] {-1, 0, 0, 0, 0, 0}, knockDown);
        if (strength.isEmpty()) {
            checks.add(missing(mode, Property.S23));
            return strength;
        }
        if (force.isEmpty()) {
            checks.add(new Check.NotChecked(mode, List.of("strengths of the plies of the face")));
            return force;
        }
        double capacity = 8 * potting * potting * strength.getAsDouble() + 2 * potting * force.getAsDouble();
        checks.add(
                Check.proportional(
                        mode,
                        load.inPlane(),
                        capacity,
                        "8 bp^2 tau + 2 bp f sigma of the face at the load, its doublers included; ESA PSS-03-1202, from memory"));
        return OptionalDouble.of(capacity);
    }

    private double pottingRadius() {
        OptionalDouble cell = core.properties().si(Property.CELL_SIZE);
        if (detail.kind() == InsertDetail.Kind.POTTED
                && detail.diameter().isPresent()
                && cell.isPresent()
                && core.form() == Core.Form.HONEYCOMB) {
            double least = Potting.leastRadius(detail.diameter().getAsDouble() / 2, cell.getAsDouble());
            return Math.min(site.radius(), Math.max(least, detail.diameter().getAsDouble() / 2));
        }
        return site.radius();
    }

    private static Adherend weaker(Sheet sheet) {
        EngineeringConstants e = EngineeringConstants.membrane(sheet.solid());
        return new Adherend(
                sheet.thickness(), Math.min(e.ex(), e.ey()), sheet.adherend().poisson());
    }

    /** Skin pressed by the insert, or by the bolts where nothing larger goes through it. */
    private void bearing() {
        String mode = "bearing of the skin at the insert";
        double width = detail.diameter()
                .orElse(detail.bolts().map(b -> b.diameter() * b.count()).orElse(0.0));
        if (width == 0) {
            checks.add(new Check.NotChecked(mode, List.of("diameter of the insert or its bolts (insert: diameter)")));
            return;
        }
        OptionalDouble strength = face.least(Property.BEARING_ULTIMATE);
        if (strength.isEmpty()) {
            checks.add(new Check.NotChecked(mode, face.needs(Property.BEARING_ULTIMATE)));
            return;
        }
        double factor = face.metal() ? 1 : knockDown.factor(Property.XC);
        checks.add(Check.proportional(
                mode,
                load.inPlane() / (width * face.thickness()),
                strength.getAsDouble() * factor,
                "load over diameter x thickness of the face at the load, its doublers included"));
    }

    /** Two shear planes of the face from the insert to the nearest edge. */
    private void shearOut(double potting) {
        String mode = "shear-out of the skin from the insert to the edge";
        if (site.edge() > 10 * potting) {
            return;
        }
        OptionalDouble flow = face.unnotched(new double[] {0, 0, 1, 0, 0, 0}, knockDown);
        double radius = detail.diameter().orElse(2 * potting) / 2;
        if (flow.isEmpty()) {
            checks.add(new Check.NotChecked(mode, List.of("strengths of the plies of the face")));
            return;
        }
        double length = Math.max(0, site.edge() - radius);
        checks.add(Check.proportional(
                mode,
                load.inPlane(),
                2 * length * flow.getAsDouble(),
                String.format(
                        Locale.ROOT, "two planes of the face at the load, edge %.0f mm away", site.edge() * 1e3)));
    }

    /** Flange bonded to the skin, shear in proportion to the radius: T = π τ (R⁴ − r⁴)/(2 R). */
    private void torque() {
        String mode = "insert turned";
        OptionalDouble tested = detail.tested().torque();
        if (tested.isPresent()) {
            checks.add(Check.proportional(mode, load.torque(), tested.getAsDouble(), "tested strength"));
            return;
        }
        if (!(load.torque() > 0)) {
            return;
        }
        if (detail.flange().isEmpty() || detail.adhesive().isEmpty()) {
            checks.add(new Check.NotChecked(
                    mode, List.of("a bonded flange and its adhesive (insert: flange, adhesive), or a tested torque")));
            return;
        }
        OptionalDouble tau = detail.adhesive().get().properties().si(Property.S12);
        if (tau.isEmpty()) {
            checks.add(new Check.NotChecked(
                    mode, List.of("S12 of " + detail.adhesive().get().name())));
            return;
        }
        double outer = detail.flange().getAsDouble() / 2;
        double inner = detail.diameter().orElse(0) / 2;
        double capacity = Math.PI * tau.getAsDouble() * (Math.pow(outer, 4) - Math.pow(inner, 4)) / (2 * outer);
        checks.add(Check.proportional(
                mode, load.torque(), capacity, "bond of the flange, shear in proportion to the radius"));
    }

    /** Mean stress of the bond, and the core under a pad pressed in. */
    private void pad() {
        double radius = detail.flange().orElse(2 * site.radius()) / 2;
        double area = Math.PI * radius * radius;
        if (detail.adhesive().isEmpty()) {
            checks.add(new Check.NotChecked("bond of the pad", List.of("its adhesive (insert: adhesive)")));
        } else {
            var table = detail.adhesive().get().properties();
            if (table.has(Property.S12) && table.has(Property.ZT)) {
                double tau = load.inPlane() / area + 2 * load.torque() / (area * radius);
                double sigma = Math.max(0, load.pull()) / area + 4 * load.moment() / (area * radius);
                checks.add(Check.proportional(
                        "bond of the pad",
                        Math.hypot(tau / table.require(Property.S12), sigma / table.require(Property.ZT)),
                        1,
                        "stress of a stiff pad, shear and tension as squares; edges of a limp pad carry more"));
            } else {
                checks.add(new Check.NotChecked(
                        "bond of the pad",
                        List.of("S12 and ZT of " + detail.adhesive().get().name())));
            }
        }
        OptionalDouble crushing = core.properties().si(Property.ZC);
        OptionalDouble modulus = core.properties().si(Property.E3);
        if (crushing.isEmpty() || modulus.isEmpty()) {
            checks.add(missing("core under the pad", crushing.isEmpty() ? Property.ZC : Property.E3));
            return;
        }
        double decay = Indentation.decay(
                modulus.getAsDouble(), coreThickness, weaker(face).bending());
        double capacity = crushing.getAsDouble() * (area + 2 * Math.PI * radius / decay);
        double press = Math.max(0, -load.pull()) + 2 * load.moment() / radius;
        checks.add(
                Check.proportional(
                        "core crushed under the pad",
                        press,
                        capacity,
                        "core under the pad and, by the face as a beam on it, beside its edge: sigma (pi r^2 + 2 pi r/lambda)"));
    }

    private Check missing(String mode, Property property) {
        return new Check.NotChecked(
                mode, List.of(property.key() + " of " + core.name() + " (" + property.meaning() + ")"));
    }
}
