// SPDX-License-Identifier: Apache-2.0
package tubwright.engine.response;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.Set;
import tubwright.engine.joint.Adherend;
import tubwright.engine.joint.InsertPullOut;
import tubwright.engine.laminate.EngineeringConstants;
import tubwright.engine.laminate.Laminate;
import tubwright.engine.laminate.Layer;
import tubwright.engine.laminate.LayerRole;
import tubwright.engine.laminate.Reference;
import tubwright.engine.material.Core;
import tubwright.engine.material.Property;
import tubwright.engine.mesh.Mesh;
import tubwright.engine.strength.Check;
import tubwright.engine.strength.KnockDown;
import tubwright.engine.strength.sandwich.Sandwich;
import tubwright.engine.structure.Case;
import tubwright.engine.structure.Hardpoint;
import tubwright.engine.structure.Solution;
import tubwright.engine.structure.Structure;

/** Inserts against being pulled out of a sandwich, by the force that the case brings or the support returns. */
final class InsertReserves {
    private final Structure structure;
    private final Laminate[] laminates;

    InsertReserves(Structure structure, Laminate[] laminates) {
        this.structure = structure;
        this.laminates = laminates;
    }

    void add(Solution solution, List<Reserve> rows, Set<Check.NotChecked> notChecked) {
        if (!(solution.solved() instanceof Case.Loads loads)) {
            return;
        }
        for (Hardpoint each : structure.hardpoints()) {
            double[] force = force(solution, loads, each);
            if (Math.hypot(Math.hypot(force[0], force[1]), force[2]) < 1e-3) {
                continue;
            }
            int element = nearest(each);
            Laminate laminate = laminates[structure.mesh().elementRegions()[element]];
            Optional<Sandwich> sandwich = Sandwich.of(laminate);
            if (sandwich.isEmpty()) {
                notChecked.add(new Check.NotChecked(
                        "inserts and bolts in solid laminate", List.of("bearing and pull-through strength by test")));
                continue;
            }
            double pull = dot(force, normal(element));
            for (Check check : checks(sandwich.get(), each, pull)) {
                switch (check) {
                    case Check.NotChecked not -> notChecked.add(not);
                    case Check.Reserve made -> {
                        if (made.reserveFactor() < Double.POSITIVE_INFINITY) {
                            rows.add(new Reserve(
                                    loads.name(),
                                    made.mode(),
                                    "",
                                    false,
                                    each.name(),
                                    "",
                                    each.position(),
                                    made.reserveFactor(),
                                    KnockDown.NONE.name(),
                                    false,
                                    made.basis()));
                        }
                    }
                }
            }
            notChecked.add(new Check.NotChecked(
                    "inserts in the plane of the skin and under moments", List.of("shear-out and torque-out tests")));
        }
    }

    private List<Check> checks(Sandwich sandwich, Hardpoint hardpoint, double pull) {
        Core core = sandwich.core();
        List<Layer> face = thinnerFace(sandwich.laminate());
        EngineeringConstants e = EngineeringConstants.membrane(new Laminate(face, Reference.MIDDLE));
        Adherend adherend = new Adherend(
                face.stream().mapToDouble(Layer::thickness).sum(),
                Math.min(e.ex(), e.ey()),
                Math.sqrt(Math.abs(e.nuxy() * e.nuyx())));
        double shear = Math.min(
                core.properties().require(Property.G13), core.properties().require(Property.G23));
        return new InsertPullOut(hardpoint.footprintRadius(), adherend, sandwich.coreThickness(), shear)
                .checks(core, pull, OptionalDouble.empty(), KnockDown.NONE);
    }

    private static List<Layer> thinnerFace(Laminate laminate) {
        List<Layer> outer = new ArrayList<>();
        List<Layer> inner = new ArrayList<>();
        boolean behind = false;
        for (Layer layer : laminate.layers()) {
            if (layer.role() == LayerRole.CORE) {
                behind = true;
            } else {
                (behind ? inner : outer).add(layer);
            }
        }
        double o = outer.stream().mapToDouble(Layer::thickness).sum();
        double i = inner.stream().mapToDouble(Layer::thickness).sum();
        return o <= i ? outer : inner;
    }

    /** What pushes the insert from outside the tub: applied or returned by a support. */
    private double[] force(Solution solution, Case.Loads loads, Hardpoint hardpoint) {
        int node = structure.hardpointNode(hardpoint.name());
        double[] force = java.util.Arrays.copyOfRange(solution.reactions(), 6 * node, 6 * node + 3);
        for (Case.Force each : loads.forces()) {
            if (each.hardpoint().equals(hardpoint.name())) {
                for (int d = 0; d < 3; d++) {
                    force[d] += each.force()[d];
                }
            }
        }
        return force;
    }

    private int nearest(Hardpoint hardpoint) {
        Mesh mesh = structure.mesh();
        int nearest = 0;
        double best = Double.POSITIVE_INFINITY;
        for (int e = 0; e < mesh.elementCount(); e++) {
            if (mesh.region(e).part().equals(hardpoint.part())) {
                double[] x = PlyReserves.centre(mesh, e);
                double d = Math.hypot(
                        Math.hypot(
                                x[0] - hardpoint.position()[0], x[1] - hardpoint.position()[1]),
                        x[2] - hardpoint.position()[2]);
                if (d < best) {
                    best = d;
                    nearest = e;
                }
            }
        }
        return nearest;
    }

    private double[] normal(int e) {
        double[] n = new double[3];
        Mesh mesh = structure.mesh();
        for (int k = 0; k < 3 * mesh.cornerCount(e); k++) {
            n[k % 3] += mesh.cornerNormals()[12 * e + k];
        }
        double length = Math.sqrt(dot(n, n));
        return new double[] {n[0] / length, n[1] / length, n[2] / length};
    }

    private static double dot(double[] a, double[] b) {
        return a[0] * b[0] + a[1] * b[1] + a[2] * b[2];
    }
}
