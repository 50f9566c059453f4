// SPDX-License-Identifier: Apache-2.0
package tubwright.engine.make.lay;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.Comparator;
import java.util.HashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.concurrent.ConcurrentHashMap;
import tubwright.engine.make.drape.ClothNet;
import tubwright.engine.make.drape.LayLimits;
import tubwright.engine.make.drape.NetLocator;
import tubwright.engine.make.drape.NetSettings;
import tubwright.engine.make.flat.Distortion;
import tubwright.engine.make.flat.FlatPattern;
import tubwright.engine.make.flat.Notches;
import tubwright.engine.make.flat.Outlines;
import tubwright.engine.make.ply.LaidPly;
import tubwright.engine.make.surface.SurfacePoint;
import tubwright.engine.make.surface.TriangleSurface;
import tubwright.engine.mesh.Mesh;
import tubwright.engine.structure.StructureException;

/**
 * Drapes cloth plies of the skin. The start is sought over places spread through the ply and the warp's direction there,
 * with a coarse net; plies of one shape and angle share what was found.
 */
final class ClothLayer {
    /** Spacing of the net, m, at most; smaller plies have a finer one. */
    private static final double SPACING = 0.010;

    private static final int PLACES = 7;
    private static final double[] TURNS = {0, Math.toRadians(-2), Math.toRadians(2)};
    private static final int SAMPLES = 300;
    /** Faces that differ less than this in depth share their start, m. */
    private static final double ALIKE = 0.005;

    static final Distortion NONE = new Distortion(0, 0, 0, 0, 0, 0, 0);

    private final Mesh mesh;
    private final Mould mould;
    private final Rims rims;
    private final Map<Key, Start> found = new ConcurrentHashMap<>();
    /** Whose face the start of all that are alike is sought on: the first laid, so that it is not left to chance. */
    private final Map<Key, LaidPly> first = new HashMap<>();

    private final LayStarts starts;

    ClothLayer(Mesh mesh, Mould mould, Rims rims, List<LaidPly> plies, LayStarts starts) {
        this.mesh = mesh;
        this.starts = starts;
        plies.stream().filter(LaidPly::cloth).forEach(p -> first.putIfAbsent(Key.of(p), p));
        this.rims = rims;
        this.mould = mould;
    }

    /** Plies of one shape and angle whose faces lie about as deep. */
    private record Key(int shape, int count, long angle, long depth) {
        static Key of(LaidPly ply) {
            return new Key(
                    Arrays.hashCode(ply.elements()),
                    ply.elements().length,
                    Math.round(1e6 * ply.angle()),
                    Math.round(Arrays.stream(ply.depths()).max().orElse(0) / ALIKE));
        }
    }

    /** Where a net starts: the middle of an element, its warp turned from nominal. */
    private record Start(int element, double turned, double cost) {}

    /** Lays a cloth from the start chosen for it, else from the best that is found. */
    DrapedPly lay(LaidPly ply) {
        Optional<LayStarts.Chosen> chosen = starts.of(ply);
        if (chosen.isEmpty()) {
            return lay(ply, sought(ply));
        }
        LayStart wanted = chosen.get().start();
        DrapedPly there = lay(ply, new Start(chosen.get().element(), wanted.turned(), 0));
        double bare = there.figures().bare();
        if (bare <= DrapedPly.BARE * there.figures().area()) {
            return there;
        }
        String where = Advice.on(mesh, there).advice().stream()
                .filter(a -> a.contains("cannot reach"))
                .findFirst()
                .orElse("its net does not reach all of it");
        if (chosen.get().byName()) {
            throw new StructureException(
                    String.format(
                            Locale.ROOT,
                            "\"start of %s\": it cannot be draped from %s: %.0f of %.0f cm² stay bare; %s",
                            wanted.of(),
                            wanted.words(),
                            1e4 * bare,
                            1e4 * there.figures().area(),
                            where),
                    "choose a start nearer its middle, another direction, or leave the start out: then the best is sought");
        }
        return lay(ply, sought(ply))
                .with(String.format(
                        Locale.ROOT,
                        "not laid from the start of its piece, %s: %.0f cm² would stay bare",
                        wanted.words(),
                        1e4 * bare));
    }

