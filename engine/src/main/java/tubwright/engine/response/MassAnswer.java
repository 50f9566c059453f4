// SPDX-License-Identifier: Apache-2.0
package tubwright.engine.response;

import java.util.List;
import tubwright.engine.structure.Part;

/**
 * Mass, centre of mass and inertia, by item and whole.
 *
 * @param items every zone, wall, joint, hardpoint and stiffener
 * @param pieces the same summed by piece
 * @param whole everything
 */
public record MassAnswer(List<Item> items, List<Body> pieces, Body whole) {
    /**
     * One entry of the mass roll-up.
     *
     * @param kind what it is
     * @param name its name
     * @param piece the piece it belongs to
     * @param area m² (0 for joints, hardpoints, stiffeners)
     * @param mass kg
     */
    public record Item(Part.Kind kind, String name, String piece, double area, double mass) {}

    /**
     * A body's mass properties.
     *
     * @param name piece name, or the tub's
     * @param mass kg
     * @param centre centre of mass, m, 3 numbers
     * @param inertia about the centre of mass: Ixx, Iyy, Izz, Ixy, Iyz, Izx, kg·m², tensor components (products with
     *     minus sign)
     */
    public record Body(String name, double mass, double[] centre, double[] inertia) {}

    public MassAnswer {
        items = List.copyOf(items);
        pieces = List.copyOf(pieces);
    }
}
