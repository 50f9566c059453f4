// SPDX-License-Identifier: Apache-2.0
package tubwright.engine.structure;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import tubwright.engine.mesh.Mesh;

/**
 * Turns hardpoints into elastic ties. The insert is rigid and rides on a node of its own; its potting is an elastic bed
 * of the stated total stiffness, spread evenly over the footprint by sample points laid on a sunflower spiral (Vogel
 * 1979), each tied to the spot of the mesh below it. The footprint is thus the same on every mesh.
 */
final class HardpointTies {
    private static final int SAMPLES = 19;
    private static final double GOLDEN_ANGLE = Math.PI * (3 - Math.sqrt(5));

    private final Mesh mesh;
    private final Map<String, SurfaceLocator> locators = new HashMap<>();

    HardpointTies(Mesh mesh) {
        this.mesh = mesh;
    }

    /**
     * Ties of one hardpoint.
     *
     * @param owner part index
     * @param node the insert's own node
     * @throws StructureException where its part has no surface within reach
     */
    List<ElasticTie> tie(int owner, Hardpoint hardpoint, int node) {
        SurfaceLocator part = locators.computeIfAbsent(
                hardpoint.part(),
                p -> new SurfaceLocator(mesh, e -> mesh.region(e).part().equals(p)));
        double reach = 0.25;
        SurfaceLocator.Spot below = part.closest(hardpoint.position(), reach)
                .orElseThrow(() -> new StructureException(
                        "hardpoint '" + hardpoint.name() + "' finds no surface of '" + hardpoint.part()
                                + "' within 250 mm",
                        "put it on the part it names, or name the part it sits on"));
        // The spiral turns one way; on the left it is laid as the mirror image, so that a symmetric tub stays one.
        boolean left = hardpoint.position()[1] < 0;
        double[] n = mirrored(Surfaces.normal(mesh, below.element()), left);
        double[] helper = Math.abs(n[0]) < 0.9 ? new double[] {1, 0, 0} : new double[] {0, 1, 0};
        double[] across = Vectors.unit(Vectors.cross(n, helper));
        double[] first = mirrored(across, left);
        double[] second = mirrored(Vectors.cross(n, across), left);
        List<ElasticTie> ties = new ArrayList<>(SAMPLES);
        for (int s = 0; s < SAMPLES; s++) {
            double r = hardpoint.footprintRadius() * Math.sqrt((s + 0.5) / SAMPLES);
            double angle = s * GOLDEN_ANGLE;
            double[] p = Vectors.plus(below.point(), r * Math.cos(angle), first);
            p = Vectors.plus(p, r * Math.sin(angle), second);
            SurfaceLocator.Spot spot = part.closest(p, reach).orElse(below);
            Interpolation skin = Interpolation.of(mesh, spot, spot.point());
            Interpolation insert = Interpolation.ofNode(node, hardpoint.position(), spot.point());
            ties.add(spring(owner, hardpoint, skin, insert, first, second));
        }
        return ties;
    }

    private static double[] mirrored(double[] v, boolean mirror) {
        return mirror ? new double[] {v[0], -v[1], v[2]} : v;
    }

    private static ElasticTie spring(
            int owner, Hardpoint hardpoint, Interpolation skin, Interpolation insert, double[] first, double[] second) {
        int m = skin.nodes().length;
        int[] nodes = Arrays.copyOf(skin.nodes(), m + 1);
        nodes[m] = insert.nodes()[0];
        double[][] rows = new double[5][6 * nodes.length];
        double[] stiffness = new double[5];
        double[][] axes = {{1, 0, 0}, {0, 1, 0}, {0, 0, 1}};
        for (int r = 0; r < 3; r++) {
            skin.addTranslation(rows[r], 0, 1, axes[r]);
            insert.addTranslation(rows[r], m, -1, axes[r]);
            stiffness[r] = hardpoint.translationStiffness() / SAMPLES;
        }
        // Only rotations that tilt the surface: the drilling rotation of one spot says nothing about the insert.
        double[][] tilts = {first, second};
        for (int r = 0; r < 2; r++) {
            skin.addRotation(rows[3 + r], 0, 1, tilts[r]);
            insert.addRotation(rows[3 + r], m, -1, tilts[r]);
            stiffness[3 + r] = hardpoint.rotationStiffness() / SAMPLES;
        }
        return new ElasticTie(owner, nodes, rows, stiffness);
    }
}
