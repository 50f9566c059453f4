// SPDX-License-Identifier: Apache-2.0
package tubwright.engine.strength.sandwich;

/** A narrow load pressing a face into its core. Per width unless said. */
public final class Indentation {
    private Indentation() {}

    /** λ = (k/(4 Df))^¼ of a face on its core as elastic bedding, k = Ec/tc, 1/m. */
    public static double decay(double coreModulus, double coreThickness, double faceBending) {
        return Math.pow(coreModulus / coreThickness / (4 * faceBending), 0.25);
    }

    /** Line load at which the core just reaches its crushing strength, 2 σc/λ, N/m (beam on elastic bedding; derived). */
    public static double firstCrushing(double crushingStrength, double decay) {
        return 2 * crushingStrength / decay;
    }

    /** Line load at which face hinges and core both yield, 2 tf √(σc σf), N/m (Ashby; Steeves and Fleck 2004; from memory). */
    public static double plastic(double faceThickness, double crushingStrength, double faceStrength) {
        return 2 * faceThickness * Math.sqrt(crushingStrength * faceStrength);
    }

    /**
     * Line load at which an elastic face loses its footing on a yielding core in three-point bending, tf (π² d Ef
     * σc²/(3 L))^⅓, N/m (Steeves and Fleck 2004; from memory).
     */
    public static double elasticFacePlasticCore(
            double faceThickness, double faceModulus, double crushingStrength, double distance, double span) {
        double inner = Math.PI * Math.PI * distance * faceModulus * crushingStrength * crushingStrength / (3 * span);
        return faceThickness * Math.cbrt(inner);
    }
}
