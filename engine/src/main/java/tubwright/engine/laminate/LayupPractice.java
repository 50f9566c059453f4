// SPDX-License-Identifier: Apache-2.0
package tubwright.engine.laminate;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.OptionalDouble;
import tubwright.engine.laminate.LayupAdvice.Severity;
import tubwright.engine.material.Core;
import tubwright.engine.material.Material;
import tubwright.engine.material.Ply;
import tubwright.engine.material.Property;

/**
 * Checks a laminate against the layup rules of the trade. They are practice, not law: each remark names where its rule
 * is published. Layers of metal alone are not checked.
 */
public final class LayupPractice {
    private static final String HANDBOOK = "MIL-HDBK-17-3F ch. 12, lessons learned (read in a digest)";
    private static final double LEAST_SHARE = 0.10;
    private static final int MOST_GROUPED = 4;
    private static final double LARGEST_CELL = 3.0 / 16.0 * 0.0254;

    /** Plies within this many degrees of a main direction count for it. */
    private static final double NEAR = 15;

    private final Laminate laminate;
    private final List<LayupAdvice> advice = new ArrayList<>();

    private LayupPractice(Laminate laminate) {
        this.laminate = laminate;
    }

    /** All remarks on a laminate; empty if there is nothing to say. */
    public static List<LayupAdvice> check(Laminate laminate) {
        LayupPractice practice = new LayupPractice(laminate);
        if (!laminate.layersWith(LayerRole.PLY).isEmpty()) {
            practice.symmetry();
            practice.balance();
            practice.shares();
            practice.grouping();
            practice.surfaces();
            practice.bondLines();
            practice.cells();
            practice.corrosion();
            practice.crossedCloths();
        }
        return List.copyOf(practice.advice);
    }

    private void say(Severity severity, String rule, String text, String source) {
        advice.add(new LayupAdvice(severity, rule, text, source));
    }

    private void symmetry() {
        if (!laminate.isSymmetric()) {
            say(
                    Severity.WARNING,
                    "symmetric",
                    "the stack is not symmetric about its middle: it will warp as it cools and bend when it is pulled",
                    HANDBOOK + "; Kassapoglou 2nd ed. ch. 12");
        }
    }

    private void balance() {
        if (!laminate.isBalanced()) {
            say(
                    Severity.WARNING,
                    "balanced",
                    "plies off 0 and 90 are not balanced by plies at the opposite angle: pulling it shears it",
                    HANDBOOK);
        }
    }

    private void shares() {
        double[] main = {0, 45, -45, 90};
        double[] share = new double[4];
        double total = 0;
        for (Layer layer : laminate.layersWith(LayerRole.PLY)) {
            total += layer.thickness();
            double[] directions = isCloth(layer)
                    ? new double[] {layer.degrees(), layer.degrees() + 90}
                    : new double[] {layer.degrees()};
            for (double direction : directions) {
                for (int k = 0; k < 4; k++) {
                    if (Math.abs(Angles.normalisedDegrees(direction - main[k])) <= NEAR) {
                        share[k] += layer.thickness() / directions.length;
                    }
                }
            }
        }
        List<String> missing = new ArrayList<>();
        for (int k = 0; k < 4; k++) {
            if (share[k] / total < LEAST_SHARE - 1e-9) {
                missing.add(String.format(Locale.ROOT, "%.0f %% at %.0f°", 100 * share[k] / total, main[k]));
            }
        }
        if (!missing.isEmpty()) {
            say(
                    Severity.NOTE,
                    "ten per cent",
                    "only " + String.join(", ", missing)
                            + "; practice is at least 10 % of the fibres in each of 0, 45, "
                            + "-45 and 90°, so that no direction hangs on the resin",
                    HANDBOOK + "; Niu 1992 section 5.3; industry practice, not one standard's requirement");
        }
    }

    private void grouping() {
        int run = 1;
        int longest = 1;
        double angle = 0;
        List<Layer> layers = laminate.layers();
        for (int i = 1; i < layers.size(); i++) {
            Layer layer = layers.get(i);
            Layer before = layers.get(i - 1);
            boolean same = layer.role() == LayerRole.PLY
                    && before.role() == LayerRole.PLY
                    && Angles.same(layer.degrees(), before.degrees());
            run = same ? run + 1 : 1;
            if (run > longest) {
                longest = run;
                angle = layer.degrees();
            }
        }
        if (longest > MOST_GROUPED) {
            say(
                    Severity.WARNING,
                    "grouping",
                    longest + " plies at " + OrientationCodeWriter.number(angle)
                            + "° lie on one another; practice is at " + "most " + MOST_GROUPED
                            + " (0.5 to 0.6 mm), or the resin between cracks",
                    HANDBOOK);
        }
    }

