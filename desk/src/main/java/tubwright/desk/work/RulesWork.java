// SPDX-License-Identifier: Apache-2.0
package tubwright.desk.work;

import java.util.ArrayList;
import java.util.List;
import tubwright.desk.answer.RulesAnswer;
import tubwright.engine.design.Design;
import tubwright.engine.safety.rules.Pushes;
import tubwright.engine.safety.rules.RuledTub;
import tubwright.engine.safety.rules.Scrutiny;
import tubwright.engine.shape.ShapeException;
import tubwright.engine.structure.StructureException;
import tubwright.numerics.solver.Solvers;

/** Holds a design against its rules. */
public final class RulesWork {
    private RulesWork() {}

    /**
     * Goes through all rule sets of the design as written.
     *
     * @param meshSize of the pushes, m
     */
    public static RulesAnswer answer(
            Design design, double meshSize, String stamp, String version, Workbench.Listener listener) {
        Design.Variant variant = design.asDesigned();
        if (variant.rules().isEmpty()) {
            throw new UserMistake(design.file() + ": there are no rules to hold the tub against"
                    + "\n    write them under \"rules\"; docs/how-to/hold-against-rules.md shows how");
        }
        List<RulesAnswer.Held> held = new ArrayList<>();
        for (RuledTub rules : variant.rules()) {
            listener.stage(rules.name() + ": pushes");
            try {
                Pushes pushes = Pushes.solve(variant.tub(), rules, meshSize, Solvers.best());
                held.add(new RulesAnswer.Held(
                        rules.name(),
                        rules.set(),
                        Scrutiny.of(variant.tub(), variant.crush(), rules, pushes),
                        Scrutiny.panels(variant.tub(), rules)));
            } catch (StructureException | ShapeException fault) {
                throw design.explain(variant, fault);
            }
        }
        return new RulesAnswer(design.name(), held, meshSize, stamp, version);
    }
}
