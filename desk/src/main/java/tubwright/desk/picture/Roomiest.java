// SPDX-License-Identifier: Apache-2.0
package tubwright.desk.picture;

import java.util.ArrayList;
import java.util.List;

/** Finds where on a painted picture a kind has most room round it, for its number. */
final class Roomiest {
    /** Sub-pixels per cell of the coarse grid on which distances are measured. */
    private static final int CELL = 4;

    private Roomiest() {}

    /**
     * One label per kind that is seen widely enough to be written on.
     *
     * @param painted with element indices in its owner buffer
     * @param kindOfElement kind per element, -1 for none
     * @param kinds number of kinds
     */
    static List<TubPicture.Label> labels(Rasteriser painted, int[] kindOfElement, int kinds) {
        int columns = painted.width() / CELL;
        int rows = painted.height() / CELL;
        int[] kind = new int[columns * rows];
        for (int j = 0; j < rows; j++) {
            for (int i = 0; i < columns; i++) {
                int owner = painted.owner()[(j * CELL + CELL / 2) * painted.width() + i * CELL + CELL / 2];
                kind[j * columns + i] = owner < 0 ? -1 : kindOfElement[owner];
            }
        }
        double[] room = room(kind, columns, rows);
        int[] best = new int[kinds];
        java.util.Arrays.fill(best, -1);
        for (int at = 0; at < kind.length; at++) {
            int k = kind[at];
            if (k >= 0 && (best[k] < 0 || room[at] > room[best[k]])) {
                best[k] = at;
            }
        }
        double back = (double) CELL / Rasteriser.SUPERSAMPLING;
        List<TubPicture.Label> labels = new ArrayList<>();
        for (int k = 0; k < kinds; k++) {
            if (best[k] >= 0 && room[best[k]] * back >= 7) {
                labels.add(new TubPicture.Label(
                        Integer.toString(k + 1), (best[k] % columns + 0.5) * back, (best[k] / columns + 0.5) * back));
            }
        }
        return labels;
    }

    /** Distance in cells to the nearest cell of another kind, by a two-pass chamfer sweep (Borgefors 1986). */
    private static double[] room(int[] kind, int columns, int rows) {
        double[] room = new double[kind.length];
        for (int j = 0; j < rows; j++) {
            for (int i = 0; i < columns; i++) {
                int at = j * columns + i;
                double r = near(kind, room, columns, rows, at, i - 1, j, 1);
                r = Math.min(r, near(kind, room, columns, rows, at, i, j - 1, 1));
                r = Math.min(r, near(kind, room, columns, rows, at, i - 1, j - 1, 1.41));
                room[at] = Math.min(r, near(kind, room, columns, rows, at, i + 1, j - 1, 1.41));
            }
        }
        for (int j = rows - 1; j >= 0; j--) {
            for (int i = columns - 1; i >= 0; i--) {
                int at = j * columns + i;
                double r = Math.min(room[at], near(kind, room, columns, rows, at, i + 1, j, 1));
                r = Math.min(r, near(kind, room, columns, rows, at, i, j + 1, 1));
                r = Math.min(r, near(kind, room, columns, rows, at, i + 1, j + 1, 1.41));
                room[at] = Math.min(r, near(kind, room, columns, rows, at, i - 1, j + 1, 1.41));
            }
        }
        return room;
    }

    private static double near(int[] kind, double[] room, int columns, int rows, int at, int i, int j, double step) {
        if (i < 0 || j < 0 || i >= columns || j >= rows || kind[j * columns + i] != kind[at]) {
            return step;
        }
        return room[j * columns + i] + step;
    }
}
