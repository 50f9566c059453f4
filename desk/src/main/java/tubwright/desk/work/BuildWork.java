// SPDX-License-Identifier: Apache-2.0
package tubwright.desk.work;

import java.time.LocalDate;
import java.util.List;
import tubwright.desk.answer.BuildAnswer;
import tubwright.engine.make.build.BuildPlan;
import tubwright.engine.make.build.BuildShop;
import tubwright.engine.make.build.Costs;
import tubwright.engine.make.build.PieceWork;
import tubwright.engine.make.kit.CutPiece;
import tubwright.engine.make.kit.KitNest;
import tubwright.engine.make.kit.ShopData;
import tubwright.engine.make.lay.LaidTub;

/** Plans a run of tubs from pattern to delivery. */
public final class BuildWork {
    private BuildWork() {}

    /**
     * What is asked.
     *
     * @param tubs how many
     * @param begin day on which material is ordered and patterns are begun
     * @param shop how the shop works
     */
    public record Request(int tubs, LocalDate begin, BuildShop shop) {
        public Request {
            if (tubs < 1 || tubs > BuildPlan.MOST) {
                throw new UserMistake("--tubs " + tubs + ": a run is of 1 to " + BuildPlan.MOST + " tubs");
            }
        }
    }

    /** The plan with its costs. */
    public static BuildAnswer build(
            LaidTub laid, List<CutPiece> cut, List<KitNest> kits, ShopData.Times times, Request request) {
        List<PieceWork> pieces = PieceWork.of(laid, cut, times);
        BuildPlan plan = BuildPlan.of(
                pieces,
                new BuildPlan.Finish(
                        laid.tub().hardpoints().size(), laid.tub().joints().size()),
                times,
                request.shop,
                request.tubs,
                request.begin.atTime(request.shop.calendar().first()));
        return new BuildAnswer(plan, Costs.of(plan, pieces, kits, request.shop), request.shop);
    }
}
