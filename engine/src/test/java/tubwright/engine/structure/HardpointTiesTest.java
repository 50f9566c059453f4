// SPDX-License-Identifier: Apache-2.0
package tubwright.engine.structure;

import java.util.List;
import org.junit.jupiter.api.Test;
import tubwright.engine.mesh.Mesh;
import tubwright.engine.verification.ladder.Family;
import tubwright.engine.verification.ladder.Ladder;
import tubwright.engine.verification.ladder.Mark;

/**
 * A rigid insert on an even elastic bed of radius R and stiffness k, standing h off a skin that does not move: pushed it
 * gives way by F/k, turned about the normal by M/(kR²/2), tilted by M/(kR²/4 + kθ + kh²). Nineteen spots stand for the
 * bed; the sum of their squared radii is exactly that of the disc, its halves along two axes are not.
 */
class HardpointTiesTest {
    private static final double RADIUS = .03;
    private static final double BED = 8e7;
    private static final double TILT = 2e4;
    private static final double OFF = .04;
    private static final String SPOTS = "19 spots over 40 × 40 quads";
    private static final Ladder LADDER = Ladder.of(Family.BEAMS, "Rigid disc on an even elastic bed", Mark.EXACT);

    private final Mesh mesh =
            TestMeshes.grid(40, 40, false, (a, b) -> new double[] {.4 * a - .2, .4 * b - .2, 0, 0, 0, 1});
    private final List<ElasticTie> ties = new HardpointTies(mesh)
            .tie(
                    0,
                    new Hardpoint("pick-up", "skin", new double[] {.013, .021, OFF}, RADIUS, BED, TILT, 0),
                    mesh.nodeCount());

    /** Twice the energy of a unit motion of the insert, the skin moving by a rigid motion of its own, 6 numbers each. */
    private double twiceEnergy(double[] insert, double[] skin) {
        double[] u = new double[6 * (mesh.nodeCount() + 1)];
        for (int n = 0; n < mesh.nodeCount(); n++) {
            double x = mesh.nodes()[3 * n];
            double y = mesh.nodes()[3 * n + 1];
            double z = mesh.nodes()[3 * n + 2];
            u[6 * n] = skin[0] + skin[4] * z - skin[5] * y;
            u[6 * n + 1] = skin[1] + skin[5] * x - skin[3] * z;
            u[6 * n + 2] = skin[2] + skin[3] * y - skin[4] * x;
            System.arraycopy(skin, 3, u, 6 * n + 3, 3);
        }
        System.arraycopy(insert, 0, u, 6 * mesh.nodeCount(), 6);
        return 2 * ties.stream().mapToDouble(t -> t.energy(u)).sum();
    }

    private static double[] unit(int freedom) {
        double[] u = new double[6];
        u[freedom] = 1;
        return u;
    }

    @Test
    void anInsertGivesWayAsItsBedSays() {
        double[] still = new double[6];
        for (int axis = 0; axis < 3; axis++) {
            LADDER.within(
                    1e-12,
                    "Insert pushed along " + "xyz".charAt(axis) + " (N/m)",
                    SPOTS,
                    BED,
                    twiceEnergy(unit(axis), still));
        }
        LADDER.within(
                1e-9,
                "Insert turned about the normal (N·m/rad)",
                SPOTS,
                BED * RADIUS * RADIUS / 2,
                twiceEnergy(unit(5), still));
        double tilted = BED * (RADIUS * RADIUS / 4 + OFF * OFF) + TILT;
        for (int axis = 3; axis < 5; axis++) {
            // The two halves of the bed's second moment differ by some per cent of R²/2; here they are an eighth of the
            // whole.
            LADDER.within(
                    .01,
                    "Insert tilted about " + "xyz".charAt(axis - 3) + " (N·m/rad)",
                    SPOTS,
                    tilted,
                    twiceEnergy(unit(axis), still));
        }
    }

    /** A tie between points that move as one body stores nothing: the arm of the insert moves rigidly. */
    @Test
    void aRigidMotionOfSkinAndInsertCostsNothing() {
        double[] skin = {.3, -.2, .1, .05, -.04, .03};
        double x = .013;
        double y = .021;
        double[] insert = {
            skin[0] + skin[4] * OFF - skin[5] * y,
            skin[1] + skin[5] * x - skin[3] * OFF,
            skin[2] + skin[3] * y - skin[4] * x,
            skin[3],
            skin[4],
            skin[5]
        };
        LADDER.vanishes(
                "Insert and skin moving as one, energy over that of the insert alone",
                SPOTS,
                twiceEnergy(insert, skin) / twiceEnergy(insert, new double[6]),
                1e-20);
    }
}
