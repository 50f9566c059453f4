// SPDX-License-Identifier: Apache-2.0
package tubwright.engine.trim;

import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.List;
import java.util.Random;
import org.junit.jupiter.api.Test;
import tubwright.engine.laminate.Laminate;
import tubwright.engine.laminate.Layer;
import tubwright.engine.laminate.LayerRole;
import tubwright.engine.structure.Case;
import tubwright.engine.structure.TubeOfZones;
import tubwright.engine.verification.ladder.Family;
import tubwright.engine.verification.ladder.Ladder;
import tubwright.engine.verification.ladder.Mark;
import tubwright.numerics.solver.Solvers;

/** Layups made to break the intervals: zones all but removed, all cut at once, joints all but loose, in torsion and bending. */
class HostileLayupsTest {
    private static final Ladder ANEW =
            Ladder.of(Family.WEIGHT_BACK, "The changed tube assembled and solved anew", Mark.COMPUTED);

    private static final Case.Bending BENDING = new Case.Bending(
            "bending", TubeOfZones.torsion().hold(), TubeOfZones.torsion().loaded(), new double[] {0, 0, -1000}, 0.3);

    private static Laminate scaled(Laminate laminate, double share) {
        List<Layer> layers = new ArrayList<>();
        for (Layer layer : laminate.layers()) {
            // Cores keep enough to be cores; the skins are what is taken.
            double factor = layer.role() == LayerRole.CORE ? Math.max(share, 0.05) : share;
            layers.add(new Layer(layer.material(), factor * layer.thickness(), layer.angle(), layer.role()));
        }
        return new Laminate(layers, laminate.reference());
    }

    private static List<Layup> hostile() {
        Layup nominal = CertificateTest.NOMINAL;
        List<Layup> result = new ArrayList<>();
        for (double share : new double[] {0.3, 0.05, 0.01, 1e-3, 3, 30}) {
            Layup all = nominal;
            for (String zone : List.of("floor", "flank", "deck")) {
                Laminate cut = scaled(nominal.zones().get(zone), share);
                result.add(nominal.withZone(zone, cut));
                result.add(nominal.withZone(zone, cut).withJoint("struts", share));
                all = all.withZone(zone, cut);
            }
            result.add(all);
            result.add(all.withPatch("doubler", List.of()).withJoint("struts", 1 / share));
            result.add(nominal.withJoint("struts", share));
        }
        long seed = 13;
        Random random = new Random(seed);
        for (int trial = 0; trial < 40; trial++) {
            Layup layup = nominal.withJoint("struts", Math.exp(6 * random.nextDouble() - 4));
            for (String zone : List.of("floor", "flank", "deck")) {
                double share = Math.exp(5 * random.nextDouble() - 4);
                layup = layup.withZone(zone, scaled(nominal.zones().get(zone), share));
            }
            result.add(layup);
        }
        return result;
    }

    @Test
    void noIntervalMissesTheWholeSolutionAndEachClosesWhenAsked() {
        List<Layup> layups = hostile();
        int outside = 0;
        int open = 0;
        try (WhatIf whatIf = WhatIf.solve(
                CertificateTest.structure(CertificateTest.NOMINAL),
                List.of(TubeOfZones.torsion(), BENDING),
                CertificateTest.NOMINAL,
                Solvers.pureJava())) {
            whatIf.prepare(_ -> {});
            for (Layup layup : layups) {
                WhatIf.Answer instant = whatIf.ask(layup);
                WhatIf.Answer narrow = whatIf.ask(layup, 1e-3);
                WhatIf.Answer exact = whatIf.solve(layup, 1e-5);
                for (int c = 0; c < 2; c++) {
                    LoadedTub tub = whatIf.tubs().get(c);
                    double truth = tub.stiffness(CertificateTest.complianceAnew(layup, tub.loading()));
                    for (WhatIf.Answer answer : List.of(instant, narrow, exact)) {
                        Interval stiffness = answer.readings().get(c).stiffness();
                        // The whole solution carries rounding of its own.
                        if (!stiffness.outward(1e-8).contains(truth)) {
                            outside++;
                        }
                    }
                    open += narrow.readings().get(c).stiffness().relativeWidth() > 1.01e-3 ? 1 : 0;
                    open += exact.readings().get(c).stiffness().relativeWidth() > 1.1e-5 ? 1 : 0;
                }
            }
        }
        assertTrue(layups.size() > 80);
        ANEW.vanishes(
                "Hostile layups outside their interval, torsion and bending", layups.size() + " layups", outside, 0);
        ANEW.vanishes("Intervals that do not close when asked", layups.size() + " layups", open, 0);
    }
}
