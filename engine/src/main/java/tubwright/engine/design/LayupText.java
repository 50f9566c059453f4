// SPDX-License-Identifier: Apache-2.0
package tubwright.engine.design;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;
import tubwright.engine.design.text.DesignError;
import tubwright.engine.design.text.Place;
import tubwright.engine.laminate.Laminate;
import tubwright.engine.laminate.Layer;
import tubwright.engine.laminate.LayerRole;
import tubwright.engine.laminate.OrientationCode;
import tubwright.engine.trim.Layup;

/** Writes the stacks of a layup into the text of the design it was made from. */
final class LayupText {
    private static final String LAMINATES = "laminates";

    private final DesignFile from;
    private final String variant;

    LayupText(DesignFile from, String variant) {
        this.from = from;
        this.variant = variant;
    }

    DesignFile write(Layup layup) {
        layup.joints().forEach((joint, factor) -> {
            if (factor != 1) {
                throw refused(
                        "joint \"" + joint + "\" has " + factor + " times its stiffness",
                        "a joint's stiffness follows from how it is made: change its overlap or adhesive by hand");
            }
        });
        Layup before = layup(from);
        DesignFile edited = from;
        for (Map.Entry<String, Map<List<Layer>, List<String>>> each :
                byLaminate(before, layup).entrySet()) {
            edited = laminate(edited, each.getKey(), each.getValue(), before);
        }
        Map<String, List<Layer>> patches = layup.patchesByName();
        for (Map.Entry<String, List<Layer>> each : before.patchesByName().entrySet()) {
            List<Layer> plies = patches.getOrDefault(each.getKey(), each.getValue());
            if (!same(plies, each.getValue())) {
                edited = patch(edited, each.getKey(), plies);
            }
        }
        compare(layup(edited), layup);
        return edited;
    }

    private Layup layup(DesignFile file) {
        return Layup.of(file.design()
                .variant(variant)
                .orElseThrow(() -> refused("there is no variant \"" + variant + "\"", "name one that the design has"))
                .tub());
    }

    /** Zones by the laminate they now have and the layers they are to have. */
    private Map<String, Map<List<Layer>, List<String>>> byLaminate(Layup before, Layup after) {
        Map<String, Map<List<Layer>, List<String>>> result = new TreeMap<>();
        for (String zone : new TreeMap<>(before.zones()).keySet()) {
            Laminate wanted = after.zones().get(zone);
            if (wanted == null) {
                throw refused("the layup has no zone \"" + zone + "\"", "it was made from another design");
            }
            Map<List<Layer>, List<String>> groups =
                    result.computeIfAbsent(laminateOf(zone), _ -> new LinkedHashMap<>());
            // Zones alike share a group even where their layers are not the same objects.
            List<Layer> key = groups.keySet().stream()
                    .filter(l -> same(l, wanted.layers()))
                    .findFirst()
                    .orElse(wanted.layers());
            groups.computeIfAbsent(key, _ -> new ArrayList<>()).add(zone);
        }
        return result;
    }

    private String laminateOf(String zone) {
        return from.value(variant, "zones", zone, "laminate").orElse(zone);
    }

    private boolean hasEntry(String zone) {
        return from.value(variant, "zones", zone, "laminate").isPresent();
    }

