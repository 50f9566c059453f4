// SPDX-License-Identifier: Apache-2.0
package tubwright.desk.work;

import java.nio.file.Path;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import tubwright.desk.answer.CheckAnswer;
import tubwright.desk.answer.RunAnswer;
import tubwright.engine.material.Material;
import tubwright.engine.rig.explain.Calibration;

/** What the commands ask of the engine. */
public interface Workbench {
    /**
     * Reads a design.
     *
     * @param place its folder, or the file itself
     * @throws UserMistake or an engine's exception for wrong input, if it cannot be read
     */
    Draft read(Path place);

    /** The JSON Schema of the design document. */
    String schema();

    /** The shipped materials, in the order of their families. */
    List<Material> materials();

    /** A commented design that runs as it stands, for a tub of that name: file names and their content. */
    Map<String, String> starter(String name);

    /** A design that was read. */
    interface Draft {
        /** Name of the tub. */
        String tub();

        /** Names of the variants, as designed first. */
        List<String> variants();

        /** Names of the cases of all variants. */
        List<String> cases();

        /** The files it was read from. */
        List<Path> files();

        /** The design in words. */
        CheckAnswer check();

        /** Computes. */
        RunAnswer run(Request request, Listener listener);
    }

    /**
     * What to compute.
     *
     * @param variants names; empty for all
     * @param cases names; empty for all
     * @param meshSize finest mesh size, m; empty for the design's own
     * @param quick whether to be content with coarser meshes
     * @param stability whether to answer buckling and frequencies even where the design does not ask
     * @param calibration what a test has taught, to be put on the tub before it is computed
     * @param stamp time to print on the answer
     * @param version of the program
     */
    record Request(
            List<String> variants,
            List<String> cases,
            OptionalDouble meshSize,
            boolean quick,
            boolean stability,
            Optional<Calibration> calibration,
            String stamp,
            String version) {
        public Request {
            variants = List.copyOf(variants);
            cases = List.copyOf(cases);
        }
    }

    /** Hears what is being done. */
    @FunctionalInterface
    interface Listener {
        /** Says a stage in words. */
        void stage(String words);

        /**
         * Says a step of a long computation. Throwing {@link java.util.concurrent.CancellationException} stops it.
         *
         * @param done steps finished
         * @param all steps in all
         */
        default void step(String words, int done, int all) {
            stage(words);
        }
    }
}
