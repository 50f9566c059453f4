// SPDX-License-Identifier: Apache-2.0
package tubwright.engine.design;

import java.util.ArrayList;
import java.util.Collections;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import tubwright.engine.design.text.Amount;
import tubwright.engine.design.text.DesignError;
import tubwright.engine.design.text.Faults;
import tubwright.engine.design.text.Name;
import tubwright.engine.design.text.Named;
import tubwright.engine.material.Adhesive;
import tubwright.engine.material.Core;
import tubwright.engine.material.Material;
import tubwright.engine.material.MaterialException;
import tubwright.engine.material.MaterialLibrary;
import tubwright.engine.material.Metal;
import tubwright.engine.material.Ply;
import tubwright.engine.material.Property;
import tubwright.engine.material.PropertyTable;
import tubwright.engine.material.PropertyValue;
import tubwright.engine.material.Provenance;
import tubwright.engine.material.Trust;

/** The materials of a design: the shipped library and the design's own. */
final class MaterialReader {
    private final MaterialLibrary library;

    private MaterialReader(MaterialLibrary library) {
        this.library = library;
    }

    static MaterialReader of(List<Named<MaterialText>> texts) {
        Faults faults = new Faults();
        List<Material> own = new ArrayList<>();
        for (Named<MaterialText> text : texts) {
            faults.attempt(() -> material(text)).ifPresent(own::add);
        }
        faults.throwIfAny();
        return new MaterialReader(MaterialLibrary.shipped().with(own.toArray(Material[]::new)));
    }

    private static Material material(Named<MaterialText> named) {
        MaterialText text = named.value();
        String name = named.name().text();
        String says = text.description().orElse(name);
        Map<Property, PropertyValue> values = new EnumMap<>(Property.class);
        Provenance provenance = new Provenance(text.source(), Trust.STATED);
        for (Named<Amount> value : text.properties()) {
            Property property = Property.withKey(value.name().text()).orElseThrow();
            values.put(property, new PropertyValue(value.value().si(), provenance));
        }
        try {
            PropertyTable table = new PropertyTable(values);
            return switch (text.kind()) {
                case UD -> Ply.of(name, says, Ply.Form.UNIDIRECTIONAL, table);
                case CLOTH -> Ply.of(name, says, Ply.Form.CLOTH, table);
                case HONEYCOMB -> Core.of(name, says, Core.Form.HONEYCOMB, table);
                case FOAM -> Core.of(name, says, Core.Form.FOAM, table);
                case FILM -> Adhesive.of(name, says, Adhesive.Form.FILM, table);
                case PASTE -> Adhesive.of(name, says, Adhesive.Form.PASTE, table);
                case METAL -> Metal.of(name, says, table);
            };
        } catch (MaterialException e) {
            throw new DesignError(named.name().place(), e.getMessage(), "see its name and \"properties\"");
        }
    }

    /** The material of a name, which must be of the kind wanted. */
    <T extends Material> T get(Name name, Class<T> kind, String words) {
        Material material = get(name);
        if (kind.isInstance(material)) {
            return kind.cast(material);
        }
        List<String> fitting = library.all().stream()
                .filter(kind::isInstance)
                .map(Material::name)
                .toList();
        throw new DesignError(
                name.place(),
                "\"" + name + "\" is no " + words + ": " + material.description(),
                "known: " + String.join(", ", fitting));
    }

    /** The material of a name, of whatever kind. */
    Material get(Name name) {
        return library.find(name.text()).orElseThrow(() -> {
            List<String> near = library.suggestions(name.text());
            List<String> all = new ArrayList<>(library.names());
            Collections.sort(all);
            return new DesignError(
                    name.place(),
                    "there is no material called \"" + name + "\"",
                    near.isEmpty()
                            ? "known: " + String.join(", ", all)
                            : "did you mean "
                                    + String.join(
                                            " or ",
                                            near.stream()
                                                    .map(n -> "\"" + n + "\"")
                                                    .toList()) + "?");
        });
    }
}
