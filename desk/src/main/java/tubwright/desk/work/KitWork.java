// SPDX-License-Identifier: Apache-2.0
package tubwright.desk.work;

import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.function.BooleanSupplier;
import java.util.function.Consumer;
import java.util.stream.Stream;
import tubwright.desk.answer.KitAnswer;
import tubwright.engine.laminate.LayerRole;
import tubwright.engine.make.kit.CutPiece;
import tubwright.engine.make.kit.KitNest;
import tubwright.engine.make.kit.PlyMass;
import tubwright.engine.make.kit.ShopData;
import tubwright.engine.make.lay.DrapedPly;
import tubwright.engine.make.lay.LaidTub;
import tubwright.engine.make.lay.LayStart;
import tubwright.engine.make.lay.PlyLayer;
import tubwright.engine.make.nest.NestException;
import tubwright.engine.make.nest.Nester;
import tubwright.engine.make.ply.LaidPly;
import tubwright.engine.make.ply.PlyPlan;
import tubwright.engine.structure.Tub;
import tubwright.numerics.solver.Solvers;

/** Lays the plies of a tub, nests their patterns and adds up mass and time. */
public final class KitWork {
    private static final int CURES_OF_SANDWICH = 3;
    private static final long SEED = 1;

    private KitWork() {}

    /**
     * The answer.
     *
     * @param starts where cloth is to be laid from
     * @param run how many tubs from when on
     * @param size of the mesh plies are laid on, m
     * @param moves of single patterns to spend on each kit
     * @param says hears what is being done
     * @param stopped asked often; a search for a nest that is stopped gives the best so far
     */
    public static KitAnswer kit(
            Tub tub,
            List<LayStart> starts,
            ShopData shop,
            BuildWork.Request run,
            double size,
            long moves,
            String stamp,
            String version,
            Consumer<String> says,
            BooleanSupplier stopped) {
        LaidTub laid = PlyLayer.lay(tub, starts, size, Solvers.best(), new PlyLayer.Progress() {
            @Override
            public void laid(LaidPly ply, int done, int all) {
                says.accept("laying ply " + done + " of " + all);
            }

            @Override
            public boolean cancelled() {
                return stopped.getAsBoolean();
            }
        });
        List<KitNest.Cut> cuts = CutPiece.cuts(laid.plies(), shop.rolls());
        List<KitNest> kits = KitNest.of(cuts, shop.rolls(), SEED, moves, new Nester.Listener() {
            @Override
            public void shorter(double length, double utilisation, long done, long most) {
                says.accept(String.format(
                        java.util.Locale.ROOT,
                        "nesting: %.2f m of roll, %.0f %% used, %.0f %% searched",
                        length,
                        100 * utilisation,
                        100.0 * done / most));
            }

            @Override
            public boolean cancelled() {
                return stopped.getAsBoolean();
            }
        });
        PlyMass mass = PlyMass.of(
                new PlyPlan(laid.mesh(), laid.plies().stream().map(p -> p.ply()).toList()));
        int cures = cures(mass);
        List<CutPiece> cut =
                laid.plies().stream().flatMap(p -> patterns(p, shop)).toList();
        return new KitAnswer(
                tub.name(), stamp, version, mass, kits, cures, BuildWork.build(laid, cut, kits, shop.times(), run));
    }

    /** What a ply is cut as; nothing where it does not lie on the roll, which the nest has said. */
    private static Stream<CutPiece> patterns(DrapedPly ply, ShopData shop) {
        try {
            return CutPiece.of(List.of(ply), shop.rolls()).stream();
        } catch (NestException tooNarrow) {
            return Stream.empty();
        }
    }

    /** Three cures for a piece with core, one for any other. */
    private static int cures(PlyMass mass) {
        Map<String, Integer> byPiece = new LinkedHashMap<>();
        mass.plies()
                .forEach(e -> byPiece.merge(
                        e.ply().piece(), e.ply().role() == LayerRole.CORE ? CURES_OF_SANDWICH : 1, Math::max));
        return byPiece.values().stream().mapToInt(Integer::intValue).sum();
    }
}
