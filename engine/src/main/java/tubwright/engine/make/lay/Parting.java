// SPDX-License-Identifier: Apache-2.0
package tubwright.engine.make.lay;

import java.nio.IntBuffer;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.Comparator;
import java.util.HashMap;
import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Set;
import java.util.TreeMap;
import java.util.TreeSet;
import java.util.concurrent.ConcurrentHashMap;
import java.util.stream.IntStream;
import tubwright.engine.laminate.LayerRole;
import tubwright.engine.make.flat.Distortion;
import tubwright.engine.make.flat.Flattening;
import tubwright.engine.make.ply.LaidPly;
import tubwright.engine.make.surface.MeshSurface;
import tubwright.engine.make.surface.Neighbours;
import tubwright.engine.mesh.Mesh;
import tubwright.numerics.DirectSolver;

/**
 * Where film, core and tape are cut in parts when in one sheet they would have to stretch. The curvature that no flat follows
 * gathers in the fillets between the strips of a tub that swells or bends along its length, so the cuts follow the edges of
 * the strips; as many strips stay together as lie in one sheet within the limit. Tape is cut only along its fibres: at 0°.
 */
final class Parting {
    /** A part smaller than this stays with its neighbour, m². */
    private static final double CRUMB = 2e-3;

    private final Mesh mesh;
    private final OutlineFlats flats;
    private final DirectSolver solver;
    private final int[] across;
    /** Group of each element of sheets that were cut before: skins of one outline are cut alike. */
    private final Map<IntBuffer, int[]> known = new ConcurrentHashMap<>();

    Parting(Mesh mesh, OutlineFlats flats, DirectSolver solver) {
        this.mesh = mesh;
        this.flats = flats;
        this.solver = solver;
        across = Neighbours.of(mesh);
    }

    /** Whether cutting this along the tub severs no fibre. */
    static boolean mayBeCut(LaidPly ply) {
        return !ply.cloth()
                && (ply.role() != LayerRole.PLY || Math.abs(Math.IEEEremainder(ply.angle(), Math.PI)) < 1e-6);
    }

    /** The ply in parts; the ply itself where no cut helps. */
    List<LaidPly> of(LaidPly ply) {
        int[] group = known.computeIfAbsent(IntBuffer.wrap(ply.elements()), _ -> groups(ply.elements()));
        Map<Integer, List<Integer>> members = new LinkedHashMap<>();
        for (int i = 0; i < group.length; i++) {
            members.computeIfAbsent(group[i], _ -> new ArrayList<>()).add(i);
        }
        if (members.size() == 1) {
            return List.of(ply);
        }
        List<LaidPly> parts = new ArrayList<>();
        boolean lettered = ply.name().matches(".* [a-z]\\d*");
        for (List<Integer> own : members.values()) {
            int[] elements = own.stream().mapToInt(i -> ply.elements()[i]).toArray();
            String name = ply.name() + (lettered ? "" + (parts.size() + 1) : " " + (char) ('a' + parts.size()));
            parts.add(new LaidPly(
                    name,
                    ply.piece(),
                    ply.sequence(),
                    ply.material(),
                    ply.thickness(),
                    ply.angle(),
                    ply.role(),
                    ply.patch(),
                    Arrays.stream(elements)
                            .mapToObj(e -> mesh.region(e).zone())
                            .distinct()
                            .toList(),
                    elements,
                    own.stream().mapToDouble(i -> ply.depths()[i]).toArray()));
        }
        return parts;
    }

    /** What is said of a sheet that is cut. */
    String words(LaidPly whole, List<LaidPly> parts, Distortion uncut) {
        Set<String> strips = new TreeSet<>();
        for (LaidPly part : parts) {
            for (int e : part.elements()) {
                strips.add(mesh.region(e).part());
            }
        }
        String how = switch (whole.role()) {
            case CORE -> "; splice its edges";
            case FILM -> "; lay them edge to edge";
            default -> "; lay them edge to edge along the fibres";
        };
        return String.format(
                Locale.ROOT,
                "cut in %d parts along the edges of %s, since in one it must stretch %s%s",
                parts.size(),
                String.join(", ", strips),
                stretch(uncut),
                how);
    }

    /** How much a pattern is stretched when it is laid, in words. */
    static String stretch(Distortion d) {
        return String.format(
                Locale.ROOT,
                "%+.1f to %+.1f %%",
                100 * (1 / (1 + d.longest()) - 1),
                100 * (1 / (1 + d.shortest()) - 1));
    }

