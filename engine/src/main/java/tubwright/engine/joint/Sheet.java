// SPDX-License-Identifier: Apache-2.0
package tubwright.engine.joint;

import java.util.List;
import java.util.OptionalDouble;
import tubwright.engine.laminate.Climate;
import tubwright.engine.laminate.EngineeringConstants;
import tubwright.engine.laminate.Laminate;
import tubwright.engine.laminate.Layer;
import tubwright.engine.laminate.LayerRole;
import tubwright.engine.laminate.Reference;
import tubwright.engine.material.Metal;
import tubwright.engine.material.Property;
import tubwright.engine.strength.Criterion;
import tubwright.engine.strength.FirstPlyFailure;
import tubwright.engine.strength.KnockDown;
import tubwright.engine.strength.LayerCriteria;

/**
 * What a laminate is at a joint: its plies without core and film, stretched square to the joint and sheared along it. A
 * sandwich is taken to have its core run out before the joint, its faces laid together.
 *
 * @param adherend thickness and modulus square to the line
 * @param shearModulus in the plane, Pa
 * @param solid the layers that are there, 1 along the direction square to the line
 * @param coreRunsOut whether there was a core
 * @param built thickness of the whole laminate, core and films too, m
 */
public record Sheet(Adherend adherend, double shearModulus, Laminate solid, boolean coreRunsOut, double built) {

    /**
     * Of a laminate.
     *
     * @param across angle from the laminate's axis to the direction square to the joint, radians
     * @throws IllegalArgumentException if nothing but core and film is there
     */
    public static Sheet of(Laminate laminate, double across) {
        List<Layer> layers = laminate.layers().stream()
                .filter(l -> l.role() == LayerRole.PLY || l.role() == LayerRole.SHEET)
                .map(l -> new Layer(l.material(), l.thickness(), l.angle() - across, l.role()))
                .toList();
        boolean core = laminate.layers().stream().anyMatch(l -> l.role() == LayerRole.CORE);
        Laminate solid = new Laminate(layers, Reference.MIDDLE);
        EngineeringConstants e = EngineeringConstants.membrane(solid);
        double poisson = Math.min(0.49, Math.sqrt(Math.abs(e.nuxy() * e.nuyx())));
        return new Sheet(new Adherend(solid.thickness(), e.ex(), poisson), e.gxy(), solid, core, laminate.thickness());
    }

    /** Thickness, m. */
    public double thickness() {
        return adherend.thickness();
    }

    /** The sheet as something that only shears along the joint: its modulus is that of shear. */
    Adherend inShear() {
        return new Adherend(thickness(), shearModulus, 0);
    }

    /** Whether there is nothing but metal. */
    boolean metal() {
        return solid.layers().stream().allMatch(l -> l.material() instanceof Metal);
    }

    /** Least value of a property among the layers; empty if one of them has none. */
    OptionalDouble least(Property property) {
        double least = Double.POSITIVE_INFINITY;
        for (Layer layer : solid.layers()) {
            OptionalDouble value = layer.material().properties().si(property);
            if (value.isEmpty()) {
                return value;
            }
            least = Math.min(least, value.getAsDouble());
        }
        return OptionalDouble.of(least);
    }

    /** The layers that lack a property, in words. */
    List<String> needs(Property property) {
        return solid.layers().stream()
                .map(Layer::material)
                .filter(m -> !m.properties().has(property))
                .map(m -> property.key() + " of " + m.name() + " (" + property.meaning() + ")")
                .distinct()
                .toList();
    }

    /**
     * Size of a resultant at which fibres fail first (a metal yields) by maximum stress, cure stress left out, N/m; empty where
     * a layer lacks strengths.
     *
     * @param unit the resultant of size one: (Nx, Ny, Nxy, 0, 0, 0), x square to the joint
     */
    OptionalDouble unnotched(double[] unit, KnockDown knockDown) {
        FirstPlyFailure failure =
                FirstPlyFailure.of(solid, unit, Climate.NONE, LayerCriteria.of(Criterion.MAXIMUM_STRESS, knockDown));
        if (!failure.notChecked().isEmpty() || failure.fibre().isEmpty()) {
            return OptionalDouble.empty();
        }
        return OptionalDouble.of(failure.fibre().get().failure().reserveFactor());
    }
}
