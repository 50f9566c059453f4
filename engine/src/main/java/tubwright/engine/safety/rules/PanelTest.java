// SPDX-License-Identifier: Apache-2.0
package tubwright.engine.safety.rules;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import tubwright.engine.laminate.Climate;
import tubwright.engine.laminate.Laminate;
import tubwright.engine.material.Property;
import tubwright.engine.rig.SandwichBeam;
import tubwright.engine.rig.specimen.PanelReport;
import tubwright.engine.strength.Check;
import tubwright.engine.strength.Criterion;
import tubwright.engine.strength.FirstPlyFailure;
import tubwright.engine.strength.KnockDown;
import tubwright.engine.strength.LayerCriteria;
import tubwright.engine.strength.sandwich.Indentation;
import tubwright.engine.strength.sandwich.PanelLoad;
import tubwright.engine.strength.sandwich.Sandwich;
import tubwright.engine.strength.sandwich.SandwichChecks;

/**
 * A test panel in three-point bending, foretold before it is made: stiffness as a beam whose skins stretch and whose core shears,
 * and the load of each manner of giving way. Loads are those of linear theory at the middle of the span; under the roller a core
 * crushes locally, which is told beside.
 *
 * @param laminate name of the layup, for the reader
 * @param span m
 * @param width m
 * @param stiffness load over movement of the middle, N/m
 * @param shearShare share of that movement which is shear of the core
 * @param ways manners of giving way with their loads, lowest first
 * @param notChecked what lacks data
 */
public record PanelTest(
        String laminate,
        double span,
        double width,
        double stiffness,
        double shearShare,
        List<Way> ways,
        List<Check.NotChecked> notChecked) {
    /** Span, width of the student rules: 400 and 275 mm. */
    public static final double SPAN = 0.4;

    /** See {@link #SPAN}. */
    public static final double WIDTH = 0.275;

    public PanelTest {
        ways = List.copyOf(ways);
        notChecked = List.copyOf(notChecked);
    }

    /**
     * One manner of giving way.
     *
     * @param mode in the trade's words
     * @param load N
     */
    public record Way(String mode, double load) {}

    /** Stiffness that nine of ten panels exceed, by the scatter of a public set of student panels, N/m. */
    public double low() {
        return stiffness / PanelBending.HIGH;
    }

    /** Stiffness that nine of ten panels stay below, N/m. */
    public double high() {
        return stiffness / PanelBending.LOW;
    }

    /** Foretells a sandwich panel bent along its laminate's own axis; empty where it is no sandwich. */
    public static Optional<PanelTest> of(String name, Laminate laminate, double span, double width) {
        Optional<SandwichBeam> beam = PanelReport.beam(laminate, width);
        Optional<Sandwich> sandwich = Sandwich.of(laminate);
        if (beam.isEmpty() || sandwich.isEmpty()) {
            return Optional.empty();
        }
        List<Way> ways = new ArrayList<>();
        List<Check.NotChecked> missing = new ArrayList<>();
        // Of one newton in the middle: moment L/4 over the width, shear a half. Both signs, as either face may be
        // pressed.
        for (int sign : new int[] {1, -1}) {
            double[] n = {0, 0, 0, sign * span / 4 / width, 0, 0};
            for (Check check : SandwichChecks.of(
                    sandwich.get(), PanelLoad.flat(n, new double[] {0.5 / width, 0}), KnockDown.NONE)) {
                switch (check) {
                    case Check.NotChecked not -> missing.add(not);
                    case Check.Reserve r -> {
                        if (Double.isFinite(r.reserveFactor()) && !r.mode().endsWith("theory")) {
                            ways.add(new Way(r.mode(), r.reserveFactor()));
                        }
                    }
                }
            }
            FirstPlyFailure plies = FirstPlyFailure.of(
                    laminate, n, Climate.NONE, LayerCriteria.of(Criterion.MAXIMUM_STRESS, KnockDown.NONE));
            plies.fibre()
                    .ifPresent(f -> ways.add(
                            new Way("fibres of a skin break", f.failure().reserveFactor())));
            missing.addAll(plies.notChecked());
        }
        indented(sandwich.get(), beam.get(), span, width, ways, missing);
        List<Way> lowest = new ArrayList<>();
        ways.stream().sorted(java.util.Comparator.comparingDouble(Way::load)).forEach(w -> {
            if (lowest.stream().noneMatch(l -> l.mode().equals(w.mode()))) {
                lowest.add(w);
            }
        });
        return Optional.of(new PanelTest(
                name,
                span,
                width,
                beam.get().stiffness(span),
                beam.get().shearShare(span),
                lowest,
                missing.stream().distinct().toList()));
    }

    /** Face on a core that yields under a narrow load (Steeves and Fleck 2004, from memory). */
    private static void indented(
            Sandwich sandwich,
            SandwichBeam beam,
            double span,
            double width,
            List<Way> ways,
            List<Check.NotChecked> missing) {
        if (!sandwich.core().properties().has(Property.ZC)) {
            missing.add(new Check.NotChecked(
                    "core crushed under the roller",
                    List.of("compressive strength through the thickness of "
                            + sandwich.core().name())));
            return;
        }
        double face = beam.outer().stretch() / beam.outer().thickness();
        double line = Indentation.elasticFacePlasticCore(
                beam.outer().thickness(),
                face,
                sandwich.core().properties().require(Property.ZC),
                sandwich.distance(),
                span);
        ways.add(new Way("core crushed under the roller", line * width));
    }

    /** In one line. */
    public String words() {
        return String.format(
                Locale.ROOT,
                "%.0f N/mm (%.0f to %.0f for eight panels of ten), %.0f %% of it shear of the core; gives way at %s",
                1e-3 * stiffness,
                1e-3 * low(),
                1e-3 * high(),
                100 * shearShare,
                ways.isEmpty()
                        ? "a load that is not known"
                        : String.format(
                                Locale.ROOT,
                                "%.1f kN: %s",
                                1e-3 * ways.getFirst().load(),
                                ways.getFirst().mode()));
    }
}
