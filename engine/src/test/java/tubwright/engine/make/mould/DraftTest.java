// SPDX-License-Identifier: Apache-2.0
package tubwright.engine.make.mould;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Path;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import tubwright.engine.design.BoxText;
import tubwright.engine.mesh.Mesh;
import tubwright.engine.mesh.MeshSettings;
import tubwright.engine.mesh.Mesher;
import tubwright.engine.mesh.Region;
import tubwright.engine.structure.Tub;

/** Bodies whose draft, undercut and hook follow from a drawing: bowls, cones, tubes, and a tray with round corners. */
class DraftTest {
    private static final double[] UP = {0, 0, 1};
    private static final double WANTED = Math.toRadians(2);

    private interface Meridian {
        /** Radius, height, and the outward normal's radius and height, at an angle from the bottom. */
        double[] at(double theta);
    }

    /** A surface of revolution about z as a mesh of quadrilaterals, tilted about y by an angle. */
    private static PieceFace round(Meridian meridian, double from, double to, int rings, double tilt) {
        int n = 48;
        double[] nodes = new double[3 * n * (rings + 1)];
        double[] normalAt = new double[nodes.length];
        for (int i = 0; i <= rings; i++) {
            double[] m = meridian.at(from + (to - from) * i / rings);
            for (int j = 0; j < n; j++) {
                double c = Math.cos(2 * Math.PI * j / n);
                double s = Math.sin(2 * Math.PI * j / n);
                put(nodes, 3 * (i * n + j), m[0] * c, m[0] * s, m[1], tilt);
                put(normalAt, 3 * (i * n + j), m[2] * c, m[2] * s, m[3], tilt);
            }
        }
        int[] corners = new int[4 * n * rings];
        double[] normals = new double[12 * n * rings];
        for (int i = 0; i < rings; i++) {
            for (int j = 0; j < n; j++) {
                int e = i * n + j;
                int[] four = {i * n + j, i * n + (j + 1) % n, (i + 1) * n + (j + 1) % n, (i + 1) * n + j};
                for (int k = 0; k < 4; k++) {
                    corners[4 * e + k] = four[k];
                    System.arraycopy(normalAt, 3 * four[k], normals, 12 * e + 3 * k, 3);
                }
            }
        }
        Region region = new Region("bowl", Region.Surface.SKIN, "bowl", List.of(), "bowl", false);
        Mesh mesh = new Mesh(
                nodes, corners, normals, new double[3 * n * rings], new int[n * rings], List.of(region), List.of());
        return PieceFace.all(mesh).getFirst();
    }

    private static void put(double[] into, int at, double x, double y, double z, double tilt) {
        into[at] = Math.cos(tilt) * x + Math.sin(tilt) * z;
        into[at + 1] = y;
        into[at + 2] = Math.cos(tilt) * z - Math.sin(tilt) * x;
    }

    private static Meridian sphere(double radius) {
        return t -> new double[] {radius * Math.sin(t), -radius * Math.cos(t), Math.sin(t), -Math.cos(t)};
    }

    private static Draft draft(PieceFace face, double[] pull) {
        return DraftCheck.of(face, pull, WANTED, new SplitLines(face.mesh()).of(face));
    }

    @Test
    void aBowlUpToItsEquatorComesOutAndIsUprightAtItsRim() {
        PieceFace bowl = round(sphere(0.3), 0.05, Math.PI / 2, 24, 0);
        Draft draft = draft(bowl, UP);
        assertTrue(draft.comesOut());
        assertEquals(0, Math.toDegrees(draft.least()), 1e-6);
        // Less draft than 2° in the band of height R sin 2°, whose area is 2πR² sin 2°.
        double band = 2 * Math.PI * 0.09 * Math.sin(WANTED);
        assertEquals(band, draft.little(), 0.5 * band);
        assertEquals(List.of(), MouldAdvice.of(bowl, draft, List.of()));
    }

    /** 30° past its equator a sphere is undercut on πR² over R/2 of height, and reached over by R (1 − cos 30°). */
    @Test
    void aBowlPastItsEquatorIsReachedOverByWhatItsCircleSays() {
        for (int rings : new int[] {16, 48}) {
            PieceFace bowl = round(sphere(0.3), 0.05, 2 * Math.PI / 3, rings, 0);
            Draft draft = draft(bowl, UP);
            assertEquals(-30, Math.toDegrees(draft.least()), 1e-6);
            assertEquals(1, draft.undercuts().size());
            Draft.Undercut place = draft.undercuts().getFirst();
            assertEquals(Math.PI * 0.09, draft.under(), 0.03 * Math.PI * 0.09);
            assertEquals(draft.under(), place.area(), 1e-12);
            assertEquals(0.3 * (1 - Math.cos(Math.PI / 6)), place.hook(), 2e-4);
            assertEquals(0.15, place.height(), 2e-3);
        }
    }

