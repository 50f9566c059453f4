// SPDX-License-Identifier: Apache-2.0
package tubwright.engine.safety.spread;

import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.stream.IntStream;
import org.junit.jupiter.api.Test;
import tubwright.engine.laminate.Laminate;
import tubwright.engine.laminate.Layer;
import tubwright.engine.laminate.Reference;
import tubwright.engine.material.Material;
import tubwright.engine.material.MaterialLibrary;
import tubwright.engine.mesh.Mesh;
import tubwright.engine.mesh.Region;
import tubwright.engine.strength.OpenHole;
import tubwright.engine.strength.StrengthBasis;
import tubwright.engine.structure.Structure;
import tubwright.engine.structure.Surroundings;
import tubwright.engine.verification.ladder.Family;
import tubwright.engine.verification.ladder.Ladder;
import tubwright.engine.verification.ladder.Mark;
import tubwright.numerics.solver.Solvers;

/**
 * A quasi-isotropic plate with an open hole, pulled until it breaks: what the softening of broken fibres makes of the peak of
 * stress beside the hole, against what Whitney and Nuismer read off tests of other carbon laminates.
 */
class HoledPlateTest {
    private static final Material TAPE = MaterialLibrary.shipped().get("ud-im7-8552-research");
    private static final Laminate LAMINATE = laminate();
    private static final Ladder TESTS = Ladder.of(
            Family.FRACTURE,
            "Whitney and Nuismer 1974, average stress a0 = 3.81 mm, from tests of other carbon laminates",
            Mark.MEMORY_CONFIRMED);
    private static final Ladder SAME = Ladder.of(
            Family.FRACTURE, "Camanho, Maimí and Dávila 2007, tests of quasi-isotropic IM7/8552", Mark.MEMORY);

    /** Half the width of the plate in radii of the hole. */
    private static final double HALF = 6;

    private static final LoadPath.Manner MANNER = new LoadPath.Manner(120, 0.6, 2e-3, 0.03);

    private static final double WHOLE = whole();

    private static Laminate laminate() {
        List<Layer> layers = new ArrayList<>();
        for (double angle : new double[] {45, -45, 0, 90, 90, 0, -45, 45}) {
            layers.add(Layer.ofDegrees(TAPE, angle));
        }
        return new Laminate(layers, Reference.MIDDLE);
    }

    /**
     * Half of a square plate, on rays from the hole; nodes ring by ring. The plate breaks along y, so the half is the upper
     * one, and a ray of elements stands astride of that line: a band of cracks beside a plane of symmetry is mirrored in it
     * and would take its energy twice.
     *
     * @param eighth rays of elements in an eighth of the plate
     */
    private static Mesh upper(double radius, int eighth, int rings) {
        double half = HALF * radius;
        int astride = 2 * eighth + 1;
        int rays = 2 * eighth + astride;
        double[] nodes = new double[3 * (rays + 1) * (rings + 1)];
        double growth = Math.pow(HALF, 1.0 / rings);
        for (int j = 0; j <= rings; j++) {
            double t = (Math.pow(growth, j) - 1) / (Math.pow(growth, rings) - 1);
            for (int i = 0; i <= rays; i++) {
                double angle = 0.25 * Math.PI * turns(i, eighth, astride);
                double c = Math.cos(angle);
                double s = Math.sin(angle);
                double far = half / Math.max(Math.abs(c), s);
                double r = radius + t * (far - radius);
                int at = 3 * (j * (rays + 1) + i);
                nodes[at] = r * c;
                nodes[at + 1] = i == 0 || i == rays ? 0 : r * s;
            }
        }
        int elements = rays * rings;
        int[] corners = new int[4 * elements];
        double[] normals = new double[12 * elements];
        double[] directions = new double[3 * elements];
        for (int e = 0; e < elements; e++) {
            int a = e / rays * (rays + 1) + e % rays;
            int[] own = {a, a + rays + 1, a + rays + 2, a + 1};
            System.arraycopy(own, 0, corners, 4 * e, 4);
            for (int c = 0; c < 4; c++) {
                normals[12 * e + 3 * c + 2] = 1;
            }
            directions[3 * e] = 1;
        }
        Region region = new Region("plate", Region.Surface.WALL, "plate", List.of(), "plate", false);
        return new Mesh(nodes, corners, normals, directions, new int[elements], List.of(region), List.of());
    }

    /** Angle of ray i in eighths of a turn of half a circle's quarter: 0 to 4. */
    private static double turns(int i, int eighth, int astride) {
        if (i <= eighth) {
            return (double) i / eighth;
        }
        int beyond = i - eighth;
        return beyond <= astride ? 1 + 2.0 * beyond / astride : 3 + (double) (beyond - astride) / eighth;
    }

