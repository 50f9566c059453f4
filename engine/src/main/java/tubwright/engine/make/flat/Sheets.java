// SPDX-License-Identifier: Apache-2.0
package tubwright.engine.make.flat;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import org.locationtech.jts.geom.Coordinate;
import org.locationtech.jts.geom.Geometry;
import org.locationtech.jts.geom.GeometryFactory;
import org.locationtech.jts.geom.LineString;
import org.locationtech.jts.geom.LinearRing;
import org.locationtech.jts.geom.Polygon;

/** What is done to the sheet of a pattern: a wedge cut out of it, the line where a ramp along its edges begins. */
public final class Sheets {
    private static final GeometryFactory PLANE = new GeometryFactory();
    /** What a cut may take off besides the wedge, as a share of the sheet. */
    private static final double CRUMB = 0.01;

    private Sheets() {}

    /**
     * The pattern without a wedge; the same pattern where the wedge would part it or its outline crosses itself.
     *
     * @param wedge closed outline, 2 coordinates each
     */
    public static FlatPattern without(FlatPattern flat, double[] wedge) {
        Polygon sheet = polygon(flat);
        if (!sheet.isValid()) {
            return flat;
        }
        Geometry rest = sheet.difference(PLANE.createPolygon(ring(wedge)));
        Polygon largest = null;
        double lost = rest.getArea();
        for (int i = 0; i < rest.getNumGeometries(); i++) {
            if (rest.getGeometryN(i) instanceof Polygon p && (largest == null || p.getArea() > largest.getArea())) {
                largest = p;
            }
        }
        if (largest == null || lost - largest.getArea() > CRUMB * sheet.getArea()) {
            return flat;
        }
        List<double[]> outlines = new ArrayList<>(List.of(points(largest.getExteriorRing())));
        for (int h = 0; h < largest.getNumInteriorRing(); h++) {
            outlines.add(points(largest.getInteriorRingN(h)));
        }
        return flat.withOutlines(outlines);
    }

    /**
     * Lines at a distance inside the sheet from some of its edges.
     *
     * @param edges open lines along the outlines
     * @param width distance, m
     */
    public static List<double[]> inwardOf(FlatPattern flat, List<double[]> edges, double width) {
        Polygon sheet = polygon(flat);
        if (edges.isEmpty() || !sheet.isValid()) {
            return List.of();
        }
        LineString[] lines = edges.stream()
                .map(e -> PLANE.createLineString(coordinates(e, e.length / 2)))
                .toArray(LineString[]::new);
        Geometry band = PLANE.createMultiLineString(lines).buffer(width);
        Geometry inner = sheet.difference(band)
                .getBoundary()
                .difference(sheet.getBoundary().buffer(1e-4));
        List<double[]> found = new ArrayList<>();
        for (int i = 0; i < inner.getNumGeometries(); i++) {
            if (inner.getGeometryN(i) instanceof LineString line && line.getLength() > width / 2) {
                found.add(points(line));
            }
        }
        return found;
    }

    private static Polygon polygon(FlatPattern flat) {
        LinearRing[] rings = flat.outlines().stream().map(Sheets::ring).toArray(LinearRing[]::new);
        return PLANE.createPolygon(rings[0], Arrays.copyOfRange(rings, 1, rings.length));
    }

    private static LinearRing ring(double[] outline) {
        return PLANE.createLinearRing(coordinates(outline, outline.length / 2 + 1));
    }

    private static Coordinate[] coordinates(double[] points, int count) {
        Coordinate[] c = new Coordinate[count];
        for (int i = 0; i < count; i++) {
            int k = 2 * i % points.length;
            c[i] = new Coordinate(points[k], points[k + 1]);
        }
        return c;
    }

    /** Of a ring without its last point, which repeats the first; of an open line all. */
    private static double[] points(LineString line) {
        Coordinate[] c = line.getCoordinates();
        int n = line instanceof LinearRing ? c.length - 1 : c.length;
        double[] points = new double[2 * n];
        for (int i = 0; i < n; i++) {
            points[2 * i] = c[i].x;
            points[2 * i + 1] = c[i].y;
        }
        return points;
    }
}
