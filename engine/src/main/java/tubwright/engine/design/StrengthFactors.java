// SPDX-License-Identifier: Apache-2.0
package tubwright.engine.design;

import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import tubwright.engine.design.text.InByKey;
import tubwright.engine.material.Property;
import tubwright.engine.quantity.Dimension;

/** The strengths of plies that own knock-downs may lower. */
final class StrengthFactors implements InByKey.Keys {
    private static final List<Property> STRENGTHS =
            List.of(Property.XT, Property.XC, Property.YT, Property.YC, Property.S12, Property.S13);

    @Override
    public Map<String, InByKey.Meaning> keys() {
        Map<String, InByKey.Meaning> keys = new LinkedHashMap<>();
        STRENGTHS.forEach(p -> keys.put(
                p.key(),
                new InByKey.Meaning(Dimension.DIMENSIONLESS, true, "share that remains of the " + p.meaning())));
        return keys;
    }
}
