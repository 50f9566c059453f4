// SPDX-License-Identifier: Apache-2.0
package tubwright.engine.material;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import org.snakeyaml.engine.v2.api.Load;
import org.snakeyaml.engine.v2.api.LoadSettings;
import tubwright.engine.quantity.QuantityException;

/**
 * Reads a family of materials from YAML.
 *
 * <p>Layout: {@code sources} maps short names to {@code {source: text, trust: mark}}; {@code materials} maps each
 * material's name to {@code kind}, {@code form}, {@code description}, {@code source} (the short name that holds for all
 * values not marked otherwise) and {@code values}; a value is a text with unit or {@code {value: text, source: short
 * name}}.
 */
final class MaterialFile {
    private final String label;
    private final Map<String, Provenance> sources = new LinkedHashMap<>();

    private MaterialFile(String label) {
        this.label = label;
    }

    static List<Material> read(String label, String yaml) {
        LoadSettings settings = LoadSettings.builder()
                .setLabel(label)
                .setAllowDuplicateKeys(false)
                .build();
        Map<?, ?> root = map(label, new Load(settings).loadFromString(yaml));
        MaterialFile file = new MaterialFile(label);
        map("sources", root.get("sources")).forEach((key, value) -> file.source(key.toString(), map("source", value)));
        List<Material> materials = new ArrayList<>();
        map("materials", root.get("materials"))
                .forEach((key, value) -> materials.add(file.material(key.toString(), map(key.toString(), value))));
        return materials;
    }

    private void source(String key, Map<?, ?> entry) {
        String mark = text(entry, "trust");
        Trust trust = java.util.Arrays.stream(Trust.values())
                .filter(t -> t.mark().equals(mark))
                .findFirst()
                .orElseThrow(() -> fault("'" + mark + "' is no trust mark"));
        sources.put(key, new Provenance(text(entry, "source"), trust));
    }

    private Material material(String name, Map<?, ?> entry) {
        try {
            MaterialBuilder builder =
                    new MaterialBuilder(name, text(entry, "kind")).description(text(entry, "description"));
            if (entry.containsKey("form")) {
                builder.form(text(entry, "form"));
            }
            Provenance usual = provenance(text(entry, "source"));
            map("values", entry.get("values")).forEach((key, value) -> {
                if (value instanceof Map<?, ?> marked) {
                    builder.value(key.toString(), text(marked, "value"), provenance(text(marked, "source")));
                } else {
                    builder.value(key.toString(), value.toString(), usual);
                }
            });
            return builder.build();
        } catch (MaterialException | QuantityException e) {
            throw fault(name + ": " + e.getMessage());
        }
    }

    private Provenance provenance(String key) {
        Provenance provenance = sources.get(key);
        if (provenance == null) {
            throw fault("no source is called '" + key + "'");
        }
        return provenance;
    }

    private String text(Map<?, ?> entry, String key) {
        Object value = entry.get(key);
        if (value == null) {
            throw fault("'" + key + "' is missing");
        }
        return value.toString();
    }

    private static Map<?, ?> map(String what, Object value) {
        if (value instanceof Map<?, ?> map) {
            return map;
        }
        throw new MaterialException(what + " must be a mapping");
    }

    private MaterialException fault(String message) {
        return new MaterialException(label + ": " + message);
    }
}