    private Start sought(LaidPly ply) {
        LayLimits limits = LayLimits.of(ply.material());
        double size = Math.sqrt(Advice.area(mesh, ply));
        double spacing = Math.max(spacing(size), size / 30);
        return found.computeIfAbsent(Key.of(ply), key -> {
            LaidPly alike = first.get(key);
            return search(alike, mould.face(alike), limits, spacing);
        });
    }

    private static double spacing(double size) {
        return Math.clamp(size / 10, 0.002, SPACING);
    }

    private DrapedPly lay(LaidPly ply, Start start) {
        LayLimits limits = LayLimits.of(ply.material());
        TriangleSurface face = mould.face(ply);
        double spacing = spacing(Math.sqrt(Advice.area(mesh, ply)));
        ClothNet net = net(ply, face, start, spacing, mould.reach(ply, 2.5 * spacing));
        NetLocator locator = new NetLocator(net);
        DrapedPly.Fibres fibres = fibres(ply, face, locator);
        DrapedPly.Figures figures = figures(ply, fibres, limits);
        double[] at = new double[3];
        net.position(net.node(0, 0), at);
        Flat flat = flat(ply, face, locator, start, spacing);
        Darts.Cut cut = darts(ply, face, locator, limits, fibres, flat.pattern());
        List<String> words = new ArrayList<>(cut.words());
        words.addAll(words(flat.tears()));
        return new DrapedPly(ply, limits, at, start.turned(), fibres, figures, Notches.on(cut.flat()), words);
    }

    private Darts.Cut darts(
            LaidPly ply,
            TriangleSurface face,
            NetLocator locator,
            LayLimits limits,
            DrapedPly.Fibres fibres,
            FlatPattern flat) {
        Map<Integer, Integer> index = new HashMap<>();
        for (int i = 0; i < ply.elements().length; i++) {
            index.put(ply.elements()[i], i);
        }
        double[] p = new double[3];
        return Darts.into(
                flat,
                Advice.locked(mesh, ply, fibres, limits),
                e -> Double.isNaN(fibres.warp()[index.get(e)])
                        ? new double[0]
                        : new double[] {fibres.shear(index.get(e))},
                e -> {
                    SurfacePoint at = mould.centreOn(face, e);
                    face.position(at.triangle(), at.x(), at.y(), p);
                    return locator.of(p)
                            .map(place -> new double[] {place.u(), -place.v()})
                            .orElse(new double[0]);
                },
                limits.locking());
    }

    private ClothNet net(LaidPly ply, TriangleSurface face, Start start, double spacing, boolean[] reach) {
        SurfacePoint at = mould.centreOn(face, start.element());
        double[] warp =
                Directions.of(mesh, start.element(), Directions.nominal(mesh, start.element(), ply) + start.turned());
        return ClothNet.lay(face, reach, at, face.angle(at.triangle(), warp), NetSettings.of(spacing));
    }

    private Start search(LaidPly ply, TriangleSurface face, LayLimits limits, double spacing) {
        boolean[] reach = mould.reach(ply, 2.5 * spacing);
        int step = Math.max(1, ply.elements().length / SAMPLES);
        Start best = new Start(ply.elements()[0], 0, Double.POSITIVE_INFINITY);
        for (int element : spread(ply.elements())) {
            best = better(best, tried(ply, face, reach, limits, spacing, step, element, 0));
        }
        for (double turned : TURNS) {
            if (turned != 0) {
                best = better(best, tried(ply, face, reach, limits, spacing, step, best.element(), turned));
            }
        }
        return best;
    }

    private static Start better(Start a, Start b) {
        return b.cost() < a.cost() ? b : a;
    }

