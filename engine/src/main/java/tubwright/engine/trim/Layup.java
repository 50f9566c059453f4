// SPDX-License-Identifier: Apache-2.0
package tubwright.engine.trim;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import java.util.TreeSet;
import tubwright.engine.laminate.Laminate;
import tubwright.engine.laminate.Layer;
import tubwright.engine.structure.Tub;

/**
 * All that a designer may choose once the shape is fixed.
 *
 * @param zones laminate of each zone
 * @param patches plies of each patch, from the outside inward; a patch may have none
 * @param joints stiffness of joints as a multiple of the nominal, for those that differ from 1
 */
public record Layup(Map<String, Laminate> zones, Map<String, List<Layer>> patches, Map<String, Double> joints) {
    public Layup {
        zones = Map.copyOf(zones);
        patches = Map.copyOf(patches);
        joints = Map.copyOf(joints);
        joints.forEach((name, factor) -> {
            if (!(factor > 0) || !Double.isFinite(factor)) {
                throw new IllegalArgumentException(
                        "joint '" + name + "' cannot have " + factor + " times its stiffness");
            }
        });
    }

    /** The layup of a tub. */
    public static Layup of(Tub tub) {
        return new Layup(tub.laminates(), tub.patchPlies(), Map.of());
    }

    /** The same with another laminate in one zone. */
    public Layup withZone(String zone, Laminate laminate) {
        return new Layup(with(zones, zone, laminate), patches, joints);
    }

    /** The same with other plies in one patch, wherever it is laid. */
    public Layup withPatch(String patch, List<Layer> plies) {
        Map<String, List<Layer>> copy = new LinkedHashMap<>(patches);
        copy.replaceAll((laid, was) -> Owner.Patch.of(laid).name().equals(patch) ? List.copyOf(plies) : was);
        return new Layup(zones, copy, joints);
    }

    /** The patches by name, each once however often it is laid. */
    public Map<String, List<Layer>> patchesByName() {
        Map<String, List<Layer>> result = new TreeMap<>();
        patches.forEach((laid, plies) -> result.put(Owner.Patch.of(laid).name(), plies));
        return result;
    }

    /** The same with another stiffness of one joint. */
    public Layup withJoint(String joint, double factor) {
        return new Layup(zones, patches, with(joints, joint, factor));
    }

    /** The laminate of a block: its zone's, with the patches' plies laid on the inner face in their order. */
    public Laminate laminate(Blocks.Block block) {
        Laminate zone = zones.get(block.zone());
        List<Layer> layers = new ArrayList<>(zone.layers());
        block.patches().forEach(p -> layers.addAll(patches.getOrDefault(p, List.of())));
        return new Laminate(layers, zone.reference());
    }

    /** Mass of all laminates, kg. */
    public double mass(Blocks blocks) {
        return blocks.all().stream()
                .mapToDouble(b -> b.area() * laminate(b).arealMass())
                .sum();
    }

    /** What differs between two layups, zones first. */
    public List<Owner> differences(Layup other) {
        List<Owner> result = new ArrayList<>();
        for (String name : new TreeSet<>(zones.keySet())) {
            if (!zones.get(name).equals(other.zones.get(name))) {
                result.add(new Owner.Zone(name));
            }
        }
        Map<String, List<Layer>> others = other.patchesByName();
        patchesByName().forEach((name, plies) -> {
            if (!plies.equals(others.get(name))) {
                result.add(new Owner.Patch(name));
            }
        });
        TreeSet<String> names = new TreeSet<>(joints.keySet());
        names.addAll(other.joints.keySet());
        for (String name : names) {
            if (!joints.getOrDefault(name, 1.0).equals(other.joints.getOrDefault(name, 1.0))) {
                result.add(new Owner.Joint(name));
            }
        }
        return result;
    }

    private static <V> Map<String, V> with(Map<String, V> map, String key, V value) {
        Map<String, V> copy = new LinkedHashMap<>(map);
        copy.put(key, value);
        return copy;
    }
}
