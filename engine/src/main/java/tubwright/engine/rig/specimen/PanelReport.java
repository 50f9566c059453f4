// SPDX-License-Identifier: Apache-2.0
package tubwright.engine.rig.specimen;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import tubwright.engine.laminate.Laminate;
import tubwright.engine.laminate.Layer;
import tubwright.engine.laminate.LayerRole;
import tubwright.engine.quantity.Dimension;
import tubwright.engine.quantity.Quantity;
import tubwright.engine.rig.PanelBend;
import tubwright.engine.rig.PanelBend.Split;
import tubwright.engine.rig.PanelBend.Stiffness;
import tubwright.engine.rig.ReadingsException;
import tubwright.engine.rig.SandwichBeam;
import tubwright.engine.rig.statistics.IllPosedException;
import tubwright.engine.rig.statistics.LinearFit;
import tubwright.engine.rig.statistics.Uncertainty.Contribution;

/**
 * Sandwich panels in bending.
 *
 * @param panels one a specimen
 * @param split bending and shear per width told apart, where the spans allow it
 * @param whyNoSplit why not, in words; empty where they are
 */
public record PanelReport(List<Panel> panels, Optional<Split> split, String whyNoSplit) {
    /** The part of the curve a stiffness is read from, as shares of the greatest load: common practice, no source. */
    private static final double LOW = 0.1;

    private static final double HIGH = 0.5;

    public PanelReport {
        panels = List.copyOf(panels);
    }

    /**
     * One panel.
     *
     * @param name of the specimen
     * @param span m
     * @param width m
     * @param stiffness load over movement in the middle, N/m
     * @param greatestLoad N
     * @param predicted the same as {@code stiffness} by the laminate, N/m; NaN where none is given
     * @param shearShare share of the predicted movement that is shear of the core; NaN likewise
     * @param skinStress in the outer skin at the greatest load, mean over its thickness, Pa; NaN likewise
     * @param coreStress shear in the core at the greatest load, Pa; NaN likewise
     */
    public record Panel(
            String name,
            double span,
            double width,
            Stiffness stiffness,
            double greatestLoad,
            double predicted,
            double shearShare,
            double skinStress,
            double coreStress) {
        /** Predicted over measured stiffness. */
        public double ratio() {
            return predicted / stiffness.stiffness();
        }
    }

    /**
     * Reduces a test.
     *
     * @param laminate of the panels, its reference direction along the span
     */
    public static PanelReport of(SpecimenTest test, Optional<Laminate> laminate) {
        List<Panel> panels = new ArrayList<>();
        for (Curve curve : test.curves()) {
            double span = curve.sizes()[0];
            double width = curve.sizes()[1];
            LinearFit line = curve.slopeBetweenLoads(LOW, HIGH);
            test.rig().ifPresent(rig -> checkRig(curve, line.coefficients()[1], rig.stiffness()));
            Stiffness stiffness = PanelBend.without(
                    line.coefficients()[1],
                    new Contribution("scatter about the line", line.standardErrors()[1], line.degreesOfFreedom()),
                    test.rig());
            Optional<SandwichBeam> beam = laminate.flatMap(l -> beam(l, width));
            Arrangement arrangement = test.arrangement();
            double bending = beam.map(b -> arrangement.bendingFlexibility(span, b.bending()))
                    .orElse(Double.NaN);
            double shear =
                    beam.map(b -> arrangement.shearFlexibility(span, b.shear())).orElse(Double.NaN);
            double load = curve.greatestLoad();
            panels.add(new Panel(
                    curve.name(),
                    span,
                    width,
                    stiffness,
                    load,
                    1 / (bending + shear),
                    shear / (bending + shear),
                    beam.map(b -> load
                                    * arrangement.momentArm(span)
                                    / (width * b.depth() * b.outer().thickness()))
                            .orElse(Double.NaN),
                    beam.map(b -> load / (2 * width * b.depth())).orElse(Double.NaN)));
        }
        try {
            return new PanelReport(panels, Optional.of(split(panels, test.arrangement())), "");
        } catch (ReadingsException | IllPosedException e) {
            return new PanelReport(panels, Optional.empty(), e.getMessage());
        }
    }

    private static void checkRig(Curve curve, double asRead, double rig) {
        if (rig <= asRead) {
            throw new ReadingsException(curve.place() + ": specimen \"" + curve.name() + "\": the rig is said to be "
                    + new Quantity(rig, Dimension.STIFFNESS).format("kN/mm", 4)
                    + ", but panel and rig together were measured at "
                    + new Quantity(asRead, Dimension.STIFFNESS).format("kN/mm", 4)
                    + ": a rig in series cannot be the softer; check its unit");
        }
    }

    /** Per metre of width, so that panels of several widths go together. */
    private static Split split(List<Panel> panels, Arrangement arrangement) {
        return PanelBend.split(
                panels.stream().mapToDouble(Panel::span).toArray(),
                panels.stream()
                        .mapToDouble(p -> p.stiffness().stiffness() / p.width())
                        .toArray(),
                span -> arrangement.bendingFlexibility(span, 1),
                span -> arrangement.shearFlexibility(span, 1));
    }

    /** The laminate as a beam; nothing where it is no sandwich. */
    public static Optional<SandwichBeam> beam(Laminate laminate, double width) {
        List<Layer> layers = laminate.layers();
        int core = -1;
        for (int i = 0; i < layers.size(); i++) {
            if (layers.get(i).role() == LayerRole.CORE) {
                core = i;
            }
        }
        if (core <= 0 || core == layers.size() - 1) {
            return Optional.empty();
        }
        Layer middle = layers.get(core);
        double c = Math.cos(middle.angle());
        double s = Math.sin(middle.angle());
        double g = c * c * middle.material().elasticity().g13()
                + s * s * middle.material().elasticity().g23();
        return Optional.of(new SandwichBeam(
                SandwichBeam.Skin.of(Laminate.of(layers.subList(0, core).toArray(Layer[]::new))),
                SandwichBeam.Skin.of(
                        Laminate.of(layers.subList(core + 1, layers.size()).toArray(Layer[]::new))),
                middle.thickness(),
                g,
                width));
    }
}
