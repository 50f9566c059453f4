// SPDX-License-Identifier: Apache-2.0
package tubwright.engine.structure;

import java.util.Optional;
import tubwright.engine.joint.BarStrength;

/**
 * What a straight stretch of a tube or stiffener carries.
 *
 * @param part the tube or stiffener it belongs to
 * @param nodes its two nodes
 * @param place middle between them, m
 * @param length m
 * @param strength what it bears; empty where only its stiffness is known
 * @param load forces, the larger of its two ends
 */
public record BarForce(
        Part part, int[] nodes, double[] place, double length, Optional<BarStrength> strength, BarStrength.Load load) {

    static BarForce of(Part part, Bar bar, double[] place, double[] u) {
        double[] ends = new double[Beam.FREEDOMS];
        System.arraycopy(u, 6 * bar.nodes()[0], ends, 0, 6);
        System.arraycopy(u, 6 * bar.nodes()[1], ends, 6, 6);
        double[] f = bar.beam().endForces(ends);
        return new BarForce(
                part,
                bar.nodes(),
                place,
                bar.beam().length(),
                bar.beam().section().strength(),
                new BarStrength.Load(
                        f[6],
                        Math.max(Math.abs(f[4]), Math.abs(f[10])),
                        Math.max(Math.abs(f[5]), Math.abs(f[11])),
                        Math.max(Math.abs(f[3]), Math.abs(f[9]))));
    }

    static BarForce of(Part part, PinnedBar bar, double[] place, double tension) {
        return new BarForce(
                part,
                bar.nodes(),
                place,
                bar.length(),
                bar.section().strength(),
                new BarStrength.Load(tension, 0, 0, 0));
    }
}
