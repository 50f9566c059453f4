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
import tubwright.engine.material.Property;
import tubwright.engine.mesh.Mesh;
import tubwright.engine.strength.StrengthBasis;
import tubwright.engine.structure.Springs;
import tubwright.engine.structure.Structure;
import tubwright.engine.structure.Surroundings;
import tubwright.engine.verification.ladder.Family;
import tubwright.engine.verification.ladder.Ladder;
import tubwright.engine.verification.ladder.Mark;
import tubwright.numerics.solver.Solvers;

/**
 * Two arms of tape that are pulled or bent apart: from load, opening and beam theory follows the energy that went into the
 * interface. The crack length is the one the compliance says, so that root and process zone count as crack.
 */
class UnzippingTest {
    private static final Material TAPE = MaterialLibrary.shipped().get("ud-im7-8552-research");
    private static final double E = TAPE.properties().require(Property.E1);
    private static final double ONE = TAPE.properties().require(Property.GIC);
    private static final double TWO = TAPE.properties().require(Property.GIIC);
    private static final double WIDTH = 20e-3;
    private static final double ARM = 1.5e-3;
    private static final double PEEL = 10e6;
    private static final double SHEAR = 30e6;
    private static final double PENALTY = 3e13;
    private static final Ladder OPENED = Ladder.of(
            Family.FRACTURE,
            "beam theory of the double cantilever, G = P² a²/(B E I), δ = 2 P a³/(3 E I) (ISO 15024)",
            Mark.MEMORY);
    private static final Ladder BENT = Ladder.of(
            Family.FRACTURE,
            "beam theory of the end-notched beam, G = 9 P² a²/(16 B² E h³), C = (3 a³ + 2 L³)/(8 B E h³) (Carlsson et al. 1986)",
            Mark.MEMORY);

    private final int along;
    private final double length = 0.1;
    private final Mesh mesh;
    private final int one;

    UnzippingTest() {
        along = 100;
        one = 2 * (along + 1);
        mesh = arms();
    }

    private Mesh arms() {
        Mesh upper = Strips.mesh(length, WIDTH, along, 1, 0.5 * ARM, false);
        Mesh lower = Strips.mesh(length, WIDTH, along, 1, -0.5 * ARM, false);
        double[] nodes = IntStream.range(0, 2)
                .mapToObj(k -> k == 0 ? upper.nodes() : lower.nodes())
                .flatMapToDouble(Arrays::stream)
                .toArray();
        int[] corners = IntStream.concat(
                        Arrays.stream(upper.elementNodes()),
                        Arrays.stream(lower.elementNodes()).map(n -> n + one))
                .toArray();
        return new Mesh(
                nodes,
                corners,
                twice(upper.cornerNormals()),
                twice(upper.referenceDirections()),
                new int[corners.length / 4],
                upper.regions(),
                List.of());
    }

    private static double[] twice(double[] a) {
        double[] b = Arrays.copyOf(a, 2 * a.length);
        System.arraycopy(a, 0, b, a.length, a.length);
        return b;
    }

    /** Bonds between the arms from a crack tip on; before it only contact. */
    private List<Bond> interfaces(double crack, boolean contact) {
        List<Bond> bonds = new ArrayList<>();
        double step = length / along;
        for (int j = 0; j < 2; j++) {
            for (int i = 0; i <= along; i++) {
                int n = j * (along + 1) + i;
                boolean bonded = i * step > crack - 1e-9;
                if (!bonded && !contact) {
                    continue;
                }
                double area = step * WIDTH / 2 * (i == 0 || i == along ? 0.5 : 1);
                double[] normal = new double[12];
                normal[2] = 1;
                normal[8] = -1;
                double[] slide = new double[12];
                slide[0] = 1;
                slide[4] = -0.5 * ARM;
                slide[6] = -1;
                slide[10] = -0.5 * ARM;
                double[] side = new double[12];
                side[1] = 1;
                side[3] = 0.5 * ARM;
                side[7] = -1;
                side[9] = 0.5 * ARM;
                int[] pair = {n, n + one};
                double k = PENALTY * area;
                double[] place = {i * step, j * WIDTH, 0};
                if (bonded) {
                    Springs springs = new Springs(pair, new double[][] {normal, slide, side}, new double[] {k, k, k});
                    boolean[] opening = {true, false, false};
                    bonds.add(Bond.bilinear(springs, opening, area, PEEL, SHEAR, ONE, TWO, "interface", place));
                } else {
                    Springs touch = new Springs(pair, new double[][] {normal}, new double[] {k});
                    bonds.add(Bond.crushing(touch, Double.POSITIVE_INFINITY, "contact", place));
                }
            }
        }
        return bonds;
    }

