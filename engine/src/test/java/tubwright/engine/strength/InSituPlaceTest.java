// SPDX-License-Identifier: Apache-2.0
package tubwright.engine.strength;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.Test;
import tubwright.engine.laminate.Laminate;
import tubwright.engine.laminate.Layer;
import tubwright.engine.laminate.Reference;
import tubwright.engine.material.Material;
import tubwright.engine.material.MaterialLibrary;
import tubwright.engine.material.Property;
import tubwright.engine.strength.InSituStrengths.Position;
import tubwright.engine.strength.InSituStrengths.Toughness;

/** Where a ply lies decides how strong it is across its fibres. */
class InSituPlaceTest {
    private static final Material TAPE = MaterialLibrary.shipped().get("ud-im7-8552");
    private static final double T = TAPE.layerThickness().orElseThrow();

    private static InSituStrengths at(int index, Material core, double... degrees) {
        List<Layer> layers = new ArrayList<>();
        for (double angle : degrees) {
            layers.add(Double.isNaN(angle) ? new Layer(core, 0.02, 0) : Layer.ofDegrees(TAPE, angle));
        }
        return LayerCriteria.strengthsInSitu(new Laminate(layers, Reference.MIDDLE), index)
                .orElseThrow();
    }

    private static InSituStrengths formula(double thickness, Position position) {
        var p = TAPE.properties();
        return InSituStrengths.of(
                TAPE.elasticity(),
                new Toughness(
                        p.require(Property.GIC),
                        p.require(Property.GIIC),
                        0,
                        p.require(Property.YT),
                        p.require(Property.S12)),
                thickness,
                position);
    }

    @Test
    void anEmbeddedPlyIsStrongerThanAnOuterOne() {
        InSituStrengths embedded = at(1, TAPE, 0, 90, 0);
        InSituStrengths outer = at(0, TAPE, 90, 0, 90);
        assertEquals(formula(T, Position.THIN_EMBEDDED).transverseTension(), embedded.transverseTension(), 1);
        assertEquals(
                Math.max(
                        formula(T, Position.OUTER).transverseTension(),
                        TAPE.properties().require(Property.YT)),
                outer.transverseTension(),
                1);
        assertTrue(embedded.transverseTension() > outer.transverseTension());
        assertTrue(embedded.shear() > outer.shear());
    }

    @Test
    void pliesOfOneAngleThatTouchCountAsOne() {
        assertEquals(
                Math.max(
                        formula(3 * T, Position.THIN_EMBEDDED).transverseTension(),
                        formula(3 * T, Position.THICK_EMBEDDED).transverseTension()),
                at(2, TAPE, 0, 90, 90, 90, 0).transverseTension(),
                1);
    }

    @Test
    void aCoreSupportsNoPly() {
        Material core = MaterialLibrary.shipped().get("al-honeycomb-3.1");
        assertEquals(
                at(0, core, 90, 0, 90, 0).transverseTension(),
                at(1, core, 0, 90, Double.NaN, 90, 0).transverseTension(),
                1);
    }

    @Test
    void noPlyIsWeakerInPlaceThanFree() {
        double yt = TAPE.properties().require(Property.YT);
        double[] thick = new double[40];
        assertTrue(at(5, TAPE, thick).transverseTension() >= yt);
        assertTrue(LayerCriteria.strengthsInSitu(Plies.stack(Plies.T300_5208, 1e-4, 0, 90, 0), 1)
                .isEmpty());
    }
}
