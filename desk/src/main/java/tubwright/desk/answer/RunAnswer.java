// SPDX-License-Identifier: Apache-2.0
package tubwright.desk.answer;

import java.util.List;
import java.util.Optional;
import tubwright.engine.laminate.Laminate;
import tubwright.engine.material.Material;
import tubwright.engine.response.VariantAnswer;

/**
 * Everything a run has to tell, gathered for the console, the JSON document and the page.
 *
 * @param tub name of the tub
 * @param about one or two sentences from the design; "" where it has none
 * @param stamp when it was computed, ISO 8601, the only text that differs between two runs of one design
 * @param version of the program
 * @param targets what the design asks for
 * @param variants answers; the first is the one the note is about, the others are compared with it
 * @param landmarks openings and walls along the tub, in order of station
 * @param layups laminates of every variant
 * @param materials materials used by any variant
 * @param joints joints and stiffeners of every variant
 * @param calibrated what of a test was put on the tubs before they were computed
 * @param warnings things the reader must know before trusting a number
 * @param files names of files of the run folder worth naming, relative to the page
 */
public record RunAnswer(
        String tub,
        String about,
        String stamp,
        String version,
        List<Target> targets,
        List<VariantAnswer> variants,
        List<Landmark> landmarks,
        List<Layup> layups,
        List<Material> materials,
        List<JointCard> joints,
        Optional<Calibrated> calibrated,
        List<String> warnings,
        List<String> files) {

    /** The usual caution. */
    public static final String CAUTION = "Tubwright computes from what it is given. It does not replace tests, the"
            + " sanctioning body's rules, local codes or the judgement of a licensed engineer; a tub that people sit in is"
            + " proof-tested before it is driven.";

    public RunAnswer {
        if (variants.isEmpty()) {
            throw new IllegalArgumentException("a report needs at least one variant");
        }
        targets = List.copyOf(targets);
        variants = List.copyOf(variants);
        landmarks = List.copyOf(landmarks);
        layups = List.copyOf(layups);
        materials = List.copyOf(materials);
        joints = List.copyOf(joints);
        warnings = List.copyOf(warnings);
        files = List.copyOf(files);
    }

    /** The same answer with another time stamp. */
    public RunAnswer stamped(String time) {
        return new RunAnswer(
                tub,
                about,
                time,
                version,
                targets,
                variants,
                landmarks,
                layups,
                materials,
                joints,
                calibrated,
                warnings,
                files);
    }

    /**
     * A calibration that was used.
     *
     * @param tested name of the tub that was tested
     * @param source file of its readings
     * @param stamp when it was explained
     * @param factors on modelled stiffness
     */
    public record Calibrated(String tested, String source, String stamp, List<Factor> factors) {
        public Calibrated {
            factors = List.copyOf(factors);
        }

        /**
         * One of them.
         *
         * @param name what it is a factor on
         * @param factor most likely after the test
         * @param spread standard deviation of its logarithm
         */
        public record Factor(String name, double factor, double spread) {}
    }

    /** The variant the note is about. */
    public VariantAnswer main() {
        return variants.getFirst();
    }

    /**
     * Something the design asks for.
     *
     * @param what quantity, e.g. {@code torsional stiffness}
     * @param atLeast true for a lower limit, false for an upper one
     * @param limit in {@code unit}
     * @param value what the first variant comes to, in {@code unit}
     * @param error half-width of its error in {@code unit}; 0 where it has none
     * @param unit for the reader, e.g. {@code kN·m/deg}
     */
    public record Target(String what, boolean atLeast, double limit, double value, double error, String unit) {
        /** How a target stands. */
        public enum Standing {
            MET,
            MISSED,
            /** The limit lies inside the error band. */
            TOO_CLOSE_TO_CALL
        }

        /** Whether the target is met for every value inside the error band, for none, or for some. */
        public Standing standing() {
            double room = atLeast ? value - limit : limit - value;
            // Also where the value is not known.
            if (!(Math.abs(room) >= error)) {
                return Standing.TOO_CLOSE_TO_CALL;
            }
            return room >= 0 ? Standing.MET : Standing.MISSED;
        }
    }

    /**
     * Something along the tub that a reader looks for on a chart.
     *
     * @param name its name
     * @param kind opening or wall
     * @param from station where it begins, m
     * @param to station where it ends, m; the same for an upright wall
     */
    public record Landmark(String name, Kind kind, double from, double to) {
        /** Kinds of landmark. */
        public enum Kind {
            OPENING,
            WALL
        }
    }

    /**
     * A laminate in use.
     *
     * @param variant name of the variant
     * @param name of the zone, or of the patch
     * @param patch whether these are plies a patch adds to the zones below it
     * @param code orientation code
     * @param area it covers, m²
     * @param laminate the stack
     */
    public record Layup(String variant, String name, boolean patch, String code, double area, Laminate laminate) {}

    /**
     * A joint or a stiffener in use.
     *
     * @param variant name of the variant
     * @param name of the line it runs along
     * @param description in words
     * @param length m
     * @param fasteners number, 0 for none
     */
    public record JointCard(String variant, String name, String description, double length, int fasteners) {}
}
