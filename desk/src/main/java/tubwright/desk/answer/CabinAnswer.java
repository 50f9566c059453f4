// SPDX-License-Identifier: Apache-2.0
package tubwright.desk.answer;

import java.util.ArrayList;
import java.util.List;
import tubwright.desk.text.Figures;
import tubwright.engine.cabin.Body;
import tubwright.engine.cabin.Cabin;
import tubwright.engine.cabin.Driver;
import tubwright.engine.design.Design;

/**
 * Who and what has to go into a tub, held against its inner skin.
 *
 * @param tub its name
 * @param variant the variant asked about
 * @param fit what was found
 */
public record CabinAnswer(String tub, Design.Variant variant, Cabin.Fit fit) {
    private static final String GAP = " ";

    /** What was asked for. */
    public Cabin cabin() {
        return variant.cabin();
    }

    /** Sentences, the most telling first; the same on the console, in {@code check} and on the page. */
    public List<String> words() {
        List<String> words = new ArrayList<>();
        cabin().driver().ifPresent(d -> words.addAll(driver(d)));
        fit.nearest().stream().limit(1).forEach(n -> words.add(nearest(n)));
        fit.clashes().forEach(c -> words.add("\"" + c.one() + "\" and \"" + c.other() + "\" are in each other's way."));
        cabin().tank()
                .ifPresent(t -> words.add("The tank is to hold " + litres(t.holds()) + "; there is room for "
                        + litres(fit.tankRoom())
                        + (fit.tankRoom() < t.holds()
                                ? ": " + litres(t.holds() - fit.tankRoom()) + " too little."
                                : ".")));
        return words;
    }

    /** Whether something sticks out, lacks room, cannot be reached or is in the way. */
    public boolean fails() {
        return fit.nearest().stream().anyMatch(n -> n.distance() < cabin().room())
                || !fit.clashes().isEmpty()
                || cabin().driver().map(d -> d.reach() < 0).orElse(false)
                || cabin().tank().map(t -> fit.tankRoom() < t.holds()).orElse(false);
    }

    private List<String> driver(Driver d) {
        List<String> words = new ArrayList<>();
        words.add("Driver: every length that of " + (d.people() == Body.People.MEN ? "men" : "women") + " at the "
                + Figures.fixed(100 * d.share(), 0, GAP) + "th percentile, "
                + millimetres(d.length(Body.Length.STATURE)) + " tall, shoulders "
                + millimetres(d.length(Body.Length.SHOULDER_BREADTH)) + " wide, bare; crown at z = "
                + millimetres(d.onBack(d.crown())[1]) + ".");
        words.add(
                d.reach() < 0
                        ? "The legs are " + millimetres(-d.reach()) + " too short for the pedals."
                        : "The legs reach the pedals bent, with " + millimetres(d.reach()) + " to spare.");
        return words;
    }

    private String nearest(Cabin.Nearest n) {
        String where = " (x = " + millimetres(n.at()[0]) + ", z = " + millimetres(n.at()[2]) + ")";
        if (n.distance() < 0) {
            return "Does not go in: " + n.what() + ", " + millimetres(-n.distance()) + " into the skin" + where
                    + ". If that is sideways the tub is too narrow there by twice as much.";
        }
        return "Tightest: " + n.what() + ", " + millimetres(n.distance()) + " from the inner skin" + where + "; "
                + (n.distance() < cabin().room()
                        ? millimetres(cabin().room()) + " are wanted."
                        : "where that is sideways the tub could be " + millimetres(2 * (n.distance() - cabin().room()))
                                + " narrower.");
    }

    /** A length in words. */
    public static String millimetres(double metres) {
        return Figures.fixed(1000 * metres, 0, GAP) + GAP + "mm";
    }

    /** A volume in words. */
    public static String litres(double cubicMetres) {
        return Figures.fixed(1000 * cubicMetres, 1, GAP) + GAP + "l";
    }
}
