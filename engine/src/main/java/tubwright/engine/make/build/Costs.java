// SPDX-License-Identifier: Apache-2.0
package tubwright.engine.make.build;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import tubwright.engine.make.kit.KitNest;
import tubwright.engine.make.kit.Stock;

/**
 * What a run costs, by step, from stated prices; nothing for profit, scrap, design or what is bought ready-made.
 *
 * @param currency letters of it
 * @param once patterns, moulds, test panels
 * @param tubs of each tub, the first first
 */
public record Costs(String currency, List<Line> once, List<List<Line>> tubs) {
    /**
     * One line.
     *
     * @param what step or material
     * @param work of people, s
     * @param oven time in autoclaves, s
     * @param money in the currency
     * @param rule how it comes about
     */
    public record Line(String what, double work, double oven, double money, String rule) {}

    public Costs {
        once = List.copyOf(once);
        tubs = tubs.stream().map(List::copyOf).toList();
    }

    /** Sum of lines. */
    public static double sum(List<Line> lines) {
        return lines.stream().mapToDouble(Line::money).sum();
    }

    /** What is done once and all tubs together. */
    public double whole() {
        return sum(once) + tubs.stream().mapToDouble(Costs::sum).sum();
    }

    /**
     * Of a plan.
     *
     * @param kits material of one tub as it is bought
     */
    public static Costs of(BuildPlan plan, List<PieceWork> pieces, List<KitNest> kits, BuildShop shop) {
        double area = pieces.stream().mapToDouble(PieceWork::area).sum();
        List<Line> once = new ArrayList<>(steps(plan.efforts(0), shop));
        once.add(stuff("pattern material", area, "m²", shop, "pattern per m²"));
        once.add(stuff("mould material", area, "m²", shop, "mould per m²"));
        once.add(stuff("testing of panels", 1, "lot", shop, "test panels"));
        double cured =
                pieces.stream().mapToDouble(p -> p.area() * p.stages().size()).sum();
        List<List<Line>> tubs = new ArrayList<>();
        for (int tub = 1; tub <= plan.tubs(); tub++) {
            List<Line> lines = new ArrayList<>(steps(plan.efforts(tub), shop));
            for (Stock stock : Stock.values()) {
                double bought = kits.stream()
                        .filter(k -> Stock.of(k.material()) == stock)
                        .mapToDouble(KitNest::bought)
                        .sum();
                if (bought > 0) {
                    lines.add(stuff(stock.word() + " as bought", bought, "kg", shop, stock.word() + " per kg"));
                }
            }
            lines.add(stuff("bagging material", cured, "m² cured", shop, "bagging per cure and m²"));
            lines.add(stuff("freight", 1, "time", shop, "delivery"));
            tubs.add(lines);
        }
        return new Costs(shop.currency(), once, tubs);
    }

    private static List<Line> steps(Map<String, BuildPlan.Effort> efforts, BuildShop shop) {
        return efforts.entrySet().stream()
                .filter(e -> e.getValue().work() + e.getValue().oven() > 0)
                .map(e -> new Line(
                        e.getKey(),
                        e.getValue().work(),
                        e.getValue().oven(),
                        BuildPlan.hours(e.getValue().work()) * shop.price("work per hour")
                                + BuildPlan.hours(e.getValue().oven()) * shop.price("autoclave per hour"),
                        e.getValue().source()))
                .toList();
    }

    private static Line stuff(String what, double amount, String unit, BuildShop shop, String price) {
        return new Line(
                what,
                0,
                0,
                amount * shop.price(price),
                String.format(
                        java.util.Locale.ROOT,
                        "%.3g %s at %s: %s",
                        amount,
                        unit,
                        plain(shop.price(price)),
                        shop.prices().get(price).provenance()));
    }

    private static String plain(double number) {
        return number == Math.rint(number) ? Long.toString((long) number) : Double.toString(number);
    }
}
