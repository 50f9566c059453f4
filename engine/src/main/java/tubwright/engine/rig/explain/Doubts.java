// SPDX-License-Identifier: Apache-2.0
package tubwright.engine.rig.explain;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeSet;
import tubwright.engine.laminate.Laminate;
import tubwright.engine.laminate.Layer;
import tubwright.engine.material.Adhesive;
import tubwright.engine.material.Core;
import tubwright.engine.material.Elasticity;
import tubwright.engine.material.Material;
import tubwright.engine.material.Metal;
import tubwright.engine.material.Ply;
import tubwright.engine.structure.Case;
import tubwright.engine.structure.Hardpoint;
import tubwright.engine.structure.Joint;
import tubwright.engine.structure.Tub;

/** The doubts about a tub, and the tub as it would be if they held. */
public final class Doubts {
    /** Moduli of laid and cured carbon from tub to tub: common practice, no source. */
    public static final double LAMINATE = 0.05;

    /** Rolled sheet: common practice, no source. */
    public static final double SHEET = 0.02;

    /** One zone against the others of the same tub: common practice, no source. */
    public static final double ZONE = 0.05;

    /** Shear modulus of honeycomb and foam from sheet to sheet: common practice, no source. */
    public static final double CORE = 0.12;

    /** Joints and mounts, whose computed stiffness may well be half or twice the true one: common practice, no source. */
    public static final double JOINT = Math.log(2);

    private Doubts() {}

    /** What may differ in this tub under this case, in the order laminates, cores, zones, joints, hardpoints. */
    public static List<Doubt> of(Tub tub, Case.Torsion loading) {
        Set<String> plies = new TreeSet<>();
        Set<String> sheets = new TreeSet<>();
        Set<String> cores = new TreeSet<>();
        List<Layer> layers = new ArrayList<>();
        tub.layout().zones().forEach(zone -> {
            Laminate laminate = tub.laminates().get(zone.name());
            if (laminate != null) {
                layers.addAll(laminate.layers());
            }
        });
        tub.patchPlies().values().forEach(layers::addAll);
        for (Layer layer : layers) {
            switch (layer.material()) {
                case Ply ply -> plies.add(ply.name());
                case Metal metal -> sheets.add(metal.name());
                case Core core -> cores.add(core.name());
                case Adhesive _ -> {
                    // Films carry next to nothing of the torque.
                }
            }
        }
        List<Doubt> doubts = new ArrayList<>();
        plies.forEach(name -> doubts.add(new Doubt(Doubt.Kind.LAMINATE, name, LAMINATE)));
        sheets.forEach(name -> doubts.add(new Doubt(Doubt.Kind.LAMINATE, name, SHEET)));
        cores.forEach(name -> doubts.add(new Doubt(Doubt.Kind.CORE_SHEAR, name, CORE)));
        tub.layout().zones().stream()
                .filter(zone -> tub.laminates().containsKey(zone.name()))
                .forEach(zone -> doubts.add(new Doubt(Doubt.Kind.ZONE, zone.name(), ZONE)));
        Set<String> lines = new LinkedHashSet<>();
        tub.joints().forEach(joint -> lines.add(joint.line()));
        lines.forEach(line -> doubts.add(new Doubt(Doubt.Kind.JOINT, line, JOINT)));
        if (!loading.hold().isEmpty()) {
            doubts.add(Doubt.of(Doubt.Kind.HELD_HARDPOINTS, JOINT));
        }
        return List.copyOf(doubts);
    }

    /**
     * The tub as built if the doubts held.
     *
     * @param tub as designed
     * @param loading whose hardpoints are held
     * @param doubts what differs
     * @param logarithms θ of each doubt, in their order; those of the test itself change nothing here
     */
    public static Tub applied(Tub tub, Case.Torsion loading, List<Doubt> doubts, double[] logarithms) {
        Map<String, Double> moduli = new HashMap<>();
        Map<String, Double> shear = new HashMap<>();
        Map<String, Double> zones = new HashMap<>();
        Map<String, Double> lines = new HashMap<>();
        double held = 1;
        for (int i = 0; i < logarithms.length; i++) {
            double factor = Math.exp(logarithms[i]);
            String of = doubts.get(i).of();
            switch (doubts.get(i).kind()) {
                case LAMINATE -> moduli.put(of, factor);
                case CORE_SHEAR -> shear.put(of, factor);
                case ZONE -> zones.put(of, factor);
                case JOINT -> lines.put(of, factor);
                case HELD_HARDPOINTS -> held = factor;
                case TORQUE_SCALE, RIG_GIVE -> {
                    // Part of the test, not of the tub.
                }
            }
        }
        Scaling scaling = new Scaling(moduli, shear, new HashMap<>());
        Map<String, Laminate> laminates = new HashMap<>();
        tub.laminates()
                .forEach((name, laminate) -> laminates.put(
                        name,
                        new Laminate(
                                scaling.of(laminate.layers(), zones.getOrDefault(name, 1.0)), laminate.reference())));
        Map<String, List<Layer>> patches = new HashMap<>();
        tub.patchPlies().forEach((name, layers) -> patches.put(name, scaling.of(layers, 1)));
        List<Joint> joints = tub.joints().stream()
                .map(joint -> joint.stiffer(lines.getOrDefault(joint.line(), 1.0)))
                .toList();
        List<String> supports =
                loading.hold().stream().map(Case.Support::hardpoint).toList();
        double grip = held;
        List<Hardpoint> hardpoints = tub.hardpoints().stream()
                .map(h -> supports.contains(h.name()) ? h.stiffer(grip) : h)
                .toList();
        return tub.with(laminates, patches, joints, hardpoints);
    }

    private record Made(Material material, double zone) {}

    /** Materials with their factors on, each made once so that equal layers stay equal. */
    private record Scaling(Map<String, Double> moduli, Map<String, Double> shear, Map<Made, Material> made) {
        List<Layer> of(List<Layer> layers, double zone) {
            return layers.stream()
                    .map(layer -> new Layer(
                            made.computeIfAbsent(new Made(layer.material(), zone), m -> scaled(m.material, zone)),
                            layer.thickness(),
                            layer.angle(),
                            layer.role()))
                    .toList();
        }

        private Material scaled(Material material, double zone) {
            double factor = zone * moduli.getOrDefault(material.name(), 1.0);
            return switch (material) {
                case Ply ply ->
                    new Ply(
                            ply.name(),
                            ply.description(),
                            ply.form(),
                            ply.properties(),
                            scaled(ply.elasticity(), factor, factor));
                case Metal metal ->
                    new Metal(
                            metal.name(),
                            metal.description(),
                            metal.properties(),
                            scaled(metal.elasticity(), factor, factor));
                case Core core ->
                    new Core(
                            core.name(),
                            core.description(),
                            core.form(),
                            core.properties(),
                            scaled(core.elasticity(), 1, zone * shear.getOrDefault(core.name(), 1.0)));
                case Adhesive _ -> material;
            };
        }

        private static Elasticity scaled(Elasticity e, double plane, double through) {
            return new Elasticity(
                    plane * e.e1(), plane * e.e2(), e.nu12(), plane * e.g12(), through * e.g13(), through * e.g23());
        }
    }
}
