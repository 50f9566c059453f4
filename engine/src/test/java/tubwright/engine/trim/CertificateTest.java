// SPDX-License-Identifier: Apache-2.0
package tubwright.engine.trim;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Map;
import java.util.Random;
import org.junit.jupiter.api.Test;
import tubwright.engine.laminate.Laminate;
import tubwright.engine.laminate.Layer;
import tubwright.engine.laminate.LayerRole;
import tubwright.engine.laminate.Reference;
import tubwright.engine.material.Core;
import tubwright.engine.material.Material;
import tubwright.engine.material.MaterialLibrary;
import tubwright.engine.mesh.Region;
import tubwright.engine.structure.Case;
import tubwright.engine.structure.StaticSolver;
import tubwright.engine.structure.StepTimes;
import tubwright.engine.structure.Structure;
import tubwright.engine.structure.TubeOfZones;
import tubwright.numerics.solver.Solvers;

/** Intervals of instant and exact answers against whole solutions of thousands of random and hostile layups. */
class CertificateTest {
    /** Random layups in an ordinary run; -Dtubwright.layups=10000 asks for more. */
    private static final int LAYUPS = Integer.getInteger("tubwright.layups", 500);

    private static final long SEED = 5_112_026;

    private static final Material CLOTH = material("pw-t650-976");
    private static final Material TAPE = material("ud-as4-3502");
    private static final Material HONEYCOMB = material("al-honeycomb-3.1-small-cell");

    private static Material material(String name) {
        return MaterialLibrary.shipped().all().stream()
                .filter(m -> m.name().equals(name))
                .findFirst()
                .orElseThrow();
    }

    private static Layer core(double thickness) {
        assertTrue(HONEYCOMB instanceof Core);
        return new Layer(HONEYCOMB, thickness, 0);
    }

    private static Laminate nominal(double tapeDegrees) {
        return new Laminate(
                List.of(
                        Layer.ofDegrees(CLOTH, 45),
                        Layer.ofDegrees(TAPE, tapeDegrees),
                        Layer.ofDegrees(CLOTH, 0),
                        Layer.ofDegrees(CLOTH, 45),
                        core(0.02),
                        Layer.ofDegrees(CLOTH, 45),
                        Layer.ofDegrees(CLOTH, 0),
                        Layer.ofDegrees(TAPE, tapeDegrees),
                        Layer.ofDegrees(CLOTH, 45)),
                Reference.OUTER);
    }

    static final Layup NOMINAL = new Layup(
            Map.of("floor", nominal(0), "flank", nominal(30), "deck", nominal(-20)),
            Map.of("doubler: side", List.of(Layer.ofDegrees(TAPE, 60), Layer.ofDegrees(CLOTH, 0))),
            Map.of());

    static Structure structure(Layup layup) {
        return TubeOfZones.of(region -> laminate(layup, region), layup.joints().getOrDefault("struts", 1.0));
    }

    private static Laminate laminate(Layup layup, Region region) {
        Laminate whole = layup.laminate(new Blocks.Block(region.zone(), region.patches(), false, 0));
        return region.mirrored() ? whole.mirrored() : whole;
    }

    static LoadedTub loaded() {
        return loaded(structure(NOMINAL), TubeOfZones.torsion());
    }

    static LoadedTub loaded(Structure structure, Case loading) {
        return LoadedTub.solve(structure, loading, NOMINAL, Solvers.pureJava());
    }

    /** The same tube, strain operators of the nominal laminates kept, assembled and factorised with other laminates. */
    static double solvedAnew(Layup layup) {
        return Math.pow(TubeOfZones.torsion().couple(), 2) / complianceAnew(layup, TubeOfZones.torsion());
    }

    /** fᵀu of the same under any case, J. */
    static double complianceAnew(Layup layup, Case loading) {
        Structure nominal =
                TubeOfZones.of(r -> laminate(NOMINAL, r), layup.joints().getOrDefault("struts", 1.0));
        double[][] laminates = nominal.mesh().regions().stream()
                .map(r -> laminate(layup, r).stiffness().matrix())
                .toArray(double[][]::new);
        return 2
                * StaticSolver.solve(
                                nominal.withLaminates(laminates), List.of(loading), Solvers.pureJava(), new StepTimes())
                        .getFirst()
                        .work();
    }

    private static Layup random(Random random) {
        Layup layup = NOMINAL;
        int zones = 1 + random.nextInt(3);
        List<String> names = new ArrayList<>(List.of("floor", "flank", "deck"));
        java.util.Collections.shuffle(names, random);
        for (String zone : names.subList(0, zones)) {
            List<Layer> layers = new ArrayList<>(NOMINAL.zones().get(zone).layers());
            for (int k = 1 + random.nextInt(4); k > 0; k--) {
                int at = random.nextInt(layers.size());
                switch (random.nextInt(4)) {
                    case 0 -> layers.add(at, Layer.ofDegrees(TAPE, 15 * random.nextInt(12)));
                    case 1 -> {
                        if (layers.get(at).role() == LayerRole.CORE) {
                            layers.set(at, core(0.005 + 0.02 * random.nextDouble()));
                        }
                    }
                    default -> {
                        if (layers.get(at).role() == LayerRole.PLY) {
                            layers.remove(at);
                        }
                    }
                }
            }
            layup = layup.withZone(zone, new Laminate(layers, Reference.OUTER));
        }
        if (random.nextInt(3) == 0) {
            layup = layup.withPatch(
                    "doubler",
                    random.nextBoolean() ? List.of() : List.of(Layer.ofDegrees(CLOTH, 5 * random.nextInt(18))));
        }
        return random.nextInt(3) == 0 ? layup.withJoint("struts", 0.05 + 2 * random.nextDouble()) : layup;
    }

