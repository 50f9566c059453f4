// SPDX-License-Identifier: Apache-2.0
package tubwright.engine.design;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import tubwright.engine.design.text.DesignError;
import tubwright.engine.design.text.Name;
import tubwright.engine.design.text.Named;
import tubwright.engine.shape.TubShape;
import tubwright.engine.shape.Wall;
import tubwright.engine.structure.Case;

/** Pads that push on skin and walls. */
final class PadReader {
    private PadReader() {}

    static List<Case.Spread> read(List<Named<PadText>> texts, TubShape shape) {
        return texts.stream().map(t -> one(t, shape)).toList();
    }

    private static Case.Spread one(Named<PadText> named, TubShape shape) {
        PadText text = named.value();
        double[] at = PointBook.three(text.at(), named.name() + ": at");
        double[] size = PointBook.three(text.size(), named.name() + ": size");
        double[] force = PointBook.three(text.force(), named.name() + ": force");
        if (at[0] + size[0] / 2 < shape.front() || at[0] - size[0] / 2 > shape.rear()) {
            throw new DesignError(
                    text.at().place(),
                    "pad \"" + named.name() + "\" lies outside the tub",
                    String.format(
                            Locale.ROOT, "the tub runs from %.0f to %.0f mm", shape.front() * 1e3, shape.rear() * 1e3));
        }
        if (force[0] == 0 && force[1] == 0 && force[2] == 0) {
            throw new DesignError(
                    text.force().place(), "pad \"" + named.name() + "\": the force is zero", "give one that is not");
        }
        double[] low = new double[3];
        double[] high = new double[3];
        for (int d = 0; d < 3; d++) {
            low[d] = at[d] - size[d] / 2;
            high[d] = at[d] + size[d] / 2;
        }
        return new Case.Spread(named.name().text(), parts(text.on(), shape), low, high, force);
    }

    /** Names of strips and walls, refused where there is none such. */
    static List<String> parts(List<Name> names, TubShape shape) {
        List<String> known = new ArrayList<>(shape.strips());
        shape.walls().stream().map(Wall::name).forEach(known::add);
        names.forEach(n -> Names.require(n, known, "strip or wall"));
        return names.stream().map(Name::text).toList();
    }
}
