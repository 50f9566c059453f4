// SPDX-License-Identifier: Apache-2.0
package tubwright.engine.make.cure;

import java.util.OptionalDouble;

/**
 * How and where parts are cured.
 *
 * @param tool what moulds are made of
 * @param toolThickness of their walls, m
 * @param toolSide coefficient of heat transfer at the mould's outer face, W/(m² K)
 * @param bagSide and at the bag
 * @param solid cycle for solid laminates and for the outer skins of sandwiches
 * @param overCore cycle for all that is cured over a core
 * @param order of a sandwich
 * @param humidity relative humidity the prepreg was stored in, 0 to 1
 * @param service highest temperature of use, K
 */
public record CureShop(
        Tool tool,
        double toolThickness,
        double toolSide,
        double bagSide,
        Cycle solid,
        Cycle overCore,
        Order order,
        double humidity,
        OptionalDouble service) {
    /** Usual of an autoclave (from memory: 20 to 150 W/m²K), towards its lower end. */
    public static final double USUAL_TRANSFER = 60;

    /** Relative humidity of a room nobody dries (assumed). */
    public static final double USUAL_HUMIDITY = 0.5;

    /** In how many cures a sandwich is made. */
    public enum Order {
        /** Outer skin at full pressure, core bonded to it, inner skin at low pressure. */
        THREE_CURES("three-cures"),
        /** All at once, at low pressure. */
        ONE_SHOT("one-shot");

        private final String word;

        Order(String word) {
            this.word = word;
        }

        /** As written by a user. */
        public String word() {
            return word;
        }
    }

    /** A shop with moulds of carbon and the shipped cycles, sandwich in three cures. */
    public static CureShop usual(CureLibrary library) {
        Tool tool = library.tool("carbon-epoxy");
        return new CureShop(
                tool,
                tool.thickness().si(),
                USUAL_TRANSFER,
                USUAL_TRANSFER,
                library.cycle("solid-180"),
                library.cycle("honeycomb-180"),
                Order.THREE_CURES,
                USUAL_HUMIDITY,
                OptionalDouble.empty());
    }

    /** Refuses what no shop has. */
    public CureShop {
        if (!(toolThickness > 0 && toolSide > 0 && bagSide > 0)) {
            throw new CureException("mould thickness and heat transfer must be greater than zero");
        }
        if (!(humidity >= 0 && humidity <= 1)) {
            throw new CureException("relative humidity lies between 0 and 100 %, not at " + 100 * humidity + " %");
        }
    }
}
