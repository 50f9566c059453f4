// SPDX-License-Identifier: Apache-2.0
package tubwright.fleet;

import java.util.ArrayList;
import java.util.List;

/**
 * What is common to all designs of a study.
 *
 * @param document the design document that the points change
 * @param file its name, for messages
 * @param variant whose tub is computed, or {@value tubwright.engine.design.Design#AS_DESIGNED}
 * @param readings what is read of every design, as {@link Reading#of} understands it
 * @param meshSize edge length of the elements, m; 0 for the design's own
 * @param version of the program; rows of another version are not taken for the same
 */
public record Job(
        String document, String file, String variant, List<String> readings, double meshSize, String version) {
    public Job {
        readings = List.copyOf(readings);
    }

    /** On one line, to be sent elsewhere. */
    public String line() {
        List<String> fields = new ArrayList<>(List.of(document, file, variant, Double.toString(meshSize), version));
        fields.addAll(readings);
        return Fields.join(fields);
    }

    /**
     * The job of a line.
     *
     * @throws IllegalArgumentException if it is none
     */
    public static Job of(String line) {
        List<String> f = Fields.split(line);
        if (f.size() < 5) {
            throw new IllegalArgumentException("a job has five fields and its readings, not " + f.size());
        }
        return new Job(f.get(0), f.get(1), f.get(2), f.subList(5, f.size()), Double.parseDouble(f.get(3)), f.get(4));
    }
}
