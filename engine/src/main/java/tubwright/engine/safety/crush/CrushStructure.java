// SPDX-License-Identifier: Apache-2.0
package tubwright.engine.safety.crush;

import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import tubwright.engine.strength.Check;

/**
 * A crush structure of a car as its design has it.
 *
 * @param name as the designer wrote it
 * @param hit side on which it is hit
 * @param impact what comes; all that hangs on the structure
 * @param sections from the end that is hit; empty where crush data are missing
 * @param missing crush data without which there is no answer
 * @param trigger how its tip begins to crush
 * @param limits what the impact must keep to
 * @param parts what may break off behind the cell, from the front; empty where the car stays whole
 * @param bears what bulkhead and mounts bore in a test, N
 * @param bearsFrom which test
 * @param margin on the crush force for the tub behind it
 * @param onto what the force goes into, for a reader; empty where the design does not say
 */
public record CrushStructure(
        String name,
        Hit hit,
        Impact impact,
        List<CrushSection> sections,
        List<Check.NotChecked> missing,
        CrushRun.Trigger trigger,
        List<CrushLimit> limits,
        List<CrushChain.Body> parts,
        OptionalDouble bears,
        String bearsFrom,
        double margin,
        String onto) {
    /** Where a car is hit. The force on the tub points along {@link #direction}. */
    public enum Hit {
        FRONT(1, 0),
        REAR(-1, 0),
        LEFT(0, 1),
        RIGHT(0, -1);

        private final double[] direction;

        Hit(double x, double y) {
            direction = new double[] {x, y, 0};
        }

        /** Unit vector of the force on the tub, in the car's axes. */
        public double[] direction() {
            return direction.clone();
        }
    }

    public CrushStructure {
        sections = List.copyOf(sections);
        missing = List.copyOf(missing);
        limits = List.copyOf(limits);
        parts = List.copyOf(parts);
    }

    /** What the impact comes to with the car whole; empty where crush data are missing. */
    public Optional<CrushRun.Answer> whole() {
        return sections.isEmpty() || !missing.isEmpty()
                ? Optional.empty()
                : Optional.of(CrushRun.of(sections, trigger, impact));
    }

    /** The same with parts that may break off; empty where none is named or crush data are missing. */
    public Optional<CrushChain.Answer> apart() {
        if (parts.isEmpty() || sections.isEmpty() || !missing.isEmpty()) {
            return Optional.empty();
        }
        double behind = parts.stream().mapToDouble(CrushChain.Body::mass).sum();
        List<CrushChain.Body> all = new java.util.ArrayList<>();
        all.add(new CrushChain.Body("cell", impact.mass() - behind, 1, Double.POSITIVE_INFINITY));
        all.addAll(parts);
        return Optional.of(CrushChain.of(sections, all, impact.speed()));
    }

    /** Force that bulkhead and mounts must stand, N: the highest crush force times the margin; empty where not known. */
    public OptionalDouble designForce() {
        Optional<CrushRun.Answer> answer = whole();
        return answer.isPresent() && trigger.peakOverSteady().isPresent()
                ? OptionalDouble.of(margin * answer.get().peakForce())
                : OptionalDouble.empty();
    }
}