    /** Cost: bare area before all, then locked, then the largest shear, then how far threads turn from nominal. */
    private Start tried(
            LaidPly ply,
            TriangleSurface face,
            boolean[] reach,
            LayLimits limits,
            double spacing,
            int step,
            int element,
            double turned) {
        Start start = new Start(element, turned, 0);
        NetLocator locator = new NetLocator(net(ply, face, start, spacing, reach));
        double all = 0;
        double bare = 0;
        double locked = 0;
        double turn = 0;
        double[] shears = new double[ply.elements().length / step + 1];
        int n = 0;
        for (int i = 0; i < ply.elements().length; i += step) {
            int e = ply.elements()[i];
            double area = mesh.area(e);
            all += area;
            Optional<double[]> two = threads(e, face, locator);
            if (two.isEmpty()) {
                bare += area;
                continue;
            }
            double shear = Math.abs(Math.PI / 2 - Math.IEEEremainder(two.get()[1] - two.get()[0], 2 * Math.PI));
            shears[n++] = shear;
            if (shear > limits.locking()) {
                locked += area;
            }
            turn += area * turn(two.get(), Directions.nominal(mesh, e, ply));
        }
        Arrays.sort(shears, 0, n);
        double large = n == 0 ? Math.PI / 2 : shears[Math.max(0, n - 1 - n / 50)];
        return new Start(element, turned, 100 * bare / all + 10 * locked / all + large + turn / all);
    }

    /** Elements spread over a ply: each as far as can be from those before, the first near the middle. */
    private List<Integer> spread(int[] elements) {
        double[][] at = new double[elements.length][];
        double[] middle = new double[3];
        for (int i = 0; i < at.length; i++) {
            at[i] = Mould.centre(mesh, elements[i]);
            for (int k = 0; k < 3; k++) {
                middle[k] += at[i][k] / at.length;
            }
        }
        double[] nearest = new double[at.length];
        Arrays.fill(nearest, Double.POSITIVE_INFINITY);
        List<Integer> chosen = new ArrayList<>();
        int next = java.util.stream.IntStream.range(0, at.length)
                .boxed()
                .min(Comparator.comparingDouble(i -> distance(at[i], middle)))
                .orElseThrow();
        while (chosen.size() < Math.min(PLACES, at.length)) {
            chosen.add(elements[next]);
            int far = 0;
            for (int i = 0; i < at.length; i++) {
                nearest[i] = Math.min(nearest[i], distance(at[i], at[next]));
                far = nearest[i] > nearest[far] ? i : far;
            }
            next = far;
        }
        return chosen;
    }

    private static double distance(double[] a, double[] b) {
        return Math.sqrt((a[0] - b[0]) * (a[0] - b[0]) + (a[1] - b[1]) * (a[1] - b[1]) + (a[2] - b[2]) * (a[2] - b[2]));
    }

    /** Angles of warp and weft in an element; empty where the net does not reach. */
    private Optional<double[]> threads(int e, TriangleSurface face, NetLocator locator) {
        SurfacePoint at = mould.centreOn(face, e);
        double[] p = new double[3];
        face.position(at.triangle(), at.x(), at.y(), p);
        return locator.of(p).map(place -> {
            double[][] two = locator.threads(place);
            return new double[] {Directions.angle(mesh, e, two[0]), Directions.angle(mesh, e, two[1])};
        });
    }

    /** The larger turn of the two threads from the nearest of the two nominal directions, rad. */
    static double turn(double[] threads, double nominal) {
        return Math.max(
                Math.abs(Math.IEEEremainder(threads[0] - nominal, Math.PI / 2)),
                Math.abs(Math.IEEEremainder(threads[1] - nominal, Math.PI / 2)));
    }

    private DrapedPly.Fibres fibres(LaidPly ply, TriangleSurface face, NetLocator locator) {
        int n = ply.elements().length;
        double[] warp = new double[n];
        double[] weft = new double[n];
        for (int i = 0; i < n; i++) {
            double[] two = threads(ply.elements()[i], face, locator).orElse(new double[] {Double.NaN, Double.NaN});
            warp[i] = two[0];
            weft[i] = two[1];
        }
        return new DrapedPly.Fibres(warp, weft);
    }

