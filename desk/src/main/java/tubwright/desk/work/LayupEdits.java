// SPDX-License-Identifier: Apache-2.0
package tubwright.desk.work;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.TreeSet;
import tubwright.engine.laminate.Laminate;
import tubwright.engine.laminate.Layer;
import tubwright.engine.laminate.LayerRole;
import tubwright.engine.laminate.LayupException;
import tubwright.engine.laminate.OrientationCode;
import tubwright.engine.material.Ply;
import tubwright.engine.quantity.Dimension;
import tubwright.engine.quantity.NearestName;
import tubwright.engine.quantity.Quantity;
import tubwright.engine.quantity.QuantityException;
import tubwright.engine.trim.Layup;

/** Changes of a layup as typed: {@code "flank=[45c/0/core/0/45c]"}, {@code "flank=3,5"}, {@code "floor=15 mm"}. */
final class LayupEdits {
    private final List<String> joints;
    private final List<String> words = new ArrayList<>();
    private Layup layup;

    /**
     * @param layup to begin with
     * @param joints names of the tub's joints
     */
    LayupEdits(Layup layup, List<String> joints) {
        this.layup = layup;
        this.joints = joints;
    }

    /** The layup with all changes made. */
    Layup layup() {
        return layup;
    }

    /** The changes in words. */
    List<String> words() {
        return words;
    }

    private record Edit(String name, String value) {}

    /** {@code NAME=[stack]}: another stack of the same cloth, tape, core and film. */
    void set(String text) {
        Edit edit = edit(text, "--set", "flank=[45c/0c/core/0c/45c]");
        List<Layer> was = layers(edit.name, "--set");
        OrientationCode code;
        try {
            code = OrientationCode.parse(edit.value);
        } catch (LayupException e) {
            throw new UserMistake("--set " + edit.name + ": " + e.getMessage());
        }
        List<Layer> layers = new ArrayList<>();
        for (OrientationCode.Item item : code.items()) {
            switch (item) {
                case OrientationCode.PlyItem(double degrees, String tag) ->
                    layers.add(ply(edit.name, was, degrees, tag));
                case OrientationCode.WordItem(String word, double degrees) ->
                    layers.addAll(word(edit.name, was, word, degrees));
            }
        }
        put(edit.name, layers);
        words.add(edit.name + ": " + code);
    }

    /** {@code NAME=3,5}: layers, by the numbers of the ledger, are left out. */
    void drop(String text) {
        Edit edit = edit(text, "--drop", "flank=3,5");
        List<Layer> layers = new ArrayList<>(layers(edit.name, "--drop"));
        List<String> told = new ArrayList<>();
        Set<Integer> places = new TreeSet<>(Comparator.reverseOrder());
        for (String number : edit.value.split("[,;\\s]+")) {
            if (!number.matches("\\d{1,4}")
                    || Integer.parseInt(number) < 1
                    || Integer.parseInt(number) > layers.size()) {
                throw new UserMistake(
                        "--drop " + edit.name + ": \"" + number + "\" is no layer of it; it has layers 1 to "
                                + layers.size() + ", counted from the outer face");
            }
            places.add(Integer.parseInt(number));
        }
        for (int place : places) {
            Layer layer = layers.get(place - 1);
            if (layer.role() != LayerRole.PLY) {
                throw new UserMistake("--drop " + edit.name + ": layer " + place + " is "
                        + layer.material().name() + ", not a ply"
                        + "\n    --core makes a core thinner, --set writes the whole stack anew");
            }
            told.addFirst(place + " (" + Math.round(layer.degrees()) + "° "
                    + layer.material().name() + ")");
            layers.remove(place - 1);
        }
        put(edit.name, layers);
        words.add(edit.name + " without ply " + String.join(", ", told));
    }

    /** {@code NAME=15 mm}: another core thickness. */
    void core(String text) {
        Edit edit = edit(text, "--core", "floor=15 mm");
        List<Layer> layers = new ArrayList<>(layers(edit.name, "--core"));
        double thickness;
        try {
            thickness = Quantity.parse(edit.value, Dimension.LENGTH).si();
        } catch (QuantityException e) {
            throw new UserMistake("--core " + edit.name + ": " + e.getMessage());
        }
        if (!(thickness > 0)) {
            throw new UserMistake("--core " + edit.name + ": a core is thicker than nothing");
        }
        boolean found = false;
        for (int i = 0; i < layers.size(); i++) {
            Layer layer = layers.get(i);
            if (layer.role() == LayerRole.CORE) {
                found = true;
                layers.set(i, new Layer(layer.material(), thickness, layer.angle(), layer.role()));
            }
        }
        if (!found) {
            throw new UserMistake("--core " + edit.name + ": it has no core");
        }
        put(edit.name, layers);
        words.add(edit.name + ": core " + edit.value);
    }

