// SPDX-License-Identifier: Apache-2.0
package tubwright.engine.safety.damage;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import java.util.stream.IntStream;
import tubwright.engine.mesh.Mesh;
import tubwright.engine.mesh.Region;
import tubwright.engine.structure.Structure;
import tubwright.engine.structure.StructureException;

/** Finds the elements of patches: discs at points of the surface, whole zones and walls, a moving disc over all the tub. */
public final class Patches {
    /** Farther from the surface than this share of a patch's size, a point lies beside the tub. */
    private static final double REACH = 0.5;

    private final Structure structure;
    private final Mesh mesh;
    private final double[] centres;
    private final double[] normals;

    /** Of a structure's shells. */
    public Patches(Structure structure) {
        this.structure = structure;
        mesh = structure.mesh();
        int count = mesh.elementCount();
        centres = new double[3 * count];
        normals = new double[3 * count];
        for (int e = 0; e < count; e++) {
            int corners = mesh.cornerCount(e);
            for (int c = 0; c < corners; c++) {
                for (int d = 0; d < 3; d++) {
                    centres[3 * e + d] += mesh.nodes()[3 * mesh.elementNodes()[4 * e + c] + d] / corners;
                    normals[3 * e + d] += mesh.cornerNormals()[12 * e + 3 * c + d] / corners;
                }
            }
        }
    }

    /**
     * A disc of skin or wall: the elements whose middles lie within half its size of the spot nearest to a point, on surface
     * that faces the same way. On skin it takes all pieces that lie there; on a wall that wall alone.
     *
     * @param point m, 3 numbers
     * @param size diameter, m
     * @throws StructureException where the point lies farther from any element's middle than half the size and one element
     */
    public Patch disc(double[] point, double size) {
        int nearest = 0;
        for (int e = 1; e < mesh.elementCount(); e++) {
            if (distance(e, point) < distance(nearest, point)) {
                nearest = e;
            }
        }
        double reach = REACH * size + Math.sqrt(mesh.area(nearest));
        if (distance(nearest, point) > reach) {
            throw new StructureException(
                    String.format(
                            Locale.ROOT,
                            "there is no skin or wall at (%.0f, %.0f, %.0f) mm: the nearest is %.0f mm away, on '%s' at"
                                    + " (%.0f, %.0f, %.0f) mm",
                            1e3 * point[0],
                            1e3 * point[1],
                            1e3 * point[2],
                            1e3 * distance(nearest, point),
                            mesh.region(nearest).part(),
                            1e3 * centres[3 * nearest],
                            1e3 * centres[3 * nearest + 1],
                            1e3 * centres[3 * nearest + 2]),
                    "name a point on the tub, or a larger patch");
        }
        return around(nearest, size);
    }

    /** The disc about an element's middle. */
    Patch around(int seed, double size) {
        Region own = mesh.region(seed);
        boolean wall = own.surface() == Region.Surface.WALL;
        double[] centre = centre(seed);
        int[] elements = IntStream.range(0, mesh.elementCount())
                .filter(e -> e == seed
                        || distance(e, centre) <= 0.5 * size
                                && mesh.region(e).surface() == own.surface()
                                && (!wall || mesh.region(e).part().equals(own.part()))
                                && (wall || along(e, seed) > 0))
                .toArray();
        return patch(words(centre), elements, centre, own.zone());
    }

    private static String words(double[] x) {
        return String.format(Locale.ROOT, "(%.0f, %.0f, %.0f) mm", 1e3 * x[0], 1e3 * x[1], 1e3 * x[2]);
    }

    /**
     * All of a zone, wall or strip.
     *
     * @throws StructureException where there is none of that name
     */
    public Patch whole(String name) {
        int[] elements = IntStream.range(0, mesh.elementCount())
                .filter(e -> mesh.region(e).zone().equals(name)
                        || mesh.region(e).part().equals(name))
                .toArray();
        if (elements.length == 0) {
            List<String> known = mesh.regions().stream()
                    .flatMap(r -> List.of(r.part(), r.zone()).stream())
                    .distinct()
                    .sorted()
                    .toList();
            throw new StructureException(
                    "no zone, wall or strip is called '" + name + "'", "there are: " + String.join(", ", known));
        }
        double[] middle = new double[3];
        for (int e : elements) {
            for (int d = 0; d < 3; d++) {
                middle[d] += centres[3 * e + d] / elements.length;
            }
        }
        return patch(name, elements, middle, name);
    }

    /** Where a hardpoint's insert sits. */
    public Patch at(String hardpoint, double size) {
        double[] place = structure.place(hardpoint);
        Patch found = disc(place, size);
        return new Patch(hardpoint, found.elements(), found.place(), found.area(), found.region());
    }

    /**
     * Positions of a moving disc, spread over all skin and walls: each next one is the element's middle farthest from all
     * before it (farthest-point sampling, Gonzalez 1985), so that any number covers the tub evenly.
     *
     * @param size diameter, m
     * @param count of positions wanted; fewer come where the mesh has fewer elements
     */
    public List<Patch> moving(double size, int count) {
        int all = mesh.elementCount();
        double[] far = new double[all];
        Arrays.fill(far, Double.POSITIVE_INFINITY);
        List<Integer> seeds = new ArrayList<>();
        int next = 0;
        while (seeds.size() < Math.min(count, all)) {
            seeds.add(next);
            double[] centre = centre(next);
            far[next] = -1;
            int last = next;
            next = -1;
            for (int e = 0; e < all; e++) {
                if (far[e] < 0) {
                    continue;
                }
                // Two sides of a thin place, and a wall and the skin it meets, are far apart for a blow.
                double apart = distance(e, centre) + (along(e, last) > 0.3 ? 0 : size);
                far[e] = Math.min(far[e], apart);
                if (next < 0 || far[e] > far[next]) {
                    next = e;
                }
            }
        }
        return seeds.parallelStream().map(seed -> around(seed, size)).toList();
    }

    private Patch patch(String name, int[] elements, double[] place, String region) {
        double area = Arrays.stream(elements).mapToDouble(mesh::area).sum();
        return new Patch(name, elements, place, area, region);
    }

    private double[] centre(int e) {
        return Arrays.copyOfRange(centres, 3 * e, 3 * e + 3);
    }

    private double along(int a, int b) {
        return normals[3 * a] * normals[3 * b]
                + normals[3 * a + 1] * normals[3 * b + 1]
                + normals[3 * a + 2] * normals[3 * b + 2];
    }

    private double distance(int e, double[] x) {
        double a = centres[3 * e] - x[0];
        double b = centres[3 * e + 1] - x[1];
        double c = centres[3 * e + 2] - x[2];
        return Math.sqrt(a * a + b * b + c * c);
    }
}
