// SPDX-License-Identifier: Apache-2.0
package tubwright.engine.trim;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import tubwright.engine.laminate.Laminate;
import tubwright.engine.mesh.Region;
import tubwright.engine.structure.Part;

/**
 * What may be chosen, made ready once for any number of searches: stiffness, flexibility and mass of every candidate, the
 * rules between neighbours, and the fields solved so far. Searches for a series of targets on one problem share the
 * fields, so that later ones need few solutions. Not thread-safe.
 */
public final class LightenProblem {
    final List<LoadedTub> tubs;
    final List<FieldBasis> bases = new ArrayList<>();
    final Layup nominal;
    final List<Site> sites;
    final Neighbours neighbours;
    /** Where the candidates of each site begin, and where the last end. */
    final int[] offset;
    /** kg of each candidate, sites one after another. */
    final double[] masses;
    /** What no site decides, kg. */
    final double base;

    final List<Piece> pieces = new ArrayList<>();
    /** Number of the stack of each candidate; -1 where stacks are not counted. */
    final int[] stacks;

    private LightenProblem(List<LoadedTub> tubs, List<Site> sites, Neighbours neighbours) {
        this.tubs = List.copyOf(tubs);
        this.neighbours = neighbours;
        LoadedTub tub = tubs.getFirst();
        nominal = tub.nominal();
        this.sites = sites.stream()
                .filter(s -> s.owner() instanceof Owner.Joint || tub.blocks().area(s.owner()) > 0)
                .toList();
        offset = new int[this.sites.size() + 1];
        for (int s = 0; s < this.sites.size(); s++) {
            offset[s + 1] = offset[s] + this.sites.get(s).candidates().size();
        }
        masses = new double[offset[offset.length - 1]];
        double present = 0;
        for (int s = 0; s < this.sites.size(); s++) {
            Site site = this.sites.get(s);
            double area = tub.blocks().area(site.owner());
            for (int k = 0; k < site.candidates().size(); k++) {
                masses[offset[s] + k] = mass(site.candidates().get(k), area);
            }
            present += switch (site.owner()) {
                case Owner.Zone(String name) -> area * nominal.zones().get(name).arealMass();
                case Owner.Patch(String name) ->
                    mass(new Candidate.Plies(nominal.patchesByName().get(name)), area);
                case Owner.Joint _ -> 0;
            };
        }
        base = tub.mass(nominal) - present;
        table(tub);
        stacks = numbered();
        tubs.forEach(t -> bases.add(new FieldBasis(t, pieces)));
    }

    /**
     * Makes a problem ready.
     *
     * @param tubs solved under each of the cases targets may be about; one structure, one nominal layup
     * @param sites what may be chosen; what is not named stays
     * @param neighbours rules between sites
     */
    public static LightenProblem of(List<LoadedTub> tubs, List<Site> sites, Neighbours neighbours) {
        return new LightenProblem(tubs, sites, neighbours);
    }

    private static double mass(Candidate candidate, double area) {
        return switch (candidate) {
            case Candidate.Stack(Laminate laminate) -> area * laminate.arealMass();
            case Candidate.Plies(var plies) ->
                area * plies.stream().mapToDouble(l -> l.arealMass()).sum();
            case Candidate.Bond(double _, double mass) -> mass;
        };
    }

    private void table(LoadedTub tub) {
        List<Blocks.Block> blocks = tub.blocks().all();
        for (int b = 0; b < blocks.size(); b++) {
            List<Integer> own = new ArrayList<>();
            for (int s = 0; s < sites.size(); s++) {
                if (blocks.get(b).carries(sites.get(s).owner())) {
                    own.add(sites.get(s).owner() instanceof Owner.Zone ? 0 : own.size(), s);
                }
            }
            if (!own.isEmpty()) {
                Blocks.Block block = blocks.get(b);
                add(
                        b,
                        -1,
                        own,
                        layup -> Constitutive.of(
                                layup.laminate(block).stiffness().matrix()));
            }
        }
        for (int s = 0; s < sites.size(); s++) {
            if (sites.get(s).owner() instanceof Owner.Joint(String name)) {
                int part = tub.structure().parts().indexOf(new Part(Part.Kind.JOINT, name));
                if (part < 0) {
                    throw new IllegalArgumentException("there is no joint '" + name + "'");
                }
                add(-1, part, List.of(s), layup -> new double[] {layup.joints().getOrDefault(name, 1.0)});
            }
        }
    }

    private void add(int block, int part, List<Integer> own, java.util.function.Function<Layup, double[]> stiffness) {
        int[] sizes =
                own.stream().mapToInt(s -> sites.get(s).candidates().size()).toArray();
        int count = Arrays.stream(sizes).reduce(1, Math::multiplyExact);
        double[][] c = new double[count][];
        double[][] inverse = new double[count][];
        for (int at = 0; at < count; at++) {
            Layup layup = nominal;
            int rest = at;
            for (int i = sizes.length - 1; i >= 0; i--) {
                Site site = sites.get(own.get(i));
                layup = site.candidates().get(rest % sizes[i]).in(layup, site.owner());
                rest /= sizes[i];
            }
            c[at] = stiffness.apply(layup);
            inverse[at] = block >= 0 ? Constitutive.inverse(c[at]) : new double[] {1 / c[at][0]};
        }
        int[] list = own.stream().mapToInt(Integer::intValue).toArray();
        pieces.add(new Piece(block, part, list, sizes, c, inverse));
    }

