// SPDX-License-Identifier: Apache-2.0
package tubwright.desk.picture;

/**
 * Where the eye is and how the picture's frame lies about the tub. Pixels run right and down; depth grows away from the
 * eye, in metres.
 *
 * @param right unit vector to the right of the picture, car axes
 * @param up unit vector to its top
 * @param toward unit vector from the tub to the eye
 * @param centre the point all lines of sight turn about, m
 * @param distance of the eye from the centre, m; infinite for a parallel view
 * @param scale pixels per metre at the centre
 * @param offsetX pixel column of the centre
 * @param offsetY pixel row of the centre
 * @param width of the picture, pixels
 * @param height of the picture, pixels
 */
public record View(
        double[] right,
        double[] up,
        double[] toward,
        double[] centre,
        double distance,
        double scale,
        double offsetX,
        double offsetY,
        int width,
        int height) {

    /** From which side a tub is looked at; the nose always points to the left. */
    public enum From {
        /** From ahead, to the left of the car and above, with a little perspective. */
        THREE_QUARTER_FRONT,
        /** From behind, to the left and above. */
        THREE_QUARTER_REAR,
        /** From the left, a little ahead and above: into a tub cut along its middle. */
        INTO_THE_CUT,
        /** Square from the left side. */
        SIDE,
        /** Square from above. */
        PLAN,
        /** Square from ahead. */
        FRONT
    }

    /**
     * A view in which all points fit the given width; the height follows.
     *
     * @param points 3 coordinates per point, m
     * @param from the side
     * @param width pixels
     * @param margin pixels left free on every side
     */
    public static View fit(double[] points, From from, int width, int margin) {
        double[] toward = switch (from) {
            case THREE_QUARTER_FRONT -> direction(-Math.cos(Math.toRadians(52)), -Math.sin(Math.toRadians(52)), 0.52);
            case THREE_QUARTER_REAR -> direction(Math.cos(Math.toRadians(52)), -Math.sin(Math.toRadians(52)), 0.52);
            case INTO_THE_CUT -> direction(-Math.cos(Math.toRadians(66)), -Math.sin(Math.toRadians(66)), 0.34);
            case SIDE -> new double[] {0, -1, 0};
            case PLAN -> new double[] {0, 0, 1};
            case FRONT -> new double[] {-1, 0, 0};
        };
        double[] upright = from == From.PLAN ? new double[] {0, 1, 0} : new double[] {0, 0, 1};
        double[] right = unit(cross(upright, toward));
        double[] up = cross(toward, right);
        double[] low = {Double.MAX_VALUE, Double.MAX_VALUE, Double.MAX_VALUE};
        double[] high = {-Double.MAX_VALUE, -Double.MAX_VALUE, -Double.MAX_VALUE};
        for (int i = 0; i < points.length; i++) {
            low[i % 3] = Math.min(low[i % 3], points[i]);
            high[i % 3] = Math.max(high[i % 3], points[i]);
        }
        double[] centre = {(low[0] + high[0]) / 2, (low[1] + high[1]) / 2, (low[2] + high[2]) / 2};
        double diagonal = Math.sqrt(square(high[0] - low[0]) + square(high[1] - low[1]) + square(high[2] - low[2]));
        boolean perspective = switch (from) {
            case THREE_QUARTER_FRONT, THREE_QUARTER_REAR, INTO_THE_CUT -> true;
            case SIDE, PLAN, FRONT -> false;
        };
        double distance = perspective ? 3.0 * diagonal : Double.POSITIVE_INFINITY;
        View raw = new View(right, up, toward, centre, distance, 1, 0, 0, 1, 1);
        double left = Double.MAX_VALUE;
        double rightmost = -Double.MAX_VALUE;
        double top = Double.MAX_VALUE;
        double bottom = -Double.MAX_VALUE;
        double[] at = new double[3];
        for (int i = 0; i < points.length; i += 3) {
            raw.project(points[i], points[i + 1], points[i + 2], at);
            left = Math.min(left, at[0]);
            rightmost = Math.max(rightmost, at[0]);
            top = Math.min(top, at[1]);
            bottom = Math.max(bottom, at[1]);
        }
        double scale = (width - 2.0 * margin) / Math.max(rightmost - left, 1e-9);
        int height = (int) Math.ceil((bottom - top) * scale + 2.0 * margin);
        return new View(
                right,
                up,
                toward,
                centre,
                distance,
                scale,
                margin - left * scale,
                margin - top * scale,
                width,
                Math.clamp(height, 2 * margin + 1, 4 * width));
    }

    /** The same view with {@code factor} times as many pixels each way. */
    public View times(int factor) {
        return new View(
                right,
                up,
                toward,
                centre,
                distance,
                scale * factor,
                offsetX * factor,
                offsetY * factor,
                width * factor,
                height * factor);
    }

    /** Column, row and depth of a point, written into {@code out}. */
    public void project(double x, double y, double z, double[] out) {
        double dx = x - centre[0];
        double dy = y - centre[1];
        double dz = z - centre[2];
        double across = dx * right[0] + dy * right[1] + dz * right[2];
        double high = dx * up[0] + dy * up[1] + dz * up[2];
        double near = dx * toward[0] + dy * toward[1] + dz * toward[2];
        double k = Double.isInfinite(distance) ? scale : scale * distance / (distance - near);
        out[0] = offsetX + across * k;
        out[1] = offsetY - high * k;
        out[2] = -near;
    }

    private static double[] direction(double x, double y, double z) {
        return unit(new double[] {x, y, z});
    }

    private static double[] unit(double[] v) {
        double length = Math.sqrt(v[0] * v[0] + v[1] * v[1] + v[2] * v[2]);
        return new double[] {v[0] / length, v[1] / length, v[2] / length};
    }

    private static double[] cross(double[] a, double[] b) {
        return new double[] {a[1] * b[2] - a[2] * b[1], a[2] * b[0] - a[0] * b[2], a[0] * b[1] - a[1] * b[0]};
    }

    private static double square(double v) {
        return v * v;
    }
}
