// SPDX-License-Identifier: Apache-2.0
package tubwright.desk.console;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import tubwright.desk.console.Terminal.Look;
import tubwright.engine.material.Adhesive;
import tubwright.engine.material.Core;
import tubwright.engine.material.Material;
import tubwright.engine.material.Metal;
import tubwright.engine.material.Ply;
import tubwright.engine.material.Property;
import tubwright.engine.material.PropertyValue;
import tubwright.engine.material.Provenance;
import tubwright.engine.material.Trust;
import tubwright.engine.quantity.Quantity;

/** Materials in words, each value with where it comes from. */
public final class MaterialSummary {
    private static final int WIDTH = 78;

    private MaterialSummary() {}

    /** The library, one line a material, by kind. */
    public static List<String> list(List<Material> materials) {
        Map<String, List<Material>> kinds = new LinkedHashMap<>();
        materials.forEach(
                m -> kinds.computeIfAbsent(kind(m), k -> new ArrayList<>()).add(m));
        List<String> lines = new ArrayList<>();
        int width = materials.stream().mapToInt(m -> m.name().length()).max().orElse(0);
        kinds.forEach((kind, members) -> {
            lines.add("");
            lines.add(kind);
            for (Material each : members) {
                String name = each.name() + " ".repeat(width - each.name().length());
                lines.addAll(Wrap.lines(each.description(), "  " + name + "  ", WIDTH));
            }
        });
        lines.add("");
        lines.add("  tubwright materials NAME  prints every value with its source.");
        return lines;
    }

    /** Every value of one material with its source and trust. */
    public static List<String> one(Terminal terminal, Material material) {
        List<String> lines = new ArrayList<>();
        lines.add("");
        lines.add(terminal.look(Look.STRONG, material.name()) + "  " + kind(material));
        lines.addAll(Wrap.lines(material.description(), "  ", WIDTH));
        lines.add("");
        List<Provenance> sources = new ArrayList<>();
        TextTable table = new TextTable(true, false, true, true);
        for (Map.Entry<Property, PropertyValue> entry :
                material.properties().values().entrySet()) {
            Property property = entry.getKey();
            Provenance provenance = entry.getValue().provenance();
            if (!sources.contains(provenance)) {
                sources.add(provenance);
            }
            table.row(
                    property.key(),
                    new Quantity(entry.getValue().si(), property.dimension()).toString(),
                    "[" + (sources.indexOf(provenance) + 1) + "]" + mark(provenance.trust()),
                    property.meaning());
        }
        for (String line : table.lines(terminal)) {
            lines.add(line);
        }
        lines.add("");
        for (int i = 0; i < sources.size(); i++) {
            Provenance source = sources.get(i);
            lines.addAll(
                    Wrap.lines(source.source() + " (" + source.trust().meaning() + ")", "  [" + (i + 1) + "] ", WIDTH));
        }
        return lines;
    }

    private static String mark(Trust trust) {
        return switch (trust) {
            case PUBLISHED, TRANSCRIBED, COMPUTED, STATED -> "";
            case FROM_MEMORY, ASSUMED, INVENTED -> " " + trust.mark();
        };
    }

    private static String kind(Material material) {
        return switch (material) {
            case Ply ply ->
                switch (ply.form()) {
                    case UNIDIRECTIONAL -> "Unidirectional plies";
                    case CLOTH -> "Cloths";
                };
            case Core core ->
                switch (core.form()) {
                    case HONEYCOMB -> "Honeycomb cores";
                    case FOAM -> "Foam cores";
                };
            case Adhesive _ -> "Adhesives";
            case Metal _ -> "Metals";
        };
    }
}
