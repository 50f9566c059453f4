// SPDX-License-Identifier: Apache-2.0
package tubwright.engine.material;

import java.util.OptionalDouble;

/** What a layer can be made of. */
public sealed interface Material permits Ply, Core, Adhesive, Metal {
    /** Key by which a design names it, lower case. */
    String name();

    /** One line for a reader. */
    String description();

    /** All values, estimates included, each with its provenance. */
    PropertyTable properties();

    /** Constants for laminate theory. */
    Elasticity elasticity();

    /** Mass per volume, kg/m³. */
    default double density() {
        return properties().require(Property.DENSITY);
    }

    /** Thickness one layer has if the design does not say, m: a ply's or a bond line's; a core or a sheet has none. */
    default OptionalDouble layerThickness() {
        return properties().si(Property.THICKNESS);
    }

    /**
     * Free strains from heat and moisture. Moisture expansion that is not known counts as zero.
     *
     * @throws MaterialException if the thermal expansion is not known
     */
    default Expansion expansion() {
        PropertyTable table = properties();
        if (!table.has(Property.ALPHA1) || !table.has(Property.ALPHA2)) {
            throw new MaterialException("the thermal expansion of '" + name()
                    + "' is not known; give alpha1 and alpha2 to compute thermal stresses");
        }
        return new Expansion(
                table.require(Property.ALPHA1),
                table.require(Property.ALPHA2),
                table.si(Property.BETA1).orElse(0),
                table.si(Property.BETA2).orElse(0));
    }
}
