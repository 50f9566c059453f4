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
    private final boolean[] local;
    private final int[] elements;
    private final int[] offset;
    /** One row a case: {@link #KINDS} factors a slot, and the element, point and surface of each. */
    private final double[][] least;

    private final int[][] where;
    private final float[][] means;

    /**
     * @param fields displacements of each case
     * @param regions ready by region
     * @param local per element: at an insert
     */
    PlySweep(Structure structure, List<double[]> fields, LayerStresses[] regions, boolean[] local) {
        this(
                structure,
                fields,
                regions,
                local,
                IntStream.range(0, structure.mesh().elementCount()).toArray());
    }

    /**
     * The same over some of the elements only.
     *
     * @param regions {@link LayerStresses#NONE} where none of the elements lies
     * @param elements in rising order
     */
    PlySweep(Structure structure, List<double[]> fields, LayerStresses[] regions, boolean[] local, int[] elements) {
        this.structure = structure;
        this.elements = elements;
        this.fields = fields;
        this.regions = regions;
        this.local = local;
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
        int count = elements.length;
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
        double[] strains = new double[ShellWorkspace.STRAINS];
        double[] stress = new double[3];
        for (int i = from; i < to; i++) {
            int e = elements[i];
            int region = structure.mesh().elementRegions()[e];
            List<LayerStresses.Slot> slots = regions[region].slots();
            ShellWorkspace w = kernel.strainPoints(e);
            for (int c = 0; c < cases; c++) {
                double[] u = kernel.displacements(e, fields.get(c));
                for (int p = 0; p < w.points(); p++) {
                    w.strainAt(p, u, strains);
                    for (int k = 0; k < STRAINS; k++) {
                        means[c][STRAINS * e + k] += (float) (strains[k] / w.points());
                    }
                    for (int s = 0; s < slots.size(); s++) {
                        LayerStresses.Slot slot = slots.get(s);
                        int at = offset[region] + KINDS * s + (local[e] ? 2 : 0);
                        for (int side = 0; side < 2; side++) {
                            slot.stress(strains, side, stress);
                            double[] r = slot.residual();
                            int q = 3 * side;
                            int lowered = slot.criterion()
                                    .lower(stress[0], stress[1], stress[2], r[q], r[q + 1], r[q + 2], found[c], at);
                            for (int k = 0; k < 2; k++) {
                                if ((lowered & 1 << k) != 0) {
                                    found[cases + c][at + k] = 8.0 * e + 2 * p + side;
                                }
                            }
                        }
                    }
                }
            }
        }
        return found;
    }
}
