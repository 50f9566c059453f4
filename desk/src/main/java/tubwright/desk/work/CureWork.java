// SPDX-License-Identifier: Apache-2.0
package tubwright.desk.work;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.concurrent.CancellationException;
import java.util.function.BooleanSupplier;
import java.util.function.Consumer;
import java.util.function.Function;
import java.util.stream.DoubleStream;
import java.util.stream.IntStream;
import tubwright.desk.answer.CureAnswer;
import tubwright.engine.laminate.Laminate;
import tubwright.engine.laminate.Layer;
import tubwright.engine.make.cure.CureLibrary;
import tubwright.engine.make.cure.CureShop;
import tubwright.engine.make.cure.CureStudy;
import tubwright.engine.make.cure.LaminateCure;
import tubwright.engine.make.cure.MouldExpansion;
import tubwright.engine.mesh.Mesh;
import tubwright.engine.mesh.MeshSettings;
import tubwright.engine.mesh.Mesher;
import tubwright.engine.mesh.Region;
import tubwright.engine.mesh.SurfaceLayout;
import tubwright.engine.shape.Frame;
import tubwright.engine.shape.Section;
import tubwright.engine.shape.TubShape;
import tubwright.engine.structure.Tub;

/** Finds the laminates of a tub and takes each through its cures. */
public final class CureWork {
    /** Only which laminates meet is asked of this mesh. */
    private static final double MESH = 0.06;

    static final double ROOM = 293.15;

    /** Bends are looked at this often along the tub, m. */
    private static final double STATIONS = 0.010;

    private CureWork() {}

    /**
     * The answer.
     *
     * @param says hears what is being done
     * @param stopped asked between laminates
     */
    public static CureAnswer cure(
            Tub tub,
            CureLibrary library,
            CureShop shop,
            String stamp,
            String version,
            Consumer<String> says,
            BooleanSupplier stopped) {
        says.accept("looking for laminates");
        CureStudy study = new CureStudy(library, shop);
        List<CureAnswer.Place> places = new ArrayList<>();
        Map<String, LaminateCure> byZone = new LinkedHashMap<>();
        Map<Laminate, Set<String>> found = laminates(tub);
        int done = 0;
        for (Map.Entry<Laminate, Set<String>> each : found.entrySet()) {
            if (stopped.getAsBoolean()) {
                throw new CancellationException();
            }
            String name = String.join(", ", each.getValue());
            says.accept("curing " + ++done + " of " + found.size() + ": "
                    + each.getValue().iterator().next());
            LaminateCure cure = study.of(name, each.getKey());
            each.getValue().forEach(where -> byZone.put(where, cure));
            places.add(new CureAnswer.Place(Laminates.code(each.getKey()), List.copyOf(each.getValue()), cure));
        }
        places.sort(Comparator.comparingDouble((CureAnswer.Place p) -> -p.cure().thickness()));
        return new CureAnswer(
                tub.name(),
                stamp,
                version,
                shop,
                places,
                bends(tub, zone -> Optional.ofNullable(byZone.get(zone)).flatMap(LaminateCure::springIn)),
                moulds(tub, library, shop, places));
    }

    /** Every different laminate with where it lies: the zone, and the patches on it. */
    private static Map<Laminate, Set<String>> laminates(Tub tub) {
        Mesh mesh = Mesher.mesh(tub.shape(), tub.layout(), MeshSettings.of(MESH));
        Map<Laminate, Set<String>> result = new LinkedHashMap<>();
        for (Region region : mesh.regions()) {
            Laminate zone = tub.laminates().get(region.zone());
            if (zone == null) {
                continue;
            }
            List<Layer> layers = new ArrayList<>(zone.layers());
            region.patches().forEach(p -> layers.addAll(tub.patchPlies().getOrDefault(p, List.of())));
            String where = region.zone()
                    + (region.patches().isEmpty() ? "" : " with " + String.join(" and ", region.patches()));
            result.computeIfAbsent(new Laminate(layers, zone.reference()), _ -> new LinkedHashSet<>())
                    .add(where);
        }
        return result;
    }

