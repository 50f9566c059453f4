// SPDX-License-Identifier: Apache-2.0
package tubwright.engine.trim;

import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Random;
import org.junit.jupiter.api.Test;

/** Bounds from a stiffer comparison body hold for every choice, whatever mixture they were made about. */
class ComparisonBodyTest {
    private static final long SEED = 5;

    @Test
    void noChoiceIsStifferThanTheBoundSays() {
        LayupRules rules = LayupRules.of(2, 1, List.of(0.01));
        Random random = new Random(SEED);
        try (LoadedTub tub = CertificateTest.loaded()) {
            List<Site> sites = Sites.of(tub, rules);
            LightenProblem problem = LightenProblem.of(List.of(tub), sites, Neighbours.FREE);
            boolean[] all = new boolean[problem.masses.length];
            Arrays.fill(all, true);
            List<int[]> choices = new ArrayList<>();
            List<Double> exact = new ArrayList<>();
            for (int i = 0; i < 60; i++) {
                int[] choice = new int[sites.size()];
                for (int s = 0; s < choice.length; s++) {
                    choice[s] = random.nextInt(sites.get(s).candidates().size());
                }
                choices.add(choice);
                exact.add(CertificateTest.complianceAnew(problem.layup(choice), tub.loading()));
            }
            double sharpest = 0;
            for (int round = 0; round < 6; round++) {
                double[] mixture = mixture(problem, random);
                FieldBasis.Reduced field = problem.bases.getFirst().solve(problem.stiffness(mixture));
                try (ComparisonBody body = new ComparisonBody(problem, 0, all, mixture, field, 5)) {
                    for (int about = 0; about < 2; about++) {
                        body.bound().tune(mixture, mixture);
                        Row row = body.bound().row(mixture, 0);
                        for (int i = 0; i < choices.size(); i++) {
                            double bound = row.missedBy(problem.whole(choices.get(i)));
                            assertTrue(bound <= exact.get(i), "seed " + SEED + ": " + bound + " > " + exact.get(i));
                            sharpest = Math.max(sharpest, bound / exact.get(i));
                        }
                        mixture = mixture(problem, random);
                        field = problem.bases.getFirst().solve(problem.stiffness(mixture));
                        body.about(mixture, field, problem.bases.getFirst().displacements(field.coefficients()));
                    }
                }
            }
            // A bound of nothing would hold as well.
            assertTrue(sharpest > 0.9, "sharpest " + sharpest);
        }
    }

    private static double[] mixture(LightenProblem problem, Random random) {
        double[] mixture = new double[problem.masses.length];
        for (int s = 0; s + 1 < problem.offset.length; s++) {
            int size = problem.offset[s + 1] - problem.offset[s];
            double share = random.nextDouble();
            mixture[problem.offset[s] + random.nextInt(size)] += share;
            mixture[problem.offset[s] + random.nextInt(size)] += 1 - share;
        }
        return mixture;
    }
}
