// SPDX-License-Identifier: Apache-2.0
package tubwright.engine.safety.crush;

import java.util.List;
import java.util.OptionalDouble;
import tubwright.engine.material.Provenance;
import tubwright.engine.material.Trust;

/**
 * Crush values that have a source, for first sizing. All are of one layup, shape and trigger each; a composite structure is
 * crushed in a test before anybody relies on it.
 */
public final class CrushLibrary {
    private static final double PSI = 6894.757293168;
    private static final Provenance THREE_CORES = new Provenance(
            "tests of three aluminium cores, student single-seater, public repository", Trust.TRANSCRIBED);

    /** Carbon/epoxy tube, chamfered 45°. */
    public static final CrushData CARBON_TUBE = new CrushData(
            "carbon/epoxy tube, 45° chamfer",
            CrushData.Measure.SPECIFIC_ENERGY,
            86e3,
            0.85,
            OptionalDouble.empty(),
            new Provenance(
                    "best of a series, quasi-static: J. Compos. Mater. 43 (2009) 2183, abstract; usable share from memory",
                    Trust.TRANSCRIBED));

    /** Sandwich crushed on edge, nothing through its thickness. */
    public static final CrushData SANDWICH_EDGE = new CrushData(
            "sandwich on edge, plain",
            CrushData.Measure.SPECIFIC_ENERGY,
            11.5e3,
            0.8,
            OptionalDouble.empty(),
            new Provenance("Blok et al., stored text; usable share from memory", Trust.TRANSCRIBED));

    /** Sandwich crushed on edge, faces tufted through the core. */
    public static final CrushData TUFTED_SANDWICH_EDGE = new CrushData(
            "sandwich on edge, tufted",
            CrushData.Measure.SPECIFIC_ENERGY,
            20.5e3,
            0.8,
            OptionalDouble.empty(),
            new Provenance("Blok et al., stored text; usable share from memory", Trust.TRANSCRIBED));

    /** Aluminium tube. */
    public static final CrushData ALUMINIUM_TUBE = new CrushData(
            "aluminium tube",
            CrushData.Measure.SPECIFIC_ENERGY,
            30e3,
            0.7,
            OptionalDouble.empty(),
            new Provenance("J. Compos. Mater. 43 (2009) 2183, abstract; usable share from memory", Trust.TRANSCRIBED));

    private CrushLibrary() {}

    /** All laminates and tubes. */
    public static List<CrushData> all() {
        return List.of(CARBON_TUBE, SANDWICH_EDGE, TUFTED_SANDWICH_EDGE, ALUMINIUM_TUBE);
    }

    /**
     * An aluminium honeycomb of which both strengths were measured.
     *
     * @param density kg/m³
     * @param bare flatwise compressive strength
     * @param crush stress at which it goes on folding
     */
    public record Core(double density, BareStrength bare, CrushData crush) {}

    /** Three aluminium honeycombs: 72.1, 83.3 and 28.8 kg/m³. */
    public static List<Core> cores() {
        return List.of(core(72.1, 539, 255), core(83.3, 625, 235), core(28.8, 115, 40));
    }

    private static Core core(double density, double bare, double crush) {
        return new Core(
                density,
                new BareStrength(bare * PSI, THREE_CORES),
                new CrushData(
                        "aluminium honeycomb, " + density + " kg/m³",
                        CrushData.Measure.STRESS,
                        crush * PSI,
                        0.7,
                        OptionalDouble.empty(),
                        THREE_CORES));
    }
}
