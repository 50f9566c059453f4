// SPDX-License-Identifier: Apache-2.0
package tubwright.desk.answer;

import java.util.List;
import tubwright.engine.make.build.BuildPlan;
import tubwright.engine.make.build.BuildShop;
import tubwright.engine.make.build.Costs;

/**
 * From pattern to delivery.
 *
 * @param plan everything in its time
 * @param costs by step
 * @param shop how the shop works
 */
public record BuildAnswer(BuildPlan plan, Costs costs, BuildShop shop) {
    /** What the figures rest on. */
    public static final String RESTS =
            "Hours, waits and prices are rough ones without a source until you put your own into"
                    + " shop.yaml. Scrap, repair, profit and"
                    + " what is bought ready-made are not in it.";

    /** How the shop works, in words. */
    public String works() {
        long days = shop.calendar().days().size();
        return days + " days a week, " + trim(shop.calendar().seconds() / 3600) + " h a day from "
                + shop.calendar().first() + ", " + counted(shop.teams(), "team") + " of " + shop.people() + ", "
                + counted(shop.autoclaves(), "autoclave")
                + " with " + shop.load() + " of a kind in a run";
    }

    private static String counted(int number, String word) {
        return number + " " + word + (number == 1 ? "" : "s");
    }

    private static String trim(double hours) {
        return hours == Math.rint(hours) ? Long.toString((long) hours) : Double.toString(hours);
    }

    /** Numbers of tubs of which money is told: the first, the last, and those of {@link KitAnswer#NUMBERS} between. */
    public List<Integer> numbers() {
        return KitAnswer.NUMBERS.stream().filter(n -> n <= plan.tubs()).toList();
    }
}
