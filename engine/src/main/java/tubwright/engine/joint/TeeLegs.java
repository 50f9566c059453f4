// SPDX-License-Identifier: Apache-2.0
package tubwright.engine.joint;

/**
 * The two legs of a tee as one long beam on the adhesive, pulled at the two faces of the wall: peel under a line load and a
 * moment, which the legs carry as a couple as far apart as the wall is thick. Superposed from the beam on elastic bedding
 * under a single load P, whose pressure is P κ/2 · e^(−κ|x|) (cos κ|x| + sin κ|x|) (Hetényi 1946, from memory).
 *
 * @param bedding κ of leg and skin on the adhesive, κ⁴ = Ea/(4 D ta), 1/m
 * @param apart thickness of the wall, m; where it has none the moment acts at one line
 */
record TeeLegs(double bedding, double apart) {
    private static final int STEPS = 200;
    /** Legs nearer than this over κ are as good as one line, and no difference of like numbers. */
    private static final double NEAR = 1e-3;

    /**
     * Largest peel stress, Pa.
     *
     * @param normal N, pull of the wall on the skin, N/m; a push peels nothing
     * @param moment M about the line, N; of either sign
     */
    double peel(double normal, double moment) {
        double pull = Math.max(0, normal);
        double d = Math.max(apart, NEAR / bedding);
        double couple = Math.abs(moment) / d;
        double most = at(d / 2, d, pull, couple);
        double reach = d / 2 + 3 / bedding;
        for (int i = 0; i <= STEPS; i++) {
            most = Math.max(most, at(reach * i / STEPS, d, pull, couple));
        }
        return most;
    }

    /** Pressure on the side that the moment pulls at, x from the middle of the wall. */
    private double at(double x, double d, double pull, double couple) {
        return bedding / 2 * ((pull / 2 + couple) * shape(x - d / 2) + (pull / 2 - couple) * shape(x + d / 2));
    }

    private double shape(double x) {
        double kx = bedding * Math.abs(x);
        return Math.exp(-kx) * (Math.cos(kx) + Math.sin(kx));
    }
}
