// SPDX-License-Identifier: Apache-2.0
package tubwright.engine.make.nest;

import java.util.List;

/**
 * Pieces laid on a roll.
 *
 * @param roll cut from
 * @param pieces cut
 * @param placements one for each copy of each piece
 * @param length of the roll that is used, m
 */
public record Nest(Roll roll, List<Piece> pieces, List<Placement> placements, double length) {
    /**
     * Where a copy lies.
     *
     * @param piece index of the piece
     * @param quarters turned counter-clockwise by so many quarters
     * @param x least along the roll, m
     * @param y least across the roll, m
     */
    public record Placement(int piece, int quarters, double x, double y) {}

    /** Keeps lists of its own. */
    public Nest {
        pieces = List.copyOf(pieces);
        placements = List.copyOf(placements);
    }

    /** The outline of a placed copy on the roll. */
    public Outline outline(Placement placement) {
        return pieces.get(placement.piece)
                .outline()
                .turned(placement.quarters)
                .atOrigin()
                .moved(placement.x, placement.y);
    }

    /** Area of all copies, m². */
    public double area() {
        return pieces.stream().mapToDouble(p -> p.count() * p.outline().area()).sum();
    }

    /** Area of all copies over that of the roll used. */
    public double utilisation() {
        return area() / (length * roll.width());
    }

    /** Area of the roll used that is no piece, m². */
    public double waste() {
        return length * roll.width() - area();
    }
}
