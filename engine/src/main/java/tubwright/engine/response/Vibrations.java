// SPDX-License-Identifier: Apache-2.0
package tubwright.engine.response;

import java.util.EnumMap;
import java.util.Map;
import java.util.Optional;
import tubwright.engine.structure.Mode;
import tubwright.engine.structure.Modes;

/**
 * Natural frequencies.
 *
 * @param modes the lowest modes
 * @param meshErrors half-width of the error that the mesh brings to the first frequency of a motion, Hz; only of motions
 *     found on two meshes
 */
public record Vibrations(Modes modes, Map<Mode.Motion, Double> meshErrors) {
    public Vibrations {
        meshErrors = Map.copyOf(meshErrors);
    }

    /** The first mode of a motion of sections; empty where it lies beyond {@link #known()}. */
    public Optional<Mode> first(Mode.Motion motion) {
        return modes.first(motion);
    }

    /** Up to here, Hz, every mode is known, by the count. */
    public double known() {
        return Math.sqrt(Math.max(0, modes.count().bound())) / (2 * Math.PI);
    }

    /** The same with mesh errors judged from a coarser mesh; see {@link CaseBuckling#against}. */
    Vibrations against(Vibrations coarser, double ratio) {
        Map<Mode.Motion, Double> errors = new EnumMap<>(Mode.Motion.class);
        for (Mode.Motion motion : Mode.Motion.values()) {
            Optional<Mode> fine = first(motion);
            Optional<Mode> coarse = coarser.first(motion);
            if (motion != Mode.Motion.RIGID && fine.isPresent() && coarse.isPresent()) {
                double change = Math.abs(fine.get().frequency() - coarse.get().frequency());
                errors.put(motion, change / (ratio * ratio - 1));
            }
        }
        return new Vibrations(modes, errors);
    }
}
