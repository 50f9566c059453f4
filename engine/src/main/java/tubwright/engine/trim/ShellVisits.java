// SPDX-License-Identifier: Apache-2.0
package tubwright.engine.trim;

import java.util.Arrays;
import java.util.List;
import java.util.stream.IntStream;
import tubwright.engine.structure.ShellKernel;
import tubwright.engine.structure.ShellWorkspace;
import tubwright.engine.structure.Structure;

/**
 * Visits the shells of blocks: Gramians of strain fields and forces of changed laminates, in the axes of the right-hand
 * side of the car. Safe to use from several threads.
 */
final class ShellVisits {
    private static final int STRAINS = ShellWorkspace.STRAINS;

    /** Elements of a block are visited in portions of so many, each by one thread. */
    private static final int PORTION = 256;

    private final Structure structure;
    private final Blocks blocks;
    private final ThreadLocal<ShellKernel> kernels;
    private final boolean[] mirrored;

    ShellVisits(Structure structure, Blocks blocks) {
        this.structure = structure;
        this.blocks = blocks;
        kernels = ThreadLocal.withInitial(() -> new ShellKernel(structure));
        mirrored = new boolean[structure.mesh().regions().size()];
        for (int r = 0; r < mirrored.length; r++) {
            mirrored[r] = structure.mesh().regions().get(r).mirrored();
        }
    }

    private double flip(int element) {
        return mirrored[structure.mesh().elementRegions()[element]] ? -1 : 1;
    }

    /**
     * Strain Gramians of a block: for every pair of fields i ≤ j, pairs in rows, the 41 numbers of Σ w ε_i ε_jᵀ.
     *
     * @param fields displacements, 6 per node
     */
    double[] gramians(int block, double[]... fields) {
        GramianSum sum = new GramianSum(fields.length);
        ShellKernel kernel = kernels.get();
        for (int e : blocks.elements(block)) {
            ShellWorkspace points = kernel.strainPoints(e);
            for (int i = 0; i < fields.length; i++) {
                sum.field(i, kernel.displacements(e, fields[i]), points.freedoms());
            }
            sum.add(points, flip(e));
        }
        return sum.pairs();
    }

    /** Those between one field and many: for each of the others, in their order, Σ w ε_other ε_fieldᵀ. */
    double[] gramiansWith(int block, double[] field, List<double[]> others) {
        double[] sums = new double[others.size() * Constitutive.ENTRIES];
        double[] strains = new double[0];
        double[] one = new double[STRAINS];
        ShellKernel kernel = kernels.get();
        for (int e : blocks.elements(block)) {
            ShellWorkspace points = kernel.strainPoints(e);
            int n = points.points();
            strains = strains.length == n * STRAINS ? strains : new double[n * STRAINS];
            double[] local = kernel.displacements(e, field);
            for (int p = 0; p < n; p++) {
                points.strainAt(p, local, one);
                mirror(one, flip(e));
                for (int r = 0; r < STRAINS; r++) {
                    strains[STRAINS * p + r] = points.weight(p) * one[r];
                }
            }
            for (int i = 0; i < others.size(); i++) {
                local = kernel.displacements(e, others.get(i));
                for (int p = 0; p < n; p++) {
                    points.strainAt(p, local, one);
                    mirror(one, flip(e));
                    for (int k = 0; k < Constitutive.ENTRIES; k++) {
                        sums[i * Constitutive.ENTRIES + k] +=
                                one[Constitutive.ROW[k]] * strains[STRAINS * p + Constitutive.COLUMN[k]];
                    }
                }
            }
        }
        return sums;
    }

    /** Gramians of several blocks, side by side. */
    double[][] gramians(int[] of, double[]... fields) {
        double[][] result = new double[of.length][];
        IntStream.range(0, of.length).parallel().forEach(k -> result[k] = gramians(of[k], fields));
        return result;
    }

    /**
     * Adds Σ w Bᵀ ΔC B u of a block to forces.
     *
     * @param weight 41 numbers more: the sum Σ w εᵀ weight ε of the same field is returned
     */
    double forces(int block, double[] step, double[] weight, double[] u, double[] forces) {
        int[] elements =
                blocks.elements(block).stream().mapToInt(Integer::intValue).toArray();
        int portions = (elements.length + PORTION - 1) / PORTION;
        if (portions <= 1) {
            return forces(elements, 0, elements.length, step, weight, u, forces);
        }
        double[][] parts = new double[portions][];
        double[] sums = new double[portions];
        int[] nodes = structure.mesh().elementNodes();
        IntStream.range(0, portions).parallel().forEach(k -> {
            int to = Math.min(elements.length, (k + 1) * PORTION);
            // Each portion gathers its elements' forces by themselves; adding them up in order keeps the sum
            // repeatable.
            parts[k] = new double[(to - k * PORTION) * 24];
            sums[k] = local(elements, k * PORTION, to, step, weight, u, parts[k]);
        });
        double sum = 0;
        for (int k = 0; k < portions; k++) {
            sum += sums[k];
            for (int i = k * PORTION; i < Math.min(elements.length, (k + 1) * PORTION); i++) {
                scatter(elements[i], nodes, parts[k], 24 * (i - k * PORTION), forces);
            }
        }
        return sum;
    }

