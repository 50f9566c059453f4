// SPDX-License-Identifier: Apache-2.0
package tubwright.desk.console;

import java.util.ArrayList;
import java.util.List;

/** Breaks prose into lines. */
public final class Wrap {
    private Wrap() {}

    /**
     * {@code text} in lines of at most {@code width} characters (a longer word keeps its own line), the first begun with
     * {@code first}, the others with as many blanks.
     */
    public static List<String> lines(String text, String first, int width) {
        List<String> result = new ArrayList<>();
        String begin = " ".repeat(first.length());
        StringBuilder line = new StringBuilder(first);
        int used = 0;
        for (String word : text.split(" ")) {
            if (used > 0 && line.length() + 1 + word.length() > width) {
                result.add(line.toString());
                line = new StringBuilder(begin);
                used = 0;
            }
            line.append(used > 0 ? " " : "").append(word);
            used++;
        }
        result.add(line.toString());
        return result;
    }
}
