// SPDX-License-Identifier: Apache-2.0
package tubwright.engine.make.kit;

import java.util.List;
import tubwright.engine.make.flat.FlatPattern;
import tubwright.engine.make.flat.Outlines;
import tubwright.engine.material.Material;
import tubwright.engine.material.PropertyValue;

/**
 * Working and autoclave time of a tub by step, from stated rates.
 *
 * @param steps in order
 * @param learning share of the time that each doubling of the number made leaves
 */
public record Hours(List<Step> steps, double learning) {
    /**
     * One step.
     *
     * @param name what is done
     * @param seconds of work
     * @param source where the rates come from
     */
    public record Step(String name, double seconds, String source) {}

    /** Keeps a list of its own. */
    public Hours {
        steps = List.copyOf(steps);
    }

    /**
     * Time to lay an amount at a rate that is reached with a delay: √((x/v)² + 2 τ x/v), the usual inverse of the
     * first-order law x = v (t − τ (1 − exp(−t/τ))) (Gutowski, Hoult, Dillon, Neoh, Muter, Kim and Tse 1994); 7 % short at
     * the worst, near x = vτ/2.
     *
     * @param amount x
     * @param rate v
     * @param delay τ, s
     */
    public static double firstOrder(double amount, double rate, double delay) {
        double t = amount / rate;
        return Math.sqrt(t * t + 2 * delay * t);
    }

    /**
     * Time of the n-th tub over that of the first: n to the power log₂ of the share. Wright 1936 found that law for the average
     * of all made so far; for the n-th itself it is the usual later reading (Crawford).
     */
    public static double learned(int number, double share) {
        return Math.pow(number, Math.log(share) / Math.log(2));
    }

    /** Time to lay a pattern, s. */
    public static double laying(Material material, double area, ShopData.Times times) {
        boolean tape = Stock.of(material) == Stock.TAPE;
        PropertyValue rate = tape ? times.tapeRate() : times.clothRate();
        PropertyValue delay = tape ? times.tapeDelay() : times.clothDelay();
        return times.slower().si() * firstOrder(area, rate.si(), delay.si());
    }

    /** Time to cut a pattern out, s. */
    public static double cutting(FlatPattern flat, ShopData.Times times) {
        double outline = flat.outlines().stream().mapToDouble(Outlines::length).sum();
        return outline / times.cutRate().si() + times.cutEach().si();
    }

    /**
     * Of a kit of patterns.
     *
     * @param cuts all patterns
     * @param cures times in the autoclave, over all pieces
     */
    public static Hours of(List<KitNest.Cut> cuts, int cures, ShopData.Times times) {
        double cutting = 0;
        double laying = 0;
        int plies = 0;
        for (KitNest.Cut cut : cuts) {
            cutting += cutting(cut.flat(), times);
            laying += laying(cut.material(), cut.flat().area(), times);
            plies++;
        }
        double debulks = Math.ceil(plies / times.debulkEvery().si());
        return new Hours(
                List.of(
                        new Step("cutting", cutting, source(times.cutRate())),
                        new Step("laying", laying, source(times.clothRate())),
                        new Step("debulking", debulks * times.debulk().si(), source(times.debulk())),
                        new Step("bagging", cures * times.bagging().si(), source(times.bagging())),
                        new Step("autoclave", cures * times.autoclave().si(), source(times.autoclave())),
                        new Step("demoulding", cures * times.demoulding().si(), source(times.demoulding()))),
                times.learning().si());
    }

    private static String source(PropertyValue value) {
        return value.provenance().toString();
    }

    /** Work of the n-th tub, s; the autoclave learns nothing. */
    public double work(int number) {
        return steps.stream()
                        .filter(s -> !s.name().equals("autoclave"))
                        .mapToDouble(Step::seconds)
                        .sum()
                * learned(number, learning);
    }
}
