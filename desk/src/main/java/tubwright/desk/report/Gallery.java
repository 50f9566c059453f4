// SPDX-License-Identifier: Apache-2.0
package tubwright.desk.report;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.Base64;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.function.Supplier;
import tubwright.desk.answer.Reading;
import tubwright.desk.answer.RunAnswer;
import tubwright.desk.picture.EnergyScale;
import tubwright.desk.picture.Png;
import tubwright.desk.picture.TubPicture;
import tubwright.desk.picture.TubPicture.Picture;
import tubwright.desk.picture.View.From;
import tubwright.desk.text.Figures;
import tubwright.engine.mesh.Region;
import tubwright.engine.response.CaseAnswer;
import tubwright.engine.response.ReserveMap;
import tubwright.engine.response.Stability;
import tubwright.engine.response.VariantAnswer;

/** All pictures of a note, painted side by side on the machine's cores. */
final class Gallery {
    /** The largest movement in the twisted picture as a share of the tub's length. */
    private static final double SHOWN_MOVEMENT = 0.07;
    /** Buckling cases and modes of vibration shown. */
    private static final int MODES = 4;

    /**
     * A finished picture.
     *
     * @param picture pixels and view
     * @param uri the same as a data URI
     */
    record Plate(Picture picture, String uri) {}

    /** An order for a picture. */
    private record Order(String name, Supplier<Picture> work) {}

    private final Map<String, Plate> plates;
    private final Optional<EnergyScale> scale;
    private final double exaggeration;
    private final List<String> zones;

    private Gallery(Map<String, Plate> plates, Optional<EnergyScale> scale, double exaggeration, List<String> zones) {
        this.plates = plates;
        this.scale = scale;
        this.exaggeration = exaggeration;
        this.zones = zones;
    }

    /** Paints everything the note about {@code answer} shows. */
    static Gallery paint(RunAnswer answer) {
        VariantAnswer main = answer.main();
        List<TubPicture> painters = answer.variants().parallelStream()
                .map(v -> new TubPicture(v.mesh()))
                .toList();
        TubPicture first = painters.getFirst();
        List<Order> orders = new ArrayList<>();
        Optional<CaseAnswer> torsion = Reading.torsion(main);
        Optional<EnergyScale> scale =
                torsion.map(t -> EnergyScale.of(main.mesh(), t.fields().energyDensities()));
        double exaggeration = torsion.map(
                        t -> Math.max(1, exaggeration(main, t.fields().displacements())))
                .orElse(1.0);
        List<String> zones =
                main.mesh().regions().stream().map(Region::zone).distinct().toList();
        if (torsion.isPresent()) {
            double[] w = torsion.get().fields().energyDensities();
            EnergyScale colours = scale.orElseThrow();
            orders.add(new Order("hero", () -> first.energy(w, colours, From.THREE_QUARTER_FRONT, false, 1280)));
            orders.add(new Order("cut", () -> first.energy(w, colours, From.INTO_THE_CUT, true, 1160)));
            double[] u = torsion.get().fields().displacements();
            orders.add(new Order("twisted", () -> first.deformed(u, exaggeration, From.THREE_QUARTER_FRONT, 1160)));
            orders.add(new Order("plan", () -> first.energy(w, colours, From.PLAN, false, 880)));
            orders.add(new Order("side", () -> first.energy(w, colours, From.SIDE, false, 880)));
        }
        orders.add(new Order("zones", () -> first.zones(zones, From.THREE_QUARTER_FRONT, false, 880)));
        orders.add(new Order("zones cut", () -> first.zones(zones, From.INTO_THE_CUT, true, 880)));
        orders.add(new Order("profile", () -> first.plain(From.SIDE, 1224, 3)));
        modes(main, first, orders);
        main.reserves().map().ifPresent(map -> {
            double[] used = Arrays.stream(map.factor())
                    .map(f -> ReserveSection.level(f))
                    .toArray();
            orders.add(new Order("reserve", () -> first.levels(used, From.THREE_QUARTER_FRONT, false, 1160)));
            orders.add(new Order("reserve cut", () -> first.levels(used, From.INTO_THE_CUT, true, 1160)));
            orders.add(new Order(
                    "reserve mode",
                    () -> first.kinds(
                            near(map, map.mode()), map.modes().size(), From.THREE_QUARTER_FRONT, false, 880)));
            orders.add(new Order(
                    "reserve case",
                    () -> first.kinds(
                            near(map, map.load()), map.loads().size(), From.THREE_QUARTER_FRONT, false, 880)));
        });
        for (int v = 1; v < answer.variants().size(); v++) {
            VariantAnswer variant = answer.variants().get(v);
            TubPicture painter = painters.get(v);
            Reading.torsion(variant).ifPresent(t -> {
                EnergyScale colours = scale.orElseGet(
                        () -> EnergyScale.of(variant.mesh(), t.fields().energyDensities()));
                double factor = torsion.map(m -> squared(m.load() / t.load())).orElse(1.0);
                double[] w = t.fields().energyDensities().clone();
                for (int e = 0; e < w.length; e++) {
                    w[e] *= factor;
                }
                orders.add(new Order(
                        "variant " + variant.variant(),
                        () -> painter.energy(w, colours, From.THREE_QUARTER_FRONT, false, 880)));
            });
        }
        List<Plate> done = orders.parallelStream().map(Gallery::fill).toList();
        Map<String, Plate> plates = new LinkedHashMap<>();
        for (int i = 0; i < orders.size(); i++) {
            plates.put(orders.get(i).name(), done.get(i));
        }
        return new Gallery(plates, scale, exaggeration, zones);
    }