    private DrapedPly.Figures figures(LaidPly ply, DrapedPly.Fibres fibres, LayLimits limits) {
        double area = 0;
        double largest = 0;
        double mean = 0;
        double warned = 0;
        double locked = 0;
        double bare = 0;
        double largestTurn = 0;
        double meanTurn = 0;
        double thickness = 0;
        for (int i = 0; i < ply.elements().length; i++) {
            int e = ply.elements()[i];
            double a = mesh.area(e);
            area += a;
            if (Double.isNaN(fibres.warp()[i])) {
                bare += a;
                continue;
            }
            double shear = Math.abs(fibres.shear(i));
            double turn = turn(new double[] {fibres.warp()[i], fibres.weft()[i]}, Directions.nominal(mesh, e, ply));
            largest = Math.max(largest, shear);
            largestTurn = Math.max(largestTurn, turn);
            mean += a * shear;
            meanTurn += a * turn;
            warned += shear > limits.warning() ? a : 0;
            locked += shear > limits.locking() ? a : 0;
            thickness += a / Math.cos(shear);
        }
        double reached = Math.max(area - bare, 1e-12);
        return new DrapedPly.Figures(
                area,
                largest,
                mean / reached,
                warned,
                locked,
                bare,
                largestTurn,
                meanTurn / reached,
                thickness / reached,
                Optional.empty());
    }

    /** A pattern and where its net misses itself. */
    private record Flat(FlatPattern pattern, List<TracedLine.Tear> tears) {}

    private Flat flat(LaidPly ply, TriangleSurface face, NetLocator locator, Start start, double spacing) {
        List<double[]> outlines = new ArrayList<>();
        List<TracedLine.Tear> tears = new ArrayList<>();
        double missing = 0;
        for (int[] loop : rims.of(ply.elements())) {
            TracedLine rim = traced(loop, true, face, locator, spacing);
            missing += rim.missing();
            tears.addAll(rim.tears());
            if (rim.points().length >= 6) {
                outlines.add(rim.points());
            }
        }
        List<double[]> lines = new ArrayList<>();
        for (int[] chain : rims.borders(ply.elements())) {
            TracedLine line = traced(chain, false, face, locator, spacing);
            // A line with a gap in it would be drawn across the gap.
            if (line.missing() == 0 && line.tears().isEmpty() && line.points().length >= 4) {
                lines.add(line.points());
            }
        }
        outlines.sort(Comparator.comparingDouble(o -> -Math.abs(Outlines.area(o))));
        FlatPattern pattern = new FlatPattern(
                ply.name(),
                outlines,
                lines,
                new double[] {0, 0},
                Directions.nominal(mesh, start.element(), ply) + start.turned(),
                NONE,
                missing);
        return new Flat(pattern, tears);
    }

    private static List<String> words(List<TracedLine.Tear> tears) {
        return tears.stream()
                .max(Comparator.comparingDouble(TracedLine.Tear::by))
                .map(t -> String.format(
                        Locale.ROOT,
                        "comes round from both sides and does not meet itself, by %.0f mm near x = %.0f mm: split it there, or"
                                + " start it elsewhere",
                        1e3 * t.by(),
                        1e3 * t.place()[0]))
                .stream()
                .toList();
    }

    private TracedLine traced(int[] nodes, boolean closed, TriangleSurface face, NetLocator locator, double spacing) {
        TracedLine line = new TracedLine(closed, spacing);
        double[] before = {};
        boolean lost = false;
        for (int node : nodes) {
            SurfacePoint at = mould.nodeOn(face, node);
            double[] p = new double[3];
            face.position(at.triangle(), at.x(), at.y(), p);
            Optional<NetLocator.Place> place = locator.of(p);
            if (before.length > 0 && (lost || place.isEmpty())) {
                line.miss(distance(before, p));
            }
            // Seen from the side it is laid from.
            place.ifPresent(l -> line.add(new double[] {l.u(), -l.v()}, p));
            lost = place.isEmpty();
            before = p;
        }
        line.clean();
        return line;
    }
}
