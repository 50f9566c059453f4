// SPDX-License-Identifier: Apache-2.0
package tubwright.engine.design;

import java.util.Optional;
import tubwright.engine.design.text.Amount;
import tubwright.engine.design.text.Amounts;
import tubwright.engine.design.text.In;
import tubwright.engine.design.text.Named;
import tubwright.engine.design.text.Place;
import tubwright.engine.design.text.Says;
import tubwright.engine.make.lay.LayStart;
import tubwright.engine.quantity.Dimension;

/** A start of draping as written. */
@Says("Where cloth is laid from.")
record LayText(
        @Says("A point on it; the nearest element of the ply is taken: \"900, 0, 60 mm\".") @In(Dimension.LENGTH)
        Amounts start,

        @Says(
                "How far the warp is turned there from the ply's nominal direction, anticlockwise seen from outside; left out,"
                        + " not at all.")
        @In(Dimension.ANGLE)
        Optional<Amount> turned,

        Place place) {

    static LayStart of(Named<LayText> named) {
        LayText text = named.value();
        return new LayStart(
                named.name().text(),
                PointBook.three(text.start(), named.name() + ": start"),
                text.turned().map(Amount::si).orElse(0.0));
    }
}
