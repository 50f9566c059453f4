// SPDX-License-Identifier: Apache-2.0
package tubwright.engine.response;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import tubwright.engine.mesh.Mesh;
import tubwright.engine.mesh.Region;
import tubwright.engine.structure.Case;
import tubwright.engine.structure.Solution;
import tubwright.engine.structure.StaticSolver;
import tubwright.engine.structure.StepTimes;
import tubwright.engine.structure.Structure;
import tubwright.engine.structure.Tub;
import tubwright.numerics.DirectSolver;

/**
 * What shear buckles leave of the stiffness: each panel of sheet keeps the secant shear modulus of incomplete diagonal tension
 * at its own shear stress, found by solving over and over until stress and modulus agree. Direct stress is taken to be carried
 * as by flat sheet.
 */
final class SheetBuckling {
    private static final int ROUNDS = 12;
    private static final double ENOUGH = 2e-3;

    private final Tub tub;
    private final Structure flat;
    private final SheetPanels panels;

    SheetBuckling(Tub tub, Structure flat) {
        this.tub = tub;
        this.flat = flat;
        panels = SheetPanels.of(tub, flat);
    }

    /** The state under a stiffness case; empty without panels of sheet or without load on them. */
    Optional<SheetState> under(Solution solution, DirectSolver solver, StepTimes times) {
        double first = Double.POSITIVE_INFINITY;
        String name = "";
        int buckled = 0;
        List<SheetPanels.Panel> all = panels.panels();
        double[] tau = shear(flat, solution);
        for (int p = 0; p < tau.length; p++) {
            double factor = all.get(p).shear().bucklingStress() / tau[p];
            buckled += factor < 1 ? 1 : 0;
            if (factor < first) {
                first = factor;
                name = all.get(p).name();
            }
        }
        if (first == Double.POSITIVE_INFINITY) {
            return Optional.empty();
        }
        double left = buckled == 0 ? 1 : stiffnessLeft(solution, tau, solver, times);
        return Optional.of(new SheetState(tau.length, buckled, name, first, left));
    }

    private double stiffnessLeft(Solution solution, double[] tau, DirectSolver solver, StepTimes times) {
        Split split = split();
        Structure whole = Structure.of(tub, split.mesh());
        Case wanted = solution.solved();
        double[] left = new double[tau.length];
        Arrays.fill(left, 1);
        double now = Study.stiffness(flat, solution);
        double flatStiffness = now;
        for (int round = 0; round < ROUNDS; round++) {
            double change = 0;
            for (int p = 0; p < left.length; p++) {
                double next = panels.panels().get(p).shear().stiffnessLeft(tau[p]);
                change = Math.max(change, Math.abs(next - left[p]));
                left[p] = next;
            }
            if (change < ENOUGH) {
                break;
            }
            double[][] laminates = new double[split.mesh().regions().size()][];
            for (int r = 0; r < laminates.length; r++) {
                double[] own = whole.laminate(r);
                laminates[r] = split.panelOfRegion()[r] < 0 ? own : sheared(own, left[split.panelOfRegion()[r]]);
            }
            Structure softer = whole.withLaminates(laminates);
            Solution solved =
                    StaticSolver.solve(softer, List.of(wanted), solver, times).getFirst();
            now = Study.stiffness(softer, solved);
            System.arraycopy(shear(softer, solved), 0, tau, 0, tau.length);
        }
        return now / flatStiffness;
    }

    /** Mean shear stress of each panel, Pa, without sign. */
    private double[] shear(Structure solved, Solution solution) {
        double[] stresses = panels.shearStresses(solved, List.of(solution.displacements()))[0];
        return Arrays.stream(stresses).map(Math::abs).toArray();
    }

    /** The mesh with a region of its own for every panel, and the panel of each region. */
    private record Split(Mesh mesh, int[] panelOfRegion) {}

    private Split split() {
        record Key(int panel, int region) {}
        Mesh mesh = flat.mesh();
        List<Region> regions = new ArrayList<>(mesh.regions());
        List<Integer> panelOf = new ArrayList<>();
        regions.forEach(r -> panelOf.add(-1));
        int[] own = mesh.elementRegions().clone();
        Map<Key, Integer> made = new HashMap<>();
        for (int p = 0; p < panels.panels().size(); p++) {
            for (int e : panels.panels().get(p).elements()) {
                int region = mesh.elementRegions()[e];
                int panel = p;
                own[e] = made.computeIfAbsent(new Key(p, region), k -> {
                    regions.add(mesh.regions().get(region));
                    panelOf.add(panel);
                    return regions.size() - 1;
                });
            }
        }
        return new Split(
                new Mesh(
                        mesh.nodes(),
                        mesh.elementNodes(),
                        mesh.cornerNormals(),
                        mesh.referenceDirections(),
                        own,
                        regions,
                        mesh.lines()),
                panelOf.stream().mapToInt(Integer::intValue).toArray());
    }

    /** A sheet's stiffness with its membrane shear about its own middle multiplied by a share. */
    private static double[] sheared(double[] c, double share) {
        double[] softer = c.clone();
        double a = c[8 * 2 + 2];
        double middle = c[8 * 2 + 5] / a;
        double lost = (1 - share) * a;
        softer[8 * 2 + 2] -= lost;
        softer[8 * 2 + 5] -= lost * middle;
        softer[8 * 5 + 2] -= lost * middle;
        softer[8 * 5 + 5] -= lost * middle * middle;
        return softer;
    }
}
