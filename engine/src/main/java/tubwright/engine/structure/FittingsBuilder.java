// SPDX-License-Identifier: Apache-2.0
package tubwright.engine.structure;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Map;
import java.util.function.ToIntBiFunction;
import tubwright.engine.mesh.Mesh;

/**
 * Turns what is bolted on into nodes, members and masses. A body rides on a node at its centre of mass (an elastic one on
 * two), and every named point of it rides rigidly on the nearest of these along x.
 */
final class FittingsBuilder {
    private final ToIntBiFunction<Part.Kind, String> parts;
    private final Map<String, Rider> riders;
    private final int firstNode;
    private final List<double[]> positions = new ArrayList<>();
    private final List<Member> members = new ArrayList<>();
    private final List<NodeMass> masses = new ArrayList<>();

    /**
     * @param riders names known so far, added to
     * @param firstNode index of the first node that is free for fittings
     * @param parts index of a part of a kind and name
     */
    FittingsBuilder(Map<String, Rider> riders, int firstNode, ToIntBiFunction<Part.Kind, String> parts) {
        this.riders = riders;
        this.firstNode = firstNode;
        this.parts = parts;
    }

    /** Positions of the nodes made, 3 numbers each, m. */
    double[] positions() {
        double[] all = new double[3 * positions.size()];
        for (int i = 0; i < positions.size(); i++) {
            System.arraycopy(positions.get(i), 0, all, 3 * i, 3);
        }
        return all;
    }

    List<Member> members() {
        return members;
    }

    List<NodeMass> masses() {
        return masses;
    }

    /** Makes nodes and members; masses of tubes and bodies come along. */
    void stiffness(Fittings fittings) {
        for (Fittings.Node node : fittings.nodes()) {
            riders.put(node.name(), node(node.position()));
        }
        fittings.bodies().forEach(this::body);
        fittings.tubes().forEach(this::tube);
        stillPinnedNodes(fittings.nodes());
    }

    /** Adds the masses that have no stiffness, on a mesh of the tub. */
    void masses(Fittings fittings, Mesh mesh) {
        fittings.masses().forEach(m -> mass(m, mesh));
    }

    /**
     * Where only pinned tubes meet, nothing resists the node's rotation and nothing asks for it: a spring to the ground
     * keeps it at nought and carries no force.
     */
    private void stillPinnedNodes(List<Fittings.Node> nodes) {
        for (Fittings.Node each : nodes) {
            int node = riders.get(each.name()).node();
            List<Member> here = members.stream()
                    .filter(m -> Arrays.stream(m.nodes()).anyMatch(n -> n == node))
                    .toList();
            if (!here.isEmpty() && here.stream().allMatch(m -> pinnedAt(m, node))) {
                double[][] rows = {{0, 0, 0, 1, 0, 0}, {0, 0, 0, 0, 1, 0}, {0, 0, 0, 0, 0, 1}};
                members.add(new ElasticTie(here.getFirst().owner(), new int[] {node}, rows, new double[] {1, 1, 1}));
            }
        }
    }

    private static boolean pinnedAt(Member member, int node) {
        int size = 6 * member.nodes().length;
        double[] k = member.matrix();
        for (int i = 0; i < size; i++) {
            if (member.nodes()[i / 6] == node && i % 6 >= 3 && k[i * size + i] != 0) {
                return false;
            }
        }
        return true;
    }

    private Rider node(double[] position) {
        positions.add(position);
        return Rider.at(firstNode + positions.size() - 1, position);
    }

    private Rider rider(String name, String of) {
        Rider rider = riders.get(name);
        if (rider == null) {
            throw new StructureException(
                    "'" + of + "' names the point '" + name + "', which does not exist",
                    "name a hardpoint, a node or a point of a body");
        }
        return rider;
    }

    private void body(Fittings.Body body) {
        int owner = parts.applyAsInt(Part.Kind.BODY, body.name());
        switch (body.build()) {
            case Fittings.Rigid _ -> {
                Rider centre = node(body.centre());
                riders.put(body.name(), centre);
                mount(owner, body, List.of(centre));
                masses.add(new NodeMass(centre.node(), body.mass()));
            }
            case Fittings.Elastic beam -> elastic(owner, body, beam);
            case Fittings.AtMounts at -> {
                int[] nodes = body.mounts().stream()
                        .mapToInt(m -> rider(m, body.name()).node())
                        .toArray();
                members.add(new MountMatrix(owner, nodes, at.matrix()));
                for (int n : nodes) {
                    masses.add(new NodeMass(n, body.mass() / nodes.length));
                }
            }
        }
    }

    private void elastic(int owner, Fittings.Body body, Fittings.Elastic beam) {
        double[] c = body.centre();
        Rider front = node(new double[] {beam.front(), c[1], c[2]});
        Rider rear = node(new double[] {beam.rear(), c[1], c[2]});
        double[] ends = {beam.front(), c[1], c[2], beam.rear(), c[1], c[2]};
        int[] nodes = {front.node(), rear.node()};
        members.add(new Bar(owner, nodes, new Beam(ends, new double[6], new double[] {0, 0, 1}, beam.section())));
        double aft = (c[0] - beam.front()) / (beam.rear() - beam.front());
        masses.add(new NodeMass(front.node(), body.mass() * (1 - aft)));
        masses.add(new NodeMass(rear.node(), body.mass() * aft));
        Rider near = aft < 0.5 ? front : rear;
        riders.put(body.name(), Rider.on(near.node(), near.position(), c));
        mount(owner, body, List.of(front, rear));
    }

