// SPDX-License-Identifier: Apache-2.0
package tubwright.engine.safety.crush;

import java.util.List;

/** Crush force over stroke of a row of sections, the front one first. */
final class CrushLaw {
    private final List<CrushSection> sections;
    private final double stroke;

    CrushLaw(List<CrushSection> sections) {
        this.sections = List.copyOf(sections);
        stroke = sections.stream().mapToDouble(CrushSection::stroke).sum();
    }

    /** Until it is solid, m. */
    double stroke() {
        return stroke;
    }

    /** N, at a stroke within it; beyond it the force of its last station. */
    double force(double at) {
        double left = at;
        for (CrushSection each : sections) {
            if (left <= each.stroke()) {
                return each.force(Math.max(0, left) / each.stroke());
            }
            left -= each.stroke();
        }
        return sections.getLast().force(1);
    }
}
