// SPDX-License-Identifier: Apache-2.0
package tubwright.engine.response;

import java.util.Arrays;
import java.util.List;
import java.util.stream.IntStream;
import tubwright.engine.structure.ShellKernel;
import tubwright.engine.structure.ShellWorkspace;
import tubwright.engine.structure.Structure;

/**
 * Goes once over all shells of a structure and keeps, for each case and each criterion of each region, the lowest factors
 * and where they are. Streams: no stress is stored. For sandwiches the mean strains of each element are kept.
 *
 * <p>A factor is worked out only where it may be lower than the lowest found so far: of plies alike, the two outermost
 * surfaces are tried at that factor first, and clear nearly always. What is found is the same as without.
 */
final class PlySweep {
    /** Fibres and between fibres, away from inserts and at inserts. */
    static final int KINDS = 4;

    private static final int STRAINS = 8;
    private static final int CHUNKS = 16;

    private final Structure structure;
    private final List<double[]> fields;
    private final LayerStresses[] regions;
    private final LayerStresses.Alike[][] alike;
    private final LayerStresses.Slot[][] slots;
    private final Resolution resolution;
    private final boolean mapped;
    private final int[] elements;
    private final int[] offset;
    private final Found found;
    private final float[][] means;
    /** Of each element, if wanted. */
    private final Lowest[] lowest;

    /** Lowest factor of an element's fibres over all cases so far, and its case, slot, and point and surface. */
    private static final class Lowest {
        private double factor = Double.POSITIVE_INFINITY;
        private int c;
        private int slot;
        private int where;

        void take(double found, int ofCase, int ofSlot, int place) {
            if (found < factor || (found == factor && ofCase == c && ofSlot < slot)) {
                factor = found;
                c = ofCase;
                slot = ofSlot;
                where = place;
            }
        }
    }

    /**
     * One row a case: {@link #KINDS} factors a criterion of a region, with the slot, and the element, point and surface of
     * each.
     */
    private record Found(double[][] least, int[][] slot, int[][] where) {
        Found(int cases, int width) {
            this(new double[cases][width], new int[cases][width], new int[cases][width]);
            for (double[] each : least) {
                Arrays.fill(each, Double.POSITIVE_INFINITY);
            }
        }

