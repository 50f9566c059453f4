// SPDX-License-Identifier: Apache-2.0
package tubwright.engine.safety.spread;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import tubwright.engine.laminate.Laminate;
import tubwright.engine.laminate.Layer;
import tubwright.engine.laminate.LayerRole;
import tubwright.engine.material.Core;
import tubwright.engine.material.Material;
import tubwright.engine.material.Metal;
import tubwright.engine.material.Ply;
import tubwright.engine.material.Property;
import tubwright.engine.strength.PlyStrengths;

/** What can fail in the layers of a laminate, layer by layer, with the energy each takes or the data it would need. */
final class LayerMechanisms {
    /** Plies whose fibres stand at less than this to one another do not hold each other's cracks, radians. */
    private static final double CROSSED = Math.toRadians(20);

    private final Laminate laminate;
    private final int core;
    private final Energies energies;
    private final List<Mechanism> mechanisms = new ArrayList<>();

    private LayerMechanisms(Laminate laminate, int core, Energies energies) {
        this.laminate = laminate;
        this.core = core;
        this.energies = energies;
    }

    /**
     * In the order of the layers.
     *
     * @param core the layer that shears as a core, −1 if none
     */
    static List<Mechanism> of(Laminate laminate, int core, Energies energies) {
        LayerMechanisms found = new LayerMechanisms(laminate, core, energies);
        for (int i = 0; i < laminate.layers().size(); i++) {
            found.add(i);
        }
        return List.copyOf(found.mechanisms);
    }

    private void add(int i) {
        Layer layer = laminate.layers().get(i);
        Material material = layer.material();
        String label = "ply " + (i + 1) + " (" + Math.round(layer.degrees()) + "° " + material.name() + ")";
        switch (material) {
            case Ply ply -> {
                Optional<PlyStrengths> strengths = PlyStrengths.of(ply);
                if (strengths.isEmpty()) {
                    mechanisms.add(unknown(i, Mechanism.Kind.MATRIX, label, PlyStrengths.missing(ply)));
                    return;
                }
                boolean woven = strengths.get().woven();
                double tension = Energies.of(ply, Property.GFT, energies.fibres());
                double compression = Energies.of(ply, Property.GFC, energies.fibres());
                List<String> fibres = needs(ply, tension, Property.GFT, compression, Property.GFC);
                mechanisms.add(new Mechanism(i, Mechanism.Kind.FIBRE, label, tension, compression, false, fibres));
                if (woven) {
                    mechanisms.add(new Mechanism(i, Mechanism.Kind.WEFT, label, tension, compression, false, fibres));
                }
                double two = Energies.of(ply, Property.GIIC, energies.matrix());
                double one = woven ? two : Energies.of(ply, Property.GIC, energies.matrix());
                mechanisms.add(new Mechanism(
                        i,
                        Mechanism.Kind.MATRIX,
                        label,
                        one,
                        two,
                        woven || crossed(i),
                        needs(ply, one, Property.GIC, two, Property.GIIC)));
            }
            case Metal metal -> {
                if (!metal.properties().has(Property.TENSILE_YIELD)) {
                    mechanisms.add(unknown(
                            i, Mechanism.Kind.MATRIX, material.name(), List.of("tensile yield of " + metal.name())));
                } else {
                    mechanisms.add(new Mechanism(
                            i,
                            Mechanism.Kind.YIELD,
                            material.name(),
                            Double.POSITIVE_INFINITY,
                            Double.POSITIVE_INFINITY,
                            false,
                            List.of()));
                }
            }
            case Core each -> {
                if (i == core) {
                    double energy = Energies.of(each, Property.GIIC, energies.core());
                    List<String> needs = new ArrayList<>(needs(each, energy, Property.GIIC, energy, Property.GIIC));
                    for (Property p : List.of(Property.S13, Property.S23)) {
                        if (!each.properties().has(p)) {
                            needs.add(word(p, each));
                        }
                    }
                    boolean checked = each.properties().has(Property.S13)
                            && each.properties().has(Property.S23);
                    mechanisms.add(new Mechanism(
                            i,
                            checked ? Mechanism.Kind.CORE_SHEAR : Mechanism.Kind.MATRIX,
                            "core (" + each.name() + ")",
                            energy,
                            energy,
                            false,
                            needs));
                }
            }
            default -> {}
        }
    }

    private static Mechanism unknown(int i, Mechanism.Kind kind, String label, List<String> needs) {
        return new Mechanism(i, kind, label, Double.NaN, Double.NaN, false, needs);
    }

    private static List<String> needs(Material of, double one, Property first, double two, Property second) {
        List<String> needs = new ArrayList<>();
        if (Double.isNaN(one)) {
            needs.add(word(first, of));
        }
        if (Double.isNaN(two) && first != second) {
            needs.add(word(second, of));
        }
        return needs;
    }

    private static String word(Property property, Material of) {
        return property.key() + " of " + of.name() + " (" + property.meaning() + ")";
    }

    /** Whether fibres of another layer cross this one. */
    private boolean crossed(int i) {
        for (int k = 0; k < laminate.layers().size(); k++) {
            Layer other = laminate.layers().get(k);
            if (k != i && other.material() instanceof Ply ply) {
                double apart = Math.abs(Math.IEEEremainder(
                        other.angle() - laminate.layers().get(i).angle(), Math.PI));
                if (ply.form() == Ply.Form.CLOTH || apart > CROSSED) {
                    return true;
                }
            }
        }
        return laminate.layers().get(i).role() == LayerRole.SHEET;
    }
}
