// SPDX-License-Identifier: Apache-2.0
package tubwright.engine.laminate;

import java.util.Arrays;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import tubwright.engine.material.Material;
import tubwright.engine.material.Ply;

/**
 * A stack of layers.
 *
 * @param layers from the outer (tool) surface inward, at least one
 * @param reference the surface z = 0
 */
public record Laminate(List<Layer> layers, Reference reference) {
    public Laminate {
        layers = List.copyOf(layers);
        if (layers.isEmpty()) {
            throw new IllegalArgumentException("a laminate needs at least one layer");
        }
    }

    /** Layers from the outer surface inward; z = 0 at the outer surface. */
    public static Laminate of(Layer... layers) {
        return new Laminate(List.of(layers), Reference.OUTER);
    }

    /** The same stack about another surface. */
    public Laminate about(Reference other) {
        return new Laminate(layers, other);
    }

    /** The laminate of the other side of the car: every angle negated. */
    public Laminate mirrored() {
        return new Laminate(layers.stream().map(Layer::mirrored).toList(), reference);
    }

    /** Total thickness, m. */
    public double thickness() {
        return layers.stream().mapToDouble(Layer::thickness).sum();
    }

    /** Mass per area, kg/m². */
    public double arealMass() {
        return layers.stream().mapToDouble(Layer::arealMass).sum();
    }

    /** z of the surfaces between layers, from the outer surface inward (falling): one more than there are layers, m. */
    public double[] surfaces() {
        double[] z = new double[layers.size() + 1];
        z[0] = reference.zOfOuterSurface(thickness());
        for (int i = 0; i < layers.size(); i++) {
            z[i + 1] = z[i] - layers.get(i).thickness();
        }
        return z;
    }

    /** Shell stiffness about the reference surface; computed anew at each call, keep it. */
    public ShellStiffness stiffness() {
        return ShellStiffness.of(this);
    }

    /** True if every layer has its like at the same depth from the other side, so that B about the middle is zero. */
    public boolean isSymmetric() {
        int last = layers.size() - 1;
        for (int i = 0; i < layers.size() / 2; i++) {
            Layer outer = layers.get(i);
            Layer inner = layers.get(last - i);
            if (!outer.material().equals(inner.material())
                    || Math.abs(outer.thickness() - inner.thickness()) > 1e-9 * outer.thickness()
                    || !sameStiffnessDirection(outer, inner)) {
                return false;
            }
        }
        return true;
    }

    private static boolean sameStiffnessDirection(Layer a, Layer b) {
        return isotropic(a) || Angles.same(a.degrees(), b.degrees());
    }

    private static boolean isotropic(Layer layer) {
        var e = layer.material().elasticity();
        return e.e1() == e.e2() && e.g13() == e.g23() && Math.abs(e.g12() * 2 * (1 + e.nu12()) / e.e1() - 1) < 1e-9;
    }

    /**
     * True if for each material and each angle off 0 and 90 there is as much at the opposite angle, so that stretch and
     * shear hardly couple. A cloth counts by halves along warp and weft, so a cloth at 45 balances itself.
     */
    public boolean isBalanced() {
        record Direction(Material material, double degrees) {}
        Map<Direction, Double> surplus = new HashMap<>();
        for (Layer layer : layers) {
            if (layer.material() instanceof Ply ply) {
                boolean cloth = ply.form() == Ply.Form.CLOTH;
                double thickness = layer.thickness() / (cloth ? 2 : 1);
                for (int way = 0; way < (cloth ? 2 : 1); way++) {
                    double degrees = Angles.normalisedDegrees(layer.degrees() + 90 * way);
                    if (degrees != 0 && degrees != 90) {
                        double rounded = Math.rint(Math.abs(degrees) / Angles.TOLERANCE) * Angles.TOLERANCE;
                        surplus.merge(new Direction(ply, rounded), Math.signum(degrees) * thickness, Double::sum);
                    }
                }
            }
        }
        double scale = 1e-9 * thickness();
        return surplus.values().stream().allMatch(value -> Math.abs(value) < scale);
    }

    /** The layers with this role, in order. */
    public List<Layer> layersWith(LayerRole... roles) {
        return layers.stream()
                .filter(layer -> Arrays.asList(roles).contains(layer.role()))
                .toList();
    }
}
