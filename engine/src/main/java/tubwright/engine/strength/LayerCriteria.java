// SPDX-License-Identifier: Apache-2.0
package tubwright.engine.strength;

import java.util.Optional;
import tubwright.engine.laminate.Laminate;
import tubwright.engine.laminate.Layer;
import tubwright.engine.laminate.LayerRole;
import tubwright.engine.material.Property;
import tubwright.engine.material.PropertyTable;

/** Which criterion, with which strengths, judges each layer of a laminate. */
@FunctionalInterface
public interface LayerCriteria {
    /** For the layer at this place, 0 at the outer surface. */
    PreparedCriterion at(Laminate laminate, int index);

    /** The same criterion and knock-down everywhere, strengths as the materials give them. */
    static LayerCriteria of(Criterion criterion, KnockDown knockDown) {
        return (laminate, index) ->
                criterion.prepare(laminate.layers().get(index).material(), knockDown);
    }

    /**
     * Plies between others take their in-situ strengths where the material gives GIc and GIIc; others, and materials that
     * do not, keep those of the free ply.
     */
    static LayerCriteria inSitu(Criterion criterion, KnockDown knockDown) {
        return (laminate, index) ->
                criterion.prepare(laminate.layers().get(index).material(), knockDown, strengthsInSitu(laminate, index));
    }

    /**
     * In-situ strengths of one layer by its place: layers of one material and angle that touch count as one thick ply, one
     * that touches the air or a core is an outer ply, an embedded one takes the greater of the thin and the thick value.
     * Linear shear. Empty if the toughness is not known or the layer is no unidirectional ply.
     */
    static Optional<InSituStrengths> strengthsInSitu(Laminate laminate, int index) {
        Layer layer = laminate.layers().get(index);
        PropertyTable table = layer.material().properties();
        Optional<PlyStrengths> free = PlyStrengths.of(layer.material());
        if (free.isEmpty() || free.get().woven() || !table.has(Property.GIC) || !table.has(Property.GIIC)) {
            return Optional.empty();
        }
        int first = index;
        while (first > 0 && alike(laminate.layers().get(first - 1), layer)) {
            first--;
        }
        int last = index;
        while (last + 1 < laminate.layers().size() && alike(laminate.layers().get(last + 1), layer)) {
            last++;
        }
        double thickness = 0;
        for (int i = first; i <= last; i++) {
            thickness += laminate.layers().get(i).thickness();
        }
        boolean embedded = first > 0
                && last + 1 < laminate.layers().size()
                && supports(laminate.layers().get(first - 1))
                && supports(laminate.layers().get(last + 1));
        PlyStrengths s = free.get();
        var toughness = new InSituStrengths.Toughness(
                table.require(Property.GIC), table.require(Property.GIIC), 0, s.yt(), s.s12());
        var elasticity = layer.material().elasticity();
        InSituStrengths thin = InSituStrengths.of(
                elasticity,
                toughness,
                thickness,
                embedded ? InSituStrengths.Position.THIN_EMBEDDED : InSituStrengths.Position.OUTER);
        double yt = Math.max(s.yt(), thin.transverseTension());
        double shear = Math.max(s.s12(), thin.shear());
        if (embedded) {
            InSituStrengths thick =
                    InSituStrengths.of(elasticity, toughness, thickness, InSituStrengths.Position.THICK_EMBEDDED);
            yt = Math.max(yt, thick.transverseTension());
            shear = Math.max(shear, thick.shear());
        }
        return Optional.of(new InSituStrengths(yt, shear));
    }

    private static boolean alike(Layer a, Layer b) {
        return a.material().equals(b.material()) && Math.abs(a.degrees() - b.degrees()) < 1e-6;
    }

    private static boolean supports(Layer neighbour) {
        return neighbour.role() == LayerRole.PLY || neighbour.role() == LayerRole.SHEET;
    }
}
