// SPDX-License-Identifier: Apache-2.0
package tubwright.engine.joint;

/**
 * Where an insert sits.
 *
 * @param radius of the insert with its potting, block or pad, m
 * @param edge from its middle to the nearest edge of the panel, m; infinite where there is none
 * @param spacing to the middle of the nearest other insert, m; infinite where there is none
 */
public record InsertSite(double radius, double edge, double spacing) {
    /**
     * Share of the pull-out strength that edge and neighbour leave.
     *
     * <p>Derived here, in place of the handbook's charts: an equal insert at distance a adds the shear of its own field, bp/(a +
     * bp) of the peak of one that stands alone without faces, to the peak Kmax on the far side; an edge that carries no
     * shear does what an equal insert at twice its distance does (mirror image).
     *
     * @param potting bp, m
     * @param peak Kmax
     */
    public double pullShare(double potting, double peak) {
        return share(potting, peak, spacing) * share(potting, peak, 2 * edge);
    }

    private static double share(double potting, double peak, double distance) {
        return peak / (peak + potting / (distance + potting));
    }
}
