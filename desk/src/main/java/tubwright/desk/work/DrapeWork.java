// SPDX-License-Identifier: Apache-2.0
package tubwright.desk.work;

import java.util.Optional;
import tubwright.desk.answer.DrapeAnswer;
import tubwright.engine.design.Design;
import tubwright.engine.make.lay.DrapedStiffness;
import tubwright.engine.make.lay.LaidTub;
import tubwright.engine.make.lay.PlyLayer;
import tubwright.engine.make.ply.LaidPly;
import tubwright.engine.material.Metal;
import tubwright.engine.shape.ShapeException;
import tubwright.engine.structure.StructureException;
import tubwright.engine.structure.Tub;
import tubwright.numerics.solver.Solvers;

/** Lays every ply of a design. */
public final class DrapeWork {
    private DrapeWork() {}

    /**
     * Lays the plies of a variant.
     *
     * @param request which variant; its mesh size is that of the stiffness run
     * @param stiffness whether to compute what draping does to the torsional stiffness
     */
    public static DrapeAnswer drape(
            Design design,
            TrimWork.Request request,
            boolean stiffness,
            String stamp,
            String version,
            Workbench.Listener listener) {
        Design.Variant variant = TrimWork.variant(design, request);
        Tub tub = variant.tub();
        boolean metal = tub.laminates().values().stream()
                .allMatch(l -> l.layers().stream().allMatch(layer -> layer.material() instanceof Metal));
        if (metal) {
            throw new UserMistake("variant \"" + variant.name() + "\" is metal sheet: there is no ply to drape"
                    + "\n    name a variant of carbon with --variant");
        }
        try {
            listener.stage("mould surface");
            long start = System.nanoTime();
            LaidTub laid = PlyLayer.lay(
                    tub,
                    variant.laying(),
                    PlyLayer.USUAL_SIZE,
                    Solvers.best(),
                    (LaidPly ply, int done, int all) ->
                            listener.step("ply " + done + " of " + all + ": " + ply.name(), done, all));
            double seconds = (System.nanoTime() - start) * 1e-9;
            Optional<DrapedStiffness> cost = Optional.empty();
            if (stiffness) {
                listener.stage("stiffness with the fibres where they lie");
                cost = DrapedStiffness.of(laid, TrimWork.meshSize(tub, request), Solvers.best());
            }
            return new DrapeAnswer(design.name(), variant.name(), laid, cost, seconds, stamp, version);
        } catch (StructureException | ShapeException fault) {
            throw design.explain(variant, fault);
        }
    }
}
