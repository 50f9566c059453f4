// SPDX-License-Identifier: Apache-2.0
package tubwright.engine.make.nest;

import java.awt.geom.Area;
import java.awt.geom.Path2D;
import java.awt.geom.PathIterator;
import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.List;

/** The open benchmark set, and what must hold of any nest, checked by another geometry than the search's own. */
final class OpenInstances {
    private OpenInstances() {}

    record Instance(List<Piece> pieces, Roll roll) {
        double area() {
            return pieces.stream()
                    .mapToDouble(p -> p.count() * p.outline().area())
                    .sum();
        }

        int copies() {
            return pieces.stream().mapToInt(Piece::count).sum();
        }
    }

    static Instance read(String name) {
        List<Piece> pieces = new ArrayList<>();
        double width = 0;
        Piece.Turns turns = Piece.Turns.FIXED;
        for (String line : text(name).lines().toList()) {
            if (line.startsWith("width ")) {
                width = Double.parseDouble(line.substring(6));
            } else if (line.startsWith("turns ")) {
                turns = switch (line.substring(6)) {
                    case "0" -> Piece.Turns.FIXED;
                    case "0 180" -> Piece.Turns.HALF;
                    default -> Piece.Turns.QUARTERS;
                };
            } else if (!line.startsWith("#")) {
                String[] words = line.split("[:, ]+");
                double[] corners = new double[words.length - 1];
                for (int i = 0; i < corners.length; i++) {
                    corners[i] = Double.parseDouble(words[i + 1]);
                }
                pieces.add(new Piece(name, Outline.of(corners), Integer.parseInt(words[0]), turns));
            }
        }
        return new Instance(pieces, new Roll(width, 0));
    }

    /** Largest area two placed copies share, m². */
    static double worstOverlap(Nest nest) {
        List<Area> areas =
                nest.placements().stream().map(p -> area(nest.outline(p))).toList();
        double worst = 0;
        for (int i = 0; i < areas.size(); i++) {
            for (int j = 0; j < i; j++) {
                if (areas.get(i).getBounds2D().intersects(areas.get(j).getBounds2D())) {
                    Area both = new Area(areas.get(i));
                    both.intersect(areas.get(j));
                    worst = Math.max(worst, measure(both));
                }
            }
        }
        return worst;
    }

    /** Least distance between the outlines of any two placed copies, m. */
    static double leastDistance(Nest nest) {
        List<Outline> outlines = nest.placements().stream().map(nest::outline).toList();
        double least = Double.POSITIVE_INFINITY;
        for (Outline a : outlines) {
            for (Outline b : outlines) {
                if (a != b) {
                    for (int i = 0; i < a.corners(); i++) {
                        for (int j = 0; j < b.corners(); j++) {
                            int k = (j + 1) % b.corners();
                            least = Math.min(
                                    least,
                                    java.awt.geom.Line2D.ptSegDist(
                                            b.x()[j], b.y()[j], b.x()[k], b.y()[k], a.x()[i], a.y()[i]));
                        }
                    }
                }
            }
        }
        return least;
    }

    private static Area area(Outline outline) {
        Path2D path = new Path2D.Double();
        path.moveTo(outline.x()[0], outline.y()[0]);
        for (int i = 1; i < outline.corners(); i++) {
            path.lineTo(outline.x()[i], outline.y()[i]);
        }
        path.closePath();
        return new Area(path);
    }

    private static double measure(Area area) {
        double twice = 0;
        double[] at = new double[6];
        double startX = 0;
        double startY = 0;
        double x = 0;
        double y = 0;
        for (PathIterator i = area.getPathIterator(null, 1e-9); !i.isDone(); i.next()) {
            int kind = i.currentSegment(at);
            double nextX = kind == PathIterator.SEG_CLOSE ? startX : at[0];
            double nextY = kind == PathIterator.SEG_CLOSE ? startY : at[1];
            if (kind == PathIterator.SEG_MOVETO) {
                startX = at[0];
                startY = at[1];
            } else {
                twice += x * nextY - nextX * y;
            }
            x = nextX;
            y = nextY;
        }
        return Math.abs(twice) / 2;
    }

    private static String text(String name) {
        String path = "/tubwright/nest/" + name + ".txt";
        try (InputStream in = OpenInstances.class.getResourceAsStream(path)) {
            return new String(in.readAllBytes(), StandardCharsets.UTF_8);
        } catch (IOException e) {
            throw new UncheckedIOException(path, e);
        }
    }
}
