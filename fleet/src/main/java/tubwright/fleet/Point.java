// SPDX-License-Identifier: Apache-2.0
package tubwright.fleet;

import java.util.ArrayList;
import java.util.List;

/**
 * One design of a study.
 *
 * @param key digest of the design and of how it is computed, 64 hexadecimal digits; from {@link Blueprint#point}
 * @param patches what differs from the job's document
 */
public record Point(String key, List<Patch> patches) {
    public Point {
        patches = List.copyOf(patches);
    }

    /** On one line, to be sent elsewhere. */
    public String line() {
        List<String> fields = new ArrayList<>(List.of(key));
        for (Patch patch : patches) {
            fields.add(Integer.toString(patch.path().size()));
            fields.addAll(patch.path());
            fields.add(patch.value());
        }
        return Fields.join(fields);
    }

    /**
     * The point of a line.
     *
     * @throws IllegalArgumentException if it is none
     */
    public static Point of(String line) {
        List<String> fields = Fields.split(line);
        List<Patch> patches = new ArrayList<>();
        for (int at = 1; at < fields.size(); ) {
            int end = at + 1 + Integer.parseInt(fields.get(at));
            if (end >= fields.size()) {
                throw new IllegalArgumentException("a patch ends before its value");
            }
            patches.add(new Patch(fields.subList(at + 1, end), fields.get(end)));
            at = end + 1;
        }
        return new Point(fields.getFirst(), patches);
    }
}
