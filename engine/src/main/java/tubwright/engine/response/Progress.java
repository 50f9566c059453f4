// SPDX-License-Identifier: Apache-2.0
package tubwright.engine.response;

/** Hears how far a long computation has come, and may stop it. */
public interface Progress {
    /**
     * Called at the start of each step, from the computing thread.
     *
     * @param variant variant at work
     * @param step what is done, in a word or two: "mesh", "assembly and solution"
     * @param meshSize m
     * @param done steps finished
     * @param all steps in all
     */
    void step(String variant, String step, double meshSize, int done, int all);

    /** Whether to stop before the next step. */
    default boolean cancelled() {
        return false;
    }

    /** Says nothing, stops nothing. */
    static Progress silent() {
        return (variant, step, meshSize, done, all) -> {};
    }
}
