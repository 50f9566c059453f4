// SPDX-License-Identifier: Apache-2.0
package tubwright.desk.page;

import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.SortedMap;
import java.util.SortedSet;
import java.util.TreeMap;
import java.util.TreeSet;
import tubwright.desk.text.Figures;
import tubwright.desk.work.UserMistake;
import tubwright.engine.laminate.Laminate;
import tubwright.engine.laminate.Layer;
import tubwright.engine.laminate.LayerRole;
import tubwright.engine.laminate.LayupAdvice;
import tubwright.engine.laminate.LayupPractice;
import tubwright.engine.material.Material;
import tubwright.engine.trim.Layup;
import tubwright.engine.trim.Owner;

/**
 * What a draft changes, layer by layer against the layup as designed, so that a layer keeps its number whatever becomes
 * of those before it.
 *
 * @param made by layer
 */
record Edits(SortedMap<Spot, Made> made) {
    /** Nothing changed. */
    static final Edits NONE = new Edits(new TreeMap<>());

    /** Most layers made of one. */
    static final int MOST = 4;

    Edits {
        made = Collections.unmodifiableSortedMap(new TreeMap<>(made));
    }

    /**
     * A layer as designed.
     *
     * @param owner zone or patch
     * @param place from 1 at the outer surface
     */
    record Spot(String owner, int place) implements Comparable<Spot> {
        @Override
        public int compareTo(Spot other) {
            int byOwner = owner.compareTo(other.owner);
            return byOwner != 0 ? byOwner : Integer.compare(place, other.place);
        }
    }

    /**
     * What becomes of it.
     *
     * @param count how many are laid
     * @param layer each of them
     */
    record Made(int count, Layer layer) {}

    /**
     * These edits and one more.
     *
     * @throws UserMistake where it cannot be made
     */
    Edits with(Layup nominal, DraftView.ChangeRequest change) {
        List<Layer> layers = layers(nominal, change.owner());
        if (change.place() < 1 || change.place() > layers.size()) {
            throw new UserMistake(change.owner() + " has layers 1 to " + layers.size() + ", not " + change.place());
        }
        Layer designed = layers.get(change.place() - 1);
        Spot spot = new Spot(change.owner(), change.place());
        Made was = made.getOrDefault(spot, new Made(1, designed));
        int count = change.count().orElse(was.count);
        if (count < 0 || count > MOST) {
            throw new UserMistake("a layer can be laid 0 to " + MOST + " times, not " + count);
        }
        if (count > 1 && designed.role() == LayerRole.CORE) {
            throw new UserMistake("a core is made thicker, not laid twice");
        }
        double degrees = change.degrees().orElse(Math.toDegrees(was.layer.angle()));
        double thickness = change.thickness().orElse(was.layer.thickness());
        if (!(Math.abs(degrees) <= 90)) {
            throw new UserMistake("a direction lies between −90 and 90 degrees");
        }
        if (thickness != was.layer.thickness() && designed.role() != LayerRole.CORE) {
            throw new UserMistake("a ply is as thick as its material; double it or leave it out");
        }
        if (!(thickness > 0 && thickness <= 0.2)) {
            throw new UserMistake("a core is thicker than 0 and at most 200 mm thick");
        }
        if (change.material().isPresent() && designed.role() != LayerRole.CORE) {
            throw new UserMistake(
                    "only a core can be made of something else here; write another ply into the design file");
        }
        Material material = was.layer.material();
        if (change.material().isPresent()) {
            material = Cores.named(nominal, change.material().get());
        }
        boolean turned = Math.abs(degrees - designed.degrees()) > 1e-9;
        double angle = turned ? Math.toRadians(degrees) : designed.angle();
        Made is = new Made(count, new Layer(material, thickness, angle, designed.role()));
        TreeMap<Spot, Made> next = new TreeMap<>(made);
        if (is.equals(new Made(1, designed))) {
            next.remove(spot);
        } else {
            next.put(spot, is);
        }
        Edits result = new Edits(next);
        result.on(nominal);
        return result;
    }

    /**
     * The edits that make one layup into another, which is made of the same layers: left out, laid more than once beside
     * their like, cores of another thickness.
     *
     * @throws UserMistake where it is not
     */
    static Edits between(Layup nominal, Layup other) {
        TreeMap<Spot, Made> made = new TreeMap<>();
        for (Owner owner : nominal.differences(other)) {
            switch (owner) {
                case Owner.Joint joint ->
                    throw new UserMistake("this layup has another joint \"" + joint.name()
                            + "\", which cannot be tried here; write it with \"tubwright exchange --choose\"");
                case Owner.Zone _, Owner.Patch _ -> {
                    String name = owner.name();
                    made.putAll(new Alignment(name, layers(nominal, name), layers(other, name)).made());
                }
            }
        }
        return new Edits(made);
    }

