// SPDX-License-Identifier: Apache-2.0
package tubwright.engine.mesh;

import java.util.ArrayList;
import java.util.List;
import java.util.OptionalDouble;
import java.util.Random;
import tubwright.engine.shape.Contour;
import tubwright.engine.shape.Frame;
import tubwright.engine.shape.Loft;
import tubwright.engine.shape.Opening;
import tubwright.engine.shape.OutlineCorner;
import tubwright.engine.shape.Polygon;
import tubwright.engine.shape.ShapeException;
import tubwright.engine.shape.Side;
import tubwright.engine.shape.TubShape;
import tubwright.engine.shape.View;
import tubwright.engine.shape.Wall;

/** Seeded random tubs: any number of corners, taper, fillets, openings, walls, zones and patches. */
final class RandomTubs {
    private final Random random;

    RandomTubs(long seed) {
        random = new Random(seed);
    }

    private double between(double low, double high) {
        return low + (high - low) * random.nextDouble();
    }

    /** A tub that the checks accept; drawn again until they do. */
    TubShape draw() {
        while (true) {
            try {
                return attempt();
            } catch (ShapeException e) {
                // Drawn again: most are openings that leave their strips.
            }
        }
    }

    private TubShape attempt() {
        int n = 3 + random.nextInt(7);
        int frames = 2 + random.nextInt(5);
        double[] angle = new double[n];
        double[] bulge = new double[n];
        double[] radius = new double[n];
        for (int k = 0; k < n; k++) {
            angle[k] = Math.PI * (k + (k == 0 || k == n - 1 ? 0 : between(-.25, .25))) / (n - 1);
            bulge[k] = between(0.85, 1.15);
            radius[k] = random.nextInt(4) == 0 ? 0 : between(0.005, 0.06);
        }
        List<Frame> list = new ArrayList<>();
        double x = between(-1, 1);
        double w = between(0.08, 0.35);
        double h = between(0.08, 0.35);
        double zc = between(0.2, 0.4);
        for (int i = 0; i < frames; i++) {
            List<OutlineCorner> corners = new ArrayList<>();
            for (int k = 0; k < n; k++) {
                double y = k == 0 || k == n - 1 ? 0 : w * bulge[k] * Math.sin(angle[k]);
                double z = zc - h * bulge[k] * Math.cos(angle[k]);
                corners.add(new OutlineCorner(y, z, radius[k] * Math.min(1, 2 * Math.min(w, h))));
            }
            list.add(new Frame(x, corners));
            x += between(0.15, 0.8);
            w = Math.clamp(w * between(0.6, 1.8), 0.06, 0.4);
            h = Math.clamp(h * between(0.6, 1.8), 0.06, 0.4);
            zc += between(-0.05, 0.05);
        }
        List<String> strips = new ArrayList<>();
        for (int k = 0; k < n - 1; k++) {
            strips.add("s" + k);
        }
        double front = list.getFirst().x();
        double rear = list.getLast().x();
        List<Opening> openings = new ArrayList<>();
        for (int i = random.nextInt(4); i > 0; i--) {
            openings.add(opening("o" + i, strips, front, rear, zc));
        }
        List<Wall> walls = new ArrayList<>();
        for (int i = random.nextInt(3); i > 0; i--) {
            walls.add(wall("w" + i, front, rear, zc));
        }
        Loft loft = random.nextBoolean() ? Loft.SMOOTH : Loft.RULED;
        return TubShape.of(list, strips, loft, openings, walls);
    }

    private Opening opening(String name, List<String> strips, double front, double rear, double zc) {
        int many = 1 + random.nextInt(Math.min(3, strips.size()));
        int first = random.nextInt(strips.size() - many + 1);
        boolean plan = first == 0 || first + many == strips.size();
        boolean centre = plan && random.nextBoolean();
        double x0 = between(front, rear);
        double x1 = x0 + between(0.03, 0.5);
        double v = centre ? 0 : plan ? between(0.05, 0.2) : zc + between(-0.15, 0.15);
        double half = between(0.01, centre ? 0.2 : 0.1);
        return new Opening(
                name,
                strips.subList(first, first + many),
                plan ? View.PLAN : View.SIDE,
                centre ? Side.CENTRE : Side.values()[random.nextInt(3)],
                contour(x0, x1, v, half));
    }

