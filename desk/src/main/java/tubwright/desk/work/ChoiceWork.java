// SPDX-License-Identifier: Apache-2.0
package tubwright.desk.work;

import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import tubwright.desk.answer.KeptChoice;
import tubwright.desk.answer.StiffnessUnit;
import tubwright.engine.design.Design;
import tubwright.engine.design.DesignFile;
import tubwright.engine.response.Study;
import tubwright.engine.structure.Case;
import tubwright.engine.structure.Structure;
import tubwright.engine.structure.Tub;
import tubwright.engine.trim.Layup;
import tubwright.engine.trim.LoadedTub;
import tubwright.numerics.solver.Solvers;

/** Writes a chosen layup into a design file, reads the file again and runs it. */
public final class ChoiceWork {
    private ChoiceWork() {}

    /**
     * Where a choice goes.
     *
     * @param file a new file; empty for the design's own
     * @param variant name of a new variant; empty to change the stacks in place, in a new file only
     */
    public record Wanted(Optional<Path> file, Optional<String> variant) {
        /** Whether anything is to be written. */
        public boolean any() {
            return file.isPresent() || variant.isPresent();
        }
    }

    /**
     * Writes a choice.
     *
     * @param design it was made from
     * @param on variant, case and mesh it was made on
     * @param layup chosen
     * @throws tubwright.engine.design.text.DesignError if it cannot be written; nothing is then changed
     */
    public static KeptChoice write(
            Design design, TrimWork.Request on, Layup layup, Wanted wanted, Workbench.Listener listener) {
        listener.stage("writing the choice");
        String from = TrimWork.variant(design, on).name();
        DesignFile file = DesignFile.of(design);
        String name = wanted.variant.orElse(from);
        if (wanted.variant.isPresent()) {
            if (!from.equals(Design.AS_DESIGNED)) {
                throw new UserMistake("a variant of variant \"" + from + "\" cannot be written"
                        + "\n    write a new file instead: --write FILE");
            }
            String construction = TrimWork.variant(design, on).tub().construction();
            file = file.withVariant(name, construction);
        }
        file = file.withLayup(name, layup);
        DesignFile written = wanted.file.isPresent() ? file.saveAs(wanted.file.get()) : file.save();
        listener.stage("reading and running what was written");
        return again(written.file(), name, on);
    }

    private static KeptChoice again(Path file, String name, TrimWork.Request on) {
        Tub tub = Design.read(file).variant(name).orElseThrow().tub();
        Structure structure = Structure.of(tub, Study.mesh(tub, TrimWork.meshSize(tub, on)));
        Case leading = TrimWork.loading(tub, on.loading());
        List<KeptChoice.Reading> readings = new ArrayList<>();
        double mass = 0;
        for (Case each : tub.cases()) {
            boolean asked = on.loading().isEmpty() ? !(each instanceof Case.Loads) : each.equals(leading);
            if (!asked) {
                continue;
            }
            try (LoadedTub loaded = LoadedTub.solve(structure, each, Layup.of(tub), Solvers.best())) {
                KeptChoice.Reading reading = new KeptChoice.Reading(
                        each.name(), StiffnessUnit.of(each), loaded.stiffness(loaded.compliance()));
                readings.add(each.equals(leading) ? 0 : readings.size(), reading);
                mass = loaded.mass(loaded.nominal());
            }
        }
        return new KeptChoice(file, name, mass, readings);
    }
}
