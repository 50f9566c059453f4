// SPDX-License-Identifier: Apache-2.0
package tubwright.engine.shape;

/** Evaluates the skin without allocation. Holds scratch memory: one per thread. */
public final class SkinEvaluator {
    private final LoftCurves curves;
    private final Section local;
    private final Section whole;
    private double wholeX = Double.NaN;

    SkinEvaluator(LoftCurves curves) {
        this.curves = curves;
        local = new Section(curves.width / 3);
        whole = new Section(curves.width / 3);
    }

    /** The section round one strip only, by the cubics of a bay; valid until the next call. */
    public Section around(double x, int bay, int strip) {
        local.fill(curves, x, bay, strip, strip + 1);
        return local;
    }

    /** The bay a station lies in. */
    public int bay(double x) {
        return curves.interval(x);
    }

    /** The whole section at a station, ends held; valid until the next call. */
    public Section section(double x) {
        double at = Math.clamp(x, curves.x[0], curves.x[curves.x.length - 1]);
        if (at != wholeX) {
            whole.fill(curves, at, curves.interval(at), 0, whole.n - 1);
            wholeX = at;
        }
        return whole;
    }

    /** Signed distance of a point from the skin in its section's plane, m; negative inside. */
    public double distance(double x, double y, double z) {
        return section(x).distance(y, z);
    }
}
