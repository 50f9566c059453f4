// SPDX-License-Identifier: Apache-2.0
package tubwright.engine.strength;

/** A single quadric with a single mode. */
final class PlaneSurface extends FailureSurface {
    private final Quadric quadric;
    private final FailureMode mode;

    PlaneSurface(FailureMode mode, Quadric quadric) {
        this.mode = mode;
        this.quadric = quadric;
    }

    @Override
    Quadric pieceAt(double s1, double s2, double s12) {
        return quadric;
    }

    @Override
    FailureMode modeAt(double s1, double s2, double s12) {
        return mode;
    }
}
