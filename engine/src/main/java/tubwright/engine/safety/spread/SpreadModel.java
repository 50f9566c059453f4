// SPDX-License-Identifier: Apache-2.0
package tubwright.engine.safety.spread;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.stream.IntStream;
import tubwright.engine.laminate.Laminate;
import tubwright.engine.mesh.Mesh;
import tubwright.engine.strength.StrengthBasis;
import tubwright.engine.structure.ShellIntegral;
import tubwright.engine.structure.ShellKernel;
import tubwright.engine.structure.ShellWorkspace;
import tubwright.engine.structure.Structure;
import tubwright.engine.structure.Surroundings;

/**
 * Shells and bonds that give way, with all the rest condensed to a stiffness at their border. Every mechanism has one state an
 * element or bond: shells soften as wholes, so that a band of failure is one element wide and the energy it takes can be set by
 * that width (crack band, Bažant and Oh 1983).
 */
public final class SpreadModel {
    private static final int STRAINS = 8;

    private final Structure structure;
    private final Mesh mesh;
    private final int[] elements;
    private final SectionLaw[] laws;
    private final List<Bond> bonds;
    private final int[] nodes;
    private final int[] start;
    private final double[] load;
    private final boolean[] fixed;
    private final double give;
    private final double[] block;
    private final int[][] pieceNodes;
    private final int[] blockNodes;
    private final double[][] matrices;
    private final double[][] operators;
    private final double[][] weights;
    private final double[] areas;
    private final double[][] axesOf;

    /**
     * @param structure the shells with their elastic laminates
     * @param laminates of its regions, as they lie (mirrored where the region is)
     * @param elements that give way, rising
     * @param bonds that give way, in the node numbers of the structure
     * @param surroundings what holds them and pushes
     */
    public SpreadModel(
            Structure structure,
            Laminate[] laminates,
            StrengthBasis basis,
            Energies energies,
            int[] elements,
            List<Bond> bonds,
            Surroundings surroundings) {
        this.structure = structure;
        this.elements = elements;
        mesh = structure.mesh();
        laws = new SectionLaw[laminates.length];
        for (int e : elements) {
            int r = mesh.elementRegions()[e];
            if (laws[r] == null) {
                laws[r] = new SectionLaw(laminates[r], basis, energies);
            }
        }
        nodes = IntStream.concat(
                        IntStream.concat(
                                Arrays.stream(elements).flatMap(e -> Arrays.stream(corners(e))),
                                bonds.stream()
                                        .flatMapToInt(
                                                b -> Arrays.stream(b.springs().nodes()))),
                        Arrays.stream(surroundings.nodes()))
                .sorted()
                .distinct()
                .toArray();
        Map<Integer, Integer> number = new HashMap<>();
        for (int i = 0; i < nodes.length; i++) {
            number.put(nodes[i], i);
        }
        this.bonds = bonds.stream()
                .map(b -> new Bond(
                        b.springs().renumbered(number::get),
                        b.opening(),
                        b.ratio(),
                        b.one(),
                        b.two(),
                        b.name(),
                        b.words(),
                        b.place(),
                        b.needs()))
                .toList();
        start = new int[elements.length + bonds.size() + 1];
        for (int k = 0; k < elements.length; k++) {
            start[k + 1] = start[k]
                    + laws[mesh.elementRegions()[elements[k]]].mechanisms().size();
        }
        for (int k = elements.length; k + 1 < start.length; k++) {
            start[k + 1] = start[k] + 1;
        }
        load = new double[6 * nodes.length];
        fixed = new boolean[load.length];
        for (int i = 0; i < surroundings.load().length; i++) {
            int at = 6 * number.get(surroundings.nodes()[i / 6]) + i % 6;
            load[at] += surroundings.load()[i];
            fixed[at] |= surroundings.fixed()[i];
        }
        give = surroundings.give();
        block = surroundings.stiffness();
        List<int[]> pieces = new ArrayList<>();
        for (int e : elements) {
            pieces.add(Arrays.stream(corners(e)).map(number::get).toArray());
        }
        this.bonds.forEach(b -> pieces.add(b.springs().nodes()));
        pieceNodes = pieces.toArray(int[][]::new);
        blockNodes = Arrays.stream(surroundings.border()).map(number::get).toArray();
        matrices = new double[pieceNodes.length][];
        operators = new double[elements.length][];
        weights = new double[elements.length][];
        areas = new double[elements.length];
        axesOf = new double[elements.length][];
        ThreadLocal<ShellKernel> kernels = ThreadLocal.withInitial(() -> new ShellKernel(structure));
        IntStream.range(0, elements.length).parallel().forEach(k -> prepare(k, kernels.get()));
    }