    /** {@code NAME=50 %}: a joint of another stiffness. */
    void joint(String text) {
        Edit edit = edit(text, "--joint", "waist=50 %");
        known(edit.name, joints, "joint", "--joint");
        String number = edit.value.replace("%", "").strip();
        double factor;
        try {
            factor = Double.parseDouble(number) / (edit.value.contains("%") ? 100 : 1);
        } catch (NumberFormatException e) {
            throw new UserMistake("--joint " + edit.name + ": \"" + edit.value + "\" is not a share such as 50 %");
        }
        if (!(factor > 0) || !Double.isFinite(factor)) {
            throw new UserMistake("--joint " + edit.name + ": a joint keeps some of its stiffness");
        }
        layup = layup.withJoint(edit.name, factor);
        words.add("joint " + edit.name + " at " + edit.value + " of its stiffness");
    }

    private Layer ply(String name, List<Layer> was, double degrees, String tag) {
        boolean cloth = tag.equals("c");
        if (!cloth && !tag.isEmpty() && !tag.equals("u")) {
            throw new UserMistake(
                    "--set " + name + ": the tag \"" + tag + "\" is not known here\n    c marks cloth, no tag"
                            + " or u tape, as the ledger and the report write it");
        }
        Optional<Layer> model = was.stream()
                .filter(l -> isPly(l, cloth))
                .findFirst()
                .or(() -> layup.zones().values().stream()
                        .flatMap(l -> l.layers().stream())
                        .filter(l -> isPly(l, cloth))
                        .min(Comparator.comparing(l -> l.material().name())));
        Layer like = model.orElseThrow(
                () -> new UserMistake("--set " + name + ": the tub has no " + (cloth ? "cloth" : "tape")));
        return new Layer(like.material(), like.thickness(), Math.toRadians(degrees), like.role());
    }

    private static boolean isPly(Layer layer, boolean cloth) {
        return layer.material() instanceof Ply ply && (ply.form() == Ply.Form.CLOTH) == cloth;
    }

    /** A core comes with the films that lie on it as designed. */
    private static List<Layer> word(String name, List<Layer> was, String word, double degrees) {
        LayerRole role = switch (word) {
            case "core" -> LayerRole.CORE;
            case "film" -> LayerRole.FILM;
            case "sheet" -> LayerRole.SHEET;
            default ->
                throw new UserMistake("--set " + name + ": the word \"" + word + "\" is not known here;"
                        + " core, film and sheet are");
        };
        for (int i = 0; i < was.size(); i++) {
            if (was.get(i).role() == role) {
                Layer like = was.get(i);
                Layer layer = new Layer(like.material(), like.thickness(), Math.toRadians(degrees), role);
                List<Layer> result = new ArrayList<>(List.of(layer));
                if (role == LayerRole.CORE && i > 0 && was.get(i - 1).role() == LayerRole.FILM) {
                    result.addFirst(was.get(i - 1));
                }
                if (role == LayerRole.CORE
                        && i + 1 < was.size()
                        && was.get(i + 1).role() == LayerRole.FILM) {
                    result.addLast(was.get(i + 1));
                }
                return result;
            }
        }
        throw new UserMistake("--set " + name + ": as designed it has no " + word + " to take over");
    }

    private List<Layer> layers(String name, String option) {
        TreeSet<String> names = new TreeSet<>(layup.zones().keySet());
        names.addAll(layup.patchesByName().keySet());
        known(name, List.copyOf(names), "zone or patch", option);
        return layup.zones().containsKey(name)
                ? layup.zones().get(name).layers()
                : layup.patchesByName().get(name);
    }

    private void put(String name, List<Layer> layers) {
        if (layup.zones().containsKey(name)) {
            if (layers.stream().noneMatch(l -> l.role() == LayerRole.PLY || l.role() == LayerRole.SHEET)) {
                throw new UserMistake("zone \"" + name + "\" would be left without a ply");
            }
            layup = layup.withZone(
                    name, new Laminate(layers, layup.zones().get(name).reference()));
        } else {
            layup = layup.withPatch(name, layers);
        }
    }

    private static void known(String name, List<String> names, String what, String option) {
        if (!names.contains(name)) {
            throw new UserMistake(option + ": there is no " + what + " \"" + name + "\""
                    + NearestName.of(name, names)
                            .map(n -> "; did you mean \"" + n + "\"?")
                            .orElse("")
                    + "\n    it has: " + String.join(", ", names));
        }
    }

    private static Edit edit(String text, String option, String example) {
        int equals = text.indexOf('=');
        if (equals < 1 || equals == text.length() - 1) {
            throw new UserMistake(option + " \"" + text + "\": write it like \"" + example + "\"");
        }
        return new Edit(
                text.substring(0, equals).strip(), text.substring(equals + 1).strip());
    }
}