    @Test
    void everyInstantIntervalContainsTheWholeSolution() {
        Random random = new Random(SEED);
        try (LoadedTub tub = loaded()) {
            WhatIf whatIf = new WhatIf(tub);
            for (int trial = 0; trial < LAYUPS; trial++) {
                Layup layup = random(random);
                WhatIf.Answer answer = whatIf.ask(layup);
                double truth = solvedAnew(layup);
                assertTrue(
                        answer.stiffness().contains(truth),
                        "seed " + SEED + ", trial " + trial + ": " + answer.stiffness() + " but " + truth);
            }
        }
    }

    @Test
    void removalsOfUpToTwoPliesAnywhereAreKnownWithinHalfAPercent() {
        Random random = new Random(SEED);
        List<Double> widths = new ArrayList<>();
        try (LoadedTub tub = loaded()) {
            WhatIf whatIf = new WhatIf(tub);
            for (int trial = 0; trial < 300; trial++) {
                Layup layup = NOMINAL;
                for (String zone : List.of("floor", "flank", "deck")) {
                    List<Layer> layers =
                            new ArrayList<>(NOMINAL.zones().get(zone).layers());
                    for (int k = 0; k < 2; k++) {
                        int at = random.nextInt(layers.size());
                        if (layers.get(at).role() == LayerRole.PLY) {
                            layers.remove(at);
                        }
                    }
                    layup = layup.withZone(zone, new Laminate(layers, Reference.OUTER));
                }
                WhatIf.Answer answer = whatIf.ask(layup);
                widths.add(answer.stiffness().relativeWidth());
            }
        }
        double[] sorted =
                widths.stream().mapToDouble(Double::doubleValue).sorted().toArray();
        assertTrue(sorted[(int) (0.95 * sorted.length)] < 3e-3, Arrays.toString(sorted));
        assertTrue(sorted[sorted.length - 1] < 5e-3, Arrays.toString(sorted));
    }

    @Test
    void aZoneAlmostRemovedIsStillBracketed() {
        try (LoadedTub tub = loaded()) {
            WhatIf whatIf = new WhatIf(tub);
            for (String zone : List.of("floor", "flank", "deck")) {
                Laminate thin = new Laminate(
                        List.of(new Layer(CLOTH, 2e-5, Math.PI / 4), core(1e-3), new Layer(CLOTH, 2e-5, 0)),
                        Reference.OUTER);
                Layup layup = NOMINAL.withZone(zone, thin).withPatch("doubler", List.of());
                double truth = solvedAnew(layup);
                Interval instant = whatIf.ask(layup).stiffness();
                assertTrue(instant.contains(truth), zone + " " + instant + " but " + truth);
                Interval asked = whatIf.ask(layup, 1e-3).stiffness();
                assertTrue(asked.contains(truth) && asked.relativeWidth() <= 1.01e-3, zone + " " + asked);
            }
        }
    }

    @Test
    void theBasisGrowsUntilTheIntervalIsAsNarrowAsAsked() {
        Random random = new Random(SEED + 1);
        try (LoadedTub tub = loaded()) {
            WhatIf whatIf = new WhatIf(tub);
            for (int trial = 0; trial < 40; trial++) {
                Layup layup = random(random);
                WhatIf.Answer answer = whatIf.ask(layup, 1e-4);
                assertTrue(answer.stiffness().relativeWidth() <= 1.01e-4, answer.toString());
                assertTrue(answer.stiffness().contains(solvedAnew(layup)));
                WhatIf.Answer exact = whatIf.solve(layup, 1e-8);
                assertEquals(1, exact.stiffness().middle() / solvedAnew(layup), 1e-8);
            }
        }
    }

    @Test
    void theNominalLayupAnswersAsItself() {
        try (LoadedTub tub = loaded()) {
            WhatIf.Answer answer = new WhatIf(tub).ask(NOMINAL);
            assertTrue(answer.stiffness().contains(tub.stiffness(tub.compliance())));
            assertEquals(0, answer.substitutions());
        }
    }

    @Test
    void aLaminateWithoutPliesIsRefusedByName() {
        try (LoadedTub tub = loaded()) {
            Layup empty = NOMINAL.withZone("deck", new Laminate(List.of(core(0.02)), Reference.OUTER));
            Exception refused = assertThrows(IllegalArgumentException.class, () -> new WhatIf(tub).ask(empty));
            assertTrue(refused.getMessage().contains("deck"));
        }
    }
}
