// SPDX-License-Identifier: Apache-2.0
package tubwright.engine.safety.rules;

import java.util.List;
import tubwright.engine.safety.crush.CrushLimit;
import tubwright.engine.safety.crush.CrushStructure;
import tubwright.engine.safety.crush.Impact;

/**
 * An impact that a rule asks for.
 *
 * @param hit where
 * @param impact what comes
 * @param limits what it must keep to
 */
public record Stop(CrushStructure.Hit hit, Impact impact, List<CrushLimit> limits) {
    public Stop {
        limits = List.copyOf(limits);
    }
}
