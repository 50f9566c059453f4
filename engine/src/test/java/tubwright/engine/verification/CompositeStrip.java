// SPDX-License-Identifier: Apache-2.0
package tubwright.engine.verification;

import java.util.List;
import tubwright.engine.laminate.Laminate;
import tubwright.engine.laminate.Layer;
import tubwright.engine.laminate.Reference;
import tubwright.engine.laminate.TransverseShear;
import tubwright.engine.material.Ply;

/** The laminates of NAFEMS report R0031, in the units of the report, stiffness from our own laminate code. */
final class CompositeStrip {
    private static final double[] PLIES = {.1, .1, .1, .4, .1, .1, .1};

    private CompositeStrip() {}

    private static Laminate strip() {
        Ply ply = Stacks.ply(100e3, 5e3, .4, 3e3, 3e3, 2e3);
        Layer[] layers = new Layer[7];
        for (int i = 0; i < 7; i++) {
            layers[i] = new Layer(ply, PLIES[i], i % 2 == 0 ? 0 : Math.PI / 2);
        }
        return new Laminate(List.of(layers), Reference.MIDDLE);
    }

    /** 8 × 8 stiffness of the strip, N and mm. */
    static double[] stiffness() {
        return strip().stiffness().matrix();
    }

    /** Shear at the first interface under a shear force per width, MPa from N/mm. */
    static double interfaceShear(double q) {
        return TransverseShear.of(strip()).stressAtDepth(.1, q, 0)[0];
    }

    /** 8 × 8 stiffness of the sandwich, psi and inches: faces .028, core .75. */
    static double[] sandwichPlate() {
        Ply face = Stacks.ply(10e6, 4e6, .3, 1.875e6, 1.875e6, 1.875e6);
        Ply core = Stacks.ply(1, 1, 0, .5, 30e3, 12e3);
        return new Laminate(
                        List.of(new Layer(face, .028, 0), new Layer(core, .75, 0), new Layer(face, .028, 0)),
                        Reference.MIDDLE)
                .stiffness()
                .matrix();
    }
}