    private void surfaces() {
        for (boolean outer : new boolean[] {true, false}) {
            Layer layer =
                    outer ? laminate.layers().getFirst() : laminate.layers().getLast();
            if (layer.role() == LayerRole.PLY && Math.abs(Math.abs(layer.degrees()) - 45) > NEAR) {
                say(
                        Severity.NOTE,
                        "surface plies",
                        "the " + (outer ? "outer" : "inner") + " surface is a ply at "
                                + OrientationCodeWriter.number(layer.degrees())
                                + "°; ±45 there stands knocks and drilling better and helps against buckling",
                        HANDBOOK);
            }
        }
    }

    private void bondLines() {
        List<Layer> layers = laminate.layers();
        for (int i = 0; i < layers.size(); i++) {
            Layer layer = layers.get(i);
            boolean beside = i > 0 && isBond(layers.get(i - 1)) || i + 1 < layers.size() && isBond(layers.get(i + 1));
            if (beside && layer.role() == LayerRole.PLY && !isCloth(layer) && Math.abs(layer.degrees()) > 90 - NEAR) {
                say(
                        Severity.NOTE,
                        "bond line",
                        "ply " + (i + 1)
                                + " from outside lies at 90° against the core or its film; 45 or 0 is preferred "
                                + "next to a bond line",
                        HANDBOOK);
            }
        }
    }

    private static boolean isBond(Layer layer) {
        return layer.role() == LayerRole.CORE || layer.role() == LayerRole.FILM;
    }

    private void cells() {
        for (Layer layer : laminate.layersWith(LayerRole.CORE)) {
            OptionalDouble cell = layer.material().properties().si(Property.CELL_SIZE);
            boolean honeycomb = layer.material() instanceof Core core && core.form() == Core.Form.HONEYCOMB;
            if (honeycomb && cell.isPresent() && cell.getAsDouble() > LARGEST_CELL * (1 + 1e-9)) {
                say(
                        Severity.NOTE,
                        "cell size",
                        String.format(
                                Locale.ROOT,
                                "the core's cells are %.1f mm across; thin skins cured on the core sag into cells above "
                                        + "3/16 in (4.8 mm), 1/8 in is better",
                                1e3 * cell.getAsDouble()),
                        HANDBOOK);
            }
        }
    }

    private void corrosion() {
        List<Layer> layers = laminate.layers();
        for (int i = 1; i < layers.size(); i++) {
            Material a = layers.get(i - 1).material();
            Material b = layers.get(i).material();
            if (mentions(a, "carbon") && mentions(b, "aluminium")
                    || mentions(a, "aluminium") && mentions(b, "carbon")) {
                say(
                        Severity.WARNING,
                        "corrosion",
                        a.name() + " lies bare on " + b.name()
                                + "; carbon eats aluminium where it is damp: part them by a glass ply of at least 0.13 mm or "
                                + "a film with a carrier",
                        HANDBOOK);
                return;
            }
        }
    }

    /** Materials say in their description what they are made of; nothing else here knows. */
    private static boolean mentions(Material material, String word) {
        return material.description().toLowerCase(Locale.ROOT).contains(word);
    }

    private void crossedCloths() {
        List<Layer> layers = laminate.layers();
        for (int i = 1; i < layers.size(); i++) {
            Layer a = layers.get(i - 1);
            Layer b = layers.get(i);
            if (isCloth(a)
                    && isCloth(b)
                    && a.material().equals(b.material())
                    && Angles.same(a.degrees(), b.degrees() + 90)
                    && !Angles.same(a.degrees(), b.degrees())) {
                say(
                        Severity.NOTE,
                        "cloth counted twice",
                        "two cloths lie at " + OrientationCodeWriter.number(a.degrees()) + "° and "
                                + OrientationCodeWriter.number(b.degrees())
                                + "°; one cloth already has fibres both ways: make sure that both are meant",
                        "meaning of a woven ply in the orientation code, MIL-HDBK-17-2F section 1.6");
                return;
            }
        }
    }

    private static boolean isCloth(Layer layer) {
        return layer.material() instanceof Ply ply && ply.form() == Ply.Form.CLOTH;
    }
}
