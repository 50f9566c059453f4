// SPDX-License-Identifier: Apache-2.0
package tubwright.engine.response;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import tubwright.engine.laminate.Laminate;
import tubwright.engine.mesh.Mesh;
import tubwright.engine.strength.Check;
import tubwright.engine.strength.KnockDown;
import tubwright.engine.strength.sandwich.PanelLoad;
import tubwright.engine.strength.sandwich.Sandwich;
import tubwright.engine.strength.sandwich.SandwichChecks;
import tubwright.engine.structure.ShellKernel;
import tubwright.engine.structure.ShellWorkspace;
import tubwright.engine.structure.Structure;

/**
 * Sandwich checks of a region's elements. All checks are made where any of what drives them (compression of a face,
 * compression of the whole, transverse shear, face force times curvature) reaches {@value #SHARE} of its largest value in
 * the region: what they may reach varies with direction by less than that on the cores of the library (a rule, not a proof).
 */
final class SandwichReserves {
    static final double SHARE = 0.4;

    private static final int DRIVERS = 6;

    /** Ends the name of a check against theory, which decides nothing. */
    static final String THEORY = ", theory";

    private final Structure structure;
    private final int region;
    private final Sandwich sandwich;
    private final double[] stiffness;
    private final int[] elements;
    private final double[][] curvatures;
    private final ShellKernel kernel;

    private SandwichReserves(Structure structure, int region, Sandwich sandwich, int[] elements) {
        this.structure = structure;
        this.elements = elements;
        this.region = region;
        this.sandwich = sandwich;
        Laminate laminate = sandwich.laminate();
        stiffness = laminate.stiffness().matrix();
        kernel = new ShellKernel(structure);
        curvatures = Arrays.stream(elements).mapToObj(this::curvature).toArray(double[][]::new);
    }

    /**
     * Of some elements of a region.
     *
     * @return empty if the laminate is no sandwich
     */
    static Optional<SandwichReserves> of(Structure structure, int region, Laminate laminate, int[] elements) {
        return Sandwich.of(laminate).map(s -> of(structure, region, s, elements));
    }

    /** Of some elements of a region whose laminate is a sandwich. */
    static SandwichReserves of(Structure structure, int region, Sandwich sandwich, int[] elements) {
        return new SandwichReserves(structure, region, sandwich, elements);
    }

    private record Key(String mode, boolean local) {}

    private record Worst(Check.Reserve check, int element) {}

    /**
     * What was found in one case.
     *
     * @param rows the worst of each check over the elements
     * @param notChecked what could not be checked
     * @param lowest what fails first at each element looked at, checks against theory left out
     */
    record Found(List<Reserve> rows, Set<Check.NotChecked> notChecked, List<Lowest> lowest) {}

    /** A factor at an element and the mode, without the face and the constant. */
    record Lowest(int element, double factor, String mode) {}

    /** Looks at one case. May run for several at a time. */
    Found in(PlySweep sweep, int c, String load, Resolution resolution) {
        Found found = new Found(new ArrayList<>(), new LinkedHashSet<>(), new ArrayList<>());
        double[][] drivers = new double[elements.length][];
        double[] largest = new double[DRIVERS];
        for (int i = 0; i < elements.length; i++) {
            drivers[i] = drivers(sweep.mean(c, elements[i]), curvatures[i]);
            for (int d = 0; d < DRIVERS; d++) {
                largest[d] = Math.max(largest[d], drivers[i][d]);
            }
        }
        Map<Key, Worst> worst = new LinkedHashMap<>();
        Map<String, String> shortly = new HashMap<>();
        for (int i = 0; i < elements.length; i++) {
            boolean wanted = false;
            for (int d = 0; d < DRIVERS; d++) {
                wanted |= largest[d] > 0 && drivers[i][d] >= SHARE * largest[d];
            }
            if (!wanted) {
                continue;
            }
            double[] n = resultants(sweep.mean(c, elements[i]));
            PanelLoad panel = new PanelLoad(Arrays.copyOf(n, 6), new double[] {n[6], n[7]}, curvatures[i]);
            double lowest = Double.POSITIVE_INFINITY;
            String mode = "";
            for (Check check : SandwichChecks.of(sandwich, panel, KnockDown.NONE)) {
                switch (check) {
                    case Check.NotChecked not -> found.notChecked().add(not);
                    case Check.Reserve made -> {
                        if (made.reserveFactor() < Double.POSITIVE_INFINITY) {
                            if (made.reserveFactor() < lowest && !made.mode().endsWith(THEORY)) {
                                lowest = made.reserveFactor();
                                mode = made.mode();
                            }
                            worst.merge(
                                    new Key(made.mode(), resolution.doubtful(elements[i])),
                                    new Worst(made, elements[i]),
                                    (a, b) -> b.check().reserveFactor()
                                                    < a.check().reserveFactor()
                                            ? b
                                            : a);
                        }
                    }
                }
            }
            if (lowest < Double.POSITIVE_INFINITY) {
                found.lowest()
                        .add(new Lowest(elements[i], lowest, shortly.computeIfAbsent(mode, SandwichReserves::shortly)));
            }
        }
        String zone = structure.parts().get(structure.partOfRegion(region)).name();
        worst.forEach((key, at) -> found.rows()
                .add(new Reserve(
                        load,
                        key.mode(),
                        "",
                        false,
                        zone,
                        "",
                        PlyReserves.centre(structure.mesh(), at.element()),
                        at.check().reserveFactor(),
                        KnockDown.NONE.name(),
                        key.local(),
                        resolution.settledBy(at.element()),
                        at.check().basis())));
        return found;
    }

