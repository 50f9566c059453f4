// SPDX-License-Identifier: Apache-2.0
package tubwright.engine.design;

import java.util.List;
import java.util.Optional;
import tubwright.engine.design.text.Amount;
import tubwright.engine.design.text.Choose;
import tubwright.engine.design.text.In;
import tubwright.engine.design.text.Name;
import tubwright.engine.design.text.Named;
import tubwright.engine.design.text.Place;
import tubwright.engine.design.text.Says;
import tubwright.engine.laminate.Reference;
import tubwright.engine.quantity.Dimension;

/** A layup as written. */
@Says("A layup: a stack of plies by its orientation code, with or without a core, or a metal sheet.")
@Choose({"stack", "sheet"})
record LaminateText(
        @Says("Orientation code, outer face first: \"[45c/0_2/core/0_2/45c]\". Letters after an angle pick the ply from"
                + " the legend; \"core\" is the core, \"core(90)\" with its ribbon across.")
        Optional<Name> stack,

        @Says("Legend: which material each letter of the stack stands for; \"ply\" is the one of angles without a"
                + " letter.")
        List<Named<Name>> plies,

        @Says("Material of the core.") Optional<Name> core,

        @Says("Thickness of the core.") @In(value = Dimension.LENGTH, positive = true)
        Optional<Amount> coreThickness,

        @Says("Film adhesive, one film on each side of the core (or wherever the stack says \"film\").")
        Optional<Name> film,

        @Says("Metal sheet: its material.") Optional<Name> sheet,

        @Says("Metal sheet: its gauge.") @In(value = Dimension.LENGTH, positive = true)
        Optional<Amount> thickness,

        @Says("Which surface of the laminate lies on the drawn shape; left out, the outer one on skin and the middle on"
                + " walls.")
        Optional<Reference> reference,

        Place place) {}
