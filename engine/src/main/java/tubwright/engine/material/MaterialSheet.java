// SPDX-License-Identifier: Apache-2.0
package tubwright.engine.material;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import tubwright.engine.quantity.Quantity;

/** A material as a reader sees it: every value with its unit, its source and its trust mark. */
public final class MaterialSheet {
    private MaterialSheet() {}

    /**
     * One row.
     *
     * @param key property
     * @param value number with unit
     * @param meaning what the property is
     * @param provenance where the value comes from
     */
    public record Row(String key, String value, String meaning, Provenance provenance) {
        @Override
        public String toString() {
            return key + " = " + value + "  (" + provenance + ")";
        }
    }

    /** All rows in the order of {@link Property}. */
    public static List<Row> rows(Material material) {
        List<Row> rows = new ArrayList<>();
        material.properties()
                .values()
                .forEach((property, value) -> rows.add(new Row(
                        property.key(),
                        new Quantity(value.si(), property.dimension()).toString(),
                        property.meaning(),
                        value.provenance())));
        return List.copyOf(rows);
    }

    /** The rows whose value was not read in its source: remembered, assumed, computed or invented. */
    public static List<Row> toBeChecked(Material material) {
        return rows(material).stream()
                .filter(row -> row.provenance().trust() != Trust.PUBLISHED
                        && row.provenance().trust() != Trust.TRANSCRIBED
                        && row.provenance().trust() != Trust.STATED)
                .toList();
    }

    /** The shipped library as one Markdown page, values gathered by source. */
    public static String markdown(MaterialLibrary library) {
        StringBuilder page = new StringBuilder("""
                # Shipped materials

                Made from the library itself; what the trust marks in square brackets mean is told in
                [theory/material-data.md](theory/material-data.md). Means at room temperature unless said; not allowables.
                """);
        for (Material material : library.all()) {
            page.append("\n## ")
                    .append(material.name())
                    .append("\n\n")
                    .append(material.description())
                    .append("\n\n");
            Map<Provenance, List<Row>> bySource = new LinkedHashMap<>();
            rows(material)
                    .forEach(row -> bySource.computeIfAbsent(row.provenance(), _ -> new ArrayList<>())
                            .add(row));
            bySource.forEach((provenance, rows) -> page.append("- ")
                    .append(String.join(
                            ", ",
                            rows.stream()
                                    .map(row -> row.key() + " " + row.value())
                                    .toList()))
                    .append(": ")
                    .append(provenance)
                    .append('\n'));
        }
        return page.toString();
    }
}
