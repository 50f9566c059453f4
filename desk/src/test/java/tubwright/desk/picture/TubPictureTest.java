// SPDX-License-Identifier: Apache-2.0
package tubwright.desk.picture;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import org.junit.jupiter.api.Test;
import tubwright.desk.FakeTub;
import tubwright.desk.picture.TubPicture.Picture;
import tubwright.desk.picture.View.From;
import tubwright.engine.mesh.Mesh;
import tubwright.engine.mesh.Region;

/** What pictures of known scenes show. */
class TubPictureTest {
    private static final Region FRONT = new Region("floor", Region.Surface.SKIN, "front", List.of(), "shell", false);
    private static final Region REAR = new Region("floor", Region.Surface.SKIN, "rear", List.of(), "shell", false);

    /** Two squares of a metre side by side in the plane z = 0, facing up. */
    private static Mesh twoSquares() {
        double[] nodes = {0, 0, 0, 1, 0, 0, 2, 0, 0, 0, 1, 0, 1, 1, 0, 2, 1, 0};
        int[] corners = {0, 1, 4, 3, 1, 2, 5, 4};
        double[] normals = new double[24];
        for (int i = 2; i < 24; i += 3) {
            normals[i] = 1;
        }
        return new Mesh(
                nodes,
                corners,
                normals,
                new double[] {1, 0, 0, 1, 0, 0},
                new int[] {0, 1},
                List.of(FRONT, REAR),
                List.of());
    }

    @Test
    void aQuietElementIsPaleAndAHotOneDark() {
        Picture picture = new TubPicture(twoSquares())
                .energy(new double[] {0.01, 100}, new EnergyScale(0.1, 10), From.PLAN, false, 400);
        double[] quiet = lab(picture, 0.5, 0.5);
        double[] hot = lab(picture, 1.5, 0.5);
        // Facing the viewer and the sky a surface keeps its colour: the ramp's ends show unchanged.
        assertEquals(Colour.toLab(Palette.ramp(0))[0], quiet[0], 0.02);
        assertEquals(Colour.toLab(Palette.ramp(1))[0], hot[0], 0.02);
    }

    @Test
    void valuesDoNotBleedFromOneZoneIntoAnother() {
        Picture picture = new TubPicture(twoSquares())
                .energy(new double[] {0.01, 100}, new EnergyScale(0.1, 10), From.PLAN, false, 400);
        assertEquals(lab(picture, 0.5, 0.5)[0], lab(picture, 0.93, 0.5)[0], 0.01);
    }

    @Test
    void whatIsNotTubIsTransparent() {
        Picture picture = new TubPicture(twoSquares()).plain(From.PLAN, 400, 18);
        assertEquals(0, picture.image().pixels()[0] >>> 24);
    }

    @Test
    void theNearerOfTwoSheetsIsSeen() {
        double[] nodes = {0, 0, 0, 1, 0, 0, 1, 1, 0, 0, 1, 0, 0, 0, 1, 1, 0, 1, 1, 1, 1, 0, 1, 1};
        int[] corners = {4, 5, 6, 7, 0, 1, 2, 3};
        double[] normals = new double[24];
        for (int i = 2; i < 24; i += 3) {
            normals[i] = 1;
        }
        Mesh mesh = new Mesh(nodes, corners, normals, new double[6], new int[] {0, 1}, List.of(FRONT, REAR), List.of());
        Picture picture =
                new TubPicture(mesh).energy(new double[] {100, 0.01}, new EnergyScale(0.1, 10), From.PLAN, false, 300);
        assertEquals(Colour.toLab(Palette.ramp(1))[0], lab(picture, 0.5, 0.5)[0], 0.02);
    }

    @Test
    void aSideViewPutsStationsOnAnEvenScale() {
        Mesh mesh = FakeTub.mesh(30, 4);
        Picture picture = new TubPicture(mesh).plain(From.SIDE, 1000, 10);
        double[] nose = new double[3];
        double[] tail = new double[3];
        picture.view().project(0, 0, 0.3, nose);
        picture.view().project(2.15, 0, 0.3, tail);
        assertEquals(10, nose[0], 0.5);
        assertEquals(990, tail[0], 0.5);
    }

    @Test
    void cuttingTakesTheLeftHalfAway() {
        Mesh mesh = FakeTub.mesh(30, 4);
        double[] w = FakeTub.densities(mesh, 1000);
        EnergyScale scale = EnergyScale.of(mesh, w);
        TubPicture tub = new TubPicture(mesh);
        int whole = painted(tub.energy(w, scale, From.FRONT, false, 300));
        int half = painted(tub.energy(w, scale, From.FRONT, true, 300));
        assertEquals(0.5, (double) half / whole, 0.02);
    }

    @Test
    void everyZoneWithRoomGetsItsNumberInsideIt() {
        Mesh mesh = twoSquares();
        Picture picture = new TubPicture(mesh).zones(List.of("front", "rear"), From.PLAN, false, 400);
        assertEquals(2, picture.labels().size());
        double[] at = new double[3];
        picture.view().project(0.5, 0.5, 0, at);
        assertEquals(at[0], picture.labels().getFirst().x(), 6);
        assertEquals(at[1], picture.labels().getFirst().y(), 6);
        assertEquals("2", picture.labels().getLast().text());
    }

    @Test
    void theScaleEndsWhereAHundredthOfTheAreaIsHotter() {
        Mesh mesh = FakeTub.mesh(60, 6);
        double[] w = FakeTub.densities(mesh, 1000);
        EnergyScale scale = EnergyScale.of(mesh, w);
        double hotter = 0;
        double whole = 0;
        for (int e = 0; e < w.length; e++) {
            whole += mesh.area(e);
            hotter += w[e] > scale.high() ? mesh.area(e) : 0;
        }
        assertTrue(hotter <= 0.01 * whole + 1e-12, hotter + " of " + whole + " m²");
        assertEquals(1, scale.position(scale.high()), 1e-12);
        assertEquals(0, scale.position(scale.low()), 1e-12);
    }

    private static int painted(Picture picture) {
        int count = 0;
        for (int p : picture.image().pixels()) {
            count += p >>> 24 > 127 ? 1 : 0;
        }
        return count;
    }

    private static double[] lab(Picture picture, double x, double y) {
        double[] at = new double[3];
        picture.view().project(x, y, 0, at);
        return Colour.toLab(
                picture.image().pixels()[(int) at[1] * picture.image().width() + (int) at[0]] & 0xffffff);
    }
}
