// SPDX-License-Identifier: Apache-2.0
package tubwright.desk.console;

import static tubwright.desk.text.Conversions.perDegree;
import static tubwright.desk.text.Figures.fixed;
import static tubwright.desk.text.Figures.plusMinus;
import static tubwright.desk.text.Figures.significant;

import java.util.ArrayList;
import java.util.List;
import tubwright.desk.answer.RigExplainAnswer;
import tubwright.engine.rig.explain.Doubt;
import tubwright.engine.rig.explain.Explanation;
import tubwright.engine.rig.explain.Segment;
import tubwright.engine.rig.explain.Update;

/** Sentences about an explained test, the same on the console and on the page. */
public final class RigExplainWords {
    private static final String GAP = " ";

    private RigExplainWords() {}

    /**
     * What the test says, the most telling first.
     *
     * @param torque greatest of the test, N·m, at which angles are told
     */
    public static List<String> verdict(Explanation told, double torque) {
        List<String> words = new ArrayList<>();
        if (!told.update().converged()) {
            words.add("The search did not come to rest: take what follows as a hint only.");
        }
        List<Segment> standing = told.standingOut();
        if (standing.isEmpty()) {
            words.add("No stretch of the tub twists otherwise than designed by more than the readings can tell.");
        }
        for (Segment each : standing.stream().limit(3).toList()) {
            words.add("Between x = " + fixed(1000 * each.from(), 0, GAP) + " and " + fixed(1000 * each.to(), 0, GAP)
                    + " mm it twists "
                    + plusMinus(
                            Math.toDegrees(Math.abs(each.excess()) * torque),
                            Math.toDegrees(2 * each.deviation() * torque),
                            GAP)
                    + "° " + (each.excess() > 0 ? "more" : "less") + " than designed at "
                    + significant(torque, 3, GAP) + " N·m"
                    + each.guilty()
                            .map(d -> ": " + blame(told.update(), d) + ".")
                            .orElse("; no single stiffness in question explains it. Look at the layup and the holes"
                                    + " there."));
        }
        if (told.leftOver() > 2) {
            words.add("What was read still differs from the model by " + fixed(told.leftOver(), 1, GAP)
                    + " standard uncertainties on the average: something acts that the model has no name for.");
        }
        return words;
    }

    private static String blame(Update update, Doubt doubt) {
        int i = update.doubts().indexOf(doubt);
        double mean = update.mean()[i];
        double two = 1.96 * update.deviation(i);
        if (doubt.is(Doubt.Kind.RIG_GIVE)) {
            return "the rig turns with it, by " + fixed(100 * mean, 0, GAP) + " ± " + fixed(100 * two, 0, GAP)
                    + " % of the whole twist";
        }
        boolean softer = mean < 0;
        double factor = Math.exp(Math.abs(mean));
        if (Math.abs(mean) < 0.25) {
            return doubt.name() + " is " + fixed(100 * Math.abs(1 - Math.exp(mean)), 0, GAP) + " % "
                    + (softer ? "below" : "above") + " what was designed ("
                    + fixed(100 * (Math.exp(mean - two) - 1), 0, GAP) + " to "
                    + fixed(100 * (Math.exp(mean + two) - 1), 0, GAP) + " %)";
        }
        return doubt.name() + " is " + significant(factor, 2, GAP) + " times " + (softer ? "softer" : "stiffer")
                + " than designed (" + significant(Math.exp(Math.abs(mean) - two), 2, GAP) + " to "
                + significant(Math.exp(Math.abs(mean) + two), 2, GAP) + " times)";
    }

    /** The factor's 95 % range before the test. */
    public static String before(Doubt doubt) {
        double two = 1.96 * doubt.spread();
        return doubt.is(Doubt.Kind.RIG_GIVE)
                ? "0 ± " + significant(two, 2, GAP)
                : significant(Math.exp(-two), 2, GAP) + " to " + significant(Math.exp(two), 2, GAP);
    }

    /** The factor with its 95 % range after the test. */
    public static String after(Update update, int i) {
        double mean = update.mean()[i];
        double two = 1.96 * update.deviation(i);
        return update.doubts().get(i).is(Doubt.Kind.RIG_GIVE)
                ? significant(mean, 2, GAP) + " ± " + significant(two, 2, GAP)
                : significant(Math.exp(mean), 2, GAP) + " (" + significant(Math.exp(mean - two), 2, GAP) + " to "
                        + significant(Math.exp(mean + two), 2, GAP) + ")";
    }

    /** How much the test says of a doubt. */
    public static String learnt(Update update, int i) {
        double learnt = update.learnt(i);
        if (learnt >= Explanation.SETTLED) {
            return "settled";
        }
        return learnt < Explanation.SILENT
                ? "next to nothing"
                : "something: " + fixed(100 * learnt, 0, GAP) + " % narrower";
    }

    /** Pairs that the test cannot tell apart. */
    public static List<String> alike(Explanation told) {
        List<String> words = new ArrayList<>();
        for (Explanation.Alike pair : told.likeness().stream().limit(4).toList()) {
            words.add(told.update().doubts().get(pair.first()).name() + " and "
                    + told.update().doubts().get(pair.second()).name()
                    + " cannot be told apart by these gauges (correlation " + fixed(pair.correlation(), 2, GAP) + ").");
        }
        return words;
    }

    /** What the logbook keeps of it: the tub as built, and each prediction with its score. */
    public static List<String> log(RigExplainAnswer answer) {
        Explanation told = answer.explanation();
        List<String> words = new ArrayList<>();
        words.add("Explained " + answer.reading().readings().source() + ": as built "
                + plusMinus(perDegree(told.calibrated()), perDegree(told.expanded()), GAP)
                + " N·m/deg (95 %), designed "
                + fixed(perDegree(told.predicted()), 0, GAP)
                + (told.standingOut().isEmpty()
                        ? "; no stretch stands out"
                        : told.standingOut()
                                .getFirst()
                                .guilty()
                                .map(g -> "; most of it: " + g.name())
                                .orElse("; a stretch stands out that no one factor explains")));
        answer.foretold()
                .forEach(f -> words.add(foretold(f)
                        + answer.reading().readings().setup().mass().stream()
                                .filter(_ -> Double.isFinite(f.mass()))
                                .mapToObj(m -> " Weighed " + fixed(m, 2, GAP) + " kg, foretold "
                                        + fixed(f.mass(), 2, GAP) + ".")
                                .findFirst()
                                .orElse("")));
        return words;
    }

    /** How a prediction fared. */
    public static String foretold(RigExplainAnswer.Foretold each) {
        return "Foretold as \"" + each.name() + "\" (" + each.stamp() + "): "
                + plusMinus(perDegree(each.stiffness()), perDegree(1.96 * each.spread() * each.stiffness()), GAP)
                + " N·m/deg. Measured: " + fixed(perDegree(each.measured()), 0, GAP) + ". "
                + (each.held() ? "The prediction held" : "The prediction did not hold") + " ("
                + fixed(each.score(), 1, GAP) + " standard deviations off).";
    }

    /** rad/(N·m) as degrees for each kN·m. */
    public static String milli(double perTorque) {
        return fixed(Math.toDegrees(1000 * perTorque), 4, GAP);
    }
}
