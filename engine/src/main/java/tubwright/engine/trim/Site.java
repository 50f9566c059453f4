// SPDX-License-Identifier: Apache-2.0
package tubwright.engine.trim;

import java.util.List;

/**
 * A place where one of several candidates is chosen.
 *
 * @param owner zone, patch or joint
 * @param candidates at least one
 */
public record Site(Owner owner, List<Candidate> candidates) {
    public Site {
        candidates = List.copyOf(candidates);
        if (candidates.isEmpty()) {
            throw new IllegalArgumentException("zone '" + owner.name() + "' has no candidate: the rules leave none");
        }
    }
}
