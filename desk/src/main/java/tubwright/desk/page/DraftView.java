// SPDX-License-Identifier: Apache-2.0
package tubwright.desk.page;

import java.util.List;
import java.util.Optional;

/** Another layup, being tried. */
@Meaning("Another layup, being tried; the design file is left alone until it is kept")
public record DraftView(
        @Meaning("by which it is asked for") String id,
        @Meaning("what it departs from") String variant,
        @Meaning("of the file it departs from") String revision,

        @Meaning("number of the present step, 0 for the layup as designed")
        int step,

        boolean canUndo,
        boolean canRedo,
        @Meaning("the changes in words") List<String> words,

        @Meaning("zones and patches that differ, as they now are")
        List<EditedView> edited,

        @Meaning("what layup practice says to the changes") List<String> remarks,
        @Meaning("kg as designed") double massBefore,
        @Meaning("kg") double mass,

        @Meaning("as designed, between the hardpoints; N·m/rad or N/m")
        double stiffnessBefore,

        @Meaning("proved for the mesh, same unit") LedgerView.BoundsView stiffness,

        @Meaning("whether the bounds have closed to one number")
        boolean exact,

        @Meaning("ms the answer took") double milliseconds,

        @Meaning("what became of changes that no longer fit the file")
        Optional<String> note) {

    /** A zone or patch as it now is. */
    @Meaning("A zone or patch with its layers as designed and what has become of each")
    public record EditedView(
            String owner,
            @Meaning("as it now is") TubView.StackView stack,
            @Meaning("one for each layer as designed") List<LayerState> layers) {}

    /** What has become of a layer. */
    @Meaning("What has become of a layer")
    public record LayerState(
            @Meaning("0 when switched off, 2 when doubled") int count,
            @Meaning("its direction, degrees") double degrees,
            @Meaning("m") double thickness,
            @Meaning("name of its material") String material) {}

    /** A change asked for. */
    @Meaning("A change of one layer")
    public record ChangeRequest(
            @Meaning("zone or patch") String owner,

            @Meaning("of the layer as designed, from 1 at the outer surface")
            int place,

            @Meaning("0 switches it off, 2 doubles it") Optional<Integer> count,
            @Meaning("turns it, degrees") Optional<Double> degrees,
            @Meaning("another thickness of a core, m") Optional<Double> thickness,
            @Meaning("another core, by its name") Optional<String> material) {}

    /** Changes made in one step. */
    @Meaning("Changes made in one step")
    public record StepRequest(List<ChangeRequest> changes) {}

    /** A draft asked for. */
    @Meaning("What a draft departs from")
    public record OpenRequest(String variant) {}

    /** Asked to keep a draft. */
    @Meaning("How to keep a draft")
    public record KeepRequest(
            @Meaning("of the variant to add; empty to change the variant it departs from")
            String name) {}

    /** Whether it was kept. */
    @Meaning("Whether a draft was kept; where the file changed meanwhile, both texts")
    public record KeptView(
            boolean kept,
            String message,
            @Meaning("the file as it now is") Optional<String> theirs,
            @Meaning("what would have been written") Optional<String> ours) {}
}
