// SPDX-License-Identifier: Apache-2.0
package tubwright.engine.trim;

import tubwright.engine.structure.ShellWorkspace;

/**
 * Adds up Σ w ε_i ε_jᵀ of many fields over strain points. Strains of all fields lie side by side, so that the inner loops
 * run over fields; points are gathered in portions that stay in the cache while each sum takes them in at once.
 */
final class GramianSum {
    /** Points of a portion: a multiple of four, the depth of the inner loop. */
    private static final int POINTS = 64;

    /** Sums of a row that are worked on together. */
    private static final int STRIP = 192;

    private static final int STRAINS = ShellWorkspace.STRAINS;
    private static final int FREEDOMS = 24;

    private final int fields;
    /** Displacements of the element at hand, freedoms × fields. */
    private final double[] displacements;
    /** Strains of the points at hand, each 9 × fields. */
    private final double[][] strains;

    private int points;
    /** (6 fields)², (2 fields)² and fields², of each the upper triangle. */
    private final double[] plate;

    private final double[] shear;
    private final double[] drilling;

    GramianSum(int fields) {
        this.fields = fields;
        displacements = new double[FREEDOMS * fields];
        strains = new double[POINTS][STRAINS * fields];
        plate = new double[36 * fields * fields];
        shear = new double[4 * fields * fields];
        drilling = new double[fields * fields];
    }

    /** Sets the displacements of one field at the element to be added next. */
    void field(int field, double[] element, int freedoms) {
        for (int j = 0; j < freedoms; j++) {
            displacements[j * fields + field] = element[j];
        }
    }

    /**
     * Adds the points of an element.
     *
     * @param flip −1 on the left-hand side of the car, where γxy, κxy, γyz change sign
     */
    void add(ShellWorkspace element, double flip) {
        int n = element.freedoms();
        for (int p = 0; p < element.points(); p++) {
            double root = Math.sqrt(element.weight(p));
            double[] operator = element.strainOperator(p);
            double[] to = strains[points];
            java.util.Arrays.fill(to, 0);
            for (int r = 0; r < STRAINS; r++) {
                double sign = r == 2 || r == 5 || r == 7 ? flip * root : root;
                int at = r * fields;
                for (int j = 0; j < n; j++) {
                    double b = sign * operator[r * n + j];
                    if (b != 0) {
                        int from = j * fields;
                        for (int i = 0; i < fields; i++) {
                            to[at + i] += b * displacements[from + i];
                        }
                    }
                }
            }
            if (++points == POINTS) {
                flush();
            }
        }
    }

    private void flush() {
        for (int p = points; p < (points + 3) / 4 * 4; p++) {
            java.util.Arrays.fill(strains[p], 0);
        }
        int depth = (points + 3) / 4 * 4;
        points = 0;
        product(0, 6 * fields, depth, plate);
        product(6 * fields, 2 * fields, depth, shear);
        product(8 * fields, fields, depth, drilling);
    }

    /** Upper triangle of Σ s sᵀ over the points, s = {@code size} strains from {@code first} on. */
    private void product(int first, int size, int depth, double[] sums) {
        for (int strip = 0; strip < size; strip += STRIP) {
            int end = Math.min(size, strip + STRIP);
            for (int a = 0; a < end; a++) {
                int begin = Math.max(a, strip);
                int row = a * size;
                for (int p = 0; p < depth; p += 4) {
                    double[] s0 = strains[p];
                    double[] s1 = strains[p + 1];
                    double[] s2 = strains[p + 2];
                    double[] s3 = strains[p + 3];
                    double f0 = s0[first + a];
                    double f1 = s1[first + a];
                    double f2 = s2[first + a];
                    double f3 = s3[first + a];
                    for (int b = begin; b < end; b++) {
                        int k = first + b;
                        sums[row + b] += f0 * s0[k] + f1 * s1[k] + f2 * s2[k] + f3 * s3[k];
                    }
                }
            }
        }
    }

    /** For every pair of fields i ≤ j, pairs in rows, the 41 numbers of Σ w ε_i ε_jᵀ. */
    double[] pairs() {
        flush();
        double[] result = new double[fields * (fields + 1) / 2 * Constitutive.ENTRIES];
        int at = 0;
        for (int i = 0; i < fields; i++) {
            for (int j = i; j < fields; j++) {
                for (int k = 0; k < Constitutive.ENTRIES; k++) {
                    result[at++] = entry(Constitutive.ROW[k], Constitutive.COLUMN[k], i, j);
                }
            }
        }
        return result;
    }

    private double entry(int row, int column, int i, int j) {
        if (row < 6) {
            return upper(plate, 6 * fields, row * fields + i, column * fields + j);
        }
        if (row < 8) {
            return upper(shear, 2 * fields, (row - 6) * fields + i, (column - 6) * fields + j);
        }
        return upper(drilling, fields, i, j);
    }

    private static double upper(double[] sums, int size, int a, int b) {
        return a <= b ? sums[a * size + b] : sums[b * size + a];
    }
}
