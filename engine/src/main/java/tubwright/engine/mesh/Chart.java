// SPDX-License-Identifier: Apache-2.0
package tubwright.engine.mesh;

/**
 * A flat map of half a skin or half a wall. Its coordinates (a, b) count cells of the base grid, so that every base cell
 * is the unit square; positions are those of the right half (y not negative) except for walls along the car.
 */
interface Chart {
    /** Cells along a. */
    int cellsA();

    /** Cells along b. */
    int cellsB();

    /** Position in space of a point of the chart. */
    void position(double a, double b, double[] xyz);

    /** How firmly nodes are held on the line a = i. */
    Hold holdA(int i);

    /** How firmly nodes are held on the line b = j. */
    Hold holdB(int j);

    /** How firmly nodes are held on a grid line. */
    enum Hold {
        /** An ordinary grid line. */
        NONE,
        /** Smoothing stays on it, a curve may take nodes off it. */
        SOFT,
        /** A boundary of zones or a crease: a curve that runs close by may take nodes off it, no more. */
        HARD,
        /** Edge of the chart: nodes never leave it. */
        EDGE
    }
}
