// SPDX-License-Identifier: Apache-2.0
package tubwright.engine.trim;

/**
 * A derivative field of the nominal tub: v = K₀⁻¹ ΔK u₀ of a sample change. Told apart by identity; not to be modified.
 */
final class Field {
    private final Change change;
    private final double[] displacements;
    private final double load;

    /**
     * @param change the sample
     * @param displacements v, 6 per node
     * @param load fᵀv, J
     */
    Field(Change change, double[] displacements, double load) {
        this.change = change;
        this.displacements = displacements;
        this.load = load;
    }

    Change change() {
        return change;
    }

    double[] displacements() {
        return displacements;
    }

    double load() {
        return load;
    }
}
