// SPDX-License-Identifier: Apache-2.0
package tubwright.engine.joint;

/**
 * A plane sheet in shear between uprights and flanges that goes on bearing after it has buckled: incomplete diagonal
 * tension (Kuhn, Peterson and Levin 1952, NACA TN 2661).
 *
 * @param thickness t of the sheet, m
 * @param spacing d of the uprights, centre to centre, m
 * @param clearSpacing dc between their rivet lines, m
 * @param depth he between the centroids of the flanges, m
 * @param clearDepth hc between the flanges' rivet lines, m
 * @param modulus E, Pa
 * @param poisson μ
 * @param uprights what stands on the sheet
 * @param flangeArea AF of one flange, m²; infinite for flanges so heavy that they do not shorten
 */
public record ShearWeb(
        double thickness,
        double spacing,
        double clearSpacing,
        double depth,
        double clearDepth,
        double modulus,
        double poisson,
        Upright uprights,
        double flangeArea) {

    /**
     * An upright.
     *
     * @param area AU of the one or the pair, m²
     * @param eccentricity e of its centroid from the sheet's middle, m; 0 for a pair
     * @param gyration ρ, radius of gyration about the axis parallel to the sheet, m
     * @param length hU between the inner rivets to the flanges, m
     */
    public record Upright(double area, double eccentricity, double gyration, double length) {
        /** AUe = AU/(1 + (e/ρ)²), m². */
        public double effectiveArea() {
            double ratio = eccentricity / gyration;
            return area / (1 + ratio * ratio);
        }
    }

    /** Coefficient of simply supported plates with the term π²/(12 (1 − ν²)) in it: .904 (5.34 + 4 (d/hc)²). */
    public double bucklingCoefficient() {
        double ratio = spacing / clearDepth;
        return 0.904 * (5.34 + 4 * ratio * ratio);
    }

    /**
     * Shear stress at buckling, kss E (t/dc)² [Rh + ½ (Rd − Rh) (dc/hc)³], Pa (for dc < hc).
     *
     * @param coefficient kss, from {@link #bucklingCoefficient()} or a chart
     * @param restraintAlongUprights Rh, 1 for simple support, 1.62 for clamped edges
     * @param restraintAlongFlanges Rd
     */
    public double bucklingStress(double coefficient, double restraintAlongUprights, double restraintAlongFlanges) {
        double slender = thickness / clearSpacing;
        double aspect = clearSpacing / clearDepth;
        double restraint = restraintAlongUprights
                + 0.5 * (restraintAlongFlanges - restraintAlongUprights) * aspect * aspect * aspect;
        return coefficient * modulus * slender * slender * restraint;
    }

    /** Mean shear stress S/(he t) of a shear force S, Pa. */
    public double shearStress(double force) {
        return force / (depth * thickness);
    }

    /** Share of the load that goes by diagonal tension: k = tanh(½ log10 τ/τcr), 0 below buckling. */
    public static double diagonalTensionFactor(double shearStress, double bucklingStress) {
        double ratio = shearStress / bucklingStress;
        return ratio > 1 ? Math.tanh(0.5 * Math.log10(ratio)) : 0;
    }

    /**
     * The same for a curved sheet, k = tanh[(½ + 300 t d/(R h)) log10 τ/τcr].
     *
     * @param lengths t d/(R h), d along the axis and h around it
     */
    public static double diagonalTensionFactorCurved(double shearStress, double bucklingStress, double lengths) {
        double ratio = shearStress / bucklingStress;
        return ratio > 1 ? Math.tanh((0.5 + 300 * lengths) * Math.log10(ratio)) : 0;
    }

    /** Everything that follows from the mean shear stress and the buckling stress, Pa. */
    public DiagonalTension under(double shearStress, double bucklingStress) {
        return DiagonalTension.of(this, shearStress, diagonalTensionFactor(shearStress, bucklingStress));
    }
}
