// SPDX-License-Identifier: Apache-2.0
package tubwright.engine.response;

import static org.junit.jupiter.api.Assertions.assertEquals;

import org.junit.jupiter.api.Test;
import tubwright.engine.mesh.Mesh;
import tubwright.engine.structure.TestMeshes;

class SkinSectionsTest {
    @Test
    void aRigidMotionIsReadBackAtAnyStation() {
        Mesh mesh = TestMeshes.tube(0.3, 1.5, 7, 20);
        double turn = 1e-3;
        double[] u = new double[6 * mesh.nodeCount()];
        for (int n = 0; n < mesh.nodeCount(); n++) {
            u[6 * n + 1] = 0.002 - turn * mesh.nodes()[3 * n + 2];
            u[6 * n + 2] = -0.001 + turn * mesh.nodes()[3 * n + 1];
        }
        SkinSections sections = new SkinSections(mesh);
        for (double x : new double[] {0, 0.1, 0.75, 1.5 - 1e-9}) {
            SkinSections.Motion motion = sections.at(x, u);
            assertEquals(0.002, motion.y(), 1e-12);
            assertEquals(-0.001, motion.z(), 1e-12);
            assertEquals(turn, motion.twist(), 1e-12);
            assertEquals(20 * 2 * 0.3 * Math.sin(Math.PI / 20), motion.length(), 1e-9);
        }
    }

    @Test
    void aUniformTwistReadsLinearly() {
        Mesh mesh = TestMeshes.tube(0.3, 1.5, 10, 20);
        double[] u = new double[6 * mesh.nodeCount()];
        for (int n = 0; n < mesh.nodeCount(); n++) {
            double turn = 1e-3 * mesh.nodes()[3 * n];
            u[6 * n + 1] = -turn * mesh.nodes()[3 * n + 2];
            u[6 * n + 2] = turn * mesh.nodes()[3 * n + 1];
        }
        SkinSections sections = new SkinSections(mesh);
        for (double x = 0.05; x < 1.5; x += 0.2) {
            assertEquals(1e-3 * x, sections.at(x, u).twist(), 1e-12);
        }
    }
}
