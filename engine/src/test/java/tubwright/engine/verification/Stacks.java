// SPDX-License-Identifier: Apache-2.0
package tubwright.engine.verification;

import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import tubwright.engine.laminate.Laminate;
import tubwright.engine.laminate.Layer;
import tubwright.engine.laminate.Reference;
import tubwright.engine.material.Ply;
import tubwright.engine.material.Property;
import tubwright.engine.material.PropertyTable;
import tubwright.engine.material.PropertyValue;
import tubwright.engine.material.Provenance;

/** Laminates of the benchmarks through the program's own laminate code. */
final class Stacks {
    private Stacks() {}

    static Ply ply(double e1, double e2, double nu12, double g12, double g13, double g23) {
        Map<Property, PropertyValue> values = new EnumMap<>(Property.class);
        Map.of(
                        Property.E1, e1,
                        Property.E2, e2,
                        Property.NU12, nu12,
                        Property.G12, g12,
                        Property.G13, g13,
                        Property.G23, g23,
                        Property.THICKNESS, .1,
                        Property.DENSITY, 1.)
                .forEach((p, v) -> values.put(p, new PropertyValue(v, Provenance.STATED)));
        return Ply.of("ply", "a ply of a benchmark", Ply.Form.UNIDIRECTIONAL, new PropertyTable(values));
    }

    /** [0/90/90/0] of four plies of .01, E1/E2 = 25. */
    static Laminate crossPly() {
        Ply ply = ply(25, 1, .25, .5, .5, .2);
        Layer along = new Layer(ply, .01, 0);
        Layer across = new Layer(ply, .01, Math.PI / 2);
        return new Laminate(List.of(along, across, across, along), Reference.MIDDLE);
    }

    /** Pagano's sandwich .1/.8/.1. */
    static Laminate sandwich() {
        Layer face = new Layer(ply(25, 1, .25, .5, .5, .2), .1, 0);
        return new Laminate(
                List.of(face, new Layer(ply(.04, .04, .25, .016, .06, .06), .8, 0), face), Reference.MIDDLE);
    }
}
