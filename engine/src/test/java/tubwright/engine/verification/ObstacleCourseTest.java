// SPDX-License-Identifier: Apache-2.0
package tubwright.engine.verification;

import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;
import tubwright.engine.verification.ObstacleCourse.Kind;
import tubwright.engine.verification.ladder.Family;
import tubwright.engine.verification.ladder.Ladder;
import tubwright.engine.verification.ladder.Mark;

/** The shell obstacle course on growing meshes of quads, triangles and distorted quads. */
class ObstacleCourseTest {
    private static final double ANY_ORDER = Double.NEGATIVE_INFINITY;
    private static final Ladder ROOF =
            Ladder.of(Family.OBSTACLE_COURSE, "Scordelis and Lo 1964; the value in use since", Mark.READ);
    private static final Ladder CYLINDER =
            Ladder.of(Family.OBSTACLE_COURSE, "Belytschko et al. 1985, CMAME 51:221", Mark.READ);
    private static final Ladder HOLED =
            Ladder.of(Family.OBSTACLE_COURSE, "MacNeal and Harder 1985 (.0935 when converged)", Mark.MEMORY);
    private static final Ladder CLOSED =
            Ladder.of(Family.OBSTACLE_COURSE, "closed hemisphere, in use since MacNeal and Harder 1985", Mark.READ);
    private static final Ladder HOOK =
            Ladder.of(Family.OBSTACLE_COURSE, "Raasch's hook, value in use for shells (solid model 4.9352)", Mark.READ);
    private static final Ladder PRESSED = Ladder.of(Family.OBSTACLE_COURSE, "Boiler formula, w = pR²/Et", Mark.EXACT);
    private static final Ladder HYPAR =
            Ladder.of(Family.OBSTACLE_COURSE, "Bathe, Iosilevich and Chapelle 2000, Comput. Struct. 75:1", Mark.READ);
    private static final Ladder COOK =
            Ladder.of(Family.OBSTACLE_COURSE, "Cook 1974, J. Struct. Div. 100:1851; converged value", Mark.READ);

    /** Triangles of lowest order need twice as many a side for the same band. */
    private static int[] sizes(Kind kind, int first) {
        int n = kind.triangles() ? 2 * first : first;
        return new int[] {n, 2 * n, 4 * n};
    }

    /** Very thin shells, where irregular quads do as triangles do. */
    private static int[] thinSizes(Kind kind, int first) {
        return sizes(kind == Kind.QUADS ? kind : Kind.TRIANGLES, first);
    }

    static String label(Kind kind) {
        return switch (kind) {
            case QUADS -> "quads";
            case TRIANGLES -> "triangles";
            case DISTORTED -> "distorted quads";
            case DISTORTED_TRIANGLES -> "distorted triangles";
        };
    }

    @ParameterizedTest
    @EnumSource
    void aRoofUnderItsWeight(Kind kind) {
        ROOF.converges(
                "Scordelis–Lo roof, edge deflection",
                label(kind),
                sizes(kind, 4),
                n -> ObstacleCourse.scordelisLo(kind, n),
                .3024,
                .02,
                ANY_ORDER);
    }

    @ParameterizedTest
    @EnumSource
    void aPinchedCylinder(Kind kind) {
        CYLINDER.converges(
                "Pinched cylinder, deflection under the load",
                label(kind),
                sizes(kind, 8),
                n -> ObstacleCourse.pinchedCylinder(kind, n),
                1.82488e-5,
                .02,
                1);
    }

    @ParameterizedTest
    @EnumSource
    void aHemisphereWithAHole(Kind kind) {
        HOLED.converges(
                "Hemisphere with a hole of 18°",
                label(kind),
                thinSizes(kind, 4),
                n -> ObstacleCourse.holedHemisphere(kind, n),
                .0940,
                .015,
                // Regular quads are within 1 % from the first mesh on: what is left has no order to see.
                ANY_ORDER);
    }

    @ParameterizedTest
    @EnumSource
    void aClosedHemisphere(Kind kind) {
        CLOSED.converges(
                "Closed hemisphere",
                label(kind),
                new int[] {4, 8, 16},
                n -> ObstacleCourse.fullHemisphere(kind, n),
                .0924,
                .01,
                ANY_ORDER);
    }

    /** Regular quads only: elsewhere pressure comes to the nodes unevenly, and a thin free tube shows it node by node. */
    @ParameterizedTest
    @EnumSource(names = "QUADS")
    void aCylinderUnderPressure(Kind kind) {
        PRESSED.converges(
                "Cylinder of free ends under pressure, w",
                label(kind),
                new int[] {4, 8, 16},
                n -> ObstacleCourse.pressedCylinder(kind, n),
                10 * 300.0 * 300 / (3e6 * 3),
                .01,
                ANY_ORDER);
    }

    @ParameterizedTest
    @EnumSource
    void aHook(Kind kind) {
        HOOK.converges(
                "Raasch's hook, tip",
                label(kind),
                new int[] {5, 10, 20},
                n -> ObstacleCourse.hook(kind, n, 36 * n / 5),
                5.02,
                .024,
                ANY_ORDER);
    }

    @ParameterizedTest
    @EnumSource
    void aSaddleOfThreeThicknesses(Kind kind) {
        double[] thickness = {1e-2, 1e-3, 1e-4};
        double[] deflection = {9.3355e-5, 6.3941e-3, 5.2988e-1};
        double[] energy = {1.6790e-3, 1.1013e-2, 8.9867e-2};
        double[] share = {.015, .02, .03};
        for (int i = 0; i < 3; i++) {
            double t = thickness[i];
            HYPAR.converges(
                    "Clamped saddle, t/L = 1e-" + (i + 2),
                    label(kind),
                    t < 5e-4 ? thinSizes(kind, 8) : sizes(kind, 8),
                    n -> ObstacleCourse.hypar(kind, n, t),
                    deflection[i],
                    share[i],
                    ANY_ORDER);
            int finest = kind == Kind.QUADS || kind == Kind.DISTORTED && t > 5e-4 ? 32 : 64;
            HYPAR.within(
                    share[i],
                    "Clamped saddle, t/L = 1e-" + (i + 2) + ", strain energy (J)",
                    label(kind) + " " + finest,
                    energy[i],
                    ObstacleCourse.saddle(kind, finest, t).work());
        }
    }

    @ParameterizedTest
    @EnumSource
    void cooksPanel(Kind kind) {
        COOK.converges(
                "Cook's panel",
                label(kind),
                new int[] {2, 4, 8},
                n -> ObstacleCourse.cook(kind, n),
                23.97,
                kind.triangles() ? .02 : .01,
                ANY_ORDER);
    }
}
