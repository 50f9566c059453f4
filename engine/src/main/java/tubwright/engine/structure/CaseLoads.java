// SPDX-License-Identifier: Apache-2.0
package tubwright.engine.structure;

import java.util.Arrays;
import java.util.List;
import tubwright.engine.mesh.Mesh;

/** What a case fixes and what it applies, in the unknowns of a structure. */
final class CaseLoads {
    private CaseLoads() {}

    /** One flag per unknown: held by the case's supports. */
    static boolean[] fixed(Structure structure, Case wanted) {
        return fixed(structure, wanted, new boolean[structure.unknowns()]);
    }

    /** The same where some unknowns are gone. */
    static boolean[] fixed(Structure structure, Case wanted, boolean[] gone) {
        if (wanted instanceof Case.Loads loads && loads.free()) {
            return oneInsert(structure, loads, gone);
        }
        return fixed(structure, wanted.hold());
    }

    /** One flag per unknown: held by the supports. */
    static boolean[] fixed(Structure structure, List<Case.Support> hold) {
        boolean[] fixed = new boolean[structure.unknowns()];
        for (Case.Support support : hold) {
            int node = structure.hardpointNode(support.hardpoint());
            for (int d = 0; d < 6; d++) {
                fixed[6 * node + d] |= support.directions()[d];
            }
        }
        return fixed;
    }

    /** Forces (N) and moments (N·m) per unknown. */
    static double[] loads(Structure structure, Case wanted) {
        return loads(structure, wanted, new OwnMass(structure));
    }

    /** As {@link #loads(Structure, Case)}, with the mass matrix kept from case to case. */
    static double[] loads(Structure structure, Case wanted, OwnMass mass) {
        return switch (wanted) {
            case Case.Torsion torsion -> couple(structure, torsion);
            case Case.Bending bending -> shared(structure, bending);
            case Case.Loads each -> points(structure, each, mass);
        };
    }

    /** A free body in balance needs no reaction: one insert held in all six directions only says where it lies. */
    private static boolean[] oneInsert(Structure structure, Case.Loads loads, boolean[] gone) {
        if (structure.hardpoints().isEmpty()) {
            throw new StructureException(
                    "case '" + loads.name() + "' has no hardpoint to load", "give the tub its hardpoints");
        }
        boolean[] fixed = new boolean[structure.unknowns()];
        int node = structure.hardpoints().stream()
                .mapToInt(h -> structure.hardpointNode(h.name()))
                .filter(n -> !gone[6 * n])
                .findFirst()
                .orElseThrow(() ->
                        new StructureException("case '" + loads.name() + "' has no hardpoint left", "tear out less"));
        Arrays.fill(fixed, 6 * node, 6 * node + 6, true);
        return fixed;
    }

    /** Forces (N) and moments (N·m) that are applied, without those of the structure's own mass. */
    static double[] applied(Structure structure, Case wanted) {
        return wanted instanceof Case.Loads each ? pushed(structure, each) : loads(structure, wanted);
    }

    private static double[] pushed(Structure structure, Case.Loads wanted) {
        double[] loads = new double[structure.unknowns()];
        for (Case.Force each : wanted.forces()) {
            structure.rider(each.hardpoint()).push(each.force(), each.moment(), loads);
        }
        wanted.pressures().forEach(p -> press(structure, wanted, p, loads));
        wanted.spreads().forEach(s -> spread(structure, wanted, s, loads));
        return loads;
    }

    private static double[] points(Structure structure, Case.Loads wanted, OwnMass mass) {
        double[] loads = pushed(structure, wanted);
        double[] a = wanted.acceleration();
        if (a[0] != 0 || a[1] != 0 || a[2] != 0) {
            mass.addForces(a, loads);
        }
        if (wanted.free()) {
            mass.balance(wanted.name(), loads);
        }
        return loads;
    }

