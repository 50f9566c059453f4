// SPDX-License-Identifier: Apache-2.0
package tubwright.engine.make.cure;

import java.util.List;
import tubwright.engine.laminate.Climate;
import tubwright.engine.laminate.Laminate;
import tubwright.engine.laminate.LaminateResponse;
import tubwright.engine.laminate.PlyState;
import tubwright.engine.material.Ply;
import tubwright.engine.material.Property;

/**
 * Thermal expansion of a stack of tapes in its plane and through its thickness. In the plane by laminate theory; through
 * the thickness each ply adds what its neighbours squeeze out of it: ε₃ = α₃ΔT − (ν₁₃/E₁) σ₁ − (ν₂₃/E₂) σ₂ with the residual
 * stresses σ of laminate theory, α₃ = α₂ and ν₁₃ = ν₁₂ of a transversely isotropic ply.
 *
 * @param along mean of the two directions in the plane, 1/K
 * @param through 1/K
 */
public record ThroughThickness(double along, double through) {
    private static final double ONE_DEGREE = -1;

    /** True where it can be computed: nothing but unidirectional plies whose Poisson's ratio 23 is known. */
    public static boolean canBeComputed(List<Ply> plies) {
        return plies.stream()
                .allMatch(p -> p.form() == Ply.Form.UNIDIRECTIONAL
                        && p.properties().has(Property.NU23)
                        && p.properties().has(Property.ALPHA2));
    }

    /**
     * Of a laminate of unidirectional plies.
     *
     * @throws CureException if a ply is none
     */
    public static ThroughThickness of(Laminate laminate) {
        LaminateResponse free = LaminateResponse.underResultants(laminate, new double[6], new Climate(ONE_DEGREE, 0));
        double shrink = 0;
        for (PlyState state : free.layers()) {
            if (!(state.layer().material() instanceof Ply ply) || !canBeComputed(List.of(ply))) {
                throw new CureException("expansion through the thickness needs unidirectional plies with alpha2 and"
                        + " nu23, which '" + state.layer().material().name() + "' is not");
            }
            double s1 = (state.outer().plyStress()[0] + state.inner().plyStress()[0]) / 2;
            double s2 = (state.outer().plyStress()[1] + state.inner().plyStress()[1]) / 2;
            double strain = ply.properties().require(Property.ALPHA2) * ONE_DEGREE
                    - ply.elasticity().nu12() / ply.elasticity().e1() * s1
                    - ply.properties().require(Property.NU23) / ply.elasticity().e2() * s2;
            shrink += strain * state.layer().thickness() / laminate.thickness();
        }
        double along = (free.strains()[0] + free.strains()[1]) / 2;
        return new ThroughThickness(along / ONE_DEGREE, shrink / ONE_DEGREE);
    }
}