    private int[] corners(int e) {
        return Arrays.copyOfRange(mesh.elementNodes(), 4 * e, 4 * e + mesh.cornerCount(e));
    }

    private void prepare(int k, ShellKernel kernel) {
        ShellWorkspace w = kernel.strainPoints(elements[k]);
        int n = w.freedoms();
        operators[k] = new double[w.points() * STRAINS * n];
        weights[k] = new double[w.points()];
        for (int p = 0; p < w.points(); p++) {
            System.arraycopy(w.strainOperator(p), 0, operators[k], p * STRAINS * n, STRAINS * n);
            weights[k][p] = w.weight(p);
            areas[k] += w.weight(p);
        }
        axesOf[k] = w.axes(0).clone();
    }

    /** Number of mechanisms. */
    int mechanisms() {
        return start[start.length - 1];
    }

    /** Number of unknowns. */
    public int unknowns() {
        return load.length;
    }

    double[] load() {
        return load;
    }

    boolean[] fixed() {
        return fixed;
    }

    /** Work of the load on the rest with the shared nodes held, twice, for a load factor of one, J. */
    double give() {
        return give;
    }

    /** Nodes of a piece, by their numbers in the model. */
    int[] nodesOf(int piece) {
        return pieceNodes[piece];
    }

    /** Stiffness of a piece as it was last brought up to date. */
    double[] matrix(int piece) {
        return matrices[piece];
    }

    /** Whether something outside the model holds it. */
    boolean hasBlock() {
        return blockNodes.length > 0;
    }

    /** Nodes that what is outside the model touches, by their numbers in the model. */
    int[] blockNodes() {
        return blockNodes;
    }

    /** Stiffness of what is outside the model between these. */
    double[] block() {
        return block;
    }

    /** The shells that give way, in the mesh's numbers. */
    public int[] elements() {
        return elements;
    }

    /** The mesh they are of. */
    public Mesh mesh() {
        return mesh;
    }

    int pieceOf(int m) {
        int at = Arrays.binarySearch(start, m);
        if (at >= 0) {
            while (start[at + 1] == m) {
                at++;
            }
            return at;
        }
        return -at - 2;
    }

    boolean isShell(int piece) {
        return piece < elements.length;
    }

    int first(int piece) {
        return start[piece];
    }

    Mechanism mechanism(int piece, int m) {
        return law(piece).mechanisms().get(m - start[piece]);
    }

    Bond bond(int piece) {
        return bonds.get(piece - elements.length);
    }

    private SectionLaw law(int piece) {
        return laws[mesh.elementRegions()[elements[piece]]];
    }

    /** Brings the stiffness of pieces that have changed since the last time up to date. */
    void update(double[] left, boolean[] changed) {
        ThreadLocal<ShellKernel> kernels = ThreadLocal.withInitial(() -> new ShellKernel(structure));
        IntStream.range(0, elements.length).parallel().filter(k -> changed[k]).forEach(k -> {
            ShellWorkspace w = kernels.get().strainPoints(elements[k]);
            double[] laminate = new double[STRAINS * STRAINS];
            law(k).stiffness(left, start[k], laminate);
            double[] matrix = new double[w.freedoms() * w.freedoms()];
            ShellIntegral.integrate(laminate, w, matrix);
            matrices[k] = matrix;
        });
        for (int b = 0; b < bonds.size(); b++) {
            int k = elements.length + b;
            if (changed[k]) {
                int n = 6 * bonds.get(b).springs().nodes().length;
                matrices[k] = new double[n * n];
                bonds.get(b).springs().matrix(left[start[k]], matrices[k], 0);
            }
        }
    }

    /** Number of pieces that have a state. */
    int pieces() {
        return start.length - 1;
    }

    /**
     * What drives each mechanism under a field, and what it would take.
     *
     * @param ratio one at the onset, in proportion to the field
     * @param onset elastic energy at the onset of what it takes, J
     * @param capacity energy it takes to its end, J; infinite where it holds its load; not a number where it is not known
     * @param tension sign of what drives it
     */
    record Driven(double[] ratio, double[] onset, double[] capacity, boolean[] tension) {}

    /** Of some pieces; nothing drives the others. */
    Driven drive(double[] u, double[] left, int[] some) {
        int all = mechanisms();
        Driven driven = new Driven(new double[all], new double[all], new double[all], new boolean[all]);
        Arrays.stream(some).parallel().forEach(k -> {
            if (k < elements.length) {
                shell(k, u, left, driven);
            } else {
                spring(k, u, driven);
            }
        });
        return driven;
    }

