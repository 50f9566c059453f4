// SPDX-License-Identifier: Apache-2.0
package tubwright.engine.safety.damage;

import java.util.Arrays;
import java.util.List;
import java.util.stream.IntStream;
import tubwright.engine.structure.SolvedCases;
import tubwright.engine.structure.Torn;
import tubwright.numerics.SmallDense;
import tubwright.numerics.multifrontal.LocalInverse;
import tubwright.numerics.multifrontal.LocalInverses;

/**
 * How a structure carries its cases when something is torn out of it, without solving it anew (Sherman, Morrison and
 * Woodbury 1950; Akgün, Garcelon and Haftka 2001).
 *
 * <p>Of the unknowns the torn stiffness A joins, B go on living and I lose all that held them. With Ã = A_BB − A_BI A_II⁻¹ A_IB
 * and F the inverse of the whole stiffness between the B, the rest moves as the whole does under additional forces z on the B,
 * (1 − ÃF) z = (A u)_B, u being the displacements of the whole: what the torn patch pushed its border with, and what it would
 * push for what the border moves more. What acts on the I is dropped; a free body finds a new balance.
 */
final class Redistribution {
    /** Below this the rest has a motion that nothing resists. */
    private static final double LOOSE = 1e-11;

    private final SolvedCases solved;
    private final SolvedCases.Base base;
    private final boolean refined;
    private final double[][][] inertia;

    /** For one of the matrices of solved cases. */
    Redistribution(SolvedCases solved, SolvedCases.Base base) {
        this(solved, base, false);
    }

    /**
     * As the other.
     *
     * @param refined whether to look what the border still lacks for balance and put it right, for which every neighbour of
     *     the torn nodes must be read: the shells' stiffness spans ten decades, and where little is left to carry that shows
     */
    Redistribution(SolvedCases solved, SolvedCases.Base base, boolean refined) {
        this.refined = refined;
        this.solved = solved;
        this.base = base;
        inertia = base.held().stream()
                .map(h -> h.relief().map(Redistribution::inertia).orElse(new double[0][]))
                .toArray(double[][][]::new);
    }

    private static double[][] inertia(SolvedCases.Relief relief) {
        double[][] m = new double[6][6];
        for (int i = 0; i < 6; i++) {
            for (int j = 0; j < 6; j++) {
                m[i][j] = dot(relief.motions().get(i), relief.momenta()[j]);
            }
        }
        return m;
    }

    /**
     * What becomes of one case.
     *
     * @param index of the case
     * @param loose true where the rest has a motion nothing resists: nothing else is then known
     * @param dropped unknowns that are gone and carried a load
     * @param movement displacements at the nodes read, 6 each
     * @param moreWork twice the work the loads do more, fᵀu' − fᵀu, J; not a number where loads were dropped
     */
    record Outcome(int index, boolean loose, int[] dropped, double[] movement, double moreWork) {}

    /** The places at which the inverse is wanted: nodes that live on, and what is read. */
    static LocalInverses.Place place(Torn torn, int[] read) {
        int[] loaded = IntStream.range(0, torn.nodes().length)
                .filter(i -> IntStream.range(0, 6).anyMatch(d -> !torn.dead()[6 * i + d]))
                .map(i -> torn.nodes()[i])
                .toArray();
        return new LocalInverses.Place(loaded, read);
    }

    /**
     * Works it out.
     *
     * @param inverse at {@link #place}
     */
    List<Outcome> of(Torn torn, LocalInverses.Place place, LocalInverse inverse) {
        int[] at = new int[6 * torn.nodes().length];
        for (int i = 0; i < torn.nodes().length; i++) {
            int l = Arrays.binarySearch(place.loaded(), torn.nodes()[i]);
            for (int d = 0; d < 6; d++) {
                at[6 * i + d] = 6 * l + d;
            }
        }
        double[][] flexibility = inverse.between();
        Outcome[] outcomes = new Outcome[solved.solutions().size()];
        for (int h = 0; h < base.held().size(); h++) {
            for (Outcome each : held(h, torn, place, at, flexibility, inverse)) {
                outcomes[each.index()] = each;
            }
        }
        return Arrays.stream(outcomes).filter(o -> o != null).toList();
    }

