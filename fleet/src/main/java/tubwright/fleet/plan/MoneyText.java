// SPDX-License-Identifier: Apache-2.0
package tubwright.fleet.plan;

import tubwright.engine.design.text.Otherwise;
import tubwright.engine.design.text.Says;

/** Prices as written. */
@Says("What material costs. Labour, moulds and what is bolted on are not in it.")
public record MoneyText(
        @Says("The money, as it is to be printed.") @Otherwise("money")
        String currency,

        @Says("For a square metre of ply as laid, waste included.") @Otherwise("0")
        double plyPerSquareMetre,

        @Says("For a kilogram of a tub that has no plies.") @Otherwise("0")
        double sheetPerKilogram) {
    /**
     * Of a tub.
     *
     * @param plies area laid, m²
     * @param mass kg
     */
    public double of(double plies, double mass) {
        return plies > 0 ? plies * plyPerSquareMetre : mass * sheetPerKilogram;
    }
}
