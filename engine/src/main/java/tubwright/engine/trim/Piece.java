// SPDX-License-Identifier: Apache-2.0
package tubwright.engine.trim;

import java.util.List;

/**
 * A block of shells, or a joint, whose stiffness the sites decide: a zone's site first, then those of the patches on it.
 * Stiffness is tabled for every combination of their candidates, the last site's running fastest. For a joint the
 * tables hold one number, the share of its designed stiffness.
 *
 * @param block index of the block, or -1 for a joint
 * @param part index of the joint's part, or -1 for a block
 * @param sites indices of the sites
 * @param sizes number of candidates of each
 * @param stiffness by combination
 * @param flexibility its inverses
 */
record Piece(int block, int part, int[] sites, int[] sizes, double[][] stiffness, double[][] flexibility) {
    /** Numbers of a Gramian. */
    int entries() {
        return block >= 0 ? Constitutive.ENTRIES : 1;
    }

    /** Stiffness as designed. */
    double[] nominal(LoadedTub tub) {
        return block >= 0 ? tub.laminate(block) : new double[] {1};
    }

    /** Strain Gramians of a field with others, side by side. */
    double[] gramiansWith(LoadedTub tub, double[] field, List<double[]> others) {
        if (block >= 0) {
            return tub.gramiansWith(block, field, others);
        }
        double[] work = new double[others.size()];
        for (int i = 0; i < work.length; i++) {
            work[i] = tub.members().between(part, others.get(i), field);
        }
        return work;
    }

    /** C G C: the stress Gramian of strains under a stiffness. */
    double[] stresses(double[] c, double[] g) {
        return block >= 0 ? Constitutive.product(Constitutive.product(c, g), c) : new double[] {c[0] * g[0] * c[0]};
    }

    double trace(double[] c, double[] g) {
        double sum = 0;
        for (int k = 0; k < c.length; k++) {
            sum += c[k] * g[k];
        }
        return sum;
    }

    /** Which combination a choice makes. */
    int combination(int[] choice) {
        int at = 0;
        for (int i = 0; i < sites.length; i++) {
            at = at * sizes[i] + choice[sites[i]];
        }
        return at;
    }

    /** Whether all candidates of a combination are among those allowed. */
    boolean allowed(int combination, boolean[] allowed, int[] offset) {
        int rest = combination;
        boolean may = true;
        for (int i = sites.length - 1; i >= 0; i--) {
            may &= allowed[offset[sites[i]] + rest % sizes[i]];
            rest /= sizes[i];
        }
        return may;
    }

    /** Stiffness of a mixture of candidates; of whole choices that of the choice. */
    double[] mixed(double[] mixture, int[] offset) {
        double[] sum = new double[entries()];
        mix(mixture, offset, 0, 0, 1, sum);
        return sum;
    }

    private void mix(double[] mixture, int[] offset, int i, int at, double share, double[] sum) {
        if (i == sites.length) {
            double[] c = stiffness[at];
            for (int k = 0; k < sum.length; k++) {
                sum[k] += share * c[k];
            }
            return;
        }
        for (int k = 0; k < sizes[i]; k++) {
            double s = mixture[offset[sites[i]] + k];
            if (s > 0) {
                mix(mixture, offset, i + 1, at * sizes[i] + k, share * s, sum);
            }
        }
    }

    /**
     * Adds to a row coefficients whose sum over any whole choice is at least tr(C G) of that choice, and equal to it
     * where the patches are as in {@code about}. One site alone is simply tabled. Of several, t(k, p₁, p₂) ≤ t(k, a₁, a₂)
     * + max_k [t(k, p₁, a₂) − t(k, a₁, a₂)] + max_k,p₁ [t(k, p₁, p₂) − t(k, p₁, a₂)].
     *
     * @param table stiffness or flexibility
     * @param about choice where it is to be exact
     * @param sign 1 to add, -1 to take away
     */
    void majorant(double[][] table, double[] g, int[] about, int[] offset, double sign, double[] row) {
        double[] t = new double[table.length];
        for (int c = 0; c < t.length; c++) {
            t[c] = trace(table[c], g);
        }
        int after = 1;
        for (int i = sites.length - 1; i > 0; i--) {
            // The sites behind i are held as in `about`; all before it run free.
            int tail = 0;
            for (int j = i + 1; j < sites.length; j++) {
                tail = tail * sizes[j] + about[sites[j]];
            }
            int before = table.length / (after * sizes[i]);
            for (int p = 0; p < sizes[i]; p++) {
                double most = Double.NEGATIVE_INFINITY;
                for (int b = 0; b < before; b++) {
                    double with = t[(b * sizes[i] + p) * after + tail];
                    double without = t[(b * sizes[i] + about[sites[i]]) * after + tail];
                    most = Math.max(most, with - without);
                }
                row[offset[sites[i]] + p] += sign * most;
            }
            after *= sizes[i];
        }
        int tail = 0;
        for (int j = 1; j < sites.length; j++) {
            tail = tail * sizes[j] + about[sites[j]];
        }
        for (int k = 0; k < sizes[0]; k++) {
            row[offset[sites[0]] + k] += sign * t[k * after + tail];
        }
    }
}
