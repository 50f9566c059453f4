// SPDX-License-Identifier: Apache-2.0
package tubwright.engine.joint;

import java.util.ArrayList;
import java.util.List;
import java.util.OptionalDouble;
import java.util.function.DoubleUnaryOperator;
import tubwright.engine.material.Core;
import tubwright.engine.material.Property;
import tubwright.engine.strength.Check;
import tubwright.engine.strength.KnockDown;

/**
 * An insert potted through the whole core, pulled out of the panel: shear of the core around the potting (theory of ESA
 * PSS-03-1202, 1987, re-derived; its strength charts are known to be wrong, the formulas are not).
 *
 * <p>Faces clamped to the potting take part of the load by bending. With d = c + f:
 * τ(r) = P/(2π d r) {1 − r K1(αr)/(bp K1(α bp))}, α = (1/f) √[(Gc/Ef) 12 (1 − ν²)(β/2 + 1 + 2/(3β))], β = c/f.
 *
 * @param pottingRadius bp, m
 * @param face f and Ef, ν of either face
 * @param coreHeight c, m
 * @param coreShearModulus Gc, Pa; of a honeycomb the W direction's to be safe
 */
public record InsertPullOut(double pottingRadius, Adherend face, double coreHeight, double coreShearModulus) {

    /** α, 1/m. */
    public double decay() {
        double f = face.thickness();
        double nu = face.poisson();
        double beta = coreHeight / f;
        return Math.sqrt(coreShearModulus / face.modulus() * 12 * (1 - nu * nu) * (beta / 2 + 1 + 2 / (3 * beta))) / f;
    }

    /** Shear stress of the core at radius r over P/(2π d bp). */
    public double shearRatio(double radius) {
        double alpha = decay();
        return shearRatio(radius, alpha, BesselK1.scaled(alpha * pottingRadius));
    }

    private double shearRatio(double radius, double alpha, double atPotting) {
        double decayed = Math.exp(alpha * (pottingRadius - radius));
        return pottingRadius / radius - BesselK1.scaled(alpha * radius) / atPotting * decayed;
    }

    /** Radius of the largest shear stress, m. */
    public double radiusOfLargestShear() {
        double alpha = decay();
        double atPotting = BesselK1.scaled(alpha * pottingRadius);
        DoubleUnaryOperator ratio = r -> shearRatio(r, alpha, atPotting);
        double low = pottingRadius;
        double high = pottingRadius + 20 / alpha;
        double golden = (Math.sqrt(5) - 1) / 2;
        double left = high - golden * (high - low);
        double right = low + golden * (high - low);
        double atLeft = ratio.applyAsDouble(left);
        double atRight = ratio.applyAsDouble(right);
        // The maximum is flat: half the digits of the radius settle all of the ratio.
        for (int i = 0; i < 50; i++) {
            if (atLeft < atRight) {
                low = left;
                left = right;
                atLeft = atRight;
                right = low + golden * (high - low);
                atRight = ratio.applyAsDouble(right);
            } else {
                high = right;
                right = left;
                atRight = atLeft;
                left = high - golden * (high - low);
                atLeft = ratio.applyAsDouble(left);
            }
        }
        return 0.5 * (low + high);
    }

    /** Kmax, the largest {@link #shearRatio}. */
    public double largestShearRatio() {
        return shearRatio(radiusOfLargestShear());
    }

    /**
     * Kmax by ESA's closed form: r = bp/(1 − e^−n), n = 0.931714 (α bp)^0.262866, K = (bp/r)[1 − √(r/bp) e^{α(bp − r)}]
     * (coefficients from memory; within 1 % of the Bessel solution for α bp ≥ 11).
     */
    public double largestShearRatioClosedForm() {
        double alpha = decay();
        double n = 0.931714 * Math.pow(alpha * pottingRadius, 0.262866);
        double ratio = 1 / (1 - Math.exp(-n));
        return (1 - Math.sqrt(ratio) * Math.exp(alpha * pottingRadius * (1 - ratio))) / ratio;
    }

    /**
     * Load at which the core shears, 2π bp c τc/(C* Kmax) with C* = β/(β + 1), N.
     *
     * @param coreShearStrength τc, Pa
     */
    public double coreShearCapacity(double coreShearStrength) {
        return coreShearCapacity(coreShearStrength, largestShearRatio());
    }

    /** The same with {@link #largestShearRatio Kmax} known. */
    double coreShearCapacity(double coreShearStrength, double largestShearRatio) {
        double beta = coreHeight / face.thickness();
        return plainCapacity(coreShearStrength) * (beta + 1) / beta / largestShearRatio;
    }

    /** The simplest safe value, which leaves the faces out: 2π bp c τc, N. */
    public double plainCapacity(double coreShearStrength) {
        return 2 * Math.PI * pottingRadius * coreHeight * coreShearStrength;
    }

    /**
     * What can be checked and what cannot.
     *
     * @param core with S23, its weaker shear strength
     * @param load pull along the insert, N, either sign
     * @param pottingBond strength of resin against insert and faces, N; empty if not tested
     */
    public List<Check> checks(Core core, double load, OptionalDouble pottingBond, KnockDown knockDown) {
        List<Check> checks = new ArrayList<>();
        var strength = core.properties().si(Property.S23);
        if (strength.isPresent()) {
            double capacity = coreShearCapacity(strength.getAsDouble() * knockDown.factor(Property.S23));
            checks.add(Check.proportional(
                    "insert pull-out by core shear",
                    Math.abs(load),
                    capacity,
                    "ESA PSS-03-1202 formulas, faces clamped to the potting, W-direction strength"));
        } else {
            checks.add(new Check.NotChecked(
                    "insert pull-out by core shear",
                    List.of("S23 of " + core.name() + " (" + Property.S23.meaning() + ")")));
        }
        if (pottingBond.isPresent()) {
            checks.add(Check.proportional(
                    "bond of the potting", Math.abs(load), pottingBond.getAsDouble(), "tested strength"));
        } else {
            checks.add(
                    new Check.NotChecked("bond of the potting", List.of("pull-out strength of the potting by test")));
        }
        return List.copyOf(checks);
    }
}
