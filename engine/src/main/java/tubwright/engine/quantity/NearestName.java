// SPDX-License-Identifier: Apache-2.0
package tubwright.engine.quantity;

import java.util.Collection;
import java.util.Comparator;
import java.util.List;
import java.util.Locale;
import java.util.Optional;

/**
 * Finds the valid word a misspelt one was probably meant to be.
 *
 * <p>The measure is the Damerau-Levenshtein distance with adjacent transpositions (optimal string alignment; Damerau
 * 1964), letters compared without case first so that {@code KN} finds {@code kN}.
 */
public final class NearestName {
    private NearestName() {}

    /** The nearest candidate, if one is near enough to be worth suggesting (about a third of the letters wrong). */
    public static Optional<String> of(String word, Collection<String> candidates) {
        return ranked(word, candidates, 1).stream().findFirst();
    }

    /** Up to {@code count} candidates near enough to be worth suggesting, nearest first. */
    public static List<String> ranked(String word, Collection<String> candidates, int count) {
        record Scored(String name, int folded, int exact) {}
        String folded = word.toLowerCase(Locale.ROOT);
        return candidates.stream()
                .map(name -> {
                    String other = name.toLowerCase(Locale.ROOT);
                    // A word that starts a candidate, or the other way round, is a likely shortening.
                    boolean part = folded.length() >= 3
                            && other.length() >= 3
                            && (other.startsWith(folded) || folded.startsWith(other) || other.contains(folded));
                    int distance = distance(folded, other);
                    return new Scored(name, part ? Math.min(distance, 1) : distance, distance(word, name));
                })
                .filter(s -> s.folded <= Math.max(1, Math.max(word.length(), s.name.length()) / 3))
                .sorted(Comparator.comparingInt(Scored::folded)
                        .thenComparingInt(Scored::exact)
                        .thenComparing(Scored::name))
                .limit(count)
                .map(Scored::name)
                .toList();
    }

    /** Number of insertions, deletions, substitutions and swaps of neighbours that turn one word into the other. */
    public static int distance(String a, String b) {
        int[] before = new int[b.length() + 1];
        int[] previous = new int[b.length() + 1];
        int[] current = new int[b.length() + 1];
        for (int j = 0; j <= b.length(); j++) {
            previous[j] = j;
        }
        for (int i = 1; i <= a.length(); i++) {
            current[0] = i;
            for (int j = 1; j <= b.length(); j++) {
                int substitution = previous[j - 1] + (a.charAt(i - 1) == b.charAt(j - 1) ? 0 : 1);
                current[j] = Math.min(substitution, 1 + Math.min(previous[j], current[j - 1]));
                if (i > 1 && j > 1 && a.charAt(i - 1) == b.charAt(j - 2) && a.charAt(i - 2) == b.charAt(j - 1)) {
                    current[j] = Math.min(current[j], before[j - 2] + 1);
                }
            }
            int[] spare = before;
            before = previous;
            previous = current;
            current = spare;
        }
        return previous[b.length()];
    }
}