    private Contour contour(double x0, double x1, double v, double half) {
        double mid = (x0 + x1) / 2;
        double least = Math.min(half, (x1 - x0) / 2);
        return switch (random.nextInt(5)) {
            case 0 -> Contour.circle(mid, v, least);
            case 1 -> Contour.ellipse(mid, v, (x1 - x0) / 2, half);
            case 2 ->
                Contour.rectangle(x0, x1, v - half, v + half, random.nextInt(3) == 0 ? 0 : least * between(0.1, 0.99));
            case 3 -> Contour.slot(x0, v - half / 2, x1, v + half / 2, 0.6 * half);
            default ->
                Contour.polygon(List.of(
                        new Polygon.Vertex(x0, v, 0),
                        new Polygon.Vertex(mid, v - half, least * 0.1),
                        new Polygon.Vertex(x1, v, 0),
                        new Polygon.Vertex(mid, v + half, 0)));
        };
    }

    private Wall wall(String name, double front, double rear, double zc) {
        double x = between(front, rear);
        List<Wall.Hole> holes = random.nextBoolean()
                ? List.of()
                : List.of(new Wall.Hole("hole", Contour.circle(between(-.05, .05), zc, between(0.01, 0.05))));
        return switch (random.nextInt(4)) {
            case 0 -> Wall.Across.station(name, x, holes);
            case 1 -> Wall.Across.station(name, random.nextBoolean() ? front : rear, holes);
            case 2 ->
                new Wall.Across(
                        name,
                        Wall.End.atSkin(x),
                        Wall.End.atSkin(Math.clamp(x + between(-.2, .2), front, rear)),
                        holes);
            default ->
                new Wall.Along(
                        name,
                        0.05,
                        x,
                        Math.min(rear, x + between(0.1, 0.5)),
                        OptionalDouble.empty(),
                        random.nextBoolean() ? OptionalDouble.empty() : OptionalDouble.of(zc),
                        Side.BOTH,
                        List.of());
        };
    }

    SurfaceLayout layout(TubShape tub) {
        List<SurfaceLayout.Zone> zones = new ArrayList<>();
        List<SurfaceLayout.Patch> patches = new ArrayList<>();
        for (int i = random.nextInt(3); i > 0; i--) {
            double x = between(tub.front(), tub.rear());
            zones.add(new SurfaceLayout.Zone(
                    "z" + i,
                    List.of(new SurfaceLayout.OnStrips(
                            tub.strips()
                                    .subList(0, 1 + random.nextInt(tub.strips().size())),
                            x - 0.2,
                            x + 0.1,
                            Side.values()[random.nextInt(3)]))));
        }
        for (int i = random.nextInt(3); i > 0; i--) {
            double x = between(tub.front(), tub.rear());
            patches.add(new SurfaceLayout.Patch(
                    "p" + i,
                    List.of(SurfaceLayout.OnStrips.whole(
                            List.of(tub.strips().get(random.nextInt(tub.strips().size()))))),
                    new SurfaceLayout.AroundPoint(
                            new double[] {x, between(-.3, .3), between(0, .6)}, between(0.03, 0.2))));
        }
        int cut = random.nextInt(tub.strips().size());
        List<SurfaceLayout.Piece> pieces = cut == 0
                ? List.of()
                : List.of(
                        new SurfaceLayout.Piece(
                                "lower",
                                List.of(SurfaceLayout.OnStrips.whole(
                                        tub.strips().subList(0, cut)))),
                        new SurfaceLayout.Piece(
                                "upper",
                                List.of(SurfaceLayout.OnStrips.whole(
                                        tub.strips().subList(cut, tub.strips().size())))));
        return new SurfaceLayout(zones, patches, pieces);
    }

    double size() {
        return between(0.012, 0.05);
    }
}
