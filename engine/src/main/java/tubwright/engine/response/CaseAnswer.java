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
 * @param sheet how thin metal sheet stands under the load, where there is any
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
        Fields fields,
        Optional<SheetState> sheet) {

    /** Of a tub without thin metal sheet. */
    public CaseAnswer(
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
        this(
                name,
                kind,
                stiffness,
                frontStation,
                rearStation,
                includes,
                load,
                twistLine,
                energy,
                fields,
                Optional.empty());
    }

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

    /** The stiffness with the sheet as it stands under the load: buckled where it buckles. N·m/rad or N/m. */
    public double stiffnessUnderLoad() {
        return stiffness.value() * sheet.map(SheetState::stiffnessLeft).orElse(1.0);
    }

    public CaseAnswer {
        energy = List.copyOf(energy);
    }
}
