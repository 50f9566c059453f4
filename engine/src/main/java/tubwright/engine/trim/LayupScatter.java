// SPDX-License-Identifier: Apache-2.0
package tubwright.engine.trim;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.SplittableRandom;
import java.util.TreeMap;
import java.util.TreeSet;
import java.util.concurrent.CancellationException;
import java.util.function.BooleanSupplier;
import java.util.stream.IntStream;
import tubwright.engine.laminate.Layer;
import tubwright.engine.material.Ply;

/**
 * How far a tub's stiffness scatters with its layup: many draws of materials, thickness, ply angles and bonds, each
 * answered by a reduced model with proved bounds, none by a new solution.
 *
 * <p>Factors are lognormal with mean one: one draw for each ply material's stiffness, one for its thickness, one for each
 * core's shear and one for each joint, as batches and settings are; angles are normal and drawn for each ply of each zone
 * and patch (its twin on the other side of the car lies as its mirror image). The bounds hold for the finite-element model
 * with the stiffness {@link ScatteredPlies} gives it.
 */
public final class LayupScatter {
    private static final double SOFTER = 0.9;
    private static final double SOFTER_JOINT = 0.7;
    private static final int CHUNK = 500;

    private final LoadedTub tub;
    private final Spreads spreads;
    private final ScatteredPlies plies;
    private final ReducedModel model;
    private final List<String> joints;
    private final int[] jointParts;
    private final double[] plyMasses;
    private final double[][] asDesigned;

    /**
     * Standard deviations.
     *
     * @param stiffness of ply moduli, share
     * @param thickness of plies, share
     * @param angle of plies, radians
     * @param core of core shear moduli, share
     * @param bond of joint stiffness, share
     */
    public record Spreads(double stiffness, double thickness, double angle, double core, double bond) {
        public Spreads {
            for (double each : new double[] {stiffness, thickness, angle, core, bond}) {
                if (!(each >= 0) || each > 1) {
                    throw new IllegalArgumentException(
                            "a spread is a share between 0 and 1, an angle below one radian");
                }
            }
        }
    }

    /**
     * What was drawn.
     *
     * @param inputs names of what was drawn once for the tub; ply angles are not among them
     * @param drawn their values, by input and draw: factors
     * @param low proved lower bound of the stiffness, by draw: N·m/rad or N/m between loaded and held hardpoints
     * @param high proved upper bound
     * @param mass kg
     */
    public record Drawn(List<String> inputs, double[][] drawn, double[] low, double[] high, double[] mass) {}

    private LayupScatter(LoadedTub tub, Spreads spreads) {
        this.tub = tub;
        this.spreads = spreads;
        plies = ScatteredPlies.of(tub);
        joints = spreads.bond > 0 ? tub.joints() : List.of();
        jointParts = joints.stream()
                .mapToInt(j -> tub.partOf(new Owner.Joint(j)).getFirst())
                .toArray();
        plyMasses = plyMasses();
        asDesigned = new double[plies.blocks()][];
        for (int b = 0; b < asDesigned.length; b++) {
            asDesigned[b] = plies.stiffness(b, plies.nominal());
        }
        List<Change> samples = new ArrayList<>();
        for (int p = 0; p < plies.plies().size(); p++) {
            ScatteredPlies.Draw softer = plies.nominal();
            softer.stiffness()[p] = SOFTER;
            samples.add(change(softer, new double[0]));
        }
        if (spreads.core > 0 && !plies.cores().isEmpty()) {
            ScatteredPlies.Draw softer = plies.nominal();
            Arrays.fill(softer.cores(), SOFTER);
            samples.add(change(softer, new double[0]));
        }
        if (!joints.isEmpty()) {
            double[] factors = new double[joints.size()];
            Arrays.fill(factors, SOFTER_JOINT);
            samples.add(change(plies.nominal(), factors));
        }
        double[][] v =
                samples.stream().map(c -> tub.forces(c, tub.displacements())).toArray(double[][]::new);
        tub.substitute(v);
        List<Field> fields = new ArrayList<>();
        for (int k = 0; k < v.length; k++) {
            fields.add(new Field(samples.get(k), v[k], LoadedTub.dot(tub.loads(), v[k])));
        }
        TreeSet<Integer> blocks = new TreeSet<>();
        TreeSet<Integer> parts = new TreeSet<>();
        samples.forEach(c -> {
            blocks.addAll(c.laminates().keySet());
            parts.addAll(c.joints().keySet());
        });
        model = new ReducedModel(tub, fields, PairTable.of(tub, fields, blocks, parts));
    }