    private DesignFile laminate(DesignFile file, String name, Map<List<Layer>, List<String>> groups, Layup before) {
        List<Layer> now =
                before.zones().get(groups.values().iterator().next().getFirst()).layers();
        if (groups.size() == 1 && same(groups.keySet().iterator().next(), now)) {
            return file;
        }
        boolean elsewhere = from.values(variant, "joints").contains(name);
        // The group that keeps the laminate's name: zones that have it by their own name, else what stays as it is.
        Optional<List<Layer>> keeps = groups.entrySet().stream()
                .filter(g -> g.getValue().stream().anyMatch(z -> !hasEntry(z)))
                .map(Map.Entry::getKey)
                .findFirst()
                .or(() -> groups.keySet().stream().filter(l -> same(l, now)).findFirst())
                .or(() -> elsewhere
                        ? Optional.empty()
                        : Optional.of(groups.keySet().iterator().next()));
        DesignFile edited = file;
        for (Map.Entry<List<Layer>, List<String>> group : groups.entrySet()) {
            if (keeps.isPresent() && keeps.get() == group.getKey()) {
                continue;
            }
            String fresh = fresh(edited, name + " of " + group.getValue().getFirst());
            edited = stack(edited.copyLaminate(variant, name, fresh), fresh, group.getKey(), now);
            for (String zone : group.getValue()) {
                edited = edited.set(variant, List.of("zones", zone, "laminate"), fresh);
            }
        }
        if (keeps.isPresent() && !same(keeps.get(), now)) {
            if (elsewhere) {
                throw refused(
                        "laminate \"" + name + "\" lies on zone \""
                                + groups.get(keeps.get()).getFirst() + "\" and in a joint as well",
                        "give the joint a laminate of its own");
            }
            edited = stack(edited, name, keeps.get(), now);
        }
        return edited;
    }

    private String fresh(DesignFile file, String wanted) {
        List<String> taken = file.keys(variant, LAMINATES);
        String name = wanted;
        for (int n = 2; taken.contains(name); n++) {
            name = wanted + " " + n;
        }
        return name;
    }

    /** Writes layers into a laminate of the text. */
    private DesignFile stack(DesignFile file, String name, List<Layer> layers, List<Layer> now) {
        List<Layer> cores = cores(layers);
        if (layers.size() == 1 && layers.getFirst().role() == LayerRole.SHEET) {
            return file.set(
                    variant,
                    List.of(LAMINATES, name, "thickness"),
                    millimetres(layers.getFirst().thickness()));
        }
        if (cores.isEmpty() && !cores(now).isEmpty()) {
            throw refused("\"" + name + "\" loses its core", "write the solid stack by hand");
        }
        if (cores.stream()
                        .map(l -> List.of(l.material().name(), l.thickness()))
                        .distinct()
                        .count()
                > 1) {
            throw refused("\"" + name + "\" would have cores of two kinds", "a laminate is written with one core");
        }
        DesignFile edited = file;
        if (!cores.isEmpty()) {
            Layer core = cores.getFirst();
            if (cores(now).isEmpty()
                    || Math.abs(core.thickness() - cores(now).getFirst().thickness()) > 1e-9) {
                edited = edited.withCoreThickness(variant, name, millimetres(core.thickness()));
            }
            if (cores(now).isEmpty()
                    || !core.material()
                            .name()
                            .equals(cores(now).getFirst().material().name())) {
                edited = edited.withCore(variant, name, core.material().name());
            }
        }
        boolean filmByItself = same(layers, filmed(layers));
        List<Layer> written = filmByItself
                ? layers.stream().filter(l -> l.role() != LayerRole.FILM).toList()
                : layers;
        List<OrientationCode.Item> items = new ArrayList<>();
        for (Layer layer : written) {
            switch (layer.role()) {
                case CORE -> items.add(new OrientationCode.WordItem("core", layer.degrees()));
                case FILM -> items.add(new OrientationCode.WordItem("film", layer.degrees()));
                default -> {
                    String tag = tag(edited, List.of(LAMINATES, name), layer);
                    edited = legend(edited, List.of(LAMINATES, name), tag, layer);
                    items.add(new OrientationCode.PlyItem(rounded(layer), tag.equals("ply") ? "" : tag));
                }
            }
        }
        if (same(layers, now)) {
            return edited;
        }
        return edited.withStack(variant, name, new OrientationCode(items).toString());
    }