    /**
     * @param load force per node along z, N
     * @param held nodes held along z
     */
    private SpreadAnswer run(List<Bond> bonds, double[] load, int[] held, boolean clamped, int most) {
        Layer arm = new Layer(TAPE, ARM, 0);
        Laminate laminate = new Laminate(List.of(arm), Reference.MIDDLE);
        int n = mesh.nodeCount();
        boolean[] fixed = new boolean[6 * n];
        double[] loads = new double[6 * n];
        for (int k = 0; k < n; k++) {
            loads[6 * k + 2] = load[k];
            // A strip of beam: no motion across, no twist.
            fixed[6 * k + 1] = true;
            fixed[6 * k + 3] = true;
            fixed[6 * k + 5] = true;
            boolean end = k % (along + 1) == along;
            for (int d = 0; d < 6 && clamped && end; d++) {
                fixed[6 * k + d] = true;
            }
        }
        for (int k : held) {
            fixed[6 * k + 2] = true;
        }
        fixed[6 * (one + along)] = true;
        SpreadModel model = new SpreadModel(
                Structure.ofShells(mesh, new double[][] {laminate.stiffness().matrix()}),
                new Laminate[] {laminate},
                StrengthBasis.USUAL,
                Energies.NONE,
                IntStream.range(0, mesh.elementCount()).toArray(),
                bonds,
                new Surroundings(IntStream.range(0, n).toArray(), new int[0], new double[0], loads, 0, fixed));
        return LoadPath.of(
                model, new LoadPath.Manner(most, 0.05, 1e-3, 0.04), Solvers.pureJava(), k -> {}, () -> false);
    }

    @Test
    void anOpenedDoubleCantileverTakesTheEnergyOfModeOne() {
        double[] load = new double[mesh.nodeCount()];
        for (int j = 0; j < 2; j++) {
            load[j * (along + 1)] = 0.5;
            load[one + j * (along + 1)] = -0.5;
        }
        SpreadAnswer answer = run(interfaces(0.03, false), load, new int[0], true, 45);
        double inertia = WIDTH * ARM * ARM * ARM / 12;
        double sum = 0;
        int count = 0;
        for (SpreadAnswer.Step step : answer.steps()) {
            double p = step.factor();
            double crack = Math.cbrt(1.5 * E * inertia * step.movement() / p);
            if (crack > 36e-3 && crack < 60e-3) {
                sum += p * p * crack * crack / (WIDTH * E * inertia);
                count++;
            }
        }
        assertTrue(count >= 10, "states with a running crack: " + count);
        OPENED.within(0.03, "energy of opening, mean over a running crack", "1 mm", ONE, sum / count);
        assertTrue(answer.energyGap() < 0.01, "energy gap " + answer.energyGap());
        assertTrue(answer.steps().stream().allMatch(SpreadAnswer.Step::settled));
    }

    @Test
    void aBentEndNotchedBeamTakesTheEnergyOfModeTwo() {
        double[] load = new double[mesh.nodeCount()];
        int middle = along / 2;
        for (int j = 0; j < 2; j++) {
            load[j * (along + 1) + middle] = -0.5;
        }
        int[] held = {one, one + along + 1, one + along, one + 2 * along + 1};
        SpreadAnswer answer = run(interfaces(0.03, true), load, held, false, 36);
        double half = 0.5 * length;
        double sum = 0;
        int count = 0;
        for (SpreadAnswer.Step step : answer.steps()) {
            double p = step.factor();
            double c = step.movement() / p;
            double crack = Math.cbrt((8 * WIDTH * E * ARM * ARM * ARM * c - 2 * half * half * half) / 3);
            if (crack > 37e-3 && crack < 46e-3) {
                sum += 9 * p * p * crack * crack / (16 * WIDTH * WIDTH * E * ARM * ARM * ARM);
                count++;
            }
        }
        assertTrue(count >= 8, "states with a running crack: " + count);
        BENT.within(0.05, "energy of sliding, mean over a running crack", "1 mm", TWO, sum / count);
        assertTrue(answer.energyGap() < 0.01, "energy gap " + answer.energyGap());
    }
}
