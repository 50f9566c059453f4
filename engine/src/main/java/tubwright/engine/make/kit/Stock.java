// SPDX-License-Identifier: Apache-2.0
package tubwright.engine.make.kit;

import tubwright.engine.make.nest.Piece.Turns;
import tubwright.engine.material.Adhesive;
import tubwright.engine.material.Core;
import tubwright.engine.material.Material;
import tubwright.engine.material.Metal;
import tubwright.engine.material.Ply;

/** Kinds of what comes on a roll or in sheets, and how it may be turned when it is cut. */
public enum Stock {
    /** Woven prepreg: half a turn is the same cloth. */
    CLOTH("cloth", Turns.HALF),
    /** Unidirectional prepreg. */
    TAPE("tape", Turns.HALF),
    /** Adhesive film: it has no direction. */
    FILM("film", Turns.QUARTERS),
    /** Core: its ribbon has a direction, half a turn leaves it. */
    CORE("core", Turns.HALF);

    private final String word;
    private final Turns turns;

    Stock(String word, Turns turns) {
        this.word = word;
        this.turns = turns;
    }

    /** As written in data files. */
    public String word() {
        return word;
    }

    /** How its pieces may lie. */
    public Turns turns() {
        return turns;
    }

    /** What kind a material is. */
    public static Stock of(Material material) {
        return switch (material) {
            case Ply ply -> ply.form() == Ply.Form.CLOTH ? CLOTH : TAPE;
            case Adhesive _ -> FILM;
            case Core _ -> CORE;
            case Metal metal ->
                throw new IllegalArgumentException("the metal '" + metal.name() + "' is not cut as plies are");
        };
    }
}
