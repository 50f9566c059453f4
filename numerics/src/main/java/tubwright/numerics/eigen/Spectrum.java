// SPDX-License-Identifier: Apache-2.0
package tubwright.numerics.eigen;

import tubwright.numerics.Analysis;
import tubwright.numerics.Factorisation;
import tubwright.numerics.SingularMatrixException;
import tubwright.numerics.SymmetricMatrix;

/** Small questions about lists of eigenvalues and pairs. */
final class Spectrum {
    private static final double CLUSTER = 1e-7;

    private Spectrum() {}

    /**
     * Where to count: in the widest gap after the values asked for, or a little beyond the last.
     *
     * @param bound the place
     * @param below how many of the values are below it
     */
    record Cut(double bound, int below) {}

    /**
     * Chooses where to count.
     *
     * @param values rising
     * @param count how many are asked for
     * @param origin from which distances are measured, below all values
     */
    static Cut cut(double[] values, int count, double origin) {
        int best = -1;
        double widest = CLUSTER;
        for (int i = count - 1; i + 1 < values.length; i++) {
            double gap = (values[i + 1] - values[i]) / (values[i + 1] - origin);
            if (gap > widest) {
                widest = gap;
                best = i;
            }
        }
        if (best >= 0) {
            return new Cut(0.5 * (values[best] + values[best + 1]), best + 1);
        }
        double last = values[values.length - 1];
        return new Cut(last + 1e-5 * (last - origin), values.length);
    }

    /**
     * Negative pivots of K + factor M. A pivot that vanishes by chance is passed by moving the factor a little.
     *
     * @throws SingularMatrixException if moving does not help
     */
    static int negativePivots(Analysis analysis, SymmetricMatrix k, double factor, SymmetricMatrix m) {
        for (int attempt = 0; ; attempt++) {
            try (Factorisation at = analysis.factorise(k.plus(factor * (1 + 1e-8 * attempt), m))) {
                return at.negativePivots();
            } catch (SingularMatrixException e) {
                if (attempt == 3) {
                    throw e;
                }
            }
        }
    }

    /** Normwise backward error of K x = λ M x for each pair. */
    static double[] errors(SymmetricMatrix k, SymmetricMatrix m, double[] values, double[][] vectors) {
        double[] errors = new double[values.length];
        double[][] kx = k.multiply(vectors);
        double[][] mx = m.multiply(vectors);
        double[][] sizes = new double[vectors.length][];
        for (int p = 0; p < sizes.length; p++) {
            sizes[p] = vectors[p].clone();
            for (int i = 0; i < sizes[p].length; i++) {
                sizes[p][i] = Math.abs(sizes[p][i]);
            }
        }
        double[][] sizeK = Factorisation.magnitudes(k).multiply(sizes);
        double[][] sizeM = Factorisation.magnitudes(m).multiply(sizes);
        for (int p = 0; p < errors.length; p++) {
            double worst = 0;
            double scale = 0;
            for (int i = 0; i < kx[p].length; i++) {
                worst = Math.max(worst, Math.abs(kx[p][i] - values[p] * mx[p][i]));
                scale = Math.max(scale, sizeK[p][i] + Math.abs(values[p]) * sizeM[p][i]);
            }
            errors[p] = scale == 0 ? 0 : worst / scale;
        }
        return errors;
    }
}
