// SPDX-License-Identifier: Apache-2.0
package tubwright.engine.trim;

import java.util.Map;

/**
 * Bounds on a changed compliance from the nominal solution alone, without any new solution.
 *
 * <p>With G the Gramian of the nominal strains, the nominal displacements give c ≥ c₀ − tr((C − C₀) G) (potential
 * energy), the nominal stresses c ≤ c₀ + tr((C₀ C⁻¹ C₀ − C₀) G) (complementary energy). The first is also the linear
 * value, exact to first order; the second is linear in flexibility.
 */
final class FirstOrder {
    private final LoadedTub tub;
    private final double[][] gramians;

    FirstOrder(LoadedTub tub) {
        this.tub = tub;
        int[] all = new int[tub.blocks().all().size()];
        java.util.Arrays.setAll(all, b -> b);
        gramians = tub.gramians(all, tub.displacements());
    }

    /** Gramian of the nominal strains of a block, 41 numbers. */
    double[] gramian(int block) {
        return gramians[block];
    }

    Interval bounds(Change change) {
        double low = tub.compliance();
        double high = tub.compliance();
        for (Map.Entry<Integer, double[]> each : change.laminates().entrySet()) {
            double[] nominal = tub.laminate(each.getKey());
            double[] g = gramians[each.getKey()];
            double was = Constitutive.trace(nominal, g, 0);
            low -= Constitutive.trace(each.getValue(), g, 0) - was;
            high += Constitutive.trace(Constitutive.weighted(nominal, each.getValue()), g, 0) - was;
        }
        for (Map.Entry<Integer, Double> each : change.joints().entrySet()) {
            double work = tub.members().between(each.getKey(), tub.displacements(), tub.displacements());
            low -= (each.getValue() - 1) * work;
            high += (1 / each.getValue() - 1) * work;
        }
        return new Interval(low, high);
    }
}
