// SPDX-License-Identifier: Apache-2.0
package tubwright.engine.trim;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import java.util.concurrent.CancellationException;
import java.util.stream.IntStream;
import org.junit.jupiter.api.Test;
import tubwright.engine.laminate.Laminate;
import tubwright.engine.laminate.Layer;
import tubwright.engine.laminate.LayerRole;
import tubwright.engine.mesh.Mesh;
import tubwright.engine.response.MassAnswer;
import tubwright.engine.response.MassRollUp;
import tubwright.engine.structure.Case;
import tubwright.engine.structure.Structure;
import tubwright.engine.structure.Tub;
import tubwright.engine.structure.TubeOfZones;
import tubwright.numerics.solver.Solvers;

/** One prepared object answers torsion and bending together, from several threads, with the mass of each piece. */
class PreparedWhatIfTest {
    private static final Case.Bending BENDING = new Case.Bending(
            "bending", TubeOfZones.torsion().hold(), TubeOfZones.torsion().loaded(), new double[] {0, 0, -1000}, 0.3);

    private static WhatIf tube() {
        return WhatIf.solve(
                CertificateTest.structure(CertificateTest.NOMINAL),
                List.of(TubeOfZones.torsion(), BENDING),
                CertificateTest.NOMINAL,
                Solvers.pureJava());
    }

    /** Layups without one, two or three plies, with a weaker joint or a thinner core here and there. */
    private static List<Layup> layups() {
        List<Layup> result = new ArrayList<>();
        for (int i = 0; i < 24; i++) {
            Layup layup = CertificateTest.NOMINAL;
            for (int z = 0; z <= i % 3; z++) {
                String zone = List.of("floor", "flank", "deck").get((i + z) % 3);
                Laminate laminate = CertificateTest.NOMINAL.zones().get(zone);
                List<Layer> layers = new ArrayList<>(laminate.layers());
                layers.remove((i + 2 * z) % 4);
                if (i % 4 == 3) {
                    layers.replaceAll(l -> l.role() == LayerRole.CORE
                            ? new Layer(l.material(), 0.6 * l.thickness(), l.angle(), l.role())
                            : l);
                }
                layup = layup.withZone(zone, new Laminate(layers, laminate.reference()));
            }
            result.add(i % 5 == 4 ? layup.withJoint("struts", 0.3) : layup);
        }
        return result;
    }

    @Test
    void preparedAnswersNeedNoSolutionAndContainWhatWholeSolutionsGive() {
        try (WhatIf whatIf = tube()) {
            WhatIf.Preparation made = whatIf.prepare(_ -> {});
            assertTrue(made.fields() > 20 && made.bytes() > 0, made.toString());
            int before =
                    whatIf.tubs().stream().mapToInt(LoadedTub::substitutions).sum();
            for (Layup layup : layups()) {
                WhatIf.Answer answer = whatIf.ask(layup);
                assertTrue(answer.instant());
                for (int c = 0; c < 2; c++) {
                    LoadedTub tub = whatIf.tubs().get(c);
                    double truth = tub.stiffness(CertificateTest.complianceAnew(layup, tub.loading()));
                    Interval stiffness = answer.readings().get(c).stiffness();
                    assertTrue(stiffness.contains(truth), stiffness + " but " + truth);
                    assertTrue(stiffness.relativeWidth() < 0.02, stiffness.toString());
                }
            }
            assertEquals(
                    before,
                    whatIf.tubs().stream().mapToInt(LoadedTub::substitutions).sum());
        }
    }

    @Test
    void severalThreadsGetTheAnswersThatOneGets() {
        List<Layup> layups = layups();
        List<WhatIf.Answer> alone = new ArrayList<>();
        try (WhatIf whatIf = tube()) {
            layups.forEach(l -> alone.add(whatIf.solve(l, 1e-8)));
        }
        try (WhatIf whatIf = tube()) {
            List<WhatIf.Answer> together = IntStream.range(0, layups.size())
                    .parallel()
                    .mapToObj(i -> i % 2 == 0 ? whatIf.ask(layups.get(i), 1e-3) : whatIf.solve(layups.get(i), 1e-8))
                    .toList();
            for (int i = 0; i < layups.size(); i++) {
                for (int c = 0; c < 2; c++) {
                    Interval exact = alone.get(i).readings().get(c).stiffness();
                    Interval other = together.get(i).readings().get(c).stiffness();
                    assertTrue(other.low() <= exact.high() && exact.low() <= other.high(), exact + " against " + other);
                    assertTrue(other.relativeWidth() <= (i % 2 == 0 ? 1.01e-3 : 2e-8), other.toString());
                }
            }
        }
    }

    @Test
    void whatEachPieceWeighsIsWhatTheMassRollUpSays() {
        Tub tub = SmallTub.tub();
        Mesh mesh = SmallTub.structure().mesh();
        try (LoadedTub loaded = SmallTub.loaded()) {
            Layup layup = loaded.nominal();
            Laminate flank = layup.zones().get("flank");
            Layup thinner = layup.withZone(
                    "flank",
                    new Laminate(flank.layers().subList(1, flank.layers().size()), flank.reference()));
            for (Layup each : List.of(layup, thinner)) {
                Structure structure = Structure.of(
                        new Tub(
                                tub.name(),
                                tub.variant(),
                                tub.construction(),
                                tub.shape(),
                                tub.layout(),
                                tub.meshSize(),
                                each.zones(),
                                tub.patchPlies(),
                                tub.joints(),
                                tub.stiffeners(),
                                tub.hardpoints(),
                                tub.cases()),
                        mesh);
                Map<String, Double> expected = new TreeMap<>();
                for (MassAnswer.Body body : MassRollUp.of(structure).pieces()) {
                    expected.put(body.name(), body.mass());
                }
                WhatIf.Answer answer = new WhatIf(loaded).ask(each);
                assertEquals(expected.keySet(), answer.pieces().keySet());
                expected.forEach(
                        (piece, mass) -> assertEquals(mass, answer.pieces().get(piece), 1e-9, piece));
                assertEquals(loaded.mass(each), answer.mass(), 1e-9);
            }
        }
    }

    @Test
    void preparingStopsWhenTheThreadIsInterruptedAndQuestionsCanStillBeAsked() {
        try (WhatIf whatIf = tube()) {
            Thread.currentThread().interrupt();
            assertThrows(CancellationException.class, () -> whatIf.prepare(_ -> {}));
            assertTrue(Thread.interrupted());
            assertFalse(whatIf.ask(layups().getFirst()).substitutions() == 0);
        }
    }
}
