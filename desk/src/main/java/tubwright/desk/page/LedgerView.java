// SPDX-License-Identifier: Apache-2.0
package tubwright.desk.page;

import java.util.List;

/** What every layer of a variant weighs and buys. */
@Meaning("What every layer of a variant weighs and buys")
public record LedgerView(
        @Meaning("whose") String variant,
        @Meaning("of the file") String revision,
        @Meaning("the case whose stiffness is bought") String loading,
        AnswerView.Kind kind,

        @Meaning("nominal, between the hardpoints; N·m/rad or N/m")
        double stiffness,

        @Meaning("nominal, kg") double mass,

        @Meaning("share of the rows that are answered, 0 to 1")
        double ready,

        @Meaning("zones and patches, in order of their name")
        List<OwnerView> owners,

        @Meaning("least stiffness lost for a kilogram first; those not yet answered are not among them")
        List<RowView> rows,

        @Meaning("that may be laid in place of one another, by name")
        List<CoreView> cores) {

    /** A core. */
    @Meaning("A core that may be laid")
    public record CoreView(
            String name,
            @Meaning("how it is drawn") TubView.LayerKind kind,
            @Meaning("kg/m³") double density) {}

    /** A zone or a patch. */
    @Meaning("A zone or a patch, with the layers the designer chooses")
    public record OwnerView(
            String name,
            boolean patch,
            @Meaning("m², at all the places where it lies") double area,
            @Meaning("as designed") TubView.StackView stack,

            @Meaning("whether every layer has its like at the same depth from the other side")
            boolean symmetric) {}

    /** One layer given up. */
    @Meaning("One layer given up; of a core, some of its thickness")
    public record RowView(
            @Meaning("zone or patch") String owner,

            @Meaning("of the layer, from 1 at the outer surface")
            int place,

            @Meaning("kg given back") double mass,

            @Meaning("bounds on the stiffness left, proved for the mesh; N·m/rad or N/m")
            BoundsView left,

            @Meaning("stiffness lost for a kilogram, middle of the bounds")
            double lostPerKilogram) {}

    /** Two numbers between which a third is proved to lie. */
    @Meaning("Two numbers between which a third is proved to lie")
    public record BoundsView(double low, double high) {}
}
