// SPDX-License-Identifier: Apache-2.0
package tubwright.engine.safety.crush;

/**
 * One length of a crush structure, its area changing evenly along it.
 *
 * @param name for the reader
 * @param length m
 * @param data how it crushes
 * @param frontArea at the end that is hit first, m²: gross for a crush stress, of the wall for a specific energy
 * @param rearArea at the other end, m²
 * @param density of the wall, kg/m³; counts for a specific energy only
 */
public record CrushSection(
        String name, double length, CrushData data, double frontArea, double rearArea, double density) {
    public CrushSection {
        positive(name, "length", length);
        positive(name, "area in front", frontArea);
        positive(name, "area at the rear", rearArea);
        if (data.measure() == CrushData.Measure.SPECIFIC_ENERGY) {
            positive(name, "density", density);
        }
    }

    private static void positive(String name, String what, double value) {
        if (!(value > 0) || !Double.isFinite(value)) {
            throw new IllegalArgumentException(
                    name + ": a " + what + " of " + value + " (SI); it is greater than zero and finite");
        }
    }

    /** Stroke until it is solid, m. */
    public double stroke() {
        return data.usableShare() * length;
    }

    /**
     * Steady crush force when so much of its stroke is used, N. A structure folds from its front, so that at a share s of the
     * stroke the front stands at a share s of the length.
     *
     * <p>Of specific energy e, each length dx of a wall of area A gives e ρ A dx over a stroke of usable share times dx.
     */
    public double force(double share) {
        double area = frontArea + (rearArea - frontArea) * share;
        double rate = data.dynamicOverStatic().orElse(1);
        return rate
                * area
                * switch (data.measure()) {
                    case STRESS -> data.value();
                    case SPECIFIC_ENERGY -> data.value() * density / data.usableShare();
                };
    }
}