    /** Pictures of the lowest buckling mode of each case and of the first modes of vibration. */
    private static void modes(VariantAnswer main, TubPicture painter, List<Order> orders) {
        Stability stability = main.stability();
        stability.buckling().stream()
                .limit(MODES)
                .forEach(each -> each.lowest().ifPresent(mode -> {
                    double factor = exaggeration(main, mode.shape());
                    orders.add(new Order(
                            "buckling " + each.load(),
                            () -> painter.deformed(mode.shape(), factor, From.THREE_QUARTER_FRONT, 880)));
                }));
        stability
                .free()
                .ifPresent(v -> v.modes().elastic().stream().limit(MODES).forEach(mode -> {
                    double[] shape = Arrays.copyOf(mode.shape(), 6 * main.mesh().nodeCount());
                    double factor = exaggeration(main, shape);
                    orders.add(new Order(
                            "mode " + mode.name() + ", "
                                    + Figures.significant(mode.frequency(), 4, Figures.NARROW_SPACE) + " Hz",
                            () -> painter.deformed(shape, factor, From.THREE_QUARTER_FRONT, 880)));
                }));
    }

    /** Names of pictures that begin so, in the order of painting. */
    List<String> names(String prefix) {
        return plates.keySet().stream().filter(n -> n.startsWith(prefix)).toList();
    }

    /** Kinds of the elements whose reserve factor is worth a colour; the others have none. */
    private static int[] near(ReserveMap map, int[] kinds) {
        int[] near = kinds.clone();
        for (int e = 0; e < near.length; e++) {
            near[e] = map.factor()[e] > ReserveSection.FAR ? -1 : near[e];
        }
        return near;
    }

    /** The picture of that name, if it was painted. */
    Optional<Plate> plate(String name) {
        return Optional.ofNullable(plates.get(name));
    }

    /** Colours of energy density. */
    Optional<EnergyScale> scale() {
        return scale;
    }

    /** Factor on displacements in the twisted picture, a round number. */
    double exaggeration() {
        return exaggeration;
    }

    /** Zones in the order of their numbers. */
    List<String> zones() {
        return zones;
    }

    private static Plate fill(Order order) {
        Picture picture = order.work().get();
        byte[] png = Png.encode(picture.image());
        return new Plate(picture, "data:image/png;base64," + Base64.getEncoder().encodeToString(png));
    }

    private static double exaggeration(VariantAnswer variant, double[] u) {
        double most = 0;
        for (int n = 0; n < u.length; n += 6) {
            most = Math.max(most, Math.sqrt(u[n] * u[n] + u[n + 1] * u[n + 1] + u[n + 2] * u[n + 2]));
        }
        double low = Double.MAX_VALUE;
        double high = -Double.MAX_VALUE;
        double[] nodes = variant.mesh().nodes();
        for (int i = 0; i < nodes.length; i += 3) {
            low = Math.min(low, nodes[i]);
            high = Math.max(high, nodes[i]);
        }
        if (!(most > 0)) {
            return 1;
        }
        double factor = SHOWN_MOVEMENT * (high - low) / most;
        double power = Math.pow(10, Math.floor(Math.log10(factor)));
        return power * (factor < 2 * power ? 1 : factor < 5 * power ? 2 : 5);
    }

    private static double squared(double v) {
        return v * v;
    }
}
