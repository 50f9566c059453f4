// SPDX-License-Identifier: Apache-2.0
package tubwright.desk.page;

/** Fields of one case on a variant's mesh; the numbers travel beside it, as arrays. */
@Meaning(
        "Fields of one case; the arrays beside it hold displacements (m, 3 a node) and energy densities (J/m², 1 an element)")
public record FieldsView(
        @Meaning("whose") String variant,
        @Meaning("of the file") String revision,
        @Meaning("name of the case") String loading,

        @Meaning("J/m² at the quiet end of the colour scale")
        double energyLow,

        @Meaning("J/m² at the hot end of the colour scale") double energyHigh,
        @Meaning("largest displacement, m") double largest) {}