    /**
     * Makes a tub ready to be drawn: a back-substitution for each ply material, one for cores and one for joints.
     *
     * @param tub solved, with plies in it
     */
    public static LayupScatter of(LoadedTub tub, Spreads spreads) {
        if (tub.nominal().zones().values().stream()
                .flatMap(l -> l.layers().stream())
                .noneMatch(l -> l.material() instanceof Ply)) {
            throw new IllegalArgumentException("there are no plies that could scatter");
        }
        return new LayupScatter(tub, spreads);
    }

    /** Mass of each ply material in the tub, kg. */
    private double[] plyMasses() {
        double[] masses = new double[plies.plies().size()];
        for (Blocks.Block block : tub.blocks().all()) {
            for (Layer layer : tub.nominal().laminate(block).layers()) {
                int p = plies.plies().indexOf(layer.material().name());
                if (p >= 0) {
                    masses[p] += block.area() * layer.arealMass();
                }
            }
        }
        return masses;
    }

    /** Blocks that nothing drawn touches are left as they are. */
    private Change change(ScatteredPlies.Draw draw, double[] factors) {
        TreeMap<Integer, double[]> laminates = new TreeMap<>();
        for (int b = 0; b < plies.blocks(); b++) {
            double[] c = plies.stiffness(b, draw);
            if (!Arrays.equals(c, asDesigned[b])) {
                laminates.put(b, c);
            }
        }
        TreeMap<Integer, Double> parts = new TreeMap<>();
        for (int j = 0; j < factors.length; j++) {
            parts.put(jointParts[j], factors[j]);
        }
        return new Change(laminates, parts);
    }

    /** Names of what is drawn once for the whole tub. */
    public List<String> inputs() {
        List<String> names = new ArrayList<>();
        plies.plies().forEach(p -> names.add("stiffness of " + p));
        plies.plies().forEach(p -> names.add("thickness of " + p));
        plies.cores().forEach(c -> names.add("shear of " + c));
        joints.forEach(j -> names.add("bond of " + j));
        return names;
    }

    /**
     * Draws on all cores; the same seed gives the same draws, however many cores there are.
     *
     * @param count draws
     * @param seed of chance
     * @param stop asked now and then
     * @throws CancellationException when that says so
     */
    public Drawn draw(int count, long seed, BooleanSupplier stop) {
        List<String> names = inputs();
        double[][] inputs = new double[names.size()][count];
        double[] low = new double[count];
        double[] high = new double[count];
        double[] mass = new double[count];
        double nominal = tub.mass(tub.nominal());
        IntStream.range(0, (count + CHUNK - 1) / CHUNK).parallel().forEach(chunk -> {
            if (stop.getAsBoolean()) {
                throw new CancellationException("stopped");
            }
            SplittableRandom random = new SplittableRandom(seed * 1_000_003L + chunk);
            for (int i = chunk * CHUNK; i < Math.min(count, (chunk + 1) * CHUNK); i++) {
                double[] own = one(random, nominal, i, low, high, mass);
                for (int k = 0; k < own.length; k++) {
                    inputs[k][i] = own[k];
                }
            }
        });
        return new Drawn(names, inputs, low, high, mass);
    }

    private double[] one(SplittableRandom random, double nominal, int i, double[] low, double[] high, double[] mass) {
        ScatteredPlies.Draw draw = plies.nominal();
        int p = plies.plies().size();
        int c = plies.cores().size();
        double[] inputs = new double[2 * p + c + joints.size()];
        double[] factors = new double[joints.size()];
        for (int k = 0; k < inputs.length; k++) {
            double spread = k < p
                    ? spreads.stiffness
                    : k < 2 * p ? spreads.thickness : k < 2 * p + c ? spreads.core : spreads.bond;
            inputs[k] = Math.exp(spread * random.nextGaussian() - 0.5 * spread * spread);
        }
        System.arraycopy(inputs, 0, draw.stiffness(), 0, p);
        System.arraycopy(inputs, p, draw.thickness(), 0, p);
        System.arraycopy(inputs, 2 * p, draw.cores(), 0, c);
        System.arraycopy(inputs, 2 * p + c, factors, 0, factors.length);
        for (int a = 0; a < draw.angles().length; a++) {
            draw.angles()[a] = spreads.angle * random.nextGaussian();
        }
        Interval compliance = model.answer(change(draw, factors)).compliance();
        low[i] = tub.stiffness(compliance.high());
        high[i] = tub.stiffness(compliance.low());
        mass[i] = nominal;
        for (int m = 0; m < p; m++) {
            mass[i] += plyMasses[m] * (draw.thickness()[m] - 1);
        }
        return inputs;
    }

    /** Bounds on the stiffness of one draw; for checking against a solution. */
    Interval bounds(ScatteredPlies.Draw draw) {
        Interval compliance = model.answer(change(draw, new double[0])).compliance();
        return new Interval(tub.stiffness(compliance.high()), tub.stiffness(compliance.low()));
    }

    ScatteredPlies plies() {
        return plies;
    }
}