    /** Where the skin turns between two strips, frame by frame, and by how much the laminates there close. */
    static List<CureAnswer.Bend> bends(Tub tub, Function<String, Optional<LaminateCure.Bend>> springIn) {
        TubShape shape = tub.shape();
        List<CureAnswer.Bend> bends = new ArrayList<>();
        for (int corner = 1; corner < shape.strips().size(); corner++) {
            String strip = shape.strips().get(corner - 1);
            String between = strip + " and " + shape.strips().get(corner);
            String zone = "";
            double from = 0;
            double to = 0;
            double least = 0;
            double most = 0;
            for (double x : stations(shape)) {
                Section section = shape.section(x);
                double turn = Math.abs(section.turn(corner));
                String here = zoneAt(tub, strip, x);
                if (!here.equals(zone)) {
                    add(bends, between, zone, from, x, least, most, springIn);
                    zone = here;
                    from = x;
                    least = turn;
                    most = turn;
                }
                to = x;
                least = Math.min(least, turn);
                most = Math.max(most, turn);
            }
            add(bends, between, zone, from, to, least, most, springIn);
        }
        return bends;
    }

    /** The frames, and between them every few millimetres. */
    static double[] stations(TubShape shape) {
        int steps = (int) Math.ceil((shape.rear() - shape.front()) / STATIONS);
        return DoubleStream.concat(
                        shape.frames().stream().mapToDouble(Frame::x),
                        IntStream.rangeClosed(0, steps)
                                .mapToDouble(i -> shape.front() + (shape.rear() - shape.front()) * i / steps))
                .sorted()
                .distinct()
                .toArray();
    }

    private static void add(
            List<CureAnswer.Bend> bends,
            String between,
            String zone,
            double from,
            double to,
            double least,
            double most,
            Function<String, Optional<LaminateCure.Bend>> springIn) {
        if (zone.isEmpty()) {
            return;
        }
        double a = closing(springIn.apply(zone), least);
        double b = closing(springIn.apply(zone), most);
        bends.add(new CureAnswer.Bend(between, zone, from, to, least, most, a, b));
    }

    private static double closing(Optional<LaminateCure.Bend> bend, double angle) {
        return bend.map(b -> b.formula().total(angle, b.change())).orElse(Double.NaN);
    }

    /** The zone of a strip at a station on the right; the later in the document counts. */
    private static String zoneAt(Tub tub, String strip, double x) {
        String found = strip;
        for (SurfaceLayout.Zone zone : tub.layout().zones()) {
            for (SurfaceLayout.Area area : zone.areas()) {
                if (area instanceof SurfaceLayout.OnStrips on
                        && on.strips().contains(strip)
                        && x >= on.fromX() - 1e-9
                        && x < on.toX() + (x >= tub.shape().rear() ? 1e-9 : 0)) {
                    found = zone.name();
                }
            }
        }
        return found;
    }

    private static List<CureAnswer.Mould> moulds(
            Tub tub, CureLibrary library, CureShop shop, List<CureAnswer.Place> places) {
        double along = places.stream()
                .flatMap(p -> p.cure().springIn().stream())
                .mapToDouble(b -> b.formula().alongExpansion())
                .average()
                .orElse(Double.NaN);
        if (Double.isNaN(along)) {
            return List.of();
        }
        double length = tub.shape().rear() - tub.shape().front();
        double change = shop.solid().hottest() - ROOM;
        return library.tools().values().stream()
                .map(tool -> new CureAnswer.Mould(
                        tool.name(),
                        tool.description(),
                        tool.expansion().si(),
                        new MouldExpansion(along, tool.expansion().si(), change).factor(),
                        length,
                        tool.expansion().provenance().toString()))
                .toList();
    }
}
