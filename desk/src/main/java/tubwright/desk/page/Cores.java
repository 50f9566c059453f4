// SPDX-License-Identifier: Apache-2.0
package tubwright.desk.page;

import java.util.Collection;
import java.util.SortedMap;
import java.util.TreeMap;
import tubwright.desk.work.UserMistake;
import tubwright.engine.laminate.Laminate;
import tubwright.engine.laminate.Layer;
import tubwright.engine.material.Core;
import tubwright.engine.material.Material;
import tubwright.engine.material.MaterialLibrary;
import tubwright.engine.trim.Layup;

/** The cores that a draft may lay: those of the shipped library, and those in the design's own laminates before them. */
final class Cores {
    private Cores() {}

    /** By name. */
    static SortedMap<String, Core> of(Layup nominal) {
        SortedMap<String, Core> cores = new TreeMap<>();
        add(cores, MaterialLibrary.shipped().all());
        for (Laminate laminate : nominal.zones().values()) {
            add(cores, laminate.layers().stream().map(Layer::material).toList());
        }
        return cores;
    }

    /**
     * One of them.
     *
     * @throws UserMistake where there is none of that name
     */
    static Core named(Layup nominal, String name) {
        SortedMap<String, Core> cores = of(nominal);
        Core core = cores.get(name);
        if (core == null) {
            throw new UserMistake("there is no core \"" + name + "\"; there are: " + String.join(", ", cores.keySet()));
        }
        return core;
    }

    private static void add(SortedMap<String, Core> cores, Collection<Material> materials) {
        for (Material material : materials) {
            if (material instanceof Core core) {
                cores.put(core.name(), core);
            }
        }
    }
}
