// SPDX-License-Identifier: Apache-2.0
package tubwright.engine.material;

import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.Collection;
import java.util.Collections;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import tubwright.engine.quantity.NearestName;

/** Materials by name; immutable. */
public final class MaterialLibrary {
    /** Files of the shipped library, one for each family. */
    public static final List<String> FAMILIES =
            List.of("tapes", "cloths", "honeycombs", "foams", "adhesives", "metals");

    private final Map<String, Material> materials;

    private MaterialLibrary(Map<String, Material> materials) {
        this.materials = Collections.unmodifiableMap(materials);
    }

    private static final class Shipped {
        static final MaterialLibrary LIBRARY = load();

        private static MaterialLibrary load() {
            List<Material> all = new ArrayList<>();
            for (String family : FAMILIES) {
                String path = "/tubwright/materials/" + family + ".yaml";
                try (InputStream in = MaterialLibrary.class.getResourceAsStream(path)) {
                    if (in == null) {
                        throw new IllegalStateException("the shipped material file " + path + " is missing");
                    }
                    all.addAll(
                            MaterialFile.read(family + ".yaml", new String(in.readAllBytes(), StandardCharsets.UTF_8)));
                } catch (IOException e) {
                    throw new UncheckedIOException("the shipped material file " + path + " cannot be read", e);
                }
            }
            return of(all);
        }
    }

    /** The materials that come with the program; read once. */
    public static MaterialLibrary shipped() {
        return Shipped.LIBRARY;
    }

    /** Only these materials; a name that occurs twice is refused. */
    public static MaterialLibrary of(Collection<? extends Material> all) {
        Map<String, Material> map = new LinkedHashMap<>();
        for (Material material : all) {
            if (map.put(material.name(), material) != null) {
                throw new MaterialException("two materials are called '" + material.name() + "'");
            }
        }
        return new MaterialLibrary(map);
    }

    /** These materials as well; one of the same name takes the place of the old. */
    public MaterialLibrary with(Material... more) {
        Map<String, Material> map = new LinkedHashMap<>(materials);
        for (Material material : more) {
            map.put(material.name(), material);
        }
        return new MaterialLibrary(map);
    }

    /** The material of this name. */
    public Optional<Material> find(String name) {
        return Optional.ofNullable(materials.get(name));
    }

    /** The material of this name; {@link MaterialException} suggests the nearest names if there is none. */
    public Material get(String name) {
        return find(name).orElseThrow(() -> {
            List<String> near = suggestions(name);
            String hint = near.isEmpty() ? "" : "; did you mean " + String.join(" or ", near) + "?";
            return new MaterialException("no material is called '" + name + "'" + hint);
        });
    }

    /** As {@link #get(String)}, and of the kind wanted. */
    public <T extends Material> T get(String name, Class<T> kind) {
        Material material = get(name);
        if (!kind.isInstance(material)) {
            throw new MaterialException(
                    "'" + name + "' is " + article(material.getClass()) + "; " + article(kind) + " is wanted here");
        }
        return kind.cast(material);
    }

    private static String article(Class<?> kind) {
        String word = kind.getSimpleName().toLowerCase(java.util.Locale.ROOT);
        return (word.startsWith("a") ? "an " : "a ") + word;
    }

    /** Up to three names like this one, nearest first. */
    public List<String> suggestions(String name) {
        return NearestName.ranked(name, materials.keySet(), 3);
    }

    /** All names in order of entry. */
    public List<String> names() {
        return List.copyOf(materials.keySet());
    }

    /** All materials in order of entry. */
    public List<Material> all() {
        return List.copyOf(materials.values());
    }
}
