// SPDX-License-Identifier: Apache-2.0
package tubwright.engine.safety.damage;

import java.util.ArrayList;
import java.util.List;
import tubwright.engine.response.TornReserves;
import tubwright.engine.structure.Case;
import tubwright.engine.structure.Structure;
import tubwright.engine.structure.TornCases;
import tubwright.engine.structure.Tub;
import tubwright.numerics.DirectSolver;

/**
 * What a hole does beyond its border: buckling of the rest, and joints, inserts and panels of sheet under the load that has gone
 * round. Solved anew, case by case.
 *
 * @param buckling one a load case that what is left carries
 * @param rows joints, inserts and panels that are left, lowest after first
 * @param lost hardpoints that lose some of their bed
 */
public record Aftermath(List<Buckling> buckling, List<TornReserves.Row> rows, List<String> lost) {
    public Aftermath {
        buckling = List.copyOf(buckling);
        rows = List.copyOf(rows);
        lost = List.copyOf(lost);
    }

    /**
     * Of one load case.
     *
     * @param name the case
     * @param before lowest buckling factor with all in place; infinite where nothing buckles, not a number where not found
     * @param after the same with the patch gone
     */
    public record Buckling(String name, double before, double after) {}

    /**
     * Of a hole in a tub.
     *
     * @param structure with all that is bolted on
     */
    static Aftermath of(Tub tub, Structure structure, Patch patch, DirectSolver solver) {
        List<Case> loads =
                tub.cases().stream().filter(Case.Loads.class::isInstance).toList();
        if (loads.isEmpty()) {
            return new Aftermath(List.of(), List.of(), List.of());
        }
        TornCases left = TornCases.of(structure, loads, patch.elements(), solver);
        List<Case> carried =
                left.cases().stream().map(TornCases.OneCase::solved).toList();
        TornCases whole = TornCases.of(structure, carried, new int[0], solver);
        List<Buckling> buckling = new ArrayList<>();
        for (TornCases.OneCase before : whole.cases()) {
            left.cases().stream()
                    .filter(c -> c.solved() == before.solved())
                    .forEach(c -> buckling.add(new Buckling(c.solved().name(), before.buckling(), c.buckling())));
        }
        return new Aftermath(buckling, TornReserves.of(tub, structure, patch.elements(), whole, left), left.lost());
    }
}
