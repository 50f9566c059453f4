// SPDX-License-Identifier: Apache-2.0
package tubwright.engine.safety.crush;

import java.util.Locale;

/** What a rule or a body bears of an impact. Accelerations in m/s². */
public sealed interface CrushLimit {
    /** For a reader. */
    String words();

    /** Mean over the stroke, v²/2s. */
    record Mean(double deceleration) implements CrushLimit {
        public Mean {
            positive(deceleration);
        }

        @Override
        public String words() {
            return "mean of at most " + g(deceleration);
        }
    }

    /** Highest at any time. */
    record Peak(double deceleration) implements CrushLimit {
        public Peak {
            positive(deceleration);
        }

        @Override
        public String words() {
            return "peak of at most " + g(deceleration);
        }
    }

    /** Highest while the first so many metres are crushed. */
    record PeakWithinStroke(double stroke, double deceleration) implements CrushLimit {
        public PeakWithinStroke {
            positive(stroke);
            positive(deceleration);
        }

        @Override
        public String words() {
            return String.format(Locale.ROOT, "peak of at most %s in the first %.0f mm", g(deceleration), 1e3 * stroke);
        }
    }

    /** Highest while the first so many joules are taken. */
    record PeakWithinEnergy(double energy, double deceleration) implements CrushLimit {
        public PeakWithinEnergy {
            positive(energy);
            positive(deceleration);
        }

        @Override
        public String words() {
            return String.format(
                    Locale.ROOT, "peak of at most %s in the first %.1f kJ", g(deceleration), 1e-3 * energy);
        }
    }

    /** Mean while the first so many metres are crushed: work over mass and stroke. */
    record MeanWithinStroke(double stroke, double deceleration) implements CrushLimit {
        public MeanWithinStroke {
            positive(stroke);
            positive(deceleration);
        }

        @Override
        public String words() {
            return String.format(Locale.ROOT, "mean of at most %s in the first %.0f mm", g(deceleration), 1e3 * stroke);
        }
    }

    /** Highest crush force, N. */
    record Force(double force) implements CrushLimit {
        public Force {
            positive(force);
        }

        @Override
        public String words() {
            return String.format(Locale.ROOT, "crush force of at most %.1f kN", 1e-3 * force);
        }
    }

    /** What a value held against this limit reads like. */
    default String found(double value) {
        return switch (this) {
            case Force f -> String.format(Locale.ROOT, "%.1f kN", 1e-3 * value);
            case TimeAbove t -> String.format(Locale.ROOT, "%.1f ms", 1e3 * value);
            case Mean m -> g(value);
            case Peak m -> g(value);
            case MeanWithinStroke m -> g(value);
            case PeakWithinStroke m -> g(value);
            case PeakWithinEnergy m -> g(value);
        };
    }

    /** No more than so many seconds above a level. */
    record TimeAbove(double deceleration, double seconds) implements CrushLimit {
        public TimeAbove {
            positive(deceleration);
            positive(seconds);
        }

        @Override
        public String words() {
            return String.format(Locale.ROOT, "above %s for at most %.1f ms", g(deceleration), 1e3 * seconds);
        }
    }

    private static void positive(double value) {
        if (!(value > 0) || !Double.isFinite(value)) {
            throw new IllegalArgumentException("a limit of " + value + " (SI); it is greater than zero and finite");
        }
    }

    private static String g(double deceleration) {
        return String.format(Locale.ROOT, "%.1f g", deceleration / CrushRun.GRAVITY);
    }
}
