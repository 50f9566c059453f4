// SPDX-License-Identifier: Apache-2.0
package tubwright.engine.make.cure;

import static org.junit.jupiter.api.Assertions.assertThrows;

import org.junit.jupiter.api.Test;
import tubwright.engine.laminate.Laminate;
import tubwright.engine.laminate.Layer;
import tubwright.engine.material.MaterialBuilder;
import tubwright.engine.material.MaterialLibrary;
import tubwright.engine.material.Ply;
import tubwright.engine.material.Provenance;
import tubwright.engine.verification.ladder.Family;
import tubwright.engine.verification.ladder.Ladder;
import tubwright.engine.verification.ladder.Mark;

class SpringInTest {
    private static final double RIGHT_ANGLE = Math.PI / 2;
    private static final Ladder RADFORD =
            Ladder.of(Family.CURE, "Radford and Diefendorf 1993, evaluated apart from the program", Mark.COMPUTED);
    private static final Ply TAPE = (Ply) new MaterialBuilder("tape", "ply")
            .form("ud")
            .value("thickness", "0.125 mm", Provenance.STATED)
            .value("density", "1.6 g/cm³", Provenance.STATED)
            .value("E1", "135 GPa", Provenance.STATED)
            .value("E2", "9.5 GPa", Provenance.STATED)
            .value("G12", "5 GPa", Provenance.STATED)
            .value("nu12", "0.30", Provenance.STATED)
            .value("nu23", "0.45", Provenance.STATED)
            .value("alpha1", "0 1/K", Provenance.STATED)
            .value("alpha2", "30e-6 1/K", Provenance.STATED)
            .build();

    private static Laminate laminate(double... degrees) {
        Layer[] layers = new Layer[degrees.length];
        for (int i = 0; i < degrees.length; i++) {
            layers[i] = Layer.ofDegrees(TAPE, degrees[i]);
        }
        return Laminate.of(layers);
    }

    @Test
    void aRightAngleClosesByAboutADegree() {
        double[][] rows = {
            {2.5, 45, -160, 0, -0.005, 0.616, 0.452, 1.069},
            {2.1, 42, -160, -0.0005, -0.0055, 0.578, 0.452, 1.031},
            {2.5, 32, -157, 0, -0.0048, 0.419, 0.434, 0.853},
            {3, 50, -60, 0, -0.004, 0.255, 0.361, 0.616}
        };
        for (double[] r : rows) {
            SpringIn bend = new SpringIn(r[0] * 1e-6, r[1] * 1e-6, r[3], r[4]);
            String name = "spring-in of 90°, expansion " + r[0] + " and " + r[1] + "e-6/K, ";
            RADFORD.equal(name + "heat", r[5], Math.toDegrees(bend.thermal(RIGHT_ANGLE, r[2])), 6e-4);
            RADFORD.equal(name + "cure", r[6], Math.toDegrees(bend.fromCure(RIGHT_ANGLE)), 6e-4);
            RADFORD.equal(name + "both", r[7], Math.toDegrees(bend.total(RIGHT_ANGLE, r[2])), 6e-4);
        }
    }

    @Test
    void whatALaminateCannotDoInItsPlaneItDoesThroughItsThickness() {
        for (Laminate stack : new Laminate[] {laminate(0, 90, 90, 0), laminate(0, 45, -45, 90, 90, -45, 45, 0)}) {
            ThroughThickness expansion = ThroughThickness.of(stack);
            String name = stack.layers().size() == 4 ? "cross-ply" : "quasi-isotropic";
            RADFORD.equal(name + ", in the plane, 1e-6/K", 2.47, expansion.along() * 1e6, 5e-3);
            RADFORD.equal(name + ", through, 1e-6/K", 41.56, expansion.through() * 1e6, 5e-3);
            SpringIn bend = new SpringIn(expansion.along(), expansion.through(), 0, 0);
            RADFORD.equal(name + ", heat, ° per 90°", 0.567, Math.toDegrees(bend.thermal(RIGHT_ANGLE, -160)), 6e-4);
        }
    }

    @Test
    void aClothHasNoKnownExpansionThroughItsThickness() {
        Ply cloth = MaterialLibrary.shipped().get("pw-t650-976", Ply.class);
        assertThrows(CureException.class, () -> ThroughThickness.of(Laminate.of(Layer.ofDegrees(cloth, 0))));
    }

    @Test
    void aMetalMouldIsCutShorterThanThePart() {
        Ladder sizes = Ladder.of(Family.CURE, "Two lengths that agree when hot, quasi-isotropic part", Mark.EXACT);
        MouldExpansion steel = new MouldExpansion(2.47e-6, 12.5e-6, 160);
        MouldExpansion aluminium = new MouldExpansion(2.47e-6, 23.6e-6, 160);
        sizes.equal("steel mould, cold over part", 0.99840, steel.factor(), 5.1e-6);
        sizes.equal("aluminium mould, cold over part", 0.99663, aluminium.factor(), 5.1e-6);
        sizes.equal("steel mould of 2000 mm, shorter by, mm", 3.2, 2000 - steel.coldSize(2000), 0.05);
        sizes.equal("aluminium mould of 2000 mm, shorter by, mm", 6.7, 2000 - aluminium.coldSize(2000), 0.05);
    }
}
