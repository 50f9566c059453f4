// SPDX-License-Identifier: Apache-2.0
package tubwright.engine.design;

import java.util.Arrays;
import java.util.LinkedHashMap;
import java.util.Map;
import tubwright.engine.design.text.InByKey;
import tubwright.engine.design.text.InByKey.Meaning;
import tubwright.engine.material.Property;

/** The keys of a material's properties, what they measure and mean. */
final class MaterialProperties implements InByKey.Keys {
    @Override
    public Map<String, Meaning> keys() {
        Map<String, Meaning> keys = new LinkedHashMap<>();
        Arrays.stream(Property.values())
                .forEach(p -> keys.put(p.key(), new Meaning(p.dimension(), p.mustBePositive(), p.meaning())));
        return keys;
    }
}
