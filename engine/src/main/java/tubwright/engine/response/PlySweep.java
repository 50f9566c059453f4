// SPDX-License-Identifier: Apache-2.0
package tubwright.engine.response;

import java.util.Arrays;
import java.util.List;
import java.util.stream.IntStream;
import tubwright.engine.structure.ShellKernel;
import tubwright.engine.structure.ShellWorkspace;
import tubwright.engine.structure.Structure;

/**
 * Goes once over all shells of a structure and keeps, for each case and each slot of each region, the lowest factors and
 * where they are. Streams: no stress is stored. For sandwiches the mean strains of each element are kept.
 */
final class PlySweep {
    /** Fibres and between fibres, away from inserts and at inserts. */
    static final int KINDS = 4;

    private static final int STRAINS = 8;
    private static final int CHUNKS = 16;

    private final Structure structure;
    private final List<double[]> fields;
    private final LayerStresses[] regions;
    private final Resolution resolution;
    private final int[] elements;
    private final int[] offset;
    /** One row a case: {@link #KINDS} factors a slot, and the element, point and surface of each. */
    private final double[][] least;

    private final int[][] where;
    private final float[][] means;
    /** Lowest factor of each element's fibres over all cases, and its case, slot, and point and surface. */
    private final float[] lowest;

    private final int[] lowestCase;
    private final int[] lowestSlot;
    private final byte[] lowestAt;

    /**
     * @param fields displacements of each case
     * @param regions ready by region
     * @param resolution where margins depend on the mesh
     */
    PlySweep(Structure structure, List<double[]> fields, LayerStresses[] regions, Resolution resolution) {
        this(
                structure,
                fields,
                regions,
                resolution,
                IntStream.range(0, structure.mesh().elementCount()).toArray());
    }

    /**
     * The same over some of the elements only.
     *
     * @param regions {@link LayerStresses#NONE} where none of the elements lies
     * @param elements in rising order
     */
    PlySweep(
            Structure structure,
            List<double[]> fields,
            LayerStresses[] regions,
            Resolution resolution,
            int[] elements) {
        this.structure = structure;
        this.elements = elements;
        this.fields = fields;
        this.regions = regions;
        this.resolution = resolution;
        offset = new int[regions.length + 1];
        for (int r = 0; r < regions.length; r++) {
            offset[r + 1] = offset[r] + KINDS * regions[r].slots().size();
        }
        least = new double[fields.size()][offset[regions.length]];
        where = new int[fields.size()][offset[regions.length]];
        means = new float[fields.size()][STRAINS * structure.mesh().elementCount()];
        for (double[] each : least) {
            Arrays.fill(each, Double.POSITIVE_INFINITY);
        }
        int all = structure.mesh().elementCount();
        int count = elements.length;
        lowest = new float[all];
        lowestCase = new int[all];
        lowestSlot = new int[all];
        lowestAt = new byte[all];
        Arrays.fill(lowest, Float.POSITIVE_INFINITY);
        List<double[][]> found = IntStream.range(0, CHUNKS)
                .parallel()
                .mapToObj(k -> sweep((int) ((long) count * k / CHUNKS), (int) ((long) count * (k + 1) / CHUNKS)))
                .toList();
        // In order of the chunks and only where lower, so that the outcome does not depend on who was first.
        for (double[][] chunk : found) {
            for (int c = 0; c < least.length; c++) {
                for (int i = 0; i < least[c].length; i++) {
                    if (chunk[c][i] < least[c][i]) {
                        least[c][i] = chunk[c][i];
                        where[c][i] = (int) chunk[least.length + c][i];
                    }
                }
            }
        }
    }

    /** Lowest factor of a case at a slot of a region. */
    double least(int c, int region, int slot, int kind) {
        return least[c][offset[region] + KINDS * slot + kind];
    }

    /** Where: 8 times the element, plus twice the point, plus the surface (0 outer, 1 inner). */
    int where(int c, int region, int slot, int kind) {
        return where[c][offset[region] + KINDS * slot + kind];
    }

    /** Lowest factor of an element's fibres over all cases; infinite if nothing fails. */
    double lowest(int element) {
        return lowest[element];
    }

    /** Case of {@link #lowest}. */
    int lowestCase(int element) {
        return lowestCase[element];
    }

    /** Slot of {@link #lowest}. */
    int lowestSlot(int element) {
        return lowestSlot[element];
    }

    /** Where {@link #lowest} was found, as {@link #where}. */
    int lowestWhere(int element) {
        return 8 * element + lowestAt[element];
    }

    /** Mean strains (εx, εy, γxy, κx, κy, κxy, γxz, γyz) of an element. */
    double[] mean(int c, int element) {
        double[] mean = new double[STRAINS];
        for (int i = 0; i < STRAINS; i++) {
            mean[i] = means[c][STRAINS * element + i];
        }
        return mean;
    }

    private double[][] sweep(int from, int to) {
        int cases = fields.size();
        double[][] found = new double[2 * cases][offset[regions.length]];
        for (int c = 0; c < cases; c++) {
            Arrays.fill(found[c], Double.POSITIVE_INFINITY);
        }
        ShellKernel kernel = new ShellKernel(structure);
        double[][] strains = new double[4][ShellWorkspace.STRAINS];
        double[] stress = new double[3];
        double[] least = new double[2];
        int[] at = new int[2];
        for (int i = from; i < to; i++) {
            int e = elements[i];
            int region = structure.mesh().elementRegions()[e];
            List<LayerStresses.Slot> slots = regions[region].slots();
            ShellWorkspace w = kernel.strainPoints(e);
            int points = w.points();
            int kind = resolution.doubtful(e) ? 2 : 0;
            for (int c = 0; c < cases; c++) {
                double[] u = kernel.displacements(e, fields.get(c));
                for (int p = 0; p < points; p++) {
                    w.strainAt(p, u, strains[p]);
                    for (int k = 0; k < STRAINS; k++) {
                        means[c][STRAINS * e + k] += (float) (strains[p][k] / points);
                    }
                }
                for (int s = 0; s < slots.size(); s++) {
                    LayerStresses.Slot slot = slots.get(s);
                    Arrays.fill(least, Double.POSITIVE_INFINITY);
                    for (int p = 0; p < points; p++) {
                        for (int side = 0; side < 2; side++) {
                            slot.stress(strains[p], side, stress);
                            double[] r = slot.residual();
                            int q = 3 * side;
                            int lowered = slot.criterion()
                                    .lower(stress[0], stress[1], stress[2], r[q], r[q + 1], r[q + 2], least, 0);
                            for (int k = 0; k < 2; k++) {
                                if ((lowered & 1 << k) != 0) {
                                    at[k] = 2 * p + side;
                                }
                            }
                        }
                    }
                    keep(found, cases, c, e, s, offset[region] + KINDS * s + kind, least, at);
                }
            }
        }
        return found;
    }

    private void keep(double[][] found, int cases, int c, int e, int slot, int place, double[] least, int[] at) {
        for (int k = 0; k < 2; k++) {
            if (least[k] < found[c][place + k]) {
                found[c][place + k] = least[k];
                found[cases + c][place + k] = 8.0 * e + at[k];
            }
        }
        if (least[0] < lowest[e]) {
            lowest[e] = (float) least[0];
            lowestCase[e] = c;
            lowestSlot[e] = slot;
            lowestAt[e] = (byte) at[0];
        }
    }
}