    private Outcome[] held(
            int h, Torn torn, LocalInverses.Place place, int[] at, double[][] whole, LocalInverse inverse) {
        SolvedCases.Held held = base.held().get(h);
        int[] unknowns = IntStream.range(0, at.length)
                .map(i -> 6 * torn.nodes()[i / 6] + i % 6)
                .toArray();
        int[] gone = IntStream.range(0, at.length)
                .filter(i -> torn.dead()[i] && !held.fixed()[unknowns[i]])
                .toArray();
        int[] kept = IntStream.range(0, at.length)
                .filter(i -> !torn.dead()[i] && !held.fixed()[unknowns[i]])
                .toArray();
        double[][] f = new double[kept.length][kept.length];
        for (int i = 0; i < kept.length; i++) {
            for (int j = 0; j < kept.length; j++) {
                f[i][j] = whole[at[kept[i]]][at[kept[j]]];
            }
        }
        double[][] holds = holds(held, kept, unknowns);
        for (int k = 0; k < holds.length; k++) {
            for (int i = 0; i < kept.length; i++) {
                for (int j = 0; j < kept.length; j++) {
                    f[i][j] -= held.fields()[k][unknowns[kept[i]]] * holds[k][j];
                }
            }
        }
        double[][] border = SmallDense.condense(torn.stiffness(), kept, gone);
        double[][] a = SmallDense.multiply(border, f);
        for (int i = 0; i < a.length; i++) {
            for (int j = 0; j < a.length; j++) {
                a[i][j] = (i == j ? 1 : 0) - a[i][j];
            }
        }
        int count = held.cases().size();
        double[][] reliefs = new double[count][];
        double[][] z = new double[count][];
        for (int c = 0; c < count; c++) {
            int index = held.cases().get(c);
            reliefs[c] = relief(h, torn, unknowns, index);
            z[c] = pushed(torn, kept, unknowns, held, index, reliefs[c]);
        }
        SmallDense.Eliminated rest = SmallDense.eliminate(a);
        boolean loose = !(rest.pivot() > LOOSE);
        double[][] moved = new double[count][];
        if (!loose && kept.length > 0) {
            rest.solve(z);
            moved = spread(held, kept, unknowns, at, z, holds, place, inverse);
            if (refined) {
                double[][] more = new double[count][];
                for (int c = 0; c < count; c++) {
                    more[c] = residual(torn, kept, unknowns, held, held.cases().get(c), reliefs[c], place, moved[c]);
                }
                rest.solve(more);
                for (int c = 0; c < count; c++) {
                    for (int i = 0; i < kept.length; i++) {
                        z[c][i] += more[c][i];
                    }
                }
                moved = spread(held, kept, unknowns, at, z, holds, place, inverse);
            }
        }
        Outcome[] outcomes = new Outcome[count];
        for (int c = 0; c < count; c++) {
            int index = held.cases().get(c);
            double[] load = solved.loads().get(index);
            int[] dropped = IntStream.range(0, at.length)
                    .filter(i -> torn.dead()[i] && load[unknowns[i]] != 0)
                    .map(i -> unknowns[i])
                    .toArray();
            double[] u = solved.solutions().get(index).displacements();
            double more = 0;
            for (int i = 0; i < kept.length && !loose; i++) {
                more += u[unknowns[kept[i]]] * z[c][i];
            }
            double[] movement = new double[loose ? 0 : 6 * place.read().length];
            for (int i = 0; i < movement.length; i++) {
                int unknown = 6 * place.read()[i / 6] + i % 6;
                movement[i] = held.fixed()[unknown]
                        ? 0
                        : u[unknown] + eased(held, reliefs[c], unknown) + (moved[c] == null ? 0 : moved[c][i]);
            }
            outcomes[c] =
                    new Outcome(index, loose, dropped, movement, dropped.length == 0 && !loose ? more : Double.NaN);
        }
        return outcomes;
    }

    /** S⁻¹ Φ_Bᵀ: forces of the extra holds for unit forces on the living unknowns. */
    private static double[][] holds(SolvedCases.Held held, int[] kept, int[] unknowns) {
        int extra = held.extra().length;
        double[][] columns = new double[kept.length][extra];
        for (int i = 0; i < kept.length; i++) {
            for (int k = 0; k < extra; k++) {
                columns[i][k] = held.fields()[k][unknowns[kept[i]]];
            }
        }
        if (extra > 0) {
            SmallDense.solve(held.flexibility(), columns);
        }
        double[][] holds = new double[extra][kept.length];
        for (int i = 0; i < kept.length; i++) {
            for (int k = 0; k < extra; k++) {
                holds[k][i] = columns[i][k];
            }
        }
        return holds;
    }

