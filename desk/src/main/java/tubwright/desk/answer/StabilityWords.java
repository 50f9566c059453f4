// SPDX-License-Identifier: Apache-2.0
package tubwright.desk.answer;

import static tubwright.desk.text.Figures.fixed;
import static tubwright.desk.text.Figures.percent;
import static tubwright.desk.text.Figures.plusMinus;
import static tubwright.desk.text.Figures.significant;

import java.util.Optional;
import tubwright.engine.response.Buckle;
import tubwright.engine.response.CaseBuckling;
import tubwright.engine.response.Stability;
import tubwright.engine.response.Vibrations;
import tubwright.engine.structure.Mode;

/** Stability and vibration in words, the same on the console and the page. */
public final class StabilityWords {
    private static final String ERROR = " ± is the mesh error.";

    /** What a factor is. */
    public static final String FACTOR =
            "Factor on the loads of the case at which a tub of perfect shape buckles by linear"
                    + " theory. Thin curved panels fail well below it; no knock-down is taken.";

    /** The same where its error stands beside it. */
    public static final String BUCKLING = FACTOR + ERROR;

    /** What the counts of all cases prove. */
    public static final String COUNTED = "Counted by the signs of pivots: no lower factor was missed.";

    /** What a frequency is. */
    public static final String FREQUENCY = "The bare tub, without what is bolted to it unless the design gives it mass."
            + " Modes are named by the motion of sections that holds most of their kinetic energy.";

    /** The same where its error stands beside it. */
    public static final String VIBRATION = FREQUENCY + ERROR;

    private StabilityWords() {}

    /** The factor with its error, or why there is none. */
    public static String factor(CaseBuckling buckling, String gap) {
        if (!buckling.note().isEmpty()) {
            return buckling.note();
        }
        return buckling.lowest()
                .map(b -> plusMinus(b.factor(), buckling.meshError(), gap))
                .orElse("does not buckle");
    }

    /** Zone, strip or wall, and share of the energy. */
    public static String where(Buckle mode) {
        String zone = mode.zone().equals(mode.panel()) ? mode.zone() : mode.zone() + " (" + mode.panel() + ")";
        return zone + ", " + percent(mode.share());
    }

    /** {@code x 430, y 170, z 300 mm}. */
    public static String place(double[] x, String gap) {
        return "x " + fixed(1000 * x[0], 0, gap) + ", y " + fixed(1000 * x[1], 0, gap) + ", z "
                + fixed(1000 * x[2], 0, gap) + " mm";
    }

    /** What the count of factors proves. */
    public static String counted(CaseBuckling buckling, String gap) {
        return buckling.modes().isEmpty()
                ? ""
                : buckling.count().counted() + " below "
                        + significant(buckling.count().bound(), 4, gap) + ", all found";
    }

    /** What the count of modes proves. */
    public static String counted(Vibrations vibrations, String gap) {
        return "Counted by the signs of pivots: " + vibrations.modes().count().counted() + " modes below "
                + significant(vibrations.known(), 4, gap) + " Hz, rigid motions among them, and all of them found.";
    }

    /** The first frequency of a motion with its error, or that it lies beyond what was computed. */
    public static String first(Vibrations vibrations, Mode.Motion motion, String gap) {
        Optional<Mode> mode = vibrations.first(motion);
        return mode.map(m ->
                        plusMinus(m.frequency(), vibrations.meshErrors().getOrDefault(motion, Double.NaN), gap) + " Hz")
                .orElse("above " + significant(vibrations.known(), 3, gap) + " Hz, not among the modes computed");
    }

    /** The lowest factor for a table; a dash where nothing buckles. */
    public static String lowest(Stability stability, String gap) {
        return stability
                .first()
                .flatMap(CaseBuckling::lowest)
                .map(b -> significant(b.factor(), 3, gap))
                .orElse("–");
    }

    /** The first frequency of torsion for a table. */
    public static String torsion(Stability stability, String gap) {
        return stability
                .free()
                .map(v -> v.first(Mode.Motion.TORSION)
                        .map(m -> significant(m.frequency(), 3, gap))
                        .orElse("> " + significant(v.known(), 3, gap)))
                .orElse("–");
    }

    /** The motions of sections worth a line of their own. */
    public static Mode.Motion[] motions() {
        return new Mode.Motion[] {Mode.Motion.TORSION, Mode.Motion.VERTICAL, Mode.Motion.SIDEWAYS};
    }
}
