// SPDX-License-Identifier: Apache-2.0
package tubwright.engine.safety.crush;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import tubwright.engine.strength.Check;

/**
 * A flat round punch pushed through a sandwich, slowly: each face is sheared out round the punch, the core before it is
 * crushed. An estimate of energy for comparing panels and planning tests.
 *
 * <p>Force to shear a face of thickness t out round a punch of diameter d: P = π d t τ (perimeter shear, as the panel tests of
 * student rules measure it). Energy of that shear, the force falling evenly to nought over the face's thickness: ½ P t. Core:
 * crush stress times the punch's area times its usable thickness. Friction of the punch in the hole, bending of the panel and
 * petals of the faces are left out, so that a panel that bends before it is punched takes more energy than is said here.
 */
public final class Penetration {
    /** Above this speed stress waves and rate count and a slow estimate says nothing; common practice, no source. */
    public static final double FASTEST = 20;

    private Penetration() {}

    /**
     * One face.
     *
     * @param thickness m
     * @param punchShear shear strength through the thickness, Pa; empty where it is not known
     */
    public record Face(double thickness, OptionalDouble punchShear) {
        public Face {
            if (!(thickness > 0)) {
                throw new IllegalArgumentException("a face is thicker than zero, not " + thickness + " m");
            }
        }

        /** Force that shears it out round a punch, N. */
        public OptionalDouble force(double diameter) {
            return punchShear.isPresent()
                    ? OptionalDouble.of(Math.PI * diameter * thickness * punchShear.getAsDouble())
                    : OptionalDouble.empty();
        }
    }

    /**
     * What it takes.
     *
     * @param firstPeak N, of the outer face alone; not a number where it is not known
     * @param energy J, to get through; what is known of it
     * @param notChecked what is missing: without it the figures are no answer
     * @param validity where the estimate ends
     */
    public record Answer(double firstPeak, double energy, List<Check.NotChecked> notChecked, List<String> validity) {
        public Answer {
            notChecked = List.copyOf(notChecked);
            validity = List.copyOf(validity);
        }
    }

    /**
     * Works it out.
     *
     * @param outer hit first
     * @param inner behind the core
     * @param coreThickness m; 0 for a solid laminate, whose other half is the inner face
     * @param core how it crushes along its thickness; only a crush stress counts
     * @param diameter of the punch, m
     * @param speed m/s
     */
    public static Answer of(
            Face outer, Face inner, double coreThickness, Optional<CrushData> core, double diameter, double speed) {
        if (!(diameter > 0) || !(coreThickness >= 0) || !(speed >= 0)) {
            throw new IllegalArgumentException("diameter, core thickness and speed of a punch are not negative");
        }
        List<Check.NotChecked> missing = new ArrayList<>();
        List<String> validity = new ArrayList<>();
        double energy = 0;
        for (Face face : List.of(outer, inner)) {
            OptionalDouble force = face.force(diameter);
            if (force.isEmpty()) {
                missing.add(new Check.NotChecked(
                        (face == outer ? "outer" : "inner") + " face punched out",
                        List.of("its shear strength through the thickness, from a perimeter shear test")));
            }
            energy += 0.5 * force.orElse(0) * face.thickness();
            if (diameter < 4 * face.thickness()) {
                validity.add(
                        "the punch is no wider than four times a face is thick: the face fails otherwise than round its"
                                + " perimeter");
            }
        }
        if (coreThickness > 0) {
            boolean known = core.isPresent() && core.get().measure() == CrushData.Measure.STRESS;
            if (!known) {
                missing.add(new Check.NotChecked(
                        "core crushed before the punch", List.of("its crush stress (not the bare strength)")));
            } else {
                CrushData data = core.get();
                energy += data.value() * 0.25 * Math.PI * diameter * diameter * data.usableShare() * coreThickness;
            }
        }
        if (speed > FASTEST) {
            validity.add("faster than " + FASTEST + " m/s: an estimate of slow punching says nothing there");
        }
        return new Answer(outer.force(diameter).orElse(Double.NaN), energy, missing, validity);
    }
}