        /** Of equal factors that of the outer slot stays, then that found first. */
        void take(int c, int at, double factor, int ofSlot, int place) {
            if (factor < least[c][at]
                    || (factor == least[c][at] && factor < Double.POSITIVE_INFINITY && ofSlot < slot[c][at])) {
                least[c][at] = factor;
                slot[c][at] = ofSlot;
                where[c][at] = place;
            }
        }
    }

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
                IntStream.range(0, structure.mesh().elementCount()).toArray(),
                true);
    }

    /**
     * The same over some of the elements only, without the lowest of each.
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
        this(structure, fields, regions, resolution, elements, false);
    }

    private PlySweep(
            Structure structure,
            List<double[]> fields,
            LayerStresses[] regions,
            Resolution resolution,
            int[] elements,
            boolean mapped) {
        this.structure = structure;
        this.elements = elements;
        this.fields = fields;
        this.regions = regions;
        this.resolution = resolution;
        this.mapped = mapped;
        alike = Arrays.stream(regions)
                .map(r -> r.alike().toArray(LayerStresses.Alike[]::new))
                .toArray(LayerStresses.Alike[][]::new);
        slots = Arrays.stream(regions)
                .map(r -> r.slots().toArray(LayerStresses.Slot[]::new))
                .toArray(LayerStresses.Slot[][]::new);
        offset = new int[regions.length + 1];
        for (int r = 0; r < regions.length; r++) {
            offset[r + 1] = offset[r] + KINDS * regions[r].checks().size();
        }
        found = new Found(fields.size(), offset[regions.length]);
        means = new float[fields.size()][STRAINS * elements.length];
        lowest = new Lowest[mapped ? structure.mesh().elementCount() : 0];
        int count = elements.length;
        List<Found> chunks = IntStream.range(0, CHUNKS)
                .parallel()
                .mapToObj(k -> sweep((int) ((long) count * k / CHUNKS), (int) ((long) count * (k + 1) / CHUNKS)))
                .toList();
        // In order of the chunks, so that the outcome does not depend on who was first.
        for (Found chunk : chunks) {
            for (int c = 0; c < fields.size(); c++) {
                for (int i = 0; i < offset[regions.length]; i++) {
                    found.take(c, i, chunk.least[c][i], chunk.slot[c][i], chunk.where[c][i]);
                }
            }
        }
    }

    /** Lowest factor of a case by a criterion of a region. */
    double least(int c, int region, int check, int kind) {
        return found.least[c][offset[region] + KINDS * check + kind];
    }

    /** The slot it was found in. */
    int slot(int c, int region, int check, int kind) {
        return found.slot[c][offset[region] + KINDS * check + kind];
    }

    /** Where: 8 times the element, plus twice the point, plus the surface (0 outer, 1 inner). */
    int where(int c, int region, int check, int kind) {
        return found.where[c][offset[region] + KINDS * check + kind];
    }

    /** Lowest factor of an element's fibres over all cases; infinite if nothing fails. */
    double lowest(int element) {
        return lowest[element].factor;
    }

    /** Case of {@link #lowest}. */
    int lowestCase(int element) {
        return lowest[element].c;
    }

    /** Slot of {@link #lowest}. */
    int lowestSlot(int element) {
        return lowest[element].slot;
    }

    /** Where {@link #lowest} was found, as {@link #where}. */
    int lowestWhere(int element) {
        return lowest[element].where;
    }

    /** Mean strains (εx, εy, γxy, κx, κy, κxy, γxz, γyz) of an element. */
    double[] mean(int c, int element) {
        double[] mean = new double[STRAINS];
        for (int i = 0; i < STRAINS; i++) {
            mean[i] = means[c][STRAINS * place(element) + i];
        }
        return mean;
    }

    /** Place of an element in the list of those gone over. */
    private int place(int element) {
        return mapped ? element : Arrays.binarySearch(elements, element);
    }

    private Found sweep(int from, int to) {
        Pass pass = new Pass();
        for (int i = from; i < to; i++) {
            pass.element(elements[i]);
        }
        return pass.own;
    }

    private static boolean clear(
            LayerStresses.Alike each, double[] outer, double[] inner, double fibre, double between) {
        if (!each.bounded()) {
            return false;
        }
        var criterion = each.first().criterion();
        double[] r = each.first().residual();
        double[] s = each.last().residual();
        return criterion.clears(outer[0], outer[1], outer[2], r[0], r[1], r[2], fibre, between)
                && criterion.clears(inner[0], inner[1], inner[2], s[3], s[4], s[5], fibre, between);
    }

    /** One thread's way over some elements, in short methods, which are soon compiled. */
    private final class Pass {
        private final Found own = new Found(fields.size(), offset[regions.length]);
        private final ShellKernel kernel = new ShellKernel(structure);
        private final double[] strains = new double[ShellWorkspace.STRAINS];
        private final double[] outer = new double[3];
        private final double[] inner = new double[3];
        private final double[] both = new double[2];

        void element(int e) {
            int region = structure.mesh().elementRegions()[e];
            int first = offset[region] + (resolution.doubtful(e) ? 2 : 0);
            Lowest here = new Lowest();
            if (mapped) {
                lowest[e] = here;
            }
            ShellWorkspace w = kernel.strainPoints(e);
            int at = STRAINS * place(e);
            for (int c = 0; c < fields.size(); c++) {
                double[] u = kernel.displacements(e, fields.get(c));
                for (int p = 0; p < w.points(); p++) {
                    w.strainAt(p, u, strains);
                    for (int k = 0; k < STRAINS; k++) {
                        means[c][at + k] += (float) (strains[k] / w.points());
                    }
                    point(region, here, c, first, 8 * e + 2 * p);
                }
            }
        }

        private void point(int region, Lowest here, int c, int first, int place) {
            double[] least = own.least[c];
            LayerStresses.Slot last = null;
            for (LayerStresses.Alike each : alike[region]) {
                int at = first + KINDS * each.check();
                if (last == null || each.first().layer() != last.layer()) {
                    each.first().stress(strains, 0, outer);
                    each.last().stress(strains, 1, inner);
                    last = each.first();
                }
                double fibre = mapped ? Math.max(least[at], here.factor) : least[at];
                if (!clear(each, outer, inner, fibre, least[at + 1])) {
                    examine(each, region, here, c, at, place);
                    last = null;
                }
            }
        }

        private void examine(LayerStresses.Alike alike, int region, Lowest here, int c, int at, int place) {
            for (int s : alike.slots()) {
                LayerStresses.Slot slot = slots[region][s];
                double[] r = slot.residual();
                for (int side = 0; side < 2; side++) {
                    slot.stress(strains, side, inner);
                    Arrays.fill(both, Double.POSITIVE_INFINITY);
                    int q = 3 * side;
                    slot.criterion().lower(inner[0], inner[1], inner[2], r[q], r[q + 1], r[q + 2], both, 0);
                    own.take(c, at, both[0], s, place + side);
                    own.take(c, at + 1, both[1], s, place + side);
                    here.take(both[0], c, s, place + side);
                }
            }
        }
    }
}
