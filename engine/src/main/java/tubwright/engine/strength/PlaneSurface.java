// SPDX-License-Identifier: Apache-2.0
package tubwright.engine.strength;

/** The plane l1 σ1 + l2 σ2 + l12 τ = 1 with a single mode. */
final class PlaneSurface extends FailureSurface {
    private final double l1;
    private final double l2;
    private final double l12;
    private final FailureMode mode;

    PlaneSurface(FailureMode mode, double l1, double l2, double l12) {
        this.mode = mode;
        this.l1 = l1;
        this.l2 = l2;
        this.l12 = l12;
    }

    @Override
    double reserve(double m1, double m2, double m12, double r1, double r2, double r12) {
        double left = 1 - (l1 * r1 + l2 * r2 + l12 * r12);
        double rate = l1 * m1 + l2 * m2 + l12 * m12;
        if (left < 0 || (left == 0 && rate > 0)) {
            return 0;
        }
        return rate > 0 ? left / rate : Double.POSITIVE_INFINITY;
    }

    @Override
    boolean convex() {
        return true;
    }

    @Override
    double kept(double fibre, double between) {
        return mode.isFibre() ? fibre : between;
    }

    @Override
    boolean holds(double s1, double s2, double s12) {
        return l1 * s1 + l2 * s2 + l12 * s12 < 1 - HAIR;
    }

    @Override
    Quadric pieceAt(double s1, double s2, double s12) {
        return Quadric.plane(l1, l2, l12);
    }

    @Override
    FailureMode modeAt(double s1, double s2, double s12) {
        return mode;
    }
}
