// SPDX-License-Identifier: Apache-2.0
package tubwright.engine.make.kit;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import org.locationtech.jts.geom.Coordinate;
import org.locationtech.jts.geom.Envelope;
import org.locationtech.jts.geom.Geometry;
import org.locationtech.jts.geom.GeometryFactory;
import org.locationtech.jts.geom.LinearRing;
import org.locationtech.jts.geom.Polygon;
import org.locationtech.jts.operation.valid.IsValidOp;
import tubwright.engine.laminate.LayerRole;
import tubwright.engine.make.flat.FlatPattern;
import tubwright.engine.make.flat.Mark;
import tubwright.engine.make.flat.Notches;
import tubwright.engine.make.flat.Outlines;
import tubwright.engine.make.lay.DrapedPly;
import tubwright.engine.make.nest.NestException;

/**
 * Splits a pattern wider than the roll along the warp, never across fibres. Cloth overlaps, tape, film and core meet; the
 * seams of plies that follow one another are staggered.
 *
 * @param roll usable width, m
 * @param overlap of cloth, m
 * @param stagger between seams of neighbouring plies, m
 * @param repeat plies after which a seam may come back to its place
 */
public record Splices(double roll, double overlap, double stagger, int repeat) {
    /** Parts smaller than this are left out, m². */
    private static final double CRUMB = 1e-4;

    private static final GeometryFactory PLANE = new GeometryFactory();

    /** Overlap 20 mm, stagger 25 mm, four plies before a seam repeats: common practice, no source. */
    public static Splices usual(double roll) {
        return new Splices(roll, 0.020, 0.025, 4);
    }

    /** The ply, whole or in parts. */
    public List<CutPiece> of(DrapedPly ply) {
        FlatPattern flat = ply.flat();
        double[] box = flat.box();
        double over = ply.ply().cloth() ? overlap : 0;
        double width = box[3] - box[1];
        if (width <= roll || ply.ply().role() == LayerRole.FILM && box[2] - box[0] <= roll) {
            return List.of(new CutPiece(ply, flat, 1, 1));
        }
        int parts = parts(flat.name(), width, over);
        double step = width / parts;
        double moved = (ply.ply().sequence() % repeat - 0.5 * (repeat - 1)) * stagger;
        Geometry whole = polygon(flat);
        List<FlatPattern> patterns = new ArrayList<>();
        for (int i = 0; i < parts; i++) {
            double low = i == 0 ? box[1] - 1 : box[1] + i * step + moved - over / 2;
            double high = i == parts - 1 ? box[3] + 1 : box[1] + (i + 1) * step + moved + over / 2;
            Geometry band = PLANE.toGeometry(new Envelope(box[0] - 1, box[2] + 1, low, high));
            patterns.addAll(patterns(flat, whole.intersection(band)));
        }
        List<CutPiece> pieces = new ArrayList<>();
        for (FlatPattern each : patterns) {
            String name = flat.name() + "/" + (pieces.size() + 1);
            pieces.add(new CutPiece(
                    ply,
                    new FlatPattern(
                            name,
                            each.outlines(),
                            each.lines(),
                            each.start(),
                            each.reference(),
                            each.distortion(),
                            each.missing(),
                            Notches.on(each).marks()),
                    pieces.size() + 1,
                    patterns.size()));
        }
        return pieces;
    }

    /** The fewest whose widest part still fits when the seams have been moved by the stagger. */
    private int parts(String name, double width, double over) {
        double moved = 0.5 * (repeat - 1) * stagger;
        if (!(roll > 2 * (over + moved))) {
            throw new NestException("'" + name + "' is " + Math.round(1e3 * width)
                    + " mm wide across its fibres, and the "
                    + Math.round(1e3 * roll) + " mm that are cut from the roll are too few to splice it; more than "
                    + Math.round(2e3 * (over + moved)) + " mm are due, better " + Math.round(1e3 * width)
                    + " mm: take a wider roll");
        }
        int parts = 2;
        while (width / parts + Math.max(moved + over / 2, parts > 2 ? over : 0) > roll) {
            parts++;
        }
        return parts;
    }

