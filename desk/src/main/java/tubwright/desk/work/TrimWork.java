// SPDX-License-Identifier: Apache-2.0
package tubwright.desk.work;

import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.SortedMap;
import tubwright.desk.answer.LedgerAnswer;
import tubwright.desk.answer.StiffnessUnit;
import tubwright.desk.answer.WhatIfAnswer;
import tubwright.engine.design.Design;
import tubwright.engine.quantity.NearestName;
import tubwright.engine.response.Study;
import tubwright.engine.shape.ShapeException;
import tubwright.engine.structure.Case;
import tubwright.engine.structure.StrainEnergy;
import tubwright.engine.structure.Structure;
import tubwright.engine.structure.StructureException;
import tubwright.engine.structure.Tub;
import tubwright.engine.trim.Layup;
import tubwright.engine.trim.Ledger;
import tubwright.engine.trim.LoadWatch;
import tubwright.engine.trim.LoadedTub;
import tubwright.engine.trim.WhatIf;
import tubwright.numerics.solver.Solvers;

/** Draws up ledgers and answers what-ifs of a design. */
public final class TrimWork {
    /** How much coarser a quick answer's mesh is. */
    private static final double QUICK = 2;

    private TrimWork() {}

    /**
     * On what to work.
     *
     * @param variant name; empty for the design as written
     * @param loading name of the case; empty for the first torsion case, or else the first
     * @param meshSize m; empty for the design's own
     * @param quick whether to take a coarser mesh
     */
    public record Request(Optional<String> variant, Optional<String> loading, OptionalDouble meshSize, boolean quick) {}

    /**
     * Changes as typed, made in this order.
     *
     * @param sets new stacks
     * @param drops layers left out
     * @param cores core thicknesses
     * @param joints stiffness of joints
     */
    public record Edits(List<String> sets, List<String> drops, List<String> cores, List<String> joints) {
        public Edits {
            sets = List.copyOf(sets);
            drops = List.copyOf(drops);
            cores = List.copyOf(cores);
            joints = List.copyOf(joints);
        }

        /** Whether nothing is changed. */
        public boolean isEmpty() {
            return sets.isEmpty() && drops.isEmpty() && cores.isEmpty() && joints.isEmpty();
        }
    }

    /** What is done with a solved tub. */
    @FunctionalInterface
    private interface Task<A> {
        A on(Design.Variant variant, LoadedTub tub);
    }

    /**
     * Draws up the ledger of a design.
     *
     * @param guarded whether to tell reserve and buckling factors in the design's load cases
     */
    public static LedgerAnswer ledger(
            Design design,
            Request request,
            boolean guarded,
            String stamp,
            String version,
            Workbench.Listener listener) {
        return solved(design, request, listener, (variant, tub) -> {
            listener.stage("giving up one ply after another");
            List<Case.Loads> loads = variant.tub().cases().stream()
                    .filter(Case.Loads.class::isInstance)
                    .map(Case.Loads.class::cast)
                    .toList();
            Optional<LoadWatch> watch = guarded && !loads.isEmpty()
                    ? Optional.of(new LoadWatch(
                            loads,
                            variant.tub().strength(),
                            true,
                            Solvers.best(),
                            listener::stage,
                            variant.tub().fittings()))
                    : Optional.empty();
            Ledger ledger = Ledger.of(tub, watch);
            return new LedgerAnswer(
                    design.name(),
                    variant.name(),
                    tub.loading().name(),
                    StiffnessUnit.of(tub.loading()),
                    ledger,
                    tub.structure().mesh(),
                    tub.structure().unknowns(),
                    !loads.isEmpty(),
                    worth(tub),
                    stamp,
                    version);
        });
    }

    /**
     * Answers a change of layup in the case asked for, or in all that have a stiffness.
     *
     * @param width of the answer, relative to the stiffness
     */
    public static WhatIfAnswer whatIf(
            Design design, Request request, Edits edits, double width, String version, Workbench.Listener listener) {
        Design.Variant variant = variant(design, request);
        Tub tub = variant.tub();
        List<Case> cases = new ArrayList<>(List.of(loading(tub, request.loading)));
        if (request.loading.isEmpty()) {
            tub.cases().stream()
                    .filter(c -> !(c instanceof Case.Loads) && !cases.contains(c))
                    .forEach(cases::add);
        }
        try {
            listener.stage("mesh and solution");
            Structure structure = Structure.of(tub, Study.mesh(tub, meshSize(tub, request)));
            try (WhatIf whatIf = WhatIf.solve(structure, cases, Layup.of(tub), Solvers.best())) {
                return answer(design, variant, whatIf, edits, width, version, listener);
            }
        } catch (StructureException | ShapeException fault) {
            throw design.explain(fault);
        }
    }