    private double forces(
            int[] elements, int from, int to, double[] step, double[] weight, double[] u, double[] forces) {
        double[] local = new double[24 * (to - from)];
        double sum = local(elements, from, to, step, weight, u, local);
        for (int i = from; i < to; i++) {
            scatter(elements[i], structure.mesh().elementNodes(), local, 24 * (i - from), forces);
        }
        return sum;
    }

    private void scatter(int e, int[] nodes, double[] local, int at, double[] forces) {
        int n = 6 * structure.mesh().cornerCount(e);
        for (int j = 0; j < n; j++) {
            forces[6 * nodes[4 * e + j / 6] + j % 6] += local[at + j];
        }
    }

    private double local(int[] elements, int from, int to, double[] step, double[] weight, double[] u, double[] local) {
        double[] strain = new double[STRAINS];
        double[] stress = new double[STRAINS];
        ShellKernel kernel = kernels.get();
        double sum = 0;
        for (int i = from; i < to; i++) {
            int e = elements[i];
            ShellWorkspace points = kernel.strainPoints(e);
            double[] displacements = kernel.displacements(e, u);
            int n = points.freedoms();
            double flip = flip(e);
            int at = 24 * (i - from);
            for (int p = 0; p < points.points(); p++) {
                points.strainAt(p, displacements, strain);
                mirror(strain, flip);
                Arrays.fill(stress, 0);
                double energy = 0;
                for (int k = 0; k < Constitutive.ENTRIES; k++) {
                    int r = Constitutive.ROW[k];
                    int c = Constitutive.COLUMN[k];
                    stress[r] += step[k] * strain[c];
                    energy += weight[k] * strain[r] * strain[c];
                }
                sum += points.weight(p) * energy;
                mirror(stress, flip);
                double[] operator = points.strainOperator(p);
                for (int r = 0; r < STRAINS; r++) {
                    double s = points.weight(p) * stress[r];
                    for (int j = 0; j < n; j++) {
                        local[at + j] += s * operator[r * n + j];
                    }
                }
            }
        }
        return sum;
    }

    /**
     * Adds Σ w Bᵀ C h of a block to forces, h the {@linkplain ShellWorkspace#slopeProducts slope products} of a mode: the
     * gradient of φᵀK_Gφ by the displacements that make the membrane forces.
     */
    void slopeForces(int block, double[] laminate, double[] mode, double[] forces) {
        double[] products = new double[3];
        ShellKernel kernel = kernels.get();
        int[] nodes = structure.mesh().elementNodes();
        for (int e : blocks.elements(block)) {
            ShellWorkspace points = kernel.strainPoints(e);
            int n = points.freedoms();
            double flip = flip(e);
            double[] local = kernel.displacements(e, mode).clone();
            for (int p = 0; p < points.points(); p++) {
                points.slopeProducts(p, local, products);
                products[2] *= flip;
                double[] operator = points.strainOperator(p);
                for (int r = 0; r < 6; r++) {
                    double stress = 0;
                    for (int c = 0; c < 3; c++) {
                        stress += laminate[6 * r + c] * products[c];
                    }
                    double s = points.weight(p) * stress * (r == 2 || r == 5 ? flip : 1);
                    for (int j = 0; j < n; j++) {
                        forces[6 * nodes[4 * e + j / 6] + j % 6] += s * operator[r * n + j];
                    }
                }
            }
        }
    }

    /** Σ w h ε(u)ᵀ of a block as 41 numbers, h the slope products of a mode in the place of εx, εy, γxy. */
    double[] slopeGramian(int block, double[] mode, double[] u) {
        double[] sum = new double[Constitutive.ENTRIES];
        double[] products = new double[3];
        double[] strain = new double[STRAINS];
        ShellKernel kernel = kernels.get();
        for (int e : blocks.elements(block)) {
            ShellWorkspace points = kernel.strainPoints(e);
            double flip = flip(e);
            for (int p = 0; p < points.points(); p++) {
                points.slopeProducts(p, kernel.displacements(e, mode), products);
                products[2] *= flip;
                points.strainAt(p, kernel.displacements(e, u), strain);
                mirror(strain, flip);
                for (int r = 0; r < 3; r++) {
                    for (int c = 0; c < 6; c++) {
                        sum[6 * r + c] += points.weight(p) * products[r] * strain[c];
                    }
                }
            }
        }
        return sum;
    }

    /** Across the car γxy, κxy and γyz change sign (and drilling, which only counts squared). */
    private static void mirror(double[] s, double flip) {
        s[2] *= flip;
        s[5] *= flip;
        s[7] *= flip;
    }
}
