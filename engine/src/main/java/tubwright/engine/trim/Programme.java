// SPDX-License-Identifier: Apache-2.0
package tubwright.engine.trim;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.ojalgo.optimisation.Expression;
import org.ojalgo.optimisation.ExpressionsBasedModel;
import org.ojalgo.optimisation.Optimisation;
import org.ojalgo.optimisation.Variable;

/**
 * Least mass with one candidate for each zone under linear rows, whole or relaxed, and the bound that multipliers of the
 * rows prove.
 */
final class Programme {
    private final double[][] masses;
    private final List<Row> rows = new ArrayList<>();

    /**
     * Σ coefficients · λ ≥ least.
     *
     * @param coefficients by zone and candidate
     * @param least right-hand side
     */
    record Row(double[][] coefficients, double least) {
        /** The same with a right-hand side of one: rows of like size suit the solver. */
        Row scaled() {
            double size = Math.abs(least);
            if (!(size > 0)) {
                return this;
            }
            double[][] c = new double[coefficients.length][];
            for (int z = 0; z < c.length; z++) {
                c[z] = coefficients[z].clone();
                for (int k = 0; k < c[z].length; k++) {
                    c[z][k] /= size;
                }
            }
            return new Row(c, least / size);
        }
    }

    Programme(double[][] masses) {
        this.masses = masses;
    }

    void add(Row row) {
        rows.add(row.scaled());
    }

    int rows() {
        return rows.size();
    }

    /**
     * The lightest choice of one candidate for each zone; empty where there is none, or none is found in time.
     *
     * @param milliseconds to spend
     * @param proved whether it must be the lightest; if not, the lightest found in time will do
     */
    Optional<int[]> whole(long milliseconds, boolean proved) {
        ExpressionsBasedModel model = new ExpressionsBasedModel();
        model.options.time_abort = milliseconds;
        Variable[][] shares = shares(model, true);
        Optimisation.Result result = model.minimise();
        if (proved ? !result.getState().isOptimal() : !result.getState().isFeasible()) {
            return Optional.empty();
        }
        int[] choice = new int[masses.length];
        for (int z = 0; z < choice.length; z++) {
            for (int k = 1; k < shares[z].length; k++) {
                if (shares[z][k].getValue().doubleValue()
                        > shares[z][choice[z]].getValue().doubleValue()) {
                    choice[z] = k;
                }
            }
        }
        return Optional.of(choice);
    }

    /** The lightest mixture; empty where there is none. */
    Optional<double[][]> relaxed() {
        ExpressionsBasedModel model = new ExpressionsBasedModel();
        Variable[][] shares = shares(model, false);
        Optimisation.Result result = model.minimise();
        if (!result.getState().isFeasible()) {
            return Optional.empty();
        }
        double[][] mixture = new double[masses.length][];
        for (int z = 0; z < mixture.length; z++) {
            mixture[z] = new double[masses[z].length];
            double sum = 0;
            for (int k = 0; k < mixture[z].length; k++) {
                mixture[z][k] = Math.max(0, shares[z][k].getValue().doubleValue());
                sum += mixture[z][k];
            }
            for (int k = 0; k < mixture[z].length; k++) {
                mixture[z][k] /= sum;
            }
        }
        return Optional.of(mixture);
    }

    private Variable[][] shares(ExpressionsBasedModel model, boolean whole) {
        Variable[][] shares = new Variable[masses.length][];
        for (int z = 0; z < shares.length; z++) {
            Expression one = model.newExpression("zone " + z).level(1);
            shares[z] = new Variable[masses[z].length];
            for (int k = 0; k < shares[z].length; k++) {
                Variable share = model.newVariable(z + " " + k).weight(masses[z][k]);
                shares[z][k] = whole ? share.binary() : share.lower(0).upper(1);
                one.set(shares[z][k], 1);
            }
        }
        for (int r = 0; r < rows.size(); r++) {
            Expression row = model.newExpression("row " + r).lower(rows.get(r).least);
            for (int z = 0; z < shares.length; z++) {
                for (int k = 0; k < shares[z].length; k++) {
                    row.set(shares[z][k], rows.get(r).coefficients[z][k]);
                }
            }
        }
        return shares;
    }

    /**
     * A mass below which no choice meets the rows. The multipliers y ≥ 0 come from a linear programme, the bound
     * Σ y_i least_i + Σ_z min_k (m − Σ y_i g_i) is summed up here and holds for any y (Lagrange), so nothing hangs on
     * the solver's accuracy.
     */
    double bound() {
        double[] y = multipliers();
        double sum = 0;
        double size = 0;
        for (int i = 0; i < y.length; i++) {
            sum += y[i] * rows.get(i).least;
            size += Math.abs(y[i] * rows.get(i).least);
        }
        for (int z = 0; z < masses.length; z++) {
            double least = Double.POSITIVE_INFINITY;
            for (int k = 0; k < masses[z].length; k++) {
                double reduced = masses[z][k];
                for (int i = 0; i < y.length; i++) {
                    reduced -= y[i] * rows.get(i).coefficients[z][k];
                    size += Math.abs(y[i] * rows.get(i).coefficients[z][k]) * 1e-3;
                }
                least = Math.min(least, reduced);
            }
            sum += least;
        }
        // Far more than sums of a thousand terms lose.
        return sum - 1e-12 * size;
    }

    private double[] multipliers() {
        ExpressionsBasedModel model = new ExpressionsBasedModel();
        Variable[] y = new Variable[rows.size()];
        for (int i = 0; i < y.length; i++) {
            y[i] = model.newVariable("y " + i).lower(0).weight(rows.get(i).least);
        }
        for (int z = 0; z < masses.length; z++) {
            Variable least = model.newVariable("zone " + z).weight(1);
            for (int k = 0; k < masses[z].length; k++) {
                Expression reduced = model.newExpression(z + " " + k).upper(masses[z][k]);
                reduced.set(least, 1);
                for (int i = 0; i < y.length; i++) {
                    reduced.set(y[i], rows.get(i).coefficients[z][k]);
                }
            }
        }
        boolean solved = model.maximise().getState().isFeasible();
        double[] result = new double[y.length];
        for (int i = 0; solved && i < y.length; i++) {
            result[i] = Math.max(0, y[i].getValue().doubleValue());
        }
        return result;
    }
}
