// SPDX-License-Identifier: Apache-2.0
package tubwright.engine.make.cure;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.Collections;
import java.util.List;
import java.util.OptionalDouble;
import org.junit.jupiter.api.Test;
import tubwright.engine.laminate.Laminate;
import tubwright.engine.laminate.Layer;
import tubwright.engine.laminate.Reference;
import tubwright.engine.make.cure.CureCheck.Subject;
import tubwright.engine.make.cure.CureCheck.Verdict;
import tubwright.engine.make.cure.CureShop.Order;
import tubwright.engine.make.cure.LaminateCure.Stage;
import tubwright.engine.material.Core;
import tubwright.engine.material.MaterialLibrary;

class CureStudyTest {
    private static final CureLibrary DATA = CureLibrary.shipped();
    private static final MaterialLibrary MATERIALS = MaterialLibrary.shipped();

    private static CureShop shop(String tool, double thickness, Order order) {
        return new CureShop(
                DATA.tool(tool),
                thickness,
                CureShop.USUAL_TRANSFER,
                CureShop.USUAL_TRANSFER,
                DATA.cycle("solid-180"),
                DATA.cycle("honeycomb-180"),
                order,
                0.3,
                OptionalDouble.of(373.15));
    }

    private static Laminate solid(String ply, int plies) {
        return new Laminate(Collections.nCopies(plies, Layer.ofDegrees(MATERIALS.get(ply), 0)), Reference.OUTER);
    }

    private static Laminate sandwich(String core) {
        Layer skin = Layer.ofDegrees(MATERIALS.get("ud-as4-3501-6"), 0);
        Layer film = Layer.ofDegrees(MATERIALS.get("film-epoxy-150"), 0);
        Layer comb = new Layer(MATERIALS.get(core, Core.class), 0.02, 0);
        return Laminate.of(skin, skin, skin, skin, film, comb, film, skin, skin, skin, skin);
    }

    private static CureCheck check(Stage stage, Subject subject) {
        return stage.checks().stream()
                .filter(c -> c.subject() == subject)
                .findFirst()
                .orElseThrow();
    }

    @Test
    void aThinSkinFollowsTheAirAndCuresThrough() {
        LaminateCure cure = new CureStudy(DATA, shop("carbon-epoxy", 8e-3, Order.THREE_CURES))
                .of("skin", solid("ud-as4-3501-6", 12));
        Stage stage = cure.stages().getFirst();
        assertEquals(Verdict.MET, check(stage, Subject.PEAK).verdict());
        assertTrue(check(stage, Subject.PEAK).value().orElseThrow() < 177 + 273.15 + 2, "less than 2 K over the air");
        assertEquals(Verdict.MET, check(stage, Subject.DEGREE).verdict());
        assertEquals(Verdict.MET, check(stage, Subject.GLASS).verdict());
        assertEquals(Verdict.MET, check(stage, Subject.VOIDS).verdict());
        assertTrue(stage.met());
    }

    /** An hour at 60 °C: with its own kinetics or those of a resin that stands in, it does not even gel. */
    @Test
    void aCycleThatNeverCuresIsMissedAlsoWhereAnotherResinStandsIn() {
        CureLibrary cold = DATA.with("cure.yaml", """
                sources:
                  sheet: {source: "our sheet", trust: stated}
                cycles:
                  cold:
                    description: "one hold"
                    source: sheet
                    start: 20 °C
                    steps:
                      - {to: 60 °C, rate: 2 K/min, hold: 1 h, hold from: air, pressure: 6 bar, bag: 0.2 bar}
                """);
        CureShop usual = CureShop.usual(cold);
        CureShop shop = new CureShop(
                usual.tool(),
                usual.toolThickness(),
                usual.toolSide(),
                usual.bagSide(),
                cold.cycle("cold"),
                usual.overCore(),
                usual.order(),
                usual.humidity(),
                OptionalDouble.empty());
        for (String ply : List.of("ud-as4-3501-6", "ud-as4-3502")) {
            CureCheck degree = check(
                    new CureStudy(cold, shop)
                            .of("skin", solid(ply, 12))
                            .stages()
                            .getFirst(),
                    Subject.DEGREE);
            assertEquals(Verdict.MISSED, degree.verdict(), ply);
            assertTrue(degree.value().orElseThrow() < 0.1, ply);
            assertTrue(degree.words().contains("hold longer or hotter"), degree.words());
        }
    }

