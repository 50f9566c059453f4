// SPDX-License-Identifier: Apache-2.0
package tubwright.desk.answer;

import java.util.List;
import tubwright.engine.make.cure.CureCheck;
import tubwright.engine.make.cure.CureShop;
import tubwright.engine.make.cure.LaminateCure;

/**
 * The laminates of a tub through their cures.
 *
 * @param tub name
 * @param stamp when it was computed
 * @param version of the program
 * @param shop how and where parts are cured
 * @param places every different laminate, as it lies in zones and under patches, thickest first
 * @param bends where the skin turns, and by how much that closes
 * @param moulds what the mould of the tub would be cut to, by what it is made of
 */
public record CureAnswer(
        String tub,
        String stamp,
        String version,
        CureShop shop,
        List<Place> places,
        List<Bend> bends,
        List<Mould> moulds) {
    /** Keeps lists of its own. */
    public CureAnswer {
        places = List.copyOf(places);
        bends = List.copyOf(bends);
        moulds = List.copyOf(moulds);
    }

    /**
     * A laminate and where it lies.
     *
     * @param code its stack
     * @param where zones, with the patches on them
     * @param cure what comes of it
     */
    public record Place(String code, List<String> where, LaminateCure cure) {}

    /**
     * A bend of the skin between two strips, over the stretch on which one zone covers its lower side.
     *
     * @param between the strips
     * @param zone whose laminate it has
     * @param from station, m
     * @param to station, m
     * @param least angle swept, rad
     * @param most angle swept, rad
     * @param leastClosing by which it closes there, rad: open the mould by this; NaN where data are missing
     * @param mostClosing likewise at the most
     */
    public record Bend(
            String between,
            String zone,
            double from,
            double to,
            double least,
            double most,
            double leastClosing,
            double mostClosing) {}

    /**
     * A mould as long as the tub.
     *
     * @param material name
     * @param description of the material
     * @param expansion 1/K
     * @param factor cold size over the part's
     * @param part length of the tub, m
     * @param source of the expansion
     */
    public record Mould(
            String material, String description, double expansion, double factor, double part, String source) {}

    /** How many checks stand so, over all places. */
    public long count(CureCheck.Verdict verdict) {
        return places.stream()
                .flatMap(p -> p.cure().stages().stream())
                .flatMap(s -> s.checks().stream())
                .filter(c -> c.verdict() == verdict)
                .count();
    }
}
