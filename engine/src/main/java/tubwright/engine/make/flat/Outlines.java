// SPDX-License-Identifier: Apache-2.0
package tubwright.engine.make.flat;

/** Closed outlines in the plane, 2 coordinates per point. */
public final class Outlines {
    private Outlines() {}

    /** Signed area, m²: positive where it runs anticlockwise. */
    public static double area(double[] outline) {
        double sum = 0;
        int n = outline.length;
        for (int i = 0; i < n; i += 2) {
            int j = (i + 2) % n;
            sum += outline[i] * outline[j + 1] - outline[j] * outline[i + 1];
        }
        return sum / 2;
    }

    /** Length round, m. */
    public static double length(double[] outline) {
        double sum = 0;
        int n = outline.length;
        for (int i = 0; i < n; i += 2) {
            sum += Math.hypot(outline[(i + 2) % n] - outline[i], outline[(i + 3) % n] - outline[i + 1]);
        }
        return sum;
    }

    /** Whether any two sides that are not neighbours cross. */
    public static boolean crossesItself(double[] outline) {
        return crossing(outline).length > 0;
    }

    /** About where the first two sides that are not neighbours cross, 2 coordinates; empty where none do. */
    public static double[] crossing(double[] outline) {
        int n = outline.length / 2;
        for (int i = 0; i < n; i++) {
            for (int j = i + 2; j < n; j++) {
                int k = (i + 1) % n;
                if ((j + 1) % n != i && cross(outline, i, k, j, (j + 1) % n)) {
                    return new double[] {
                        (outline[2 * i] + outline[2 * k]) / 2, (outline[2 * i + 1] + outline[2 * k + 1]) / 2
                    };
                }
            }
        }
        return new double[0];
    }

    private static boolean cross(double[] o, int a, int b, int c, int d) {
        return side(o, a, b, c) * side(o, a, b, d) < 0 && side(o, c, d, a) * side(o, c, d, b) < 0;
    }

    private static double side(double[] o, int a, int b, int c) {
        return (o[2 * b] - o[2 * a]) * (o[2 * c + 1] - o[2 * a + 1])
                - (o[2 * b + 1] - o[2 * a + 1]) * (o[2 * c] - o[2 * a]);
    }
}
