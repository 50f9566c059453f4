// SPDX-License-Identifier: Apache-2.0
package tubwright.engine.make.nest;

/** Where every copy lies, for the moment: kind, least x and least y. Mutable; lives inside one search. */
final class Layout {
    final int[] kind;
    final double[] x;
    final double[] y;

    Layout(int copies) {
        kind = new int[copies];
        x = new double[copies];
        y = new double[copies];
    }

    void copyFrom(Layout other) {
        System.arraycopy(other.kind, 0, kind, 0, kind.length);
        System.arraycopy(other.x, 0, x, 0, x.length);
        System.arraycopy(other.y, 0, y, 0, y.length);
    }

    Layout copy() {
        Layout result = new Layout(kind.length);
        result.copyFrom(this);
        return result;
    }

    /** Length of roll used, m. */
    double length(Shapes shapes) {
        double most = 0;
        for (int i = 0; i < kind.length; i++) {
            most = Math.max(most, x[i] + shapes.along(kind[i]));
        }
        return most;
    }
}