    private static WhatIfAnswer answer(
            Design design,
            Design.Variant variant,
            WhatIf whatIf,
            Edits edits,
            double width,
            String version,
            Workbench.Listener listener) {
        LoadedTub tub = whatIf.tubs().getFirst();
        LayupEdits made = new LayupEdits(tub.nominal(), tub.joints());
        edits.sets.forEach(made::set);
        edits.drops.forEach(made::drop);
        edits.cores.forEach(made::core);
        edits.joints.forEach(made::joint);
        listener.stage("fields of the zones that change");
        Layup layup = made.layup();
        WhatIf.Answer answer = whatIf.ask(layup, width);
        long start = System.nanoTime();
        whatIf.ask(layup);
        double again = (System.nanoTime() - start) * 1e-9;
        List<WhatIfAnswer.Other> others = new ArrayList<>();
        for (int c = 1; c < whatIf.tubs().size(); c++) {
            LoadedTub other = whatIf.tubs().get(c);
            others.add(new WhatIfAnswer.Other(
                    other.loading().name(),
                    StiffnessUnit.of(other.loading()),
                    other.stiffness(other.compliance()),
                    answer.readings().get(c).stiffness()));
        }
        SortedMap<String, Double> before = tub.massByPiece(tub.nominal());
        List<WhatIfAnswer.Piece> pieces = new ArrayList<>();
        answer.pieces().forEach((piece, mass) -> pieces.add(new WhatIfAnswer.Piece(piece, before.get(piece), mass)));
        return new WhatIfAnswer(
                design.name(),
                variant.name(),
                tub.loading().name(),
                StiffnessUnit.of(tub.loading()),
                made.words(),
                layup,
                tub.stiffness(tub.compliance()),
                tub.sectionStiffness(),
                answer.stiffness(),
                others,
                pieces,
                tub.mass(tub.nominal()),
                answer.mass(),
                answer.instant(),
                answer.substitutions(),
                again,
                tub.structure().unknowns(),
                version);
    }

    /** Reads a design. */
    public static Design read(Path place) {
        return Design.read(place);
    }

    private static <A> A solved(Design design, Request request, Workbench.Listener listener, Task<A> task) {
        Design.Variant variant = variant(design, request);
        Tub tub = variant.tub();
        Case loading = loading(tub, request.loading);
        try {
            listener.stage("mesh and solution");
            Structure structure = Structure.of(tub, Study.mesh(tub, meshSize(tub, request)));
            try (LoadedTub loaded = LoadedTub.solve(structure, loading, Layup.of(tub), Solvers.best())) {
                return task.on(variant, loaded);
            }
        } catch (StructureException | ShapeException fault) {
            throw design.explain(variant, fault);
        }
    }

    /** The variant asked for. */
    static Design.Variant variant(Design design, Request request) {
        return request.variant
                .map(name -> design.variant(name)
                        .orElseThrow(() -> unknown(
                                "variant",
                                name,
                                design.variants().stream()
                                        .map(Design.Variant::name)
                                        .toList())))
                .orElse(design.asDesigned());
    }

    /** The mesh size asked for, m. */
    static double meshSize(Tub tub, Request request) {
        return request.meshSize.orElse(tub.meshSize()) * (request.quick ? QUICK : 1);
    }

    /** The case whose stiffness counts where none is named: the first torsion case, or else the first bending case. */
    public static Case leadingCase(Tub tub) {
        return loading(tub, Optional.empty());
    }

    /** The case of that name, or the leading one. */
    static Case loading(Tub tub, Optional<String> name) {
        // Load cases are answered by reserve factors; there is no stiffness to buy in them.
        List<Case> cases =
                tub.cases().stream().filter(c -> !(c instanceof Case.Loads)).toList();
        if (cases.isEmpty()) {
            throw new UserMistake("the design has no torsion or bending case; write one under \"cases:\"");
        }
        if (name.isEmpty()) {
            return cases.stream()
                    .filter(c -> c instanceof Case.Torsion)
                    .findFirst()
                    .orElse(cases.getFirst());
        }
        return cases.stream()
                .filter(c -> c.name().equals(name.get()))
                .findFirst()
                .orElseThrow(() -> unknown(
                        "case", name.get(), cases.stream().map(Case::name).toList()));
    }

    static UserMistake unknown(String what, String name, List<String> known) {
        return new UserMistake("there is no " + what + " \"" + name + "\""
                + NearestName.of(name, known)
                        .map(n -> "; did you mean \"" + n + "\"?")
                        .orElse("")
                + "\n    there are: " + String.join(", ", known));
    }

    /** Stiffness for each kilogram of an element: k · 2U/c over its mass. */
    private static double[] worth(LoadedTub tub) {
        Structure structure = tub.structure();
        double[] worth = StrainEnergy.ofElements(structure, tub.displacements());
        double factor = 2 * tub.stiffness(tub.compliance()) / tub.compliance();
        for (int e = 0; e < worth.length; e++) {
            double mass = structure.mesh().area(e)
                    * structure.arealMass(structure.mesh().elementRegions()[e]);
            worth[e] *= factor / mass;
        }
        return worth;
    }
}
