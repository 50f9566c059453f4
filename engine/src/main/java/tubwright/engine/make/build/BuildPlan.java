// SPDX-License-Identifier: Apache-2.0
package tubwright.engine.make.build;

import java.time.LocalDateTime;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import tubwright.engine.make.build.Activity.Clock;
import tubwright.engine.make.kit.Hours;
import tubwright.engine.make.kit.ShopData;

/**
 * All that is done from pattern to delivery of a run of tubs, in its time.
 *
 * @param tubs how many
 * @param schedule everything in its place
 * @param learning share of the work that each doubling of the number made leaves
 */
public record BuildPlan(int tubs, Schedule schedule, double learning) {
    private static final String TEAM = "team";
    private static final String OVEN = "autoclave";
    private static final double HOUR = 3600;

    /** Most tubs of one plan. */
    public static final int MOST = 50;

    /**
     * What stands in the plan beside the plies.
     *
     * @param hardpoints to be drilled and potted
     * @param joints lines to be bonded
     */
    public record Finish(int hardpoints, int joints) {}

    /**
     * Plans a run.
     *
     * @param pieces work on each of the first tub
     * @param tubs how many, 1 to {@link #MOST}
     * @param begin when material is ordered and patterns are begun
     */
    public static BuildPlan of(
            List<PieceWork> pieces,
            Finish finish,
            ShopData.Times times,
            BuildShop shop,
            int tubs,
            LocalDateTime begin) {
        if (tubs < 1 || tubs > MOST) {
            throw new IllegalArgumentException("a run is of 1 to " + MOST + " tubs, not of " + tubs);
        }
        Maker maker = new Maker(shop, times);
        maker.once(pieces);
        for (int tub = 1; tub <= tubs; tub++) {
            maker.tub(pieces, finish, tub, tubs);
        }
        Schedule schedule = Schedule.of(
                maker.activities, Map.of(TEAM, shop.teams(), OVEN, shop.autoclaves()), shop.calendar(), begin);
        return new BuildPlan(tubs, schedule, times.learning().si());
    }

    /** Activities of one tub, or, for 0, of what is done once. */
    public List<Activity> of(int tub) {
        return schedule.placed().stream()
                .map(Schedule.Placed::activity)
                .filter(a -> a.tub() == tub)
                .toList();
    }

    /**
     * Work and oven time of one tub (0: once for all) by step, s.
     *
     * @param work of people
     * @param oven of autoclaves
     * @param source of the rate
     */
    public record Effort(double work, double oven, String source) {}

    /** By step, in the order in which it first comes. */
    public Map<String, Effort> efforts(int tub) {
        Map<String, Effort> result = new LinkedHashMap<>();
        // In the order of making, not of the schedule's chances.
        List<String> order = Maker.STEPS;
        order.forEach(step -> of(tub).stream()
                .filter(a -> a.step().equals(step))
                .forEach(a -> result.merge(
                        step,
                        new Effort(a.work(), a.uses().equals(OVEN) ? a.seconds() : 0, a.source()),
                        (p, q) -> new Effort(p.work + q.work, p.oven + q.oven, p.source))));
        return result;
    }

    /** Work of people on a tub (0: once for all), s. */
    public double work(int tub) {
        return of(tub).stream().mapToDouble(Activity::work).sum();
    }

    /** Time in autoclaves of a tub (0: of the moulds), s. */
    public double oven(int tub) {
        return of(tub).stream()
                .filter(a -> a.uses().equals(OVEN))
                .mapToDouble(Activity::seconds)
                .sum();
    }

    /** When a tub arrives. */
    public LocalDateTime delivered(int tub) {
        return schedule.placed().stream()
                .filter(p -> p.activity().tub() == tub)
                .map(Schedule.Placed::finish)
                .max(LocalDateTime::compareTo)
                .orElseThrow();
    }

    private static final class Maker {
        static final List<String> STEPS = List.of(
                "ordering",
                "pattern",
                "mould",
                "test panels",
                "cutting",
                "laying",
                "debulking",
                "bagging",
                "autoclave",
                "demoulding",
                "trimming and inserts",
                "inspection",
                "bonding",
                "last look",
                "delivery");

        final List<Activity> activities = new ArrayList<>();
        private final BuildShop shop;
        private final ShopData.Times times;

        Maker(BuildShop shop, ShopData.Times times) {
            this.shop = shop;
            this.times = times;
        }