    /** The sites, in the order of the choices. */
    public List<Site> sites() {
        return sites;
    }

    /** The tubs, one for each case. */
    public List<LoadedTub> tubs() {
        return tubs;
    }

    /** Mass of the lightest candidates everywhere, neighbours left out of account, kg. */
    public double lightestMass() {
        double sum = base;
        for (int s = 0; s < sites.size(); s++) {
            sum += Arrays.stream(masses, offset[s], offset[s + 1]).min().orElseThrow();
        }
        return sum;
    }

    /** The layup of a choice, an index of a candidate for each site. */
    public Layup layup(int[] choice) {
        Layup layup = nominal;
        for (int s = 0; s < choice.length; s++) {
            layup = sites.get(s)
                    .candidates()
                    .get(choice[s])
                    .in(layup, sites.get(s).owner());
        }
        return layup;
    }

    double mass(int[] choice) {
        double mass = base;
        for (int s = 0; s < choice.length; s++) {
            mass += masses[offset[s] + choice[s]];
        }
        return mass;
    }

    double[] whole(int[] choice) {
        double[] mixture = new double[masses.length];
        for (int s = 0; s < choice.length; s++) {
            mixture[offset[s] + choice[s]] = 1;
        }
        return mixture;
    }

    /** The most used candidate of each site. */
    int[] rounded(double[] mixture) {
        int[] choice = new int[sites.size()];
        for (int s = 0; s < choice.length; s++) {
            for (int j = offset[s]; j < offset[s + 1]; j++) {
                if (mixture[j] > mixture[offset[s] + choice[s]]) {
                    choice[s] = j - offset[s];
                }
            }
        }
        return choice;
    }

    double[][] stiffness(double[] mixture) {
        double[][] result = new double[pieces.size()][];
        for (int p = 0; p < result.length; p++) {
            result[p] = pieces.get(p).mixed(mixture, offset);
        }
        return result;
    }

    /** What the stiffness of the pieces changes in a tub. */
    Change change(double[][] stiffness) {
        TreeMap<Integer, double[]> laminates = new TreeMap<>();
        TreeMap<Integer, Double> joints = new TreeMap<>();
        for (int p = 0; p < stiffness.length; p++) {
            Piece piece = pieces.get(p);
            if (!Arrays.equals(stiffness[p], piece.nominal(tubs.getFirst()))) {
                if (piece.block() >= 0) {
                    laminates.put(piece.block(), stiffness[p]);
                } else {
                    joints.put(piece.part(), stiffness[p][0]);
                }
            }
        }
        return new Change(laminates, joints);
    }

    /** Whether a joint's site takes part, so that a structure with other laminates alone does not tell it all. */
    boolean variesJoints() {
        return pieces.stream().anyMatch(p -> p.block() < 0);
    }

    /** 8 × 8 stiffness of every region of the mesh, for a structure with these pieces. */
    double[][] laminates(double[][] stiffness) {
        LoadedTub tub = tubs.getFirst();
        int[] pieceOf = new int[tub.blocks().all().size()];
        Arrays.fill(pieceOf, -1);
        for (int p = 0; p < stiffness.length; p++) {
            if (pieces.get(p).block() >= 0) {
                pieceOf[pieces.get(p).block()] = p;
            }
        }
        List<Region> regions = tub.structure().mesh().regions();
        double[][] result = new double[regions.size()][];
        for (int r = 0; r < result.length; r++) {
            int p = pieceOf[tub.blocks().ofRegion(r)];
            result[r] = p < 0
                    ? tub.structure().laminate(r)
                    : Constitutive.matrix(stiffness[p], regions.get(r).mirrored());
        }
        return result;
    }

    /** The choice that comes nearest to the design as it is: its own candidates where they are offered. */
    int[] asDesigned() {
        int[] choice = new int[sites.size()];
        for (int s = 0; s < choice.length; s++) {
            Site site = sites.get(s);
            for (int k = 0; k < site.candidates().size(); k++) {
                if (site.candidates().get(k).in(nominal, site.owner()).equals(nominal)) {
                    choice[s] = k;
                }
            }
        }
        return choice;
    }

    /** A number for the stack of each candidate, the same for the same stack; -1 for patches and joints. */
    private int[] numbered() {
        Map<Candidate, Integer> numbers = new HashMap<>();
        int[] result = new int[masses.length];
        for (int s = 0; s < sites.size(); s++) {
            for (int k = 0; k < sites.get(s).candidates().size(); k++) {
                Candidate each = sites.get(s).candidates().get(k);
                boolean counted = sites.get(s).owner() instanceof Owner.Zone;
                result[offset[s] + k] = counted ? numbers.computeIfAbsent(each, _ -> numbers.size()) : -1;
            }
        }
        return result;
    }
}
