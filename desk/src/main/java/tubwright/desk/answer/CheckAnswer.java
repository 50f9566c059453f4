// SPDX-License-Identifier: Apache-2.0
package tubwright.desk.answer;

import java.util.List;

/**
 * A design in words: what {@code check} prints.
 *
 * @param tub name of the tub
 * @param facts short sentences on what it is made of: frames, strips, openings, hardpoints, cases
 * @param variants one per variant of the design, as designed first
 * @param warnings what goes against layup practice, each with its rule
 */
public record CheckAnswer(String tub, List<String> facts, List<Variant> variants, List<String> warnings) {
    public CheckAnswer {
        facts = List.copyOf(facts);
        variants = List.copyOf(variants);
        warnings = List.copyOf(warnings);
    }

    /**
     * One variant.
     *
     * @param name its name
     * @param construction in a few words
     * @param zones areas and what lies on them
     * @param pieces mass by piece
     * @param mass of the whole, kg
     */
    public record Variant(String name, String construction, List<Zone> zones, List<Piece> pieces, double mass) {
        public Variant {
            zones = List.copyOf(zones);
            pieces = List.copyOf(pieces);
        }
    }

    /**
     * A zone or a patch.
     *
     * @param name its name
     * @param patch whether these are plies a patch adds to the zones below it
     * @param code layup
     * @param area developed area, m²
     * @param thickness m
     * @param arealMass kg/m²
     */
    public record Zone(String name, boolean patch, String code, double area, double thickness, double arealMass) {}

    /**
     * A piece.
     *
     * @param name its name
     * @param mass kg
     */
    public record Piece(String name, double mass) {}
}
