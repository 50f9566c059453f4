// SPDX-License-Identifier: Apache-2.0
package tubwright.engine.response;

import java.util.List;
import java.util.Optional;

/**
 * What a case came to.
 *
 * @param name the case
 * @param kind torsion or bending
 * @param stiffness N·m/rad for torsion, N/m for bending
 * @param frontStation x between which the answer was read, m (for bending the station of the reading)
 * @param rearStation see above
 * @param includes what the figure includes, in words ("skin, walls, joints; no engine, no suspension")
 * @param load N·m or N that was applied
 * @param twistLine for torsion, from the finest mesh
 * @param energy shares, largest first
 * @param fields the finest mesh's fields
 */
public record CaseAnswer(
        String name,
        Kind kind,
        Converged stiffness,
        double frontStation,
        double rearStation,
        String includes,
        double load,
        Optional<TwistLine> twistLine,
        List<EnergyShare> energy,
        Fields fields) {
    /** Torsion or bending. */
    public enum Kind {
        TORSION,
        BENDING
    }

    /**
     * Fields on the finest mesh.
     *
     * @param displacements 6 numbers per node: translations m, rotations rad
     * @param energyDensities J/m² per element
     */
    public record Fields(double[] displacements, double[] energyDensities) {}

    /**
     * Stiffness between the hardpoints themselves on the finest mesh: load² over twice the strain energy, the give of
     * inserts and of the skin beside them included. N·m/rad for torsion, N/m for bending; NaN without energy.
     */
    public double stiffnessAtHardpoints() {
        double energy = energy().stream().mapToDouble(EnergyShare::energy).sum();
        return energy > 0 ? load * load / (2 * energy) : Double.NaN;
    }

    public CaseAnswer {
        energy = List.copyOf(energy);
    }
}