    /** Pressure inward along the mean normal of each element, in equal shares to its corners. */
    private static void press(Structure structure, Case.Loads wanted, Case.Pressure pressure, double[] loads) {
        Mesh mesh = structure.mesh();
        boolean found = false;
        for (int e = 0; e < mesh.elementCount(); e++) {
            if (!mesh.region(e).part().equals(pressure.on())) {
                continue;
            }
            int corners = mesh.cornerCount(e);
            double[] normal = new double[3];
            double x = 0;
            for (int c = 0; c < corners; c++) {
                x += mesh.nodes()[3 * mesh.elementNodes()[4 * e + c]] / corners;
                for (int d = 0; d < 3; d++) {
                    normal[d] += mesh.cornerNormals()[12 * e + 3 * c + d];
                }
            }
            if (x < pressure.from() || x > pressure.to()) {
                continue;
            }
            found = true;
            double share = -pressure.pressure() * mesh.area(e) / corners / Vectors.length(normal);
            for (int c = 0; c < corners; c++) {
                for (int d = 0; d < 3; d++) {
                    loads[6 * mesh.elementNodes()[4 * e + c] + d] += share * normal[d];
                }
            }
        }
        if (!found) {
            throw new StructureException(
                    "case '" + wanted.name() + "' presses on '" + pressure.on() + "' where there is none of it",
                    "look at the part and the stations of the pressure");
        }
    }

    private static void spread(Structure structure, Case.Loads wanted, Case.Spread spread, double[] loads) {
        Mesh mesh = structure.mesh();
        int[] elements = SpreadPlace.elements(mesh, spread);
        double area = Arrays.stream(elements).mapToDouble(mesh::area).sum();
        if (elements.length == 0) {
            throw new StructureException(
                    "case '" + wanted.name() + "': '" + spread.name() + "' pushes where there is no skin and no wall",
                    "look at its place and size; a pad is at least as large as an element");
        }
        for (int e : elements) {
            int corners = mesh.cornerCount(e);
            double share = mesh.area(e) / area / corners;
            for (int c = 0; c < corners; c++) {
                for (int d = 0; d < 3; d++) {
                    loads[6 * mesh.elementNodes()[4 * e + c] + d] += share * spread.force()[d];
                }
            }
        }
    }

    /**
     * Forces in the y-z plane, each square to the arm from the hardpoints' mean and as large as the arm is long: their
     * sum is nil and their moment about x is the couple, wherever the axis.
     */
    private static double[] couple(Structure structure, Case.Torsion torsion) {
        double[] loads = new double[structure.unknowns()];
        int[] nodes = nodes(structure, torsion.loaded(), torsion.name());
        double[] x = structure.positions();
        double y = 0;
        double z = 0;
        for (int n : nodes) {
            y += x[3 * n + 1] / nodes.length;
            z += x[3 * n + 2] / nodes.length;
        }
        double sum = 0;
        for (int n : nodes) {
            sum += Math.pow(x[3 * n + 1] - y, 2) + Math.pow(x[3 * n + 2] - z, 2);
        }
        if (sum < 1e-9) {
            throw new StructureException(
                    "case '" + torsion.name() + "' loads hardpoints that all lie on one line along the car",
                    "a couple needs at least two hardpoints apart in y or z");
        }
        for (int n : nodes) {
            loads[6 * n + 1] -= torsion.couple() * (x[3 * n + 2] - z) / sum;
            loads[6 * n + 2] += torsion.couple() * (x[3 * n + 1] - y) / sum;
        }
        return loads;
    }

    private static double[] shared(Structure structure, Case.Bending bending) {
        double[] loads = new double[structure.unknowns()];
        int[] nodes = nodes(structure, bending.loaded(), bending.name());
        for (int n : nodes) {
            for (int d = 0; d < 3; d++) {
                loads[6 * n + d] += bending.force()[d] / nodes.length;
            }
        }
        return loads;
    }

    private static int[] nodes(Structure structure, List<String> names, String wanted) {
        if (names.isEmpty()) {
            throw new StructureException("case '" + wanted + "' loads nothing", "name the hardpoints that are loaded");
        }
        return names.stream().mapToInt(structure::hardpointNode).toArray();
    }
}
