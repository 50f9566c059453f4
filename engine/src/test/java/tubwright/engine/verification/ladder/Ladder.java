// SPDX-License-Identifier: Apache-2.0
package tubwright.engine.verification.ladder;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.function.IntToDoubleFunction;

/**
 * Compares with a value from outside, and keeps the outcome for the verification report. Stands in for the assertions of
 * the testing library wherever a published or independently computed value is met.
 */
public final class Ladder {
    private final Family family;
    private final String source;
    private final Mark mark;

    private Ladder(Family family, String source, Mark mark) {
        this.family = family;
        this.source = source;
        this.mark = mark;
    }

    /**
     * Checks of one family against one source.
     *
     * @param source author, year, place
     */
    public static Ladder of(Family family, String source, Mark mark) {
        return new Ladder(family, source, mark);
    }

    /** Within an absolute tolerance, such as half a unit of the last printed digit. */
    public void equal(String name, double reference, double ours, double tolerance) {
        double scale = reference == 0 ? 1 : Math.abs(reference);
        record(name, "", reference, ours, tolerance / scale, Double.NaN);
        assertEquals(reference, ours, tolerance, () -> family + ": " + name);
    }

    /** Within a share of the reference; the mesh in words, empty where there is none. */
    public void within(double share, String name, String mesh, double reference, double ours) {
        record(name, mesh, reference, ours, share, Double.NaN);
        assertEquals(reference, ours, share * Math.abs(reference), () -> family + ": " + name + ", " + mesh);
    }

    /** Something that must be zero but for round-off. */
    public void vanishes(String name, String mesh, double ours, double limit) {
        record(name, mesh, 0, Math.abs(ours) <= limit ? 0 : ours, limit, Double.NaN);
        assertEquals(0, ours, limit, () -> family + ": " + name + ", " + mesh);
    }

    /**
     * A sequence of meshes: the finest within a share of the reference, and the order of convergence seen on the last three
     * (from their differences, so that a reference rounded or of another theory does not matter) no less than asked.
     *
     * @param label element and kind of mesh
     * @param sizes elements a side, each twice the one before
     * @param ours value on a mesh of that size
     * @param leastOrder least order; negative infinity where the approach is not monotonic or not asked for
     */
    public void converges(
            String name,
            String label,
            int[] sizes,
            IntToDoubleFunction ours,
            double reference,
            double share,
            double leastOrder) {
        double[] values = new double[sizes.length];
        double[] deviations = new double[sizes.length];
        for (int i = 0; i < sizes.length; i++) {
            values[i] = ours.applyAsDouble(sizes[i]);
            deviations[i] = Math.abs(values[i] / reference - 1);
        }
        int n = sizes.length;
        double coarse = values[n - 2] - values[n - 3];
        double fine = values[n - 1] - values[n - 2];
        double order = coarse * fine > 0 ? Math.log(coarse / fine) / Math.log(2) : Double.NaN;
        Recording.keep(new Curve(family, name, label, sizes, deviations, Recording.test()));
        record(name, label + " " + sizes[n - 1], reference, values[n - 1], share, order);
        assertEquals(reference, values[n - 1], share * Math.abs(reference), () -> family + ": " + name + ", " + label);
        if (leastOrder > Double.NEGATIVE_INFINITY) {
            assertTrue(
                    order >= leastOrder, () -> family + ": " + name + ", " + label + " converges with order " + order);
        }
    }

    private void record(String name, String mesh, double reference, double ours, double tolerance, double order) {
        Recording.keep(
                new Finding(family, name, mesh, source, mark, reference, ours, tolerance, order, Recording.test()));
    }
}
