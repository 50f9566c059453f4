// SPDX-License-Identifier: Apache-2.0
package tubwright.engine.safety.crush;

import java.util.OptionalDouble;
import tubwright.engine.material.Provenance;

/**
 * How a material crushes steadily.
 *
 * @param name of the material and its form
 * @param measure what the value is
 * @param value Pa over the gross area, or J/kg of crushed material, quasi-static
 * @param usableShare of its length that crushes before it is solid; (0, 1]
 * @param dynamicOverStatic force at impact speed over quasi-static force; empty where it is not known
 * @param provenance where the values come from
 */
public record CrushData(
        String name,
        Measure measure,
        double value,
        double usableShare,
        OptionalDouble dynamicOverStatic,
        Provenance provenance) {
    /** What a value of crush data is. */
    public enum Measure {
        /** Crush stress over the gross area, Pa: honeycomb and foam. */
        STRESS,
        /** Energy per mass that is crushed, J/kg: tubes, cones and edges of laminate. */
        SPECIFIC_ENERGY
    }

    public CrushData {
        if (!(value > 0) || !Double.isFinite(value)) {
            throw new IllegalArgumentException(
                    name + ": a crush value of " + value + "; it is greater than zero and finite");
        }
        if (!(usableShare > 0 && usableShare <= 1)) {
            throw new IllegalArgumentException(
                    name + ": a usable share of " + usableShare + "; it is greater than zero and at most one");
        }
        if (dynamicOverStatic.isPresent() && !(dynamicOverStatic.getAsDouble() > 0)) {
            throw new IllegalArgumentException(name + ": a rate factor is greater than zero");
        }
    }

    /** The same with a factor from quasi-static to impact speed. */
    public CrushData atRate(double factor, Provenance source) {
        return new CrushData(
                name,
                measure,
                value,
                usableShare,
                OptionalDouble.of(factor),
                new Provenance(provenance.source() + "; rate factor " + factor + ": " + source, provenance.trust()));
    }
}