        void once(List<PieceWork> pieces) {
            add(
                    "material arrives",
                    "ordering",
                    "supplier",
                    0,
                    Clock.WAITING,
                    shop.time("wait for material"),
                    0,
                    "",
                    List.of(),
                    shop.source("wait for material"));
            for (PieceWork p : pieces) {
                hands(
                        "pattern of " + p.piece(),
                        "pattern",
                        p.piece(),
                        0,
                        shop.time("pattern each") + p.area() / shop.time("pattern area per time"),
                        List.of(),
                        shop.source("pattern each"));
                hands(
                        "mould of " + p.piece() + " laid",
                        "mould",
                        p.piece(),
                        0,
                        shop.time("mould each") + p.area() / shop.time("mould area per time"),
                        List.of("pattern of " + p.piece()),
                        shop.source("mould each"));
                add(
                        "mould of " + p.piece() + " cured",
                        "mould",
                        "autoclave",
                        0,
                        Clock.OVEN,
                        shop.time("mould cure"),
                        0,
                        OVEN,
                        List.of("mould of " + p.piece() + " laid"),
                        shop.source("mould cure"));
            }
            hands(
                    "test panels laid",
                    "test panels",
                    "test panels",
                    0,
                    shop.time("laying test panels"),
                    List.of("material arrives"),
                    shop.source("laying test panels"));
            add(
                    "test panels cured",
                    "test panels",
                    "autoclave",
                    0,
                    Clock.OVEN,
                    times.autoclave().si(),
                    0,
                    OVEN,
                    List.of("test panels laid"),
                    times.autoclave().provenance().toString());
            add(
                    "test panels tested",
                    "test panels",
                    "test panels",
                    0,
                    Clock.WAITING,
                    shop.time("wait for test panels"),
                    0,
                    "",
                    List.of("test panels cured"),
                    shop.source("wait for test panels"));
        }

        void tub(List<PieceWork> pieces, Finish finish, int tub, int tubs) {
            double learned = Hours.learned(tub, times.learning().si());
            String of = tubs == 1 ? "" : ", tub " + tub;
            String before = ", tub " + (tub - 1);
            List<String> ready = new ArrayList<>(List.of("test panels tested"));
            double holes = finish.hardpoints * shop.time("hardpoint each") / pieces.size();
            for (List<PieceWork> load : loads(pieces)) {
                load(load, learned, of, before, tub);
            }
            for (PieceWork p : pieces) {
                String name = p.piece() + of;
                hands(
                        name + " out of its mould",
                        "demoulding",
                        p.piece(),
                        tub,
                        learned * p.stages().size() * times.demoulding().si(),
                        List.of(name + ": " + p.stages().getLast().name() + " cured"),
                        times.demoulding().provenance().toString());
                hands(
                        name + " trimmed",
                        "trimming and inserts",
                        "trimming",
                        tub,
                        learned * (shop.time("trimming each") + holes),
                        List.of(name + " out of its mould"),
                        shop.source("trimming each"));
                hands(
                        name + " inspected",
                        "inspection",
                        "trimming",
                        tub,
                        learned * shop.time("inspection each"),
                        List.of(name + " trimmed"),
                        shop.source("inspection each"));
                ready.add(name + " inspected");
            }
            String whole = tubs == 1 ? "tub" : "tub " + tub;
            hands(
                    whole + " bonded",
                    "bonding",
                    "bonding",
                    tub,
                    learned * Math.max(1, finish.joints) * shop.time("bond line each"),
                    ready,
                    shop.source("bond line each"));
            add(
                    whole + ": adhesive cured",
                    "bonding",
                    "bonding",
                    tub,
                    Clock.WAITING,
                    shop.time("wait for adhesive"),
                    0,
                    "",
                    List.of(whole + " bonded"),
                    shop.source("wait for adhesive"));
            hands(
                    whole + " looked over",
                    "last look",
                    "bonding",
                    tub,
                    learned * shop.time("last look"),
                    List.of(whole + ": adhesive cured"),
                    shop.source("last look"));
            add(
                    whole + " delivered",
                    "delivery",
                    "bonding",
                    tub,
                    Clock.WAITING,
                    shop.time("wait for delivery"),
                    0,
                    "",
                    List.of(whole + " looked over"),
                    shop.source("wait for delivery"));
        }