    /**
     * The layup with all of it made.
     *
     * @throws UserMistake if a zone is left without a ply
     */
    Layup on(Layup nominal) {
        Layup layup = nominal;
        for (String owner : owners()) {
            List<Layer> layers = edited(nominal, owner);
            if (nominal.zones().containsKey(owner)) {
                if (layers.stream().noneMatch(l -> l.role() == LayerRole.PLY || l.role() == LayerRole.SHEET)) {
                    throw new UserMistake("\"" + owner + "\" would be left without a ply");
                }
                layup = layup.withZone(
                        owner, new Laminate(layers, nominal.zones().get(owner).reference()));
            } else {
                layup = layup.withPatch(owner, layers);
            }
        }
        return layup;
    }

    /** Zones and patches that are touched. */
    SortedSet<String> owners() {
        SortedSet<String> result = new TreeSet<>();
        made.keySet().forEach(s -> result.add(s.owner));
        return result;
    }

    /** The layers of a zone or patch as designed. */
    static List<Layer> layers(Layup nominal, String owner) {
        if (nominal.zones().containsKey(owner)) {
            return nominal.zones().get(owner).layers();
        }
        List<Layer> plies = nominal.patchesByName().get(owner);
        if (plies == null) {
            throw new UserMistake("there is no zone or patch \"" + owner + "\"");
        }
        return plies;
    }

    /** Those still possible on another layup: of its zones and patches, on layers of the same material. */
    Edits fitting(Layup before, Layup now) {
        TreeMap<Spot, Made> kept = new TreeMap<>();
        made.forEach((spot, is) -> {
            if (now.zones().containsKey(spot.owner) || now.patchesByName().containsKey(spot.owner)) {
                List<Layer> layers = layers(now, spot.owner);
                if (layers.equals(layers(before, spot.owner))) {
                    kept.put(spot, is);
                }
            }
        });
        return new Edits(kept);
    }

    /** In words, one line a layer. */
    List<String> words(Layup nominal) {
        List<String> words = new ArrayList<>();
        made.forEach((spot, is) -> {
            Layer designed = layers(nominal, spot.owner).get(spot.place - 1);
            boolean core = designed.role() == LayerRole.CORE;
            String name =
                    spot.owner + ", layer " + spot.place + " (" + (core ? "" : Math.round(designed.degrees()) + "° ")
                            + designed.material().name() + ")";
            List<String> told = new ArrayList<>();
            if (is.count == 0) {
                told.add("left out");
            } else if (is.count > 1) {
                told.add(is.count == 2 ? "doubled" : "laid " + is.count + " times");
            }
            if (is.count > 0 && is.layer.angle() != designed.angle()) {
                told.add("turned to " + Figures.significant(is.layer.degrees(), 3, "") + "°");
            }
            if (is.count > 0 && is.layer.thickness() != designed.thickness()) {
                told.add(Figures.significant(1e3 * is.layer.thickness(), 3, "") + " mm instead of "
                        + Figures.significant(1e3 * designed.thickness(), 3, ""));
            }
            if (is.count > 0 && !is.layer.material().equals(designed.material())) {
                told.add(is.layer.material().name() + " in its place");
            }
            words.add(name + ": " + String.join(", ", told));
        });
        return words;
    }

    /** Zones and patches that differ, for the page. */
    List<DraftView.EditedView> edited(Layup nominal) {
        return owners().stream()
                .map(owner -> {
                    List<Layer> designed = layers(nominal, owner);
                    List<DraftView.LayerState> states = new ArrayList<>();
                    for (int i = 0; i < designed.size(); i++) {
                        Made is = made.getOrDefault(new Spot(owner, i + 1), new Made(1, designed.get(i)));
                        states.add(new DraftView.LayerState(
                                is.count,
                                is.layer.degrees(),
                                is.layer.thickness(),
                                is.layer.material().name()));
                    }
                    return new DraftView.EditedView(owner, Stacks.of(edited(nominal, owner)), states);
                })
                .toList();
    }

    /** What layup practice says to the zones touched that it did not say to them as designed. */
    List<String> remarks(Layup nominal) {
        Layup now = on(nominal);
        List<String> remarks = new ArrayList<>();
        for (String owner : owners()) {
            if (nominal.zones().containsKey(owner)) {
                List<String> before = LayupPractice.check(nominal.zones().get(owner)).stream()
                        .map(LayupAdvice::rule)
                        .toList();
                LayupPractice.check(now.zones().get(owner)).stream()
                        .filter(a -> !before.contains(a.rule()))
                        .forEach(a -> remarks.add(owner + ": " + a.text() + " (" + a.source() + ")"));
            }
        }
        return remarks;
    }

    private List<Layer> edited(Layup nominal, String owner) {
        List<Layer> designed = layers(nominal, owner);
        List<Layer> result = new ArrayList<>();
        for (int i = 0; i < designed.size(); i++) {
            Made is = made.getOrDefault(new Spot(owner, i + 1), new Made(1, designed.get(i)));
            for (int k = 0; k < is.count; k++) {
                result.add(is.layer);
            }
        }
        return result;
    }
}
