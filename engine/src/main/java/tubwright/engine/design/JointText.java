// SPDX-License-Identifier: Apache-2.0
package tubwright.engine.design;

import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;
import tubwright.engine.design.text.Choose;
import tubwright.engine.design.text.Name;
import tubwright.engine.design.text.Place;
import tubwright.engine.design.text.Says;

/** A joint as written. */
@Says("What holds pieces together along seams of the skin or along the edges of walls. Bonded and riveted add up.")
@Choose(
        value = {"seams", "walls"},
        several = true)
@Choose(
        value = {"bonded", "riveted"},
        several = true)
record JointText(
        @Says("Seams between pieces of skin, each as \"lower shell / upper shell\", or \"all\".")
        List<Name> seams,

        @Says("Walls whose edges it holds, or \"all\".") List<Name> walls,
        @Says("A bond line.") Optional<BondedText> bonded,
        @Says("Rows of rivets or bolts.") Optional<RivetedText> riveted,
        Place place) {
    /** Names of the laminates it mentions: its tape, its sheets. */
    List<String> laminates() {
        return Stream.concat(
                        bonded.flatMap(BondedText::tape).stream(), riveted.map(RivetedText::sheetMaterial).stream())
                .map(Name::text)
                .toList();
    }
}
