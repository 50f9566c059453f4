// SPDX-License-Identifier: Apache-2.0
package tubwright.engine.structure;

import tubwright.engine.joint.InsertDetail;

/**
 * Where a load enters: pick-up, engine mount, harness, hoop foot. The insert spreads the load over the nodes inside its
 * footprint; between the point and the surface sits the insert's own stiffness.
 *
 * @param name unique; left and right twins are two hardpoints, e.g. "front lower rear leg R" and "... L"
 * @param part strip or wall it sits on
 * @param position where the load acts, m, 3 numbers (on the surface, or stood off it by a bracket)
 * @param footprintRadius radius of the insert and its potting, m
 * @param translationStiffness stiffness of insert and potting against translation, N/m, isotropic
 * @param rotationStiffness the same against rotation, N·m/rad
 * @param mass of insert and potting beyond the laminate it replaces, kg
 * @param insert how it is made, for its strength
 */
public record Hardpoint(
        String name,
        String part,
        double[] position,
        double footprintRadius,
        double translationStiffness,
        double rotationStiffness,
        double mass,
        InsertDetail insert) {

    /** One of which nothing but its stiffness is known. */
    public Hardpoint(
            String name,
            String part,
            double[] position,
            double footprintRadius,
            double translationStiffness,
            double rotationStiffness,
            double mass) {
        this(
                name,
                part,
                position,
                footprintRadius,
                translationStiffness,
                rotationStiffness,
                mass,
                InsertDetail.UNKNOWN);
    }

    /** The same hardpoint with the stiffness of insert and potting multiplied by a factor. */
    public Hardpoint stiffer(double factor) {
        return new Hardpoint(
                name,
                part,
                position,
                footprintRadius,
                factor * translationStiffness,
                factor * rotationStiffness,
                mass,
                insert);
    }
}
