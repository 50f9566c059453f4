// SPDX-License-Identifier: Apache-2.0
package tubwright.engine.make.cure;

import tubwright.engine.material.Provenance;

/**
 * Glass transition against degree of cure (DiBenedetto's equation as written by Pascault and Williams 1990):
 * Tg = Tg₀ + (Tg∞ − Tg₀) λ α / (1 − (1 − λ) α).
 *
 * @param fresh Tg₀, K
 * @param full Tg∞, K
 * @param lambda λ
 * @param provenance where the three come from
 */
public record GlassTransition(double fresh, double full, double lambda, Provenance provenance) {
    /** Tg, K, at a degree of cure. */
    public double at(double degree) {
        return fresh + (full - fresh) * lambda * degree / (1 - (1 - lambda) * degree);
    }
}
