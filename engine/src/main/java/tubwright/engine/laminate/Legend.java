// SPDX-License-Identifier: Apache-2.0
package tubwright.engine.laminate;

import java.util.Collections;
import java.util.LinkedHashMap;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import tubwright.engine.material.Material;

/** What the tags and words of an orientation code stand for; immutable. The empty tag is the usual ply. */
public final class Legend {
    /** Nothing named. */
    public static final Legend EMPTY = new Legend(Map.of());

    private final Map<String, Entry> entries;

    /**
     * What one tag or word stands for.
     *
     * @param material of the layer
     * @param thickness of the layer, m
     */
    public record Entry(Material material, double thickness) {}

    private Legend(Map<String, Entry> entries) {
        this.entries = Collections.unmodifiableMap(entries);
    }

    /** A legend whose plies without a tag are of this material. */
    public static Legend of(Material usual) {
        return EMPTY.with("", usual);
    }

    /** This legend with one tag or word more, at the material's own layer thickness. */
    public Legend with(String key, Material material) {
        double thickness = material.layerThickness()
                .orElseThrow(() -> new IllegalArgumentException(
                        "'" + material.name() + "' has no thickness of its own; say how thick the layer is"));
        return with(key, material, thickness);
    }

    /** This legend with one tag or word more, at a thickness in m. */
    public Legend with(String key, Material material, double thickness) {
        Map<String, Entry> copy = new LinkedHashMap<>(entries);
        copy.put(key, new Entry(material, thickness));
        return new Legend(copy);
    }

    /** What the tag or word stands for. */
    public Optional<Entry> find(String key) {
        return Optional.ofNullable(entries.get(key));
    }

    /** All tags and words. */
    public Set<String> keys() {
        return entries.keySet();
    }
}