    private void shell(int k, double[] u, double[] left, Driven into) {
        SectionLaw law = law(k);
        int count = law.mechanisms().size();
        SectionLaw.Drive drive = new SectionLaw.Drive(law, left, start[k]);
        double[] own = new double[24];
        int corners = mesh.cornerCount(elements[k]);
        for (int c = 0; c < corners; c++) {
            System.arraycopy(u, 6 * pieceNodes[k][c], own, 6 * c, 6);
        }
        int n = 6 * corners;
        double[] strains = new double[STRAINS];
        double[] b = operators[k];
        for (int p = 0; p < weights[k].length; p++) {
            for (int r = 0; r < STRAINS; r++) {
                double sum = 0;
                int at = (p * STRAINS + r) * n;
                for (int j = 0; j < n; j++) {
                    sum += b[at + j] * own[j];
                }
                strains[r] = sum;
            }
            law.drive(strains, weights[k][p], drive);
        }
        law.finish(drive);
        for (int m = 0; m < count; m++) {
            int at = start[k] + m;
            double ratio = drive.ratio[m];
            into.ratio[at] = ratio;
            into.tension[at] = drive.tension[m];
            if (ratio > 0) {
                into.onset[at] = drive.energy[m] / (ratio * ratio);
                into.capacity[at] = capacity(k, m, drive);
            }
        }
    }

    private double capacity(int k, int m, SectionLaw.Drive drive) {
        Mechanism each = law(k).mechanisms().get(m);
        double t = law(k).thickness(m);
        double area = areas[k];
        double energy = drive.tension[m] ? each.tension() : each.compression();
        if (each.kind() == Mechanism.Kind.MATRIX && drive.energy[m] > 0) {
            double share = drive.opening[m] / drive.energy[m];
            energy = 1 / (share / each.tension() + (1 - share) / each.compression());
        }
        if (each.perVolume()) {
            return energy * area;
        }
        // A crack across the fibres opens along them, one between them square to them, a core shears through along its
        // shear force:
        // the band is as wide as the element reaches that way, whatever line of elements it follows.
        double width = switch (each.kind()) {
            case CORE_SHEAR -> extent(k, drive.sheared());
            case YIELD -> Math.sqrt(area);
            case FIBRE -> extent(k, law(k).fibres(m));
            case WEFT, MATRIX -> {
                double[] fibres = law(k).fibres(m);
                yield extent(k, new double[] {-fibres[1], fibres[0]});
            }
        };
        return energy * t * area / width;
    }

    /** How far an element reaches along a direction in the laminate's axes, m. */
    private double extent(int k, double[] along) {
        double[] axes = axesOf[k];
        double[] way = new double[3];
        double length = Math.hypot(along[0], along[1]);
        for (int d = 0; d < 3; d++) {
            way[d] = (along[0] * axes[d] + along[1] * axes[3 + d]) / length;
        }
        double low = Double.POSITIVE_INFINITY;
        double high = Double.NEGATIVE_INFINITY;
        for (int n : corners(elements[k])) {
            double x = 0;
            for (int d = 0; d < 3; d++) {
                x += way[d] * mesh.nodes()[3 * n + d];
            }
            low = Math.min(low, x);
            high = Math.max(high, x);
        }
        return high - low;
    }

    private void spring(int k, double[] u, Driven into) {
        Bond bond = bond(k);
        int springs = bond.springs().stiffness().length;
        double[] gaps = new double[springs];
        double open = 0;
        double all = 0;
        for (int r = 0; r < springs; r++) {
            gaps[r] = bond.springs().gap(r, u);
            double energy = 0.5 * bond.springs().stiffness()[r] * gaps[r] * gaps[r];
            all += energy;
            open += bond.opening()[r] ? energy : 0;
        }
        int at = start[k];
        double ratio = bond.ratio().applyAsDouble(gaps);
        into.ratio[at] = ratio;
        into.tension[at] = open > 0.5 * all;
        if (ratio > 0 && all > 0) {
            into.onset[at] = all / (ratio * ratio);
            into.capacity[at] = 1 / (open / all / bond.one() + (1 - open / all) / bond.two());
        }
    }

    /** Middle of a piece, m. */
    double[] place(int piece) {
        if (!isShell(piece)) {
            return bond(piece).place();
        }
        double[] x = new double[3];
        int[] corners = corners(elements[piece]);
        for (int n : corners) {
            for (int d = 0; d < 3; d++) {
                x[d] += mesh.nodes()[3 * n + d] / corners.length;
            }
        }
        return x;
    }
}
