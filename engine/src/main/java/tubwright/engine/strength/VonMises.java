// SPDX-License-Identifier: Apache-2.0
package tubwright.engine.strength;

/** Yield of a metal sheet: σ1² − σ1 σ2 + σ2² + 3 τ² = F² (von Mises 1913). */
public final class VonMises {
    private VonMises() {}

    /** With this yield strength, Pa. */
    public static PlyCriterion of(double yieldStrength) {
        double f = 1 / (yieldStrength * yieldStrength);
        Quadric quadric = new Quadric(f, f, 3 * f, -f, 0, 0, 0, -1);
        return new PlyCriterion("von Mises", "von Mises 1913", new FailureSurface() {
            @Override
            boolean convex() {
                return true;
            }

            @Override
            Quadric pieceAt(double s1, double s2, double s12) {
                return quadric;
            }

            @Override
            FailureMode modeAt(double s1, double s2, double s12) {
                return FailureMode.YIELD;
            }
        });
    }
}