    /** Stress over the whole width at the peak, Pa. */
    private static double strength(double radius, int eighth, int rings) {
        Mesh mesh = upper(radius, eighth, rings);
        double half = HALF * radius;
        int n = mesh.nodeCount();
        double[] load = new double[6 * n];
        boolean[] fixed = new boolean[6 * n];
        for (int k = 0; k < n; k++) {
            double x = mesh.nodes()[3 * k];
            double y = mesh.nodes()[3 * k + 1];
            fixed[6 * k + 1] = y < 1e-9;
            fixed[6 * k + 2] = true;
            fixed[6 * k + 3] = true;
            fixed[6 * k + 4] = true;
            fixed[6 * k + 5] = y < 1e-9 || Math.abs(x) > half - 1e-9;
        }
        int rays = 4 * eighth + 1;
        int last = rings * (rays + 1);
        fixed[6 * (last + rays)] = true;
        for (int i = 0; i < eighth; i++) {
            pull(mesh, load, last + i, last + i + 1, 1);
            pull(mesh, load, last + rays - i, last + rays - i - 1, -1);
        }
        SpreadModel model = new SpreadModel(
                Structure.ofShells(mesh, new double[][] {LAMINATE.stiffness().matrix()}),
                new Laminate[] {LAMINATE},
                StrengthBasis.USUAL,
                Energies.NONE,
                IntStream.range(0, mesh.elementCount()).toArray(),
                List.of(),
                new Surroundings(IntStream.range(0, n).toArray(), new int[0], new double[0], load, 0, fixed));
        SpreadAnswer answer = LoadPath.of(model, MANNER, Solvers.pureJava(), k -> {}, () -> false);
        return narrow() * answer.peak().factor() / LAMINATE.thickness();
    }

    /** Of a plate so narrow a hole costs a little more than of a wide one (Heywood's factor, from memory). */
    private static double narrow() {
        double share = 1 / HALF;
        return (2 + Math.pow(1 - share, 3)) / (3 * (1 - share));
    }

    private static void pull(Mesh mesh, double[] load, int one, int next, double sign) {
        double length = mesh.nodes()[3 * next + 1] - mesh.nodes()[3 * one + 1];
        load[6 * one] += sign * 0.5 * length;
        load[6 * next] += sign * 0.5 * length;
    }

    private static double whole() {
        Laminate[] one = {LAMINATE};
        SpreadModel model = Strips.pulled(Strips.mesh(2e-3, 1e-3, 2, 1, 0, false), one, 2, 1, Energies.NONE);
        SpreadAnswer answer = LoadPath.of(model, MANNER, Solvers.pureJava(), k -> {}, () -> false);
        return answer.peak().factor() / 1e-3 / LAMINATE.thickness();
    }

    @Test
    void aHoleCostsWhatTestsOfOtherLaminatesSay() {
        double[] radii = {1.5e-3, 3.175e-3, 5e-3};
        double[] ratios =
                Arrays.stream(radii).map(r -> strength(r, 7, 16) / WHOLE).toArray();
        for (int i = 0; i < radii.length; i++) {
            double expected = OpenHole.averageStress(radii[i], OpenHole.USUAL_AVERAGE_LENGTH, 3);
            String name = "strength with a hole of " + 2e3 * radii[i] + " mm over without";
            TESTS.within(0.05, name, "29 rays of 16", expected, ratios[i]);
        }
        assertTrue(ratios[0] > ratios[1] && ratios[1] > ratios[2], "a larger hole costs more");
    }

    /**
     * The same material as tested, holes of 2, 4, 6 and 10 mm in plates six holes wide, 845 MPa without. Nothing is tuned: how
     * far the prediction lies above is a finding (docs/theory/spread.md says why it does).
     */
    @Test
    void theTestsOfThisLaminateLieLower() {
        double[] radii = {1e-3, 2e-3, 3e-3, 5e-3};
        double[] tested = {555.7, 480.6, 438.7, 373.7};
        double narrow = narrow();
        for (int i = 0; i < radii.length; i++) {
            SAME.within(
                    0.22,
                    "IM7/8552, strength with a hole of " + 2e3 * radii[i] + " mm over without",
                    "29 rays of 16",
                    narrow * tested[i] / 845.1,
                    strength(radii[i], 7, 16) / WHOLE);
        }
    }

    /** A notch in coarse elements is taken at its worst point: the strength comes from below as they shrink. */
    @Test
    void finerElementsFindALittleMore() {
        double coarse = strength(3.175e-3, 4, 9);
        double fine = strength(3.175e-3, 7, 16);
        double finest = strength(3.175e-3, 10, 23);
        assertTrue(fine > coarse && fine < 1.1 * coarse, coarse + " and " + fine);
        assertTrue(finest > fine && finest < 1.05 * fine, fine + " and " + finest);
    }
}
