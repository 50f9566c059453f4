// SPDX-License-Identifier: Apache-2.0
package tubwright.fleet.plan;

import java.util.List;
import java.util.Optional;
import tubwright.engine.design.text.Choose;
import tubwright.engine.design.text.In;
import tubwright.engine.design.text.Name;
import tubwright.engine.design.text.Otherwise;
import tubwright.engine.design.text.Place;
import tubwright.engine.design.text.Says;
import tubwright.engine.design.text.Span;
import tubwright.engine.quantity.Dimension;

/** What is varied, as written. */
@Says(
        "One thing that is varied: a value of the design (\"at\"), frames of the shape (\"frames\" and \"change\") or the size"
                + " of an opening.")
@Choose({"at", "frames", "opening"})
@Choose({"range", "values", "words", "spread", "within"})
public record VaryText(
        @Says("Keys from the top of the design to one value: [laminates, floor skin, core thickness]. The word \"all\""
                + " stands for every entry that has what follows.")
        List<Name> at,

        @Says("Frames at stations between these, ends included.") @In(Dimension.LENGTH)
        Optional<Span> frames,

        @Says("An opening whose length and width grow by the amount.")
        Optional<Name> opening,

        @Says(
                "What is done to the frames: \"wider\" and \"narrower\" change the full width, \"higher\" the height above the"
                        + " lowest corner, \"rounder\" the corner radii, \"further aft\" the station.")
        Optional<Change> change,

        @Says(
                "Corners of the frames it is done to, by the strips they part (\"floor / chine\"), or \"bottom\" and \"top\";"
                        + " left out, all.")
        List<Name> corners,

        @Says("From here to there: \"10 .. 25 mm\".") Optional<String> range,
        @Says("These and no others: \"10, 15, 20 mm\".") Optional<String> values,
        @Says("These words in turn: materials, stacks.") List<Name> words,

        @Says("Standard deviation of a normal scatter about the value as designed: \"0.5 mm\", or \"3 %\" of it.")
        Optional<String> spread,

        @Says("Half-width of an even scatter about the value as designed: \"1 mm\", or \"5 %\" of it.")
        Optional<String> within,

        @Says("Levels a range has where all combinations are taken.") @Otherwise("5")
        int steps,

        Place place) {
    /** What is done to frames. */
    public enum Change {
        WIDER,
        NARROWER,
        HIGHER,
        ROUNDER,
        FURTHER_AFT
    }
}
