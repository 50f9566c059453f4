// SPDX-License-Identifier: Apache-2.0
package tubwright.engine.mesh;

import java.util.ArrayList;
import java.util.List;
import java.util.TreeSet;
import tubwright.engine.shape.ShapeException;
import tubwright.engine.shape.ShapeException.Subject;
import tubwright.engine.shape.TubShape;
import tubwright.engine.shape.Wall;

/** The layout with its names resolved: zone, piece and candidate patches of every spot. */
final class LayoutIndex {
    /** Strips between stations, resolved. */
    private record SkinArea(boolean[] strips, double fromX, double toX, boolean right, boolean left) {
        boolean covers(int strip, double x, boolean onLeft) {
            return strips[strip] && x >= fromX && x <= toX && (onLeft ? left : right);
        }
    }

    private record Named(String name, List<SkinArea> skin, List<String> walls) {}

    private final TubShape shape;
    final SurfaceLayout layout;
    private final List<Named> zones = new ArrayList<>();
    private final List<Named> patches = new ArrayList<>();
    private final List<Named> pieces = new ArrayList<>();
    /** Stations at which something begins or ends. */
    final TreeSet<Double> stations = new TreeSet<>();

    LayoutIndex(TubShape shape, SurfaceLayout layout) {
        this.shape = shape;
        this.layout = layout;
        layout.zones().forEach(z -> zones.add(resolve(Subject.ZONE, z.name(), z.areas())));
        layout.patches().forEach(p -> patches.add(resolve(Subject.PATCH, p.name(), p.areas())));
        layout.pieces().forEach(p -> pieces.add(resolve(Subject.PIECE, p.name(), p.areas())));
    }

    private Named resolve(Subject subject, String name, List<SurfaceLayout.Area> areas) {
        List<SkinArea> skin = new ArrayList<>();
        List<String> walls = new ArrayList<>();
        for (SurfaceLayout.Area area : areas) {
            switch (area) {
                case SurfaceLayout.OnWall on -> {
                    if (shape.walls().stream().noneMatch(w -> w.name().equals(on.wall()))) {
                        throw ShapeException.about(
                                subject,
                                name,
                                "\"" + name + "\" names wall \"" + on.wall() + "\", which does not exist");
                    }
                    walls.add(on.wall());
                }
                case SurfaceLayout.OnStrips on -> {
                    boolean[] strips = new boolean[shape.strips().size()];
                    for (String strip : on.strips()) {
                        strips[
                                shape.strip(strip)
                                        .orElseThrow(() -> ShapeException.about(
                                                subject,
                                                name,
                                                "\"" + name + "\" names strip \"" + strip
                                                        + "\", which does not exist"))] = true;
                    }
                    if (!(on.toX() > on.fromX())) {
                        throw ShapeException.about(subject, name, "\"" + name + "\" ends before it begins");
                    }
                    if (on.toX() <= shape.front() || on.fromX() >= shape.rear()) {
                        throw ShapeException.about(subject, name, "\"" + name + "\" lies outside the tub");
                    }
                    station(on.fromX());
                    station(on.toX());
                    skin.add(new SkinArea(
                            strips,
                            on.fromX(),
                            on.toX(),
                            on.side().covers(false),
                            on.side().covers(true)));
                }
            }
        }
        return new Named(name, skin, walls);
    }

    private void station(double x) {
        if (x > shape.front() && x < shape.rear()) {
            stations.add(x);
        }
    }

    String zone(int strip, double x, boolean left) {
        return last(zones, strip, x, left, shape.strips().get(strip));
    }

    String piece(int strip, double x, boolean left) {
        return last(pieces, strip, x, left, SurfaceLayout.DEFAULT_PIECE);
    }

    String zone(Wall wall) {
        return last(zones, wall);
    }

    String piece(Wall wall) {
        return last(pieces, wall);
    }

    boolean patchCovers(int patch, int strip, double x, boolean left) {
        return patches.get(patch).skin.stream().anyMatch(s -> s.covers(strip, x, left));
    }

    boolean patchCovers(int patch, Wall wall) {
        return patches.get(patch).walls.contains(wall.name());
    }

    /** Bands of the skin chart a patch lies in, whatever the side. */
    List<double[]> bands(int patch, SkinChart chart) {
        List<double[]> bands = new ArrayList<>();
        for (SkinArea area : patches.get(patch).skin) {
            for (int k = 0; k < area.strips.length; k++) {
                if (area.strips[k]) {
                    bands.add(new double[] {
                        chart.a(Math.max(area.fromX, shape.front())),
                        chart.a(Math.min(area.toX, shape.rear())),
                        chart.stripStart[k],
                        chart.stripStart[k + 1]
                    });
                }
            }
        }
        return bands;
    }

    private static String last(List<Named> list, int strip, double x, boolean left, String otherwise) {
        for (Named n : list.reversed()) {
            for (SkinArea area : n.skin) {
                if (area.covers(strip, x, left)) {
                    return n.name;
                }
            }
        }
        return otherwise;
    }

    private static String last(List<Named> list, Wall wall) {
        for (Named n : list.reversed()) {
            if (n.walls.contains(wall.name())) {
                return n.name;
            }
        }
        return wall.name();
    }
}
