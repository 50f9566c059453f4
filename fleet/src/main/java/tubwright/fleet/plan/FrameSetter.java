// SPDX-License-Identifier: Apache-2.0
package tubwright.fleet.plan;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.stream.Collectors;
import java.util.stream.IntStream;
import tubwright.engine.design.text.DesignError;
import tubwright.engine.design.text.Name;
import tubwright.engine.design.text.Tree;
import tubwright.engine.quantity.NearestName;
import tubwright.fleet.Blueprint;

/**
 * Changes frames of the shape by a length.
 *
 * @param frames by number
 * @param corners by number
 * @param all whether no corner was named
 * @param change what is done
 */
record FrameSetter(List<Integer> frames, List<Integer> corners, boolean all, VaryText.Change change) implements Setter {
    /**
     * @throws DesignError if there is no such frame or corner
     */
    static FrameSetter of(Blueprint blueprint, VaryText text) {
        VaryText.Change change = text.change()
                .orElseThrow(() -> new DesignError(
                        text.place(),
                        "\"frames\" without \"change\"",
                        "say what is done to them: wider, narrower, higher, rounder, further aft"));
        double from = text.frames().orElseThrow().from() - 1e-9;
        double to = text.frames().orElseThrow().to() + 1e-9;
        List<Integer> frames = new ArrayList<>();
        int count = blueprint
                .node(List.of("shape", "frames"))
                .filter(Tree.Listing.class::isInstance)
                .map(t -> ((Tree.Listing) t).items().size())
                .orElse(0);
        for (int f = 0; f < count; f++) {
            double station = figure(blueprint.value(path(f, "station")).text()).si();
            if (station >= from && station <= to) {
                frames.add(f);
            }
        }
        if (frames.isEmpty()) {
            throw new DesignError(
                    text.frames().get().place(),
                    "no frame stands at " + text.frames().get().text(),
                    "frames stand at "
                            + IntStream.range(0, count)
                                    .mapToObj(f ->
                                            blueprint.value(path(f, "station")).text())
                                    .collect(Collectors.joining(", ")));
        }
        int last = Figure.points(blueprint.value(path(0, "outline")).text()).size() - 1;
        List<Integer> corners = text.corners().isEmpty()
                ? IntStream.rangeClosed(0, last).boxed().toList()
                : text.corners().stream().map(c -> corner(blueprint, c, last)).toList();
        return new FrameSetter(frames, corners, text.corners().isEmpty(), change);
    }

    private static int corner(Blueprint blueprint, Name name, int last) {
        List<String> strips = blueprint
                .node(List.of("shape", "strips"))
                .filter(Tree.Listing.class::isInstance)
                .map(t -> ((Tree.Listing) t)
                        .items().stream().map(i -> ((Tree.Scalar) i).text()).toList())
                .orElse(List.of());
        List<String> names = new ArrayList<>(List.of("bottom"));
        for (int s = 1; s < strips.size(); s++) {
            names.add(strips.get(s - 1) + " / " + strips.get(s));
        }
        names.add("top");
        int at = names.indexOf(name.text());
        if (at < 0 || at > last) {
            Optional<String> near = NearestName.of(name.text(), names);
            throw new DesignError(
                    name.place(),
                    "there is no corner \"" + name.text() + "\"",
                    near.map(n -> "did you mean \"" + n + "\"?").orElse("corners: " + String.join(", ", names)));
        }
        return at;
    }

    static List<String> path(int frame, String key) {
        return List.of("shape", "frames", Integer.toString(frame), key);
    }

    private static Figure figure(String text) {
        return Figure.of(text).orElseThrow(() -> new IllegalArgumentException("\"" + text + "\" is no length"));
    }

    @Override
    public void set(Edited design, String text) {
        double by = figure(text).si();
        for (int frame : frames) {
            switch (change) {
                case WIDER -> wider(design, frame, by);
                case NARROWER -> wider(design, frame, -by);
                case HIGHER -> higher(design, frame, by);
                case ROUNDER -> rounder(design, frame, by);
                case FURTHER_AFT -> {
                    List<String> at = path(frame, "station");
                    design.set(at, Figure.millimetres(figure(design.value(at)).si() + by) + " mm");
                }
            }
        }
    }

    /** Corners on the centre line stay there. */
    private void wider(Edited design, int frame, double by) {
        List<double[]> points = Figure.points(design.value(path(frame, "outline")));
        for (int corner : corners) {
            double[] p = points.get(corner);
            p[0] += p[0] > 0 ? by / 2 : 0;
        }
        design.set(path(frame, "outline"), Figure.points(points));
    }

    /** Named corners all by as much; without names in proportion, the lowest not at all and the highest by the whole. */
    private void higher(Edited design, int frame, double by) {
        List<double[]> points = Figure.points(design.value(path(frame, "outline")));
        double low = points.stream().mapToDouble(p -> p[1]).min().orElseThrow();
        double high = points.stream().mapToDouble(p -> p[1]).max().orElseThrow();
        for (int corner : corners) {
            double[] p = points.get(corner);
            p[1] += all ? by * (p[1] - low) / (high - low) : by;
        }
        design.set(path(frame, "outline"), Figure.points(points));
    }

    /** Those on the centre line only where they are named. */
    private void rounder(Edited design, int frame, double by) {
        List<Figure> radii = Figure.several(design.value(path(frame, "radii")), ",")
                .orElseThrow(() -> new IllegalArgumentException("the radii of frame " + frame + " are no lengths"));
        List<String> texts = new ArrayList<>();
        for (int c = 0; c < radii.size(); c++) {
            boolean middle = c == 0 || c == radii.size() - 1;
            double more = corners.contains(c) && !(all && middle) ? by : 0;
            texts.add(Figure.millimetres(radii.get(c).si() + more));
        }
        design.set(path(frame, "radii"), String.join(", ", texts) + " mm");
    }

    @Override
    public Figure present(Edited design) {
        return new Figure(0, "mm");
    }
}
