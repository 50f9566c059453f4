// SPDX-License-Identifier: Apache-2.0
package tubwright.engine.trim;

import java.util.HashSet;
import java.util.Set;

/**
 * How many different stacks there may be.
 *
 * @param offset where the candidates of each site begin, and where the last end
 * @param stacks a number for the stack of each candidate; -1 where stacks are not counted
 * @param most different ones that are allowed
 */
record StackCount(int[] offset, int[] stacks, int most) {
    /** Whether a choice has no more than it may. */
    boolean kept(int[] choice) {
        Set<Integer> seen = new HashSet<>();
        for (int z = 0; z < choice.length; z++) {
            int stack = stacks[offset[z] + choice[z]];
            if (stack >= 0) {
                seen.add(stack);
            }
        }
        return seen.size() <= most;
    }

    /** Where sites that are settled use up the stacks there may be, the others are held to these. */
    boolean few(boolean[] allowed) {
        if (most >= stacks.length) {
            return true;
        }
        Set<Integer> settled = new HashSet<>();
        int before;
        do {
            before = settled.size();
            for (int z = 0; z + 1 < offset.length; z++) {
                Set<Integer> here = new HashSet<>();
                boolean counted = true;
                for (int j = offset[z]; j < offset[z + 1]; j++) {
                    if (allowed[j]) {
                        counted &= stacks[j] >= 0;
                        here.add(stacks[j]);
                    }
                }
                if (here.isEmpty()) {
                    return false;
                }
                if (counted && here.size() == 1) {
                    settled.addAll(here);
                }
            }
            if (settled.size() > most) {
                return false;
            }
            if (settled.size() == most) {
                for (int j = 0; j < allowed.length; j++) {
                    allowed[j] &= stacks[j] < 0 || settled.contains(stacks[j]);
                }
            }
        } while (settled.size() > before);
        return true;
    }
}
