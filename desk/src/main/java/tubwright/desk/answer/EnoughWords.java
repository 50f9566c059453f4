// SPDX-License-Identifier: Apache-2.0
package tubwright.desk.answer;

import static tubwright.desk.text.Conversions.perDegree;
import static tubwright.desk.text.Figures.fixed;
import static tubwright.desk.text.Figures.percent;
import static tubwright.desk.text.Figures.significant;

/** How stiff is enough, in words. */
public final class EnoughWords {
    private EnoughWords() {}

    /**
     * What the last run makes of it.
     *
     * @param gap between groups of digits
     */
    public static String now(EnoughAnswer answer, String gap) {
        return answer.now()
                .map(now -> {
                    double arriving = answer.balance().arriving(now.between());
                    String stale = now.stale() ? " (of the design before its last change: run it again)" : "";
                    String has = "The last run" + stale + " has " + stiffness(now.between(), gap)
                            + " between the axles: " + percent(arriving) + " arrives; the front axle takes "
                            + share(answer.balance().atFront(now.between())) + " of the roll moment, "
                            + share(answer.balance().atFront(Double.POSITIVE_INFINITY)) + " were the chassis rigid.";
                    return has
                            + answer.tubNeeded()
                                    .map(k -> " With all else as it is the tub needs " + stiffness(k, gap)
                                            + " between its sections; it has " + stiffness(now.torsional(), gap) + ".")
                                    .orElse(" Inserts, hoops and engine alone are softer than that: no tub makes up for"
                                            + " them.");
                })
                .orElse("No run of this design tells what there is: tubwright run says it.");
    }

    private static String share(double share) {
        return fixed(100 * share, 1, "") + " %";
    }

    private static String stiffness(double k, String gap) {
        return significant(perDegree(k), 3, gap) + " N·m/deg";
    }
}