    private DesignFile patch(DesignFile file, String patch, List<Layer> plies) {
        if (plies.isEmpty()) {
            throw refused("patch \"" + patch + "\" is left without plies", "take it out of the file by hand");
        }
        DesignFile edited = file;
        List<OrientationCode.Item> items = new ArrayList<>();
        for (Layer layer : plies) {
            String tag = tag(edited, List.of("patches", patch), layer);
            edited = legend(edited, List.of("patches", patch), tag, layer);
            items.add(new OrientationCode.PlyItem(rounded(layer), tag.equals("ply") ? "" : tag));
        }
        return edited.withPatch(variant, patch, new OrientationCode(items).toString());
    }

    /** The tag of a layer's material in the legend of a laminate or patch, else the first letter free in it. */
    private String tag(DesignFile file, List<String> owner, Layer layer) {
        List<String> taken = file.keys(variant, owner.getFirst(), owner.getLast(), "plies");
        for (String tag : taken) {
            if (file.value(variant, owner.getFirst(), owner.getLast(), "plies", tag)
                    .filter(layer.material().name()::equals)
                    .isPresent()) {
                return tag;
            }
        }
        for (char letter = 'a'; letter <= 'z'; letter++) {
            if (!taken.contains(String.valueOf(letter)) && letter != 's' && letter != 'c' && letter != 'u') {
                return String.valueOf(letter);
            }
        }
        throw refused(
                "\"" + owner.getLast() + "\" has no letter left for "
                        + layer.material().name(),
                "");
    }

    private DesignFile legend(DesignFile file, List<String> owner, String tag, Layer layer) {
        if (file.value(variant, owner.getFirst(), owner.getLast(), "plies", tag).isPresent()) {
            return file;
        }
        return file.set(
                variant,
                List.of(owner.getFirst(), owner.getLast(), "plies", tag),
                layer.material().name());
    }

    private static List<Layer> cores(List<Layer> layers) {
        return layers.stream().filter(l -> l.role() == LayerRole.CORE).toList();
    }

    /** The layers with their films where the reader lays them: one on each side of every core. */
    private static List<Layer> filmed(List<Layer> layers) {
        List<Layer> films =
                layers.stream().filter(l -> l.role() == LayerRole.FILM).toList();
        List<Layer> result = new ArrayList<>();
        for (Layer layer : layers) {
            if (layer.role() == LayerRole.CORE && !films.isEmpty()) {
                result.addAll(List.of(films.getFirst(), layer, films.getFirst()));
            } else if (layer.role() != LayerRole.FILM) {
                result.add(layer);
            }
        }
        return result;
    }

    private static double rounded(Layer layer) {
        return Math.round(1e6 * layer.degrees()) / 1e6;
    }

    private static String millimetres(double metres) {
        double value = Math.round(1e9 * metres) / 1e6;
        return (value == Math.rint(value) ? Long.toString(Math.round(value)) : Double.toString(value)) + " mm";
    }

    private static boolean same(List<Layer> a, List<Layer> b) {
        if (a.size() != b.size()) {
            return false;
        }
        for (int i = 0; i < a.size(); i++) {
            Layer x = a.get(i);
            Layer y = b.get(i);
            if (x.role() != y.role()
                    || !x.material().name().equals(y.material().name())
                    || Math.abs(x.thickness() - y.thickness()) > 1e-9
                    || Math.abs(x.degrees() - y.degrees()) > 1e-5) {
                return false;
            }
        }
        return true;
    }

    private void compare(Layup written, Layup wanted) {
        wanted.zones().forEach((zone, laminate) -> {
            if (!same(written.zones().get(zone).layers(), laminate.layers())) {
                throw refused("the stack of zone \"" + zone + "\" cannot be written in one line", "write it by hand");
            }
        });
        Map<String, List<Layer>> patches = written.patchesByName();
        wanted.patchesByName().forEach((patch, plies) -> {
            if (!same(patches.get(patch), plies)) {
                throw refused("the plies of patch \"" + patch + "\" cannot be written in one line", "write it by hand");
            }
        });
    }

    private DesignError refused(String read, String help) {
        return new DesignError(Place.of(from.file().toString()), read, help);
    }
}
