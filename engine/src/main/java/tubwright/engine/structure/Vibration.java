// SPDX-License-Identifier: Apache-2.0
package tubwright.engine.structure;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import tubwright.engine.structure.Mode.Motion;
import tubwright.numerics.ConstrainedSystem;
import tubwright.numerics.DirectSolver;
import tubwright.numerics.SymmetricMatrix;
import tubwright.numerics.eigen.EigenPairs;
import tubwright.numerics.eigen.LowestModes;

/** Natural frequencies and modes of a structure, free in space or held. No damping, no preload. */
public final class Vibration {
    private static final int RIGID = 6;
    /** A free body is shifted by this share of the usual nodal stiffness over mass: well above rounding. */
    private static final double SHIFT = 1e-10;

    private static final double RIGID_SHARE = 0.999;
    private static final String[] ORDINALS = {
        "first", "second", "third", "fourth", "fifth", "sixth", "seventh", "eighth", "ninth", "tenth"
    };

    private Vibration() {}

    /**
     * Modes of the body free in space: its six rigid motions and the lowest elastic modes.
     *
     * @param count how many elastic modes
     */
    public static Modes free(Structure structure, int count, DirectSolver solver) {
        return solve(structure, new boolean[structure.unknowns()], count + RIGID, true, true, solver);
    }

    /**
     * Modes of the held body.
     *
     * @param hold directions held at hardpoints; rigid motions they leave free come out with frequency zero
     * @param count how many modes
     */
    public static Modes held(Structure structure, List<Case.Support> hold, int count, DirectSolver solver) {
        boolean[] fixed = CaseLoads.fixed(structure, hold);
        FreeMotion motion = new FreeMotion(structure.positions(), structure.groups());
        boolean loose = false;
        for (int n = 0; n < structure.nodeCount(); n++) {
            loose |= motion.root(n) == n && !motion.of(n, fixed).isEmpty();
        }
        return solve(structure, fixed, count, loose, false, solver);
    }

    private static Modes solve(
            Structure structure, boolean[] fixed, int count, boolean loose, boolean free, DirectSolver solver) {
        Assembly assembly = new Assembly(structure);
        SymmetricMatrix mass = assembly.mass();
        RigidMotions rigid = new RigidMotions(structure.positions(), mass);
        if (!(rigid.mass() > 0)) {
            throw new StructureException(
                    "the structure has no mass, so it has no natural frequencies", "give its materials densities");
        }
        double[] lumped = lumped(structure, mass);
        SymmetricMatrix freeMass = mass.copy();
        ConstrainedSystem.clearInPlace(freeMass, fixed);
        SymmetricMatrix stiffness =
                ConstrainedSystem.constrainInPlace(assembly.stiffness(), fixed).matrix();
        double shift = loose ? -SHIFT * typicalRatio(stiffness, freeMass) : 0;
        EigenPairs pairs =
                LowestModes.of(stiffness, freeMass, count, shift, free ? rigid.motions() : List.of(), solver);
        SectionMotion sections = new SectionMotion(structure.positions(), lumped);
        double[][] energies = StrainEnergy.ofParts(structure, pairs.vectors());
        Map<Motion, Integer> seen = new EnumMap<>(Motion.class);
        List<Mode> modes = new ArrayList<>();
        for (int k = 0; k < pairs.size(); k++) {
            String strained =
                    structure.parts().get(StrainEnergy.most(energies[k])).name();
            modes.add(mode(pairs, k, loose, rigid, sections, strained, seen));
        }
        return new Modes(modes, rigid.mass(), pairs.count());
    }

    private static Mode mode(
            EigenPairs pairs,
            int k,
            boolean loose,
            RigidMotions rigid,
            SectionMotion sections,
            String strained,
            Map<Motion, Integer> seen) {
        double[] shape = pairs.vectors()[k];
        double frequency = Math.sqrt(Math.max(0, pairs.values()[k])) / (2 * Math.PI);
        double[] effective = rigid.momentum(shape);
        for (int d = 0; d < effective.length; d++) {
            effective[d] *= effective[d];
        }
        if (loose && rigid.rigidShare(shape) > RIGID_SHARE) {
            Map<Motion, Double> all = Map.of(Motion.RIGID, 1.0);
            return new Mode(
                    frequency, shape, effective, Motion.RIGID, Motion.RIGID.words(), all, "", pairs.errors()[k]);
        }
        Map<Motion, Double> shares = sections.shares(shape);
        Motion motion = SectionMotion.leading(shares);
        int number = seen.merge(motion, 1, Integer::sum);
        String name = motion == Motion.LOCAL
                ? Motion.LOCAL.words() + ": " + strained
                : (number <= ORDINALS.length ? ORDINALS[number - 1] : number + "th") + " " + motion.words()
                        + SectionMotion.besides(shares, motion);
        return new Mode(frequency, shape, effective, motion, name, shares, strained, pairs.errors()[k]);
    }

    /** Mass at each node: what a unit acceleration along x pushes there. */
    private static double[] lumped(Structure structure, SymmetricMatrix mass) {
        double[] alongX = new double[structure.unknowns()];
        for (int n = 0; n < structure.nodeCount(); n++) {
            alongX[6 * n] = 1;
        }
        double[] momentum = mass.multiply(alongX);
        double[] lumped = new double[structure.nodeCount()];
        for (int n = 0; n < lumped.length; n++) {
            lumped[n] = momentum[6 * n];
        }
        return lumped;
    }

    /** Median of stiffness over mass on the diagonal, translations only, (rad/s)². */
    private static double typicalRatio(SymmetricMatrix stiffness, SymmetricMatrix mass) {
        double[] k = stiffness.diagonal();
        double[] m = mass.diagonal();
        double[] ratios = new double[k.length / 2];
        int count = 0;
        for (int i = 0; i < k.length; i++) {
            if (i % 6 < 3 && m[i] > 0) {
                ratios[count++] = k[i] / m[i];
            }
        }
        Arrays.sort(ratios, 0, count);
        return ratios[count / 2];
    }
}