    @Test
    void aBlockOfFortyMillimetresGetsTooHotAndIsNamed() {
        LaminateCure cure = new CureStudy(DATA, shop("carbon-epoxy", 8e-3, Order.THREE_CURES))
                .of("lug", solid("ud-as4-3501-6", 320));
        CureCheck peak = check(cure.stages().getFirst(), Subject.PEAK);
        assertEquals(Verdict.MISSED, peak.verdict(), () -> "peak " + peak.value() + " of " + cure.thickness());
        assertTrue(peak.value().orElseThrow() > 190 + 273.15);
    }

    @Test
    void aSandwichIsCuredInThreeStepsOfWhichOnlyTheFirstIsAtFullPressure() {
        LaminateCure cure =
                new CureStudy(DATA, shop("steel", 8e-3, Order.THREE_CURES)).of("flank", sandwich("al-honeycomb-3.1"));
        assertEquals(
                List.of("outer skin", "core on the outer skin", "inner skin over the core"),
                cure.stages().stream().map(Stage::title).toList());
        assertTrue(cure.stages().get(0).cycle().highestPressure()
                > cure.stages().get(1).cycle().highestPressure());
        double once = check(cure.stages().get(0), Subject.DEGREE).value().orElseThrow();
        double twice = check(cure.stages().get(1), Subject.DEGREE).value().orElseThrow();
        assertTrue(twice > once, "the outer skin goes on curing from where it was");
        assertTrue(cure.stages().get(0).checks().stream().noneMatch(c -> c.subject() == Subject.CORE));
        assertTrue(cure.stages().get(1).checks().stream().anyMatch(c -> c.subject() == Subject.CORE));
    }

    @Test
    void inOneShotTheSkinsOverTheCellsAskForDryPrepreg() {
        LaminateCure cure =
                new CureStudy(DATA, shop("steel", 8e-3, Order.ONE_SHOT)).of("flank", sandwich("al-honeycomb-3.1"));
        double overCore = check(cure.stages().getFirst(), Subject.VOIDS).value().orElseThrow();
        LaminateCure plain =
                new CureStudy(DATA, shop("steel", 8e-3, Order.ONE_SHOT)).of("skin", solid("ud-as4-3501-6", 8));
        double onTool = check(plain.stages().getFirst(), Subject.VOIDS).value().orElseThrow();
        assertTrue(overCore < 0.5 && overCore < onTool / 3, overCore + " against " + onTool);
    }

    @Test
    void aWeakCoreIsCrushedByTheAutoclave() {
        LaminateCure weak =
                new CureStudy(DATA, shop("steel", 8e-3, Order.ONE_SHOT)).of("flank", sandwich("al-honeycomb-1.6"));
        assertEquals(
                Verdict.MISSED, check(weak.stages().getFirst(), Subject.CORE).verdict());
        LaminateCure strong =
                new CureStudy(DATA, shop("steel", 8e-3, Order.ONE_SHOT)).of("flank", sandwich("al-honeycomb-8.1"));
        assertEquals(
                Verdict.MET, check(strong.stages().getFirst(), Subject.CORE).verdict());
    }

    @Test
    void aResinThatStandsInDoesNotProveADegreeOfCure() {
        LaminateCure cure =
                new CureStudy(DATA, shop("steel", 8e-3, Order.THREE_CURES)).of("skin", solid("pw-t650-976", 6));
        CureCheck degree = check(cure.stages().getFirst(), Subject.DEGREE);
        assertEquals(Verdict.NOT_CHECKED, degree.verdict());
        assertTrue(degree.words().contains("976"), degree.words());
        assertTrue(cure.springIn().orElseThrow().ofRightAngle() > Math.toRadians(0.5));
    }

    @Test
    void aPlyWhoseResinNobodyKnowsIsNotCheckedAndSaysWhatItNeeds() {
        LaminateCure cure =
                new CureStudy(DATA, shop("steel", 8e-3, Order.THREE_CURES)).of("skin", solid("ud-t300-914c", 6));
        assertTrue(cure.stages().isEmpty());
        assertTrue(
                cure.missing().getFirst().contains("'ud-t300-914c'"),
                cure.missing().toString());
    }

    @Test
    void theTougheningResinHasNoGlassTransitionUntilOneIsMeasured() {
        LaminateCure cure =
                new CureStudy(DATA, shop("steel", 8e-3, Order.THREE_CURES)).of("skin", solid("ud-im7-8552", 6));
        CureCheck glass = check(cure.stages().getFirst(), Subject.GLASS);
        assertEquals(Verdict.NOT_CHECKED, glass.verdict());
        assertTrue(glass.words().contains("D7028"), glass.words());
    }
}
