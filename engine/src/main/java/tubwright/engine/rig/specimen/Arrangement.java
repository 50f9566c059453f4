// SPDX-License-Identifier: Apache-2.0
package tubwright.engine.rig.specimen;

/**
 * How a beam is loaded between two supports a span L apart. Movement in the middle of the span over the load:
 * L³/(b EI) + L/(s S), greatest moment P L/m, shear force P/2 (beam theory with shear, Timoshenko 1955; the same factors
 * as in ASTM D7250, from memory).
 */
public enum Arrangement {
    /** One load in the middle. */
    THREE_POINT("three-point", 48, 4, 4),
    /** Two loads, each a quarter of the span from its support. */
    QUARTER_POINT("quarter-point", 768.0 / 11, 8, 8),
    /** Two loads, each a third of the span from its support. */
    THIRD_POINT("third-point", 1296.0 / 23, 6, 6);

    private final String word;
    private final double bending;
    private final double shear;
    private final double moment;

    Arrangement(String word, double bending, double shear, double moment) {
        this.word = word;
        this.bending = bending;
        this.shear = shear;
        this.moment = moment;
    }

    /** As written in a file. */
    public String word() {
        return word;
    }

    /** Movement in the middle over the load by bending, m/N, for EI in N·m². */
    public double bendingFlexibility(double span, double ei) {
        return span * span * span / (bending * ei);
    }

    /** Movement in the middle over the load by shear, m/N, for S in N. */
    public double shearFlexibility(double span, double s) {
        return span / (shear * s);
    }

    /** Greatest bending moment over the load, m. */
    public double momentArm(double span) {
        return span / moment;
    }
}