    /** Bolts the body on and lets its points ride, each on the nearest of its nodes. */
    private void mount(int owner, Fittings.Body body, List<Rider> nodes) {
        for (Fittings.Node point : body.points()) {
            Rider on = nearest(nodes, point.position());
            riders.put(point.name(), Rider.on(on.node(), on.position(), point.position()));
        }
        for (String mount : body.mounts()) {
            Rider at = rider(mount, body.name());
            Rider on = nearest(nodes, at.position());
            double[][] rows = new double[3][12];
            for (int d = 0; d < 3; d++) {
                double[] axis = new double[3];
                axis[d] = 1;
                Interpolation.ofNode(on.node(), on.position(), at.position()).addTranslation(rows[d], 0, 1, axis);
                Interpolation.ofNode(at.node(), at.nodePosition(), at.position())
                        .addTranslation(rows[d], 1, -1, axis);
            }
            double k = body.mountStiffness();
            members.add(new ElasticTie(owner, new int[] {on.node(), at.node()}, rows, new double[] {k, k, k}));
        }
    }

    private static Rider nearest(List<Rider> nodes, double[] p) {
        Rider nearest = nodes.getFirst();
        for (Rider each : nodes) {
            if (Math.abs(each.position()[0] - p[0]) < Math.abs(nearest.position()[0] - p[0])) {
                nearest = each;
            }
        }
        return nearest;
    }

    private void tube(Fittings.Tube tube) {
        int owner = parts.applyAsInt(Part.Kind.TUBE, tube.name());
        Rider a = rider(tube.from(), tube.name());
        Rider b = rider(tube.to(), tube.name());
        double[] line = Vectors.minus(b.position(), a.position());
        double length = Vectors.length(line);
        if (!(length > 1e-6) || a.node() == b.node()) {
            throw new StructureException(
                    "the tube '" + tube.name() + "' begins and ends in '" + tube.from() + "'", "give two points apart");
        }
        int[] nodes = {a.node(), b.node()};
        if (tube.pinned()) {
            double[] along = Vectors.unit(line);
            double[] row = new double[12];
            Interpolation.ofNode(a.node(), a.nodePosition(), a.position()).addTranslation(row, 0, 1, along);
            Interpolation.ofNode(b.node(), b.nodePosition(), b.position()).addTranslation(row, 1, -1, along);
            double k = tube.section().youngsModulus() * tube.section().area() / length;
            ElasticTie spring = new ElasticTie(owner, nodes, new double[][] {row}, new double[] {k});
            members.add(new PinnedBar(owner, nodes, spring, tube.section(), length));
            masses.add(new NodeMass(a.node(), tube.mass() / 2));
            masses.add(new NodeMass(b.node(), tube.mass() / 2));
            return;
        }
        double[] ends = new double[6];
        double[] arms = new double[6];
        System.arraycopy(a.nodePosition(), 0, ends, 0, 3);
        System.arraycopy(b.nodePosition(), 0, ends, 3, 3);
        System.arraycopy(a.arm(), 0, arms, 0, 3);
        System.arraycopy(b.arm(), 0, arms, 3, 3);
        boolean upright = Math.abs(line[2]) > 0.99 * length;
        double[] orientation = upright ? new double[] {1, 0, 0} : new double[] {0, 0, 1};
        members.add(new Bar(owner, nodes, new Beam(ends, arms, orientation, tube.section())));
    }

    private void mass(Fittings.Mass mass, Mesh mesh) {
        if (!mass.at().isEmpty()) {
            for (String at : mass.at()) {
                masses.add(new NodeMass(
                        rider(at, mass.name()).node(), mass.mass() / mass.at().size()));
            }
            return;
        }
        double[] area = new double[mesh.nodeCount()];
        double sum = 0;
        for (int e = 0; e < mesh.elementCount(); e++) {
            int corners = mesh.cornerCount(e);
            if (!mass.on().contains(mesh.region(e).part())) {
                continue;
            }
            double x = 0;
            for (int c = 0; c < corners; c++) {
                x += mesh.nodes()[3 * mesh.elementNodes()[4 * e + c]] / corners;
            }
            if (x < mass.from() || x > mass.to()) {
                continue;
            }
            for (int c = 0; c < corners; c++) {
                area[mesh.elementNodes()[4 * e + c]] += mesh.area(e) / corners;
            }
            sum += mesh.area(e);
        }
        if (!(sum > 0)) {
            throw new StructureException(
                    "the mass '" + mass.name() + "' is spread over skin or walls that are not there",
                    "look at the strips or walls it names and at its stations");
        }
        for (int n = 0; n < area.length; n++) {
            if (area[n] > 0) {
                masses.add(new NodeMass(n, mass.mass() * area[n] / sum));
            }
        }
    }
}