    @Test
    void aConeHasItsHalfAngleAsDraftEverywhere() {
        double half = Math.toRadians(5);
        PieceFace cone = round(
                t -> new double[] {0.2 + t * Math.sin(half), t * Math.cos(half), Math.cos(half), -Math.sin(half)},
                0,
                0.4,
                10,
                0);
        for (double each : draft(cone, UP).ofElement()) {
            assertEquals(5, Math.toDegrees(each), 1e-9);
        }
    }

    @Test
    void theBestPullOfATiltedBowlIsItsAxis() {
        double tilt = Math.toRadians(25);
        PieceFace bowl = round(sphere(0.3), 0.05, Math.toRadians(80), 20, tilt);
        double[] best = PullSearch.best(bowl, WANTED);
        double along = best[0] * Math.sin(tilt) + best[2] * Math.cos(tilt);
        assertTrue(Math.toDegrees(Math.acos(Math.min(1, along))) < 4, "off by " + Math.toDegrees(Math.acos(along)));
        assertTrue(draft(bowl, best).comesOut());
    }

    @Test
    void aBowlPulledTheWrongWayIsToldWhichWay() {
        PieceFace bowl = round(sphere(0.3), 0.05, Math.toRadians(80), 20, 0);
        double[] down = {0, 0, -1};
        Draft draft = draft(bowl, down);
        assertEquals(draft.area(), draft.under(), 1e-9);
        List<String> advice = MouldAdvice.of(bowl, draft, List.of());
        assertTrue(advice.getFirst().contains("pulled along up it comes out"), advice.toString());
    }

    @Test
    void aTubeThatIsNotSplitTakesAMouldInTwoParts() {
        PieceFace tube = round(t -> new double[] {0.25, t, 1, 0}, 0, 1, 12, Math.PI / 2);
        double[] best = PullSearch.best(tube, WANTED);
        Draft draft = draft(tube, best);
        List<PullSearch.Part> parts = PullSearch.parts(tube, UP);
        assertEquals(2, parts.size());
        assertEquals(0.5, parts.getFirst().share(), 0.05);
        assertEquals(-1, parts.get(1).pull()[2], 0.05);
        assertTrue(draft.comesOut()
                || String.join(" ", MouldAdvice.of(tube, draft, List.of())).contains("in 2 parts"));
    }

    private static final String BOX = BoxText.rounded() + """
            laminates:
              skin: {stack: "[0c/45c]", plies: {c: pw-t650-976}}
            zones:
              all: {on: [floor, flank, deck], laminate: skin}
            """ + BoxText.trayAndLid();

    /**
     * The seam lies in the middle of a corner of radius 60 mm above an upright flank: over the last 45° the tray curls in by
     * r (1 − cos 45°) = 17.6 mm over r sin 45° = 42.4 mm, on both sides, along 500 mm of arc length r π/4.
     */
    @Test
    void aSplitLineInACornerHooksBothSidesAndIsToldWhereToGo(@TempDir Path folder) throws IOException {
        Tub tub = BoxText.read(folder, BOX).asDesigned().tub();
        Mesh mesh = Mesher.mesh(tub.shape(), tub.layout(), MeshSettings.of(0.02));
        PieceFace tray = PieceFace.all(mesh).getFirst();
        assertEquals("tray", tray.piece());
        SplitLines lines = new SplitLines(mesh);
        assertEquals(1.0, lines.lengths(tray).get("lid"), 1e-9);
        Draft draft = DraftCheck.of(tray, UP, WANTED, lines.of(tray));
        assertEquals(2, draft.undercuts().size());
        for (Draft.Undercut each : draft.undercuts()) {
            assertEquals(0.06 * (1 - Math.cos(Math.PI / 4)), each.hook(), 3e-4);
            assertEquals(0.06 * Math.sin(Math.PI / 4), each.height(), 1e-3);
            assertEquals("lid", each.beside());
            assertEquals(-45, Math.toDegrees(each.worst()), 1e-6);
        }
        double expected = 2 * 0.06 * Math.PI / 4 * 0.5;
        assertEquals(expected, draft.under(), 0.05 * expected);
        String advice = String.join("\n", MouldAdvice.of(tray, draft, lines.of(tray)));
        assertTrue(advice.contains("flank L and flank R between x = 0 and 500 mm is undercut up to 45.0°"), advice);
        assertTrue(advice.contains("move the split line to lid by 42 mm"), advice);
        PieceFace lid = PieceFace.all(mesh).get(1);
        double[] best = PullSearch.best(lid, WANTED);
        assertEquals("down", MouldAdvice.words(best));
        Draft off = DraftCheck.of(lid, best, WANTED, lines.of(lid));
        assertTrue(off.comesOut());
        assertEquals(45, Math.toDegrees(off.least()), 1e-6);
        assertEquals(0.3, lid.size(best)[1], 0.04);
    }
}
