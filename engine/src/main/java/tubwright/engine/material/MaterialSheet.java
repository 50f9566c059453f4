// SPDX-License-Identifier: Apache-2.0
package tubwright.engine.material;

import java.util.ArrayList;
import java.util.List;
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
}