    /** A mode without the face and the constant. */
    private static String shortly(String mode) {
        return mode.replaceFirst(" of the (outer|inner) face.*", "");
    }

    private double[] resultants(double[] strains) {
        double[] n = new double[8];
        for (int i = 0; i < 8; i++) {
            for (int j = 0; j < 8; j++) {
                n[i] += stiffness[8 * i + j] * strains[j];
            }
        }
        return n;
    }

    private double[] drivers(double[] strains, double[] curvature) {
        double[] drivers = new double[DRIVERS];
        for (int f = 0; f < 2; f++) {
            double[] force = sandwich.faceForce(f == 0, strains);
            double product = 0;
            for (int i = 0; i < 3; i++) {
                product += force[i] * (Math.abs(curvature[i]) + Math.abs(strains[3 + i]));
            }
            drivers[f] = compression(force);
            drivers[2 + f] = Math.abs(product);
        }
        double[] n = resultants(strains);
        drivers[4] = compression(n);
        drivers[5] = Math.hypot(n[6], n[7]);
        return drivers;
    }

    private static double compression(double[] s) {
        return Math.hypot(0.5 * (s[0] - s[1]), s[2]) - 0.5 * (s[0] + s[1]);
    }

    /**
     * Curvature (κx, κy, κxy) of the unloaded surface in the element's axes, positive where its outer face is convex: how
     * the normals of the corners spread, by least squares.
     */
    private double[] curvature(int e) {
        Mesh mesh = structure.mesh();
        ShellWorkspace w = kernel.strainPoints(e);
        double[] axes = w.axes(0);
        double[] centre = PlyReserves.centre(mesh, e);
        double aa = 0;
        double ab = 0;
        double bb = 0;
        double[] right = new double[4];
        for (int k = 0; k < mesh.cornerCount(e); k++) {
            int node = mesh.elementNodes()[4 * e + k];
            double a = 0;
            double b = 0;
            double n1 = 0;
            double n2 = 0;
            for (int d = 0; d < 3; d++) {
                double arm = mesh.nodes()[3 * node + d] - centre[d];
                double normal = mesh.cornerNormals()[12 * e + 3 * k + d];
                a += axes[d] * arm;
                b += axes[3 + d] * arm;
                n1 += axes[d] * normal;
                n2 += axes[3 + d] * normal;
            }
            aa += a * a;
            ab += a * b;
            bb += b * b;
            right[0] += a * n1;
            right[1] += b * n1;
            right[2] += a * n2;
            right[3] += b * n2;
        }
        double det = aa * bb - ab * ab;
        if (!(det > 1e-12 * aa * bb)) {
            return new double[3];
        }
        double n1a = (bb * right[0] - ab * right[1]) / det;
        double n1b = (aa * right[1] - ab * right[0]) / det;
        double n2a = (bb * right[2] - ab * right[3]) / det;
        double n2b = (aa * right[3] - ab * right[2]) / det;
        return new double[] {n1a, n2b, n1b + n2a};
    }
}
