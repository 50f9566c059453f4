// SPDX-License-Identifier: Apache-2.0
package tubwright.engine.make.build;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.time.LocalDateTime;
import java.time.temporal.ChronoUnit;
import java.util.List;
import org.junit.jupiter.api.Test;
import tubwright.engine.make.data.DataException;
import tubwright.engine.make.kit.Hours;
import tubwright.engine.make.kit.ShopData;

/** A run of two-piece tubs. */
class BuildPlanTest {
    private static final LocalDateTime BEGIN = LocalDateTime.of(2030, 1, 7, 8, 0);
    private static final ShopData.Times TIMES = ShopData.shipped().times();
    private static final BuildShop SHOP = BuildShop.shipped();
    private static final List<PieceWork> PIECES = List.of(
            new PieceWork(
                    "tray",
                    1.2,
                    3600,
                    List.of(
                            new PieceWork.Stage("outer skin", 7200, 6),
                            new PieceWork.Stage("core", 3600, 3),
                            new PieceWork.Stage("inner skin", 7200, 6))),
            new PieceWork("lid", 0.6, 1800, List.of(new PieceWork.Stage("plies", 5400, 5))));

    private static BuildPlan plan(int tubs) {
        return BuildPlan.of(PIECES, new BuildPlan.Finish(12, 2), TIMES, SHOP, tubs, BEGIN);
    }

    @Test
    void theLongestPathRunsFromTheStartToDeliveryWithoutAGapInItsReasons() {
        BuildPlan plan = plan(1);
        List<Schedule.Placed> chain = plan.schedule().chain();
        assertTrue(chain.getFirst().activity().needs().isEmpty());
        assertEquals("tub delivered", chain.getLast().activity().name());
        assertEquals(plan.schedule().end(), chain.getLast().finish());
        for (int i = 1; i < chain.size(); i++) {
            double gap = ChronoUnit.HOURS.between(
                    chain.get(i - 1).finish(), chain.get(i).start());
            assertTrue(gap >= 0 && gap <= 64, "at most a weekend between two steps of the chain: " + gap + " h");
        }
        plan.schedule()
                .placed()
                .forEach(p -> assertTrue(
                        !p.finish().isAfter(p.latestFinish()), p.activity().name()));
    }

    @Test
    void everyTubTakesAsMuchLessWorkAsLearningSaysAndNoLessOven() {
        BuildPlan plan = plan(4);
        assertEquals(0.85 * plan.work(1), plan.work(2), 1);
        assertEquals(Hours.learned(3, 0.85) * plan.work(1), plan.work(3), 1);
        assertEquals(plan.oven(1), plan.oven(4), 1e-9);
        assertEquals(4 * TIMES.autoclave().si(), plan.oven(1), 1e-9, "three cures of the tray, one of the lid");
        assertTrue(plan.schedule().end().isAfter(plan(1).schedule().end()));
    }

    @Test
    void piecesOfAsManyCuresShareARun() {
        List<PieceWork> three = List.of(
                PIECES.get(0),
                PIECES.get(1),
                new PieceWork("wall", 0.2, 900, PIECES.get(1).stages()));
        BuildPlan plan = BuildPlan.of(three, new BuildPlan.Finish(0, 2), TIMES, SHOP, 1, BEGIN);
        assertEquals(4 * TIMES.autoclave().si(), plan.oven(1), 1e-9, "lid and wall together");
    }

    @Test
    void aMouldHoldsOneTubAtATime() {
        List<Schedule.Placed> tray = plan(3).schedule().placed().stream()
                .filter(p -> p.activity().lane().equals("tray"))
                .sorted(java.util.Comparator.comparing(Schedule.Placed::start))
                .toList();
        for (int i = 1; i < tray.size(); i++) {
            assertTrue(!tray.get(i).start().isBefore(tray.get(i - 1).finish()));
        }
    }

    @Test
    void costsAreHoursAndKilogramsTimesStatedPrices() {
        BuildPlan plan = plan(2);
        Costs costs = Costs.of(plan, PIECES, List.of(), SHOP);
        double work =
                costs.tubs().getFirst().stream().mapToDouble(Costs.Line::work).sum();
        assertEquals(plan.work(1), work, 1e-6);
        double labour = work / 3600 * SHOP.price("work per hour");
        double oven = plan.oven(1) / 3600 * SHOP.price("autoclave per hour");
        double bagging = (3 * 1.2 + 0.6) * SHOP.price("bagging per cure and m²");
        assertEquals(
                labour + oven + bagging + SHOP.price("delivery"),
                Costs.sum(costs.tubs().getFirst()),
                1e-6);
        assertEquals(
                costs.whole(),
                Costs.sum(costs.once())
                        + Costs.sum(costs.tubs().get(0))
                        + Costs.sum(costs.tubs().get(1)),
                1e-9);
        costs.once().forEach(l -> assertTrue(l.rule().contains("no source"), l.rule()));
    }

    @Test
    void aShopsOwnPartsReplaceTheShippedOnesAndFaultsNameTheirLine() {
        String own = """
                sources:
                  ours: {source: our own clock, trust: stated}
                calendar:
                  source: ours
                  days: Mon Tue Wed Thu
                  days off: 2030-12-25
                  values: {first hour: 7 h, shift: 9 h, shifts: 2, teams: 3, people in a team: 1, autoclaves: 2, pieces in a run: 1}
                """;
        BuildShop shop = BuildShop.read("shop.yaml", own);
        assertEquals(4, shop.calendar().days().size());
        assertEquals(3, shop.teams());
        assertEquals(SHOP.price("work per hour"), shop.price("work per hour"));
        for (String[] wrong : new String[][] {
            {"Mon Tue Wed Thu", "Mon Someday", "shop.yaml:4", "Someday"},
            {"2030-12-25", "25.12.", "shop.yaml:4", "no date"},
            {"shifts: 2", "shifts: 3", "shop.yaml:4", "24 h"},
            {"teams: 3", "teams: -1", "shop.yaml:4", "teams"},
            {"shift: 9 h", "shift: 9", "shop.yaml:7", "time"},
            {"autoclaves: 2, ", "", "shop.yaml:7", "autoclaves"}
        }) {
            String message = assertThrows(
                            DataException.class, () -> BuildShop.read("shop.yaml", own.replace(wrong[0], wrong[1])))
                    .getMessage();
            assertTrue(message.contains(wrong[2]) && message.contains(wrong[3]), message);
        }
    }
}
