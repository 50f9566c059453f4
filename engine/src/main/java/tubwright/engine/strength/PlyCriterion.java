// SPDX-License-Identifier: Apache-2.0
package tubwright.engine.strength;

import java.util.List;

/**
 * A failure criterion with the strengths of one ply filled in.
 *
 * <p>The reserve methods do not allocate. Fibre and matrix surfaces are kept apart where the criterion does so; one that
 * does not (Tsai-Hill, Tsai-Wu) is labelled by the largest of the stress ratios at failure, which is a label, no theory.
 */
public final class PlyCriterion implements PreparedCriterion {
    private final String name;
    private final String basis;
    private final FailureSurface[] surfaces;

    PlyCriterion(String name, String basis, FailureSurface... surfaces) {
        this.name = name;
        this.basis = basis;
        this.surfaces = surfaces;
    }

    /** Name as in the literature. */
    public String name() {
        return name;
    }

    /** Source and the choices made where the criterion leaves one. */
    public String basis() {
        return basis;
    }

    /**
     * Smallest factor on the mechanical stress at which the criterion is met, residual stress held: 0 if the residual
     * stress alone meets it, infinite if no factor does. All stresses (σ1, σ2, τ12), Pa.
     */
    public double reserveFactor(double m1, double m2, double m12, double r1, double r2, double r12) {
        double smallest = Double.POSITIVE_INFINITY;
        for (FailureSurface surface : surfaces) {
            smallest = Math.min(smallest, surface.reserve(m1, m2, m12, r1, r2, r12));
        }
        return smallest;
    }

    /**
     * Lowers the two factors kept so far: {@code least[at]} of the fibres, {@code least[at + 1]} between them.
     *
     * @return bits 1 and 2 for the factors that were lowered
     */
    public int lower(double m1, double m2, double m12, double r1, double r2, double r12, double[] least, int at) {
        int lowered = 0;
        for (FailureSurface surface : surfaces) {
            double f = surface.reserve(m1, m2, m12, r1, r2, r12);
            if (f < least[at] || f < least[at + 1]) {
                boolean fibre =
                        surface.modeAt(r1 + f * m1, r2 + f * m2, r12 + f * m12).isFibre();
                int k = fibre ? 0 : 1;
                if (f < least[at + k]) {
                    least[at + k] = f;
                    lowered |= 1 << k;
                }
            }
        }
        return lowered;
    }

    /**
     * Whether what {@link #clears clear} two states clears all between them: every surface convex, and none met by the
     * residual stress alone.
     */
    public boolean bounds(double r1, double r2, double r12) {
        for (FailureSurface surface : surfaces) {
            if (!surface.convex() || !surface.holds(r1, r2, r12)) {
                return false;
            }
        }
        return true;
    }

    /**
     * Whether it is certain that {@link #lower} would lower neither of two factors, for a residual stress that
     * {@link #bounds bounds}. False is no answer.
     *
     * @param fibre lowest factor of the fibres so far
     * @param between lowest factor between them so far
     */
    public boolean clears(
            double m1, double m2, double m12, double r1, double r2, double r12, double fibre, double between) {
        for (FailureSurface surface : surfaces) {
            double f = surface.kept(fibre, between);
            if (!surface.holds(r1 + f * m1, r2 + f * m2, r12 + f * m12)) {
                return false;
            }
        }
        return true;
    }

    /** Without residual stress. */
    public double reserveFactor(double s1, double s2, double s12) {
        return reserveFactor(s1, s2, s12, 0, 0, 0);
    }

    /**
     * The earliest failure.
     *
     * @param mechanical stress that grows with the load (σ1, σ2, τ12), Pa
     * @param residual stress that stays, Pa
     */
    public PlyFailure assess(double[] mechanical, double[] residual) {
        return first(assessEach(mechanical, residual));
    }

    /** The earliest failure of the fibres (true) or between them (false). */
    public PlyFailure assess(double[] mechanical, double[] residual, boolean fibre) {
        return first(assessEach(mechanical, residual).stream()
                .filter(failure -> switch (failure) {
                    case PlyFailure.Reached reached -> reached.mode().isFibre() == fibre;
                    case PlyFailure.ByResidualStress broken -> broken.mode().isFibre() == fibre;
                    case PlyFailure.Never _ -> false;
                })
                .toList());
    }

    private List<PlyFailure> assessEach(double[] m, double[] r) {
        return java.util.Arrays.stream(surfaces)
                .map(surface -> assess(surface, m, r))
                .toList();
    }

    private static PlyFailure first(List<PlyFailure> all) {
        PlyFailure first = new PlyFailure.Never();
        for (PlyFailure each : all) {
            if (each.reserveFactor() < first.reserveFactor()) {
                first = each;
            }
        }
        return first;
    }

    private static PlyFailure assess(FailureSurface surface, double[] m, double[] r) {
        double factor = surface.reserve(m[0], m[1], m[2], r[0], r[1], r[2]);
        if (factor == Double.POSITIVE_INFINITY) {
            return new PlyFailure.Never();
        }
        double[] stress = {r[0] + factor * m[0], r[1] + factor * m[1], r[2] + factor * m[2]};
        FailureMode mode = surface.modeAt(stress[0], stress[1], stress[2]);
        if (factor == 0) {
            return new PlyFailure.ByResidualStress(mode, stress);
        }
        return new PlyFailure.Reached(mode, factor, stress, surface.fractureAngleAt(stress[0], stress[1], stress[2]));
    }

    @Override
    public String toString() {
        return name + " (" + basis + ")";
    }
}
