// SPDX-License-Identifier: Apache-2.0
package tubwright.engine.load;

/**
 * The wishbone on which a push or pull rod stands, as a rigid triangle: two inner ball joints and one at the upright.
 *
 * <p>Equilibrium leaves one thing open: how the two inner joints share the force along the line through them. It is
 * settled so that the legs are bent in the plane of the wishbone as little as possible (least squares of the forces
 * square to each leg): with the rod at the outer joint, both legs are then pulled and pushed along themselves.
 */
final class Stand {
    private final Link first;
    private final Link second;
    private final Link rod;
    /** Unit vector along the line of the inner joints. */
    private final double[] axis;

    private final double span;

    /**
     * @param corner name, for messages
     * @param first one leg
     * @param second the other leg, with the same outer point
     * @param rod whose outer end stands on them
     */
    Stand(String corner, Link first, Link second, Link rod) {
        this.first = first;
        this.second = second;
        this.rod = rod;
        double[] line = Vectors.minus(second.inner(), first.inner());
        span = Vectors.length(line);
        if (!(span > 1e-6)) {
            throw new LoadException(
                    "the wishbone '" + first.name() + "', '" + second.name() + "' of '" + corner
                            + "' has one inner point, not two",
                    "give two pick-ups apart");
        }
        axis = Vectors.unit(line);
    }

    /**
     * Tension of the rod that holds the wishbone against turning about its inner joints.
     *
     * @param joint force of the wishbone on the upright at its outer joint, N
     */
    double rod(String corner, double[] joint) {
        double[] d = rod.inward();
        double[] arm = Vectors.minus(rod.outer(), first.inner());
        double lever = Vectors.dot(axis, Vectors.cross(arm, d));
        if (Math.abs(lever) < 1e-3 * Vectors.length(arm)) {
            throw new LoadException(
                    "the rod '" + rod.name() + "' of '" + corner
                            + "' points at the line through the wishbone's inner joints and cannot hold it",
                    "move one of its ends, so that it has a lever about that line");
        }
        double[] outer = Vectors.minus(first.outer(), first.inner());
        return Vectors.dot(axis, Vectors.cross(outer, joint)) / lever;
    }

    /**
     * Forces of the wishbone on the tub at the inner joints of the first and the second leg, N.
     *
     * @param joint force of the wishbone on the upright, N
     * @param tension of the rod, N
     */
    double[][] inner(double[] joint, double tension) {
        double[] push = Vectors.times(-1, joint);
        double[] pull = Vectors.times(tension, rod.inward());
        double[] sum = Vectors.plus(push, 1, pull);
        double[] moment = Vectors.plus(
                Vectors.cross(Vectors.minus(first.outer(), first.inner()), push),
                1,
                Vectors.cross(Vectors.minus(rod.outer(), first.inner()), pull));
        // Force on the tub at the second joint, square to the axis: span · axis × F = moment.
        double[] atSecond = Vectors.times(1 / span, Vectors.cross(moment, axis));
        double[] atFirst = Vectors.plus(sum, -1, atSecond);
        double[] normal = Vectors.cross(axis, Vectors.minus(first.outer(), first.inner()));
        double[] n1 = Vectors.unit(Vectors.cross(normal, first.inward()));
        double[] n2 = Vectors.unit(Vectors.cross(normal, second.inward()));
        // atFirst − x axis, atSecond + x axis; least (n1·(atFirst − x axis))² + (n2·(atSecond + x axis))².
        double a1 = Vectors.dot(n1, axis);
        double a2 = Vectors.dot(n2, axis);
        double x = (a1 * Vectors.dot(n1, atFirst) - a2 * Vectors.dot(n2, atSecond)) / (a1 * a1 + a2 * a2);
        return new double[][] {Vectors.plus(atFirst, -x, axis), Vectors.plus(atSecond, x, axis)};
    }
}
