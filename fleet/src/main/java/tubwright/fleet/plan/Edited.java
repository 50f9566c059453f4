// SPDX-License-Identifier: Apache-2.0
package tubwright.fleet.plan;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import tubwright.fleet.Blueprint;
import tubwright.fleet.Patch;

/** Values of a design being changed one after another, each change seeing those before it. */
final class Edited {
    private final Blueprint blueprint;
    private final Map<List<String>, String> changed = new LinkedHashMap<>();

    Edited(Blueprint blueprint) {
        this.blueprint = blueprint;
    }

    Blueprint blueprint() {
        return blueprint;
    }

    String value(List<String> path) {
        String own = changed.get(path);
        return own == null ? blueprint.value(path).text() : own;
    }

    void set(List<String> path, String value) {
        changed.put(List.copyOf(path), value);
    }

    /** In an order that does not depend on that of the changes. */
    List<Patch> patches() {
        List<Patch> patches = new ArrayList<>();
        changed.forEach((path, value) -> {
            if (!value.equals(blueprint.value(path).text())) {
                patches.add(new Patch(path, value));
            }
        });
        return patches;
    }
}
