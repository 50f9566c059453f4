// SPDX-License-Identifier: Apache-2.0
package tubwright.engine.load;

/**
 * Two axles that resist roll, with the chassis between them as a spring in torsion: how much of what springs and bars are set
 * to do to the balance of the car arrives at its tyres.
 *
 * <p>Small angles; steady roll. Each end of the body rolls by its own angle, φ_f and φ_r, under its share of the roll moment:
 * K_f φ_f + k (φ_f − φ_r) = μ M and K_r φ_r − k (φ_f − φ_r) = (1 − μ) M. The front axle then carries K_f φ_f, of which more in
 * docs/theory/loads.md. The idea of the model is common (Deakin, Crolla, Ramirez and Hanley 2000, SAE 2000-01-3554); the
 * formulas are worked out there.
 *
 * @param rollStiffness K of both axles together, springs and bars, N·m/rad
 * @param frontStiffnessShare λ = K_f / K, 0 to 1
 * @param frontMomentShare μ, the share of the body's roll moment that acts on its front end, 0 to 1
 */
public record RollBalance(double rollStiffness, double frontStiffnessShare, double frontMomentShare) {
    public RollBalance {
        if (!(rollStiffness > 0 && Double.isFinite(rollStiffness))) {
            throw new LoadException(
                    "the roll stiffness of the axles is not greater than zero",
                    "give it with springs and bars of both axles together, e.g. 800 N·m/deg");
        }
        if (!(frontStiffnessShare > 0 && frontStiffnessShare < 1)) {
            throw new LoadException(
                    "one axle has all the roll stiffness, so there is no balance to set",
                    "give a front share between 0 and 100 %");
        }
        if (!(frontMomentShare >= 0 && frontMomentShare <= 1)) {
            throw new LoadException("the front share of the roll moment is not between 0 and 1", "0.5 is usual");
        }
    }

    /** Of a car: the body's ends roll under the shares of its weight that they carry. */
    public static RollBalance of(Car car, double rollStiffness) {
        return new RollBalance(rollStiffness, car.frontRollShare(), 1 - car.centreAft() / car.wheelbase());
    }

    /**
     * Share of the roll moment that the front axle carries: K_f φ_f / M = λ (μ (1 − λ) + κ) / (λ (1 − λ) + κ), κ = k/K.
     *
     * @param torsion k of the chassis between the axles, N·m/rad; infinite for a rigid one
     */
    public double atFront(double torsion) {
        if (Double.isInfinite(torsion)) {
            return frontStiffnessShare;
        }
        double kappa = torsion / rollStiffness;
        return frontStiffnessShare * (frontMomentShare * (1 - frontStiffnessShare) + kappa) / (product() + kappa);
    }

    /**
     * Share of a small change of the split λ, at the same whole roll stiffness, that arrives as a change of load transfer:
     * κ (κ + a + b) / (κ + a)², a = λ (1 − λ), b = (1 − 2 λ)(μ − λ). It is 1 for a rigid chassis.
     */
    public double arriving(double torsion) {
        if (Double.isInfinite(torsion)) {
            return 1;
        }
        double kappa = torsion / rollStiffness;
        double sum = kappa + product();
        return kappa * (sum + lean()) / (sum * sum);
    }

    /**
     * The chassis at which a share of a small change arrives, N·m/rad: the positive root of
     * (1 − s) κ² + (a + b − 2 a s) κ − s a² = 0.
     *
     * @param share s, 0 to 1, both excluded
     */
    public double needed(double share) {
        if (!(share > 0 && share < 1)) {
            throw new LoadException(
                    "a share of " + share + " of a change cannot be asked for",
                    "only a rigid chassis lets the whole of it arrive; 80 % to 95 % are usual");
        }
        double a = product();
        double square = 1 - share;
        double half = (a + lean() - 2 * a * share) / 2;
        double free = share * a * a;
        double root = Math.sqrt(half * half + square * free);
        // The form without cancellation, whichever sign the middle term has.
        double kappa = half <= 0 ? (root - half) / square : free / (half + root);
        return kappa * rollStiffness;
    }

    private double product() {
        return frontStiffnessShare * (1 - frontStiffnessShare);
    }

    private double lean() {
        return (1 - 2 * frontStiffnessShare) * (frontMomentShare - frontStiffnessShare);
    }
}
