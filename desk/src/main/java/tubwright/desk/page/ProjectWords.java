// SPDX-License-Identifier: Apache-2.0
package tubwright.desk.page;

import java.util.ArrayList;
import java.util.List;
import tubwright.engine.design.Design;
import tubwright.engine.design.Targets;
import tubwright.engine.design.text.DesignError;
import tubwright.engine.structure.Case;

/** What a design file says of itself, as the page shows it. */
final class ProjectWords {
    private ProjectWords() {}

    static List<ProjectView.VariantView> variants(Design design) {
        return design.variants().stream()
                .map(v -> new ProjectView.VariantView(
                        v.name(),
                        v.tub().construction(),
                        v.tub().cases().stream()
                                .filter(c -> !(c instanceof Case.Loads))
                                .map(c -> c.name())
                                .toList()))
                .toList();
    }

    static List<ProjectView.TargetView> targets(Targets targets) {
        List<ProjectView.TargetView> result = new ArrayList<>();
        targets.torsionalStiffness()
                .ifPresent(l -> result.add(
                        new ProjectView.TargetView(ProjectView.WhatTarget.TORSIONAL_STIFFNESS, l.atLeast(), l.si())));
        targets.bendingStiffness()
                .ifPresent(l -> result.add(
                        new ProjectView.TargetView(ProjectView.WhatTarget.BENDING_STIFFNESS, l.atLeast(), l.si())));
        targets.mass()
                .ifPresent(
                        l -> result.add(new ProjectView.TargetView(ProjectView.WhatTarget.MASS, l.atLeast(), l.si())));
        return result;
    }

    static ProjectView.ProblemView problem(DesignError trouble) {
        return new ProjectView.ProblemView(
                trouble.getMessage(), trouble.place().line(), trouble.place().column());
    }
}
