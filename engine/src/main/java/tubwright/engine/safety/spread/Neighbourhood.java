// SPDX-License-Identifier: Apache-2.0
package tubwright.engine.safety.spread;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.OptionalDouble;
import java.util.TreeSet;
import java.util.stream.IntStream;
import tubwright.engine.joint.JointDetail;
import tubwright.engine.laminate.Laminate;
import tubwright.engine.material.Property;
import tubwright.engine.mesh.Mesh;
import tubwright.engine.response.BondLimits;
import tubwright.engine.structure.Case;
import tubwright.engine.structure.JointPoint;
import tubwright.engine.structure.Springs;
import tubwright.engine.structure.StaticSolver;
import tubwright.engine.structure.StepTimes;
import tubwright.engine.structure.Structure;
import tubwright.engine.structure.StructureException;
import tubwright.engine.structure.Surroundings;
import tubwright.engine.structure.Tub;
import tubwright.numerics.DirectSolver;

/**
 * The neighbourhood of a place on a tub: its shells soften, the bond lines on them unzip, all the rest of the tub is elastic
 * and condensed onto the border.
 *
 * @param model to follow the load on
 * @param notFollowed what is in it and stays elastic, in words
 */
public record Neighbourhood(SpreadModel model, List<String> notFollowed) {
    /** Turns of a stretch of line about its own middle, which no check counts. */
    private static final int FORCES = 4;

    public Neighbourhood {
        notFollowed = List.copyOf(notFollowed);
    }

    /**
     * Builds it.
     *
     * @param structure with what is bolted on, on the mesh of the tub
     * @param elements that may fail, rising
     * @param torn elements that are gone from the start, rising; none of those that may fail
     * @throws StructureException where the case has no way through what is left
     */
    public static Neighbourhood of(
            Tub tub,
            Structure structure,
            int[] elements,
            int[] torn,
            Case wanted,
            Energies energies,
            DirectSolver solver) {
        if (torn.length == 0) {
            // Says what is not held, or not joined, in words of the design.
            StaticSolver.solve(structure, List.of(wanted), solver, new StepTimes());
        }
        Laminate[] laminates =
                structure.mesh().regions().stream().map(tub::laminate).toArray(Laminate[]::new);
        BondLimits limits = new BondLimits(structure, laminates, tub.strength());
        List<Bond> bonds = new ArrayList<>();
        List<JointPoint> own = new ArrayList<>();
        TreeSet<String> elastic = new TreeSet<>();
        for (int k = 0; k < limits.points().size(); k++) {
            JointPoint point = limits.points().get(k);
            if (Arrays.binarySearch(elements, point.onto()) < 0 || Arrays.binarySearch(torn, point.onto()) >= 0) {
                continue;
            }
            if (!limits.bonded(k)) {
                elastic.add("joint '" + limits.run(k).joint().line()
                        + "' stays elastic: needs the energy a fastener takes as it tears out");
                continue;
            }
            bonds.add(bond(limits, k, energies));
            own.add(point);
        }
        Surroundings around = Surroundings.of(structure, elements, own, torn, wanted, solver);
        return new Neighbourhood(
                new SpreadModel(structure, laminates, tub.strength(), energies, elements, bonds, around),
                List.copyOf(elastic));
    }

    /** Shells whose middles lie within a distance of a point, whatever they belong to, rising. */
    public static int[] within(Mesh mesh, double[] point, double reach) {
        return IntStream.range(0, mesh.elementCount())
                .filter(e -> {
                    double square = 0;
                    for (int d = 0; d < 3; d++) {
                        double x = -point[d];
                        for (int c = 0; c < mesh.cornerCount(e); c++) {
                            x += mesh.nodes()[3 * mesh.elementNodes()[4 * e + c] + d] / mesh.cornerCount(e);
                        }
                        square += x * x;
                    }
                    return square <= reach * reach;
                })
                .toArray();
    }

    private static Bond bond(BondLimits limits, int k, Energies energies) {
        JointPoint point = limits.points().get(k);
        Springs springs = point.springs();
        JointDetail.Bond made = limits.run(k).joint().detail().bond().orElseThrow();
        double area = point.length() * made.overlap() * made.lie().faces();
        double one = Energies.of(made.adhesive(), Property.GIC, energies.bond());
        double two = Energies.of(made.adhesive(), Property.GIIC, energies.bond());
        List<String> needs = new ArrayList<>();
        for (Property p : List.of(Property.GIC, Property.GIIC)) {
            if (Double.isNaN(p == Property.GIC ? one : two)) {
                needs.add(p.key() + " of " + made.adhesive().name() + " (" + p.meaning() + ")");
            }
        }
        double perLength = 1 / point.length();
        return new Bond(
                springs,
                new boolean[] {false, false, true, true, true, false},
                gaps -> {
                    double[] forces = IntStream.range(0, FORCES)
                            .mapToDouble(r -> springs.stiffness()[r] * gaps[r] * perLength)
                            .toArray();
                    OptionalDouble factor = limits.factor(k, forces);
                    return factor.isPresent() ? 1 / factor.getAsDouble() : 0;
                },
                one * area,
                two * area,
                limits.run(k).joint().line(),
                "unzips",
                point.place(),
                needs);
    }
}