        /** Pieces that go into the autoclave together: those of as many cures, in their order. */
        private List<List<PieceWork>> loads(List<PieceWork> pieces) {
            Map<Integer, List<PieceWork>> alike = new LinkedHashMap<>();
            pieces.forEach(p -> alike.computeIfAbsent(p.stages().size(), _ -> new ArrayList<>())
                    .add(p));
            List<List<PieceWork>> loads = new ArrayList<>();
            alike.values().forEach(all -> {
                for (int i = 0; i < all.size(); i += shop.load()) {
                    loads.add(all.subList(i, Math.min(all.size(), i + shop.load())));
                }
            });
            return loads;
        }

        /** From kit to last cure of pieces that are cured together. */
        private void load(List<PieceWork> load, double learned, String of, String before, int tub) {
            for (PieceWork p : load) {
                hands(
                        "kit of " + p.piece() + of,
                        "cutting",
                        "cutting",
                        tub,
                        learned * p.cutting(),
                        List.of("material arrives"),
                        times.cutRate().provenance().toString());
            }
            int stages = load.getFirst().stages().size();
            for (int s = 0; s < stages; s++) {
                List<String> bagged = new ArrayList<>();
                for (PieceWork p : load) {
                    String name = p.piece();
                    PieceWork.Stage stage = p.stages().get(s);
                    List<String> needs = new ArrayList<>();
                    if (s == 0) {
                        needs.addAll(List.of("kit of " + name + of, "mould of " + name + " cured"));
                        if (tub > 1) {
                            needs.add(name + before + " out of its mould");
                        }
                    } else {
                        needs.add(name + of + ": " + p.stages().get(s - 1).name() + " cured");
                    }
                    String what = name + of + ": " + stage.name();
                    double debulks =
                            Math.ceil(stage.plies() / times.debulkEvery().si());
                    hands(
                            what + " laid",
                            "laying",
                            name,
                            tub,
                            learned * stage.laying(),
                            needs,
                            times.clothRate().provenance().toString());
                    hands(
                            what + " debulked",
                            "debulking",
                            name,
                            tub,
                            learned * debulks * times.debulk().si(),
                            List.of(what + " laid"),
                            times.debulk().provenance().toString());
                    hands(
                            what + " bagged",
                            "bagging",
                            name,
                            tub,
                            learned * times.bagging().si(),
                            List.of(what + " debulked"),
                            times.bagging().provenance().toString());
                    bagged.add(what + " bagged");
                }
                String run = "cure of " + load.getFirst().piece()
                        + (load.size() > 1 ? " and " + (load.size() - 1) + " more" : "") + of + ": "
                        + load.getFirst().stages().get(s).name();
                add(
                        run,
                        "autoclave",
                        "autoclave",
                        tub,
                        Clock.OVEN,
                        times.autoclave().si(),
                        0,
                        OVEN,
                        bagged,
                        times.autoclave().provenance().toString());
                for (PieceWork p : load) {
                    add(
                            p.piece() + of + ": " + p.stages().get(s).name() + " cured",
                            "autoclave",
                            p.piece(),
                            tub,
                            Clock.WAITING,
                            0,
                            0,
                            "",
                            List.of(run),
                            times.autoclave().provenance().toString());
                }
            }
        }

        /** Work of a team: people in it share it. */
        private void hands(
                String name, String step, String lane, int tub, double work, List<String> needs, String source) {
            add(name, step, lane, tub, Clock.HANDS, work / shop.people(), work, TEAM, needs, source);
        }

        private void add(
                String name,
                String step,
                String lane,
                int tub,
                Clock clock,
                double seconds,
                double work,
                String uses,
                List<String> needs,
                String source) {
            activities.add(new Activity(name, step, lane, tub, clock, seconds, work, uses, needs, source));
        }
    }

    /** Hours by step of the first tub, as they are told beside the kit. */
    public Hours hours() {
        return new Hours(
                efforts(1).entrySet().stream()
                        .filter(e -> e.getValue().work() + e.getValue().oven() > 0)
                        .map(e -> new Hours.Step(
                                e.getKey(),
                                e.getValue().work() + e.getValue().oven(),
                                e.getValue().source()))
                        .toList(),
                learning);
    }

    /** Working or oven time in hours. */
    public static double hours(double seconds) {
        return seconds / HOUR;
    }
}
