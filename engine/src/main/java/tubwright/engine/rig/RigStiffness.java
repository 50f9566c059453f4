// SPDX-License-Identifier: Apache-2.0
package tubwright.engine.rig;

/**
 * Stiffness of what lies in series with the tub and was not measured away: the rig between held gauge and ground.
 *
 * @param stiffness N·m/rad
 * @param standardUncertainty N·m/rad; 0 where none was stated
 * @param source in words
 */
public record RigStiffness(double stiffness, double standardUncertainty, String source) {
    /** From a test of a dummy of known stiffness: 1/K_rig = 1/K_measured − 1/K_dummy. */
    public static RigStiffness ofDummy(double measured, double dummy) {
        return new RigStiffness(Series.without(measured, dummy), 0, "from a dummy of known stiffness");
    }

    /**
     * What is left of a stiffness when the rig's flexibility is taken out.
     *
     * @throws ReadingsException if the rig alone would be softer than what was measured
     */
    public double takenOutOf(double measured) {
        return Series.without(measured, stiffness);
    }
}