    private double[][] spread(
            SolvedCases.Held held,
            int[] kept,
            int[] unknowns,
            int[] at,
            double[][] z,
            double[][] holds,
            LocalInverses.Place place,
            LocalInverse inverse) {
        double[][] loads = new double[z.length][6 * place.loaded().length];
        for (int c = 0; c < z.length; c++) {
            for (int i = 0; i < kept.length; i++) {
                loads[c][at[kept[i]]] = z[c][i];
            }
        }
        double[][] moved = inverse.spread(loads);
        for (int c = 0; c < z.length; c++) {
            for (int k = 0; k < holds.length; k++) {
                double force = dot(holds[k], z[c]);
                for (int i = 0; i < moved[c].length; i++) {
                    moved[c][i] -= force * held.fields()[k][6 * place.read()[i / 6] + i % 6];
                }
            }
        }
        return moved;
    }

    /** What the rest still lacks for balance at the living unknowns. */
    private double[] residual(
            Torn torn,
            int[] kept,
            int[] unknowns,
            SolvedCases.Held held,
            int index,
            double[] relief,
            LocalInverses.Place place,
            double[] moved) {
        double[] u = solved.solutions().get(index).displacements();
        double[] load = solved.loads().get(index);
        double[] whole = new double[6 * place.read().length];
        for (int i = 0; i < whole.length; i++) {
            int unknown = 6 * place.read()[i / 6] + i % 6;
            whole[i] = held.fixed()[unknown] ? 0 : u[unknown] + eased(held, relief, unknown) + moved[i];
        }
        double[] left = new double[kept.length];
        for (int i = 0; i < kept.length; i++) {
            int row = unknowns[kept[i]];
            double sum = load[row];
            for (int k = 0; k < relief.length; k++) {
                sum += relief[k] * held.relief().orElseThrow().momenta()[k][row];
            }
            for (int j = 0; j < whole.length; j++) {
                int n = Arrays.binarySearch(torn.nodes(), place.read()[j / 6]);
                boolean dead = n >= 0 && torn.dead()[6 * n + j % 6];
                if (!dead) {
                    double stiffness = base.matrix().get(row, 6 * place.read()[j / 6] + j % 6);
                    double taken = n < 0 ? 0 : torn.stiffness()[kept[i]][6 * n + j % 6];
                    sum -= (stiffness - taken) * whole[j];
                }
            }
            left[i] = sum;
        }
        return left;
    }

    /** (A u)_B: what the patch pushed the living unknowns with. */
    private double[] pushed(Torn torn, int[] kept, int[] unknowns, SolvedCases.Held held, int index, double[] relief) {
        double[] u = solved.solutions().get(index).displacements();
        double[] own = new double[unknowns.length];
        for (int i = 0; i < own.length; i++) {
            own[i] = held.fixed()[unknowns[i]] ? 0 : u[unknowns[i]] + eased(held, relief, unknowns[i]);
        }
        double[] pushed = new double[kept.length];
        for (int i = 0; i < kept.length; i++) {
            pushed[i] = dot(torn.stiffness()[kept[i]], own);
        }
        return pushed;
    }

    private static double eased(SolvedCases.Held held, double[] relief, int unknown) {
        double sum = 0;
        for (int k = 0; k < relief.length; k++) {
            sum += relief[k] * held.relief().orElseThrow().fields()[k][unknown];
        }
        return sum;
    }

    /** Accelerations that bring what is left of a free body into balance again; nothing for a body that is held. */
    private double[] relief(int h, Torn torn, int[] unknowns, int index) {
        SolvedCases.Held held = base.held().get(h);
        if (held.relief().isEmpty()) {
            return new double[0];
        }
        SolvedCases.Relief relief = held.relief().get();
        double[] load = solved.loads().get(index);
        double[][] left = new double[6][];
        double[] lost = new double[6];
        for (int j = 0; j < 6; j++) {
            left[j] = inertia[h][j].clone();
        }
        for (int i = 0; i < unknowns.length; i++) {
            if (torn.dead()[i]) {
                for (int j = 0; j < 6; j++) {
                    double motion = relief.motions().get(j)[unknowns[i]];
                    lost[j] += motion * load[unknowns[i]];
                    for (int k = 0; k < 6; k++) {
                        left[j][k] -= motion * relief.momenta()[k][unknowns[i]];
                    }
                }
            }
        }
        if (Arrays.stream(lost).allMatch(v -> v == 0)) {
            return new double[0];
        }
        SmallDense.solve(left, new double[][] {lost});
        return lost;
    }

    private static double dot(double[] a, double[] b) {
        double sum = 0;
        for (int i = 0; i < a.length; i++) {
            sum += a[i] * b[i];
        }
        return sum;
    }
}