    private static Geometry polygon(FlatPattern flat) {
        LinearRing[] rings = flat.outlines().stream().map(Splices::ring).toArray(LinearRing[]::new);
        LinearRing[] holes = Arrays.copyOfRange(rings, 1, rings.length);
        Polygon polygon = PLANE.createPolygon(rings[0], holes);
        if (!polygon.isValid()) {
            Coordinate at = new IsValidOp(polygon).getValidationError().getCoordinate();
            throw new NestException(String.format(
                    Locale.ROOT,
                    "'%s' cannot be spliced: its pattern crosses itself %.0f mm along its warp and %.0f mm along its weft from"
                            + " its start; give it another start (\"laying\") or split it",
                    flat.name(),
                    1e3 * at.x,
                    -1e3 * at.y));
        }
        return polygon;
    }

    private static LinearRing ring(double[] outline) {
        int n = outline.length / 2;
        Coordinate[] corners = new Coordinate[n + 1];
        for (int i = 0; i <= n; i++) {
            corners[i] = new Coordinate(outline[2 * (i % n)], outline[2 * (i % n) + 1]);
        }
        return PLANE.createLinearRing(corners);
    }

    /** One pattern for each separate polygon, with its cut-outs. */
    private static List<FlatPattern> patterns(FlatPattern flat, Geometry cut) {
        List<FlatPattern> patterns = new ArrayList<>();
        for (int i = 0; i < cut.getNumGeometries(); i++) {
            if (cut.getGeometryN(i) instanceof Polygon polygon && polygon.getArea() > CRUMB) {
                List<double[]> outlines = new ArrayList<>(List.of(anticlockwise(polygon.getExteriorRing())));
                for (int h = 0; h < polygon.getNumInteriorRing(); h++) {
                    outlines.add(anticlockwise(polygon.getInteriorRingN(h)));
                }
                double[] start = start(flat, outlines.getFirst());
                // Notches are made anew; ramps and potting that lie in the part stay.
                List<Mark> marks = flat.marks().stream()
                        .filter(m -> m.kind() != Mark.Kind.NOTCH && within(outlines.getFirst(), m.points()))
                        .toList();
                patterns.add(new FlatPattern(
                        flat.name(), outlines, List.of(), start, flat.reference(), flat.distortion(), 0, marks));
            }
        }
        return patterns;
    }

    /** Where the whole ply is started if that is in the part, else its middle. */
    private static double[] start(FlatPattern flat, double[] outline) {
        if (inside(outline, flat.start()[0], flat.start()[1])) {
            return flat.start();
        }
        double x = 0;
        double y = 0;
        for (int i = 0; i < outline.length; i += 2) {
            x += 2 * outline[i] / outline.length;
            y += 2 * outline[i + 1] / outline.length;
        }
        return new double[] {x, y};
    }

    private static boolean within(double[] outline, double[] points) {
        for (int i = 0; i < points.length; i += 2) {
            if (!inside(outline, points[i], points[i + 1])) {
                return false;
            }
        }
        return true;
    }

    private static boolean inside(double[] outline, double x, double y) {
        boolean in = false;
        for (int i = 0, j = outline.length - 2; i < outline.length; j = i, i += 2) {
            if (outline[i + 1] > y != outline[j + 1] > y
                    && x
                            < (outline[j] - outline[i]) * (y - outline[i + 1]) / (outline[j + 1] - outline[i + 1])
                                    + outline[i]) {
                in = !in;
            }
        }
        return in;
    }

    private static double[] anticlockwise(LinearRing ring) {
        Coordinate[] corners = ring.getCoordinates();
        int n = corners.length - 1;
        double[] outline = new double[2 * n];
        for (int i = 0; i < n; i++) {
            outline[2 * i] = corners[i].x;
            outline[2 * i + 1] = corners[i].y;
        }
        if (Outlines.area(outline) >= 0) {
            return outline;
        }
        double[] turned = new double[2 * n];
        for (int i = 0; i < n; i++) {
            turned[2 * i] = corners[n - i].x;
            turned[2 * i + 1] = corners[n - i].y;
        }
        return turned;
    }
}
