// SPDX-License-Identifier: Apache-2.0
package tubwright.engine.safety.crush;

import java.util.OptionalDouble;
import tubwright.engine.material.Provenance;
import tubwright.engine.material.Trust;

/**
 * The flatwise compressive strength of a bare honeycomb: the peak at which its walls first buckle. It is no crush stress,
 * which is what goes on after that and about half as much; sizing energy with the bare strength is about twice too
 * hopeful. The two are kept apart as types, so that one cannot stand where the other belongs.
 *
 * @param value Pa
 * @param provenance where it comes from
 */
public record BareStrength(double value, Provenance provenance) {
    /** What is left of the bare strength once the walls fold. */
    static final double SHARE = 0.5;

    public BareStrength {
        if (!(value > 0)) {
            throw new IllegalArgumentException(
                    "a bare compressive strength of " + value + " Pa: it is greater than zero");
        }
    }

    /**
     * A crush stress guessed where none was measured: half the bare strength (a supplier's brochure on energy absorption
     * says "about half"; three aluminium cores read 0.35 to 0.47, so that even half may be hopeful).
     *
     * @param name of the core
     * @param usableShare of its thickness that crushes before it bottoms
     */
    public CrushData crushGuessed(String name, double usableShare) {
        return new CrushData(
                name,
                CrushData.Measure.STRESS,
                SHARE * value,
                usableShare,
                OptionalDouble.empty(),
                new Provenance(
                        "half the bare compressive strength (" + provenance + "): common practice, measure it",
                        Trust.ASSUMED));
    }
}
