// SPDX-License-Identifier: Apache-2.0
package tubwright.engine.mesh;

import tubwright.engine.shape.PlacedWall;

/** A wall's own plane, cells of one size; the right half only for a wall across the car. */
final class WallChart implements Chart {
    final PlacedWall wall;
    private final double[] origin;
    private final double[] alongA;
    private final double[] alongB;
    private final double fromA;
    private final double fromB;
    private final double stepA;
    private final double stepB;
    private final int cellsA;
    private final int cellsB;
    private final boolean edgeTop;
    private final boolean edgeBottom;

    WallChart(PlacedWall wall, double size) {
        this.wall = wall;
        double[] bounds = wall.bounds();
        origin = wall.position(0, 0);
        alongA = wall.alongA();
        alongB = wall.alongB();
        double a0 = wall.across() ? 0 : bounds[0];
        int na = Math.max(1, (int) Math.ceil((bounds[1] - a0) / size - 0.25));
        int nb = Math.max(1, (int) Math.ceil((bounds[3] - bounds[2]) / size - 0.25));
        stepA = (bounds[1] - a0) / na;
        stepB = (bounds[3] - bounds[2]) / nb;
        // Where the panel runs to the skin a row of spare cells lies beyond its bounds.
        edgeBottom = wall.straightBottom();
        edgeTop = wall.straightTop();
        fromA = a0;
        fromB = bounds[2] - (edgeBottom ? 0 : stepB);
        cellsA = na + (wall.across() ? 1 : 0);
        cellsB = nb + (edgeBottom ? 0 : 1) + (edgeTop ? 0 : 1);
    }

    @Override
    public int cellsA() {
        return cellsA;
    }

    @Override
    public int cellsB() {
        return cellsB;
    }

    @Override
    public void position(double a, double b, double[] xyz) {
        double ca = fromA + a * stepA;
        double cb = fromB + b * stepB;
        xyz[0] = origin[0] + ca * alongA[0] + cb * alongB[0];
        xyz[1] = origin[1] + ca * alongA[1] + cb * alongB[1];
        xyz[2] = origin[2] + ca * alongA[2] + cb * alongB[2];
    }

    @Override
    public Hold holdA(int i) {
        boolean edge = i == 0 || i == cellsA && !wall.across();
        return edge ? Hold.EDGE : Hold.NONE;
    }

    @Override
    public Hold holdB(int j) {
        return j == 0 && edgeBottom || j == cellsB && edgeTop ? Hold.EDGE : Hold.NONE;
    }
}
