// SPDX-License-Identifier: Apache-2.0
package tubwright.engine.trim;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import java.util.Random;
import java.util.TreeMap;
import org.junit.jupiter.api.Test;
import tubwright.engine.mesh.Region;
import tubwright.engine.structure.Buckling;
import tubwright.engine.structure.BucklingAnswer;
import tubwright.engine.structure.Case;
import tubwright.engine.structure.Solution;
import tubwright.engine.structure.StaticSolver;
import tubwright.engine.structure.StepTimes;
import tubwright.engine.structure.Structure;
import tubwright.engine.structure.TubeOfZones;
import tubwright.numerics.solver.Solvers;

/** The slope of a buckling factor by any stiffness of any laminate, against differences of whole buckling solutions. */
class BucklingWorthTest {
    private static final Case LOADING = TubeOfZones.torsion();

    private static BucklingAnswer buckled(Structure structure) {
        List<Solution> solved = StaticSolver.solve(structure, List.of(LOADING), Solvers.pureJava(), new StepTimes());
        return Buckling.solve(structure, solved, 2, 0, Solvers.pureJava()).getFirst();
    }

    @Test
    void theFactorsSlopeIsThatOfWholeSolutionsTheShiftOfThePrestressIncluded() {
        Structure structure = CertificateTest.structure(CertificateTest.NOMINAL);
        BucklingAnswer nominal = buckled(structure);
        double first = nominal.modes().getFirst().factor();
        // A mode alone on its factor, so that its slope exists.
        assertTrue(
                nominal.modes().get(1).factor() > 1.002 * first, nominal.modes().toString());
        long seed = 611_2026;
        Random random = new Random(seed);
        try (LoadedTub tub = CertificateTest.loaded(structure, LOADING)) {
            BucklingWorth worth = new BucklingWorth(tub, nominal.modes().getFirst());
            assertEquals(first, worth.after(new Change(new TreeMap<>(), new TreeMap<>())), 1e-12 * first);
            for (int trial = 0; trial < 3; trial++) {
                double[] shares =
                        random.doubles(tub.blocks().all().size(), -1, 1).toArray();
                double h = 2e-3;
                double slope = 0;
                // Sixth-order central differences (Fornberg 1988).
                double[] weights = {3.0 / 4, -3.0 / 20, 1.0 / 60};
                for (int k = 0; k < 3; k++) {
                    double step = h * (k + 1);
                    slope += weights[k]
                            * (moved(structure, tub, shares, step) - moved(structure, tub, shares, -step))
                            / h;
                }
                double tiny = 1e-6;
                double linear =
                        (worth.after(change(tub, shares, tiny)) - worth.after(change(tub, shares, -tiny))) / (2 * tiny);
                assertEquals(slope, linear, 1e-6 * first, "seed " + seed + ", trial " + trial);
            }
        }
    }

    /** Membrane and bending stiffness of each block scaled by 1 + h share, with its shear left alone. */
    private static Change change(LoadedTub tub, double[] shares, double h) {
        TreeMap<Integer, double[]> laminates = new TreeMap<>();
        for (int b = 0; b < shares.length; b++) {
            double[] c = tub.laminate(b).clone();
            for (int k = 0; k < 36; k++) {
                c[k] *= 1 + h * shares[b];
            }
            c[Constitutive.ENTRIES - 1] *= 1 + h * shares[b];
            laminates.put(b, c);
        }
        return new Change(laminates, new TreeMap<>());
    }

    private static double moved(Structure structure, LoadedTub tub, double[] shares, double h) {
        List<Region> regions = structure.mesh().regions();
        double[][] laminates = new double[regions.size()][];
        for (int r = 0; r < laminates.length; r++) {
            Region region = regions.get(r);
            int b = 0;
            while (!tub.blocks().all().get(b).zone().equals(region.zone())
                    || !tub.blocks().all().get(b).patches().equals(region.patches())) {
                b++;
            }
            laminates[r] = structure.laminate(r).clone();
            for (int i = 0; i < 6; i++) {
                for (int j = 0; j < 6; j++) {
                    laminates[r][8 * i + j] *= 1 + h * shares[b];
                }
            }
        }
        return buckled(structure.withLaminates(laminates)).modes().getFirst().factor();
    }
}