    private int[] groups(int[] elements) {
        Map<Integer, Integer> place = new HashMap<>();
        for (int i = 0; i < elements.length; i++) {
            place.put(elements[i], i);
        }
        int[] group = strips(elements, place);
        if (Arrays.stream(group).max().orElse(0) == 0) {
            return group;
        }
        OutlineFlats.Flat whole = flats.of(elements);
        Map<Long, Double> borders = borders(elements, place, group);
        Set<Long> apart = new HashSet<>();
        while (true) {
            long best = borders.entrySet().stream()
                    .filter(b -> !apart.contains(b.getKey()))
                    .max(Map.Entry.<Long, Double>comparingByValue()
                            .thenComparing(Map.Entry.comparingByKey(Comparator.reverseOrder())))
                    .map(Map.Entry::getKey)
                    .orElse(-1L);
            if (best < 0) {
                return group;
            }
            int a = (int) (best >> 32);
            int b = (int) best;
            if (area(elements, group, a) < CRUMB
                    || area(elements, group, b) < CRUMB
                    || together(whole, elements, group, a, b)) {
                for (int i = 0; i < group.length; i++) {
                    group[i] = group[i] == b ? a : group[i];
                }
                borders = borders(elements, place, group);
                // What has grown is tried anew only with what it was not tried with in part.
                Set<Long> before = Set.copyOf(apart);
                before.forEach(p -> {
                    int c = (int) (p >> 32);
                    int d = (int) (long) p;
                    if (c == b || d == b) {
                        int other = c == b ? d : c;
                        apart.add(pair(a, other));
                    }
                });
            } else {
                apart.add(best);
            }
        }
    }

    /** Connected elements of one strip on one side have one number. */
    private int[] strips(int[] elements, Map<Integer, Integer> place) {
        int[] group = new int[elements.length];
        Arrays.fill(group, -1);
        int[] queue = new int[elements.length];
        int count = 0;
        for (int first = 0; first < group.length; first++) {
            if (group[first] >= 0) {
                continue;
            }
            int tail = 1;
            queue[0] = first;
            group[first] = count;
            for (int head = 0; head < tail; head++) {
                int e = elements[queue[head]];
                for (int k = 0; k < mesh.cornerCount(e); k++) {
                    Integer next = across[4 * e + k] < 0 ? null : place.get(across[4 * e + k]);
                    if (next != null && group[next] < 0 && strip(elements[next]).equals(strip(e))) {
                        group[next] = count;
                        queue[tail++] = next;
                    }
                }
            }
            count++;
        }
        return group;
    }

    private String strip(int e) {
        return mesh.region(e).part() + (mesh.region(e).mirrored() ? " left" : " right");
    }

    /** Length of the border between each two groups, m, the lesser number first. */
    private Map<Long, Double> borders(int[] elements, Map<Integer, Integer> place, int[] group) {
        Map<Long, Double> borders = new TreeMap<>();
        for (int i = 0; i < elements.length; i++) {
            int e = elements[i];
            int n = mesh.cornerCount(e);
            for (int k = 0; k < n; k++) {
                Integer other = across[4 * e + k] < 0 ? null : place.get(across[4 * e + k]);
                if (other != null && group[other] > group[i]) {
                    double[] x = mesh.nodes();
                    int a = 3 * mesh.elementNodes()[4 * e + k];
                    int b = 3 * mesh.elementNodes()[4 * e + (k + 1) % n];
                    double length = Math.hypot(Math.hypot(x[a] - x[b], x[a + 1] - x[b + 1]), x[a + 2] - x[b + 2]);
                    borders.merge(pair(group[i], group[other]), length, Double::sum);
                }
            }
        }
        return borders;
    }

    private static long pair(int a, int b) {
        return ((long) Math.min(a, b) << 32) | Math.max(a, b);
    }

    private double area(int[] elements, int[] group, int of) {
        double area = 0;
        for (int i = 0; i < group.length; i++) {
            area += group[i] == of ? mesh.area(elements[i]) : 0;
        }
        return area;
    }

    private boolean together(OutlineFlats.Flat whole, int[] elements, int[] group, int a, int b) {
        int[] both = IntStream.range(0, group.length)
                .filter(i -> group[i] == a || group[i] == b)
                .map(i -> elements[i])
                .toArray();
        MeshSurface face = flats.face(both);
        double[] flat = Flattening.isometric(face.surface(), whole.of(face), solver);
        return Distortion.of(face.surface(), flat).beyond() <= DrapedPly.CRUMBS;
    }
}
