// SPDX-License-Identifier: Apache-2.0
package tubwright.engine.design;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import tubwright.engine.design.text.Amounts;
import tubwright.engine.design.text.DesignError;
import tubwright.engine.design.text.Name;
import tubwright.engine.design.text.Named;
import tubwright.engine.structure.Fittings;

/** Every named point of a design that a load or a tube may use: hardpoints, nodes, bodies and points of bodies. */
final class PointBook {
    private final Map<String, double[]> points = new LinkedHashMap<>();

    PointBook(HardpointReader hardpoints) {
        hardpoints.all().forEach(h -> points.put(h.name(), h.position()));
    }

    /** Where a point is, m. */
    double[] at(String name) {
        return points.get(name);
    }

    /** The names of the point so called, or of both its twins, the left one first. */
    List<String> find(Name name) {
        List<String> found = new ArrayList<>();
        for (String each : List.of(name.text(), name.text() + " L", name.text() + " R")) {
            if (points.containsKey(each)) {
                found.add(each);
            }
        }
        if (found.isEmpty()) {
            List<String> known = points.keySet().stream()
                    .map(n -> n.replaceFirst(" [LR]$", ""))
                    .distinct()
                    .toList();
            throw Names.unknown(name, known, "hardpoint, node or body");
        }
        return found;
    }

    /** The right-hand twin of a point, or the point itself where it has none. */
    String right(Name name) {
        List<String> found = find(name);
        return found.getLast();
    }

    /** The same point on the other side of the car. */
    String twin(String name) {
        String other = name.endsWith(" R")
                ? name.substring(0, name.length() - 2) + " L"
                : name.endsWith(" L") ? name.substring(0, name.length() - 2) + " R" : name;
        return points.containsKey(other) ? other : name;
    }

    /** Takes up a point; a name may stand for one thing only. */
    void add(Name written, String name, double[] position) {
        if (points.containsKey(name)) {
            throw new DesignError(
                    written.place(),
                    "the name \"" + name + "\" is taken by another point",
                    "hardpoints, nodes, bodies and their points need names of their own");
        }
        points.put(name, position);
    }

    /** The points of a node as written: one, or two mirrored across the middle plane. */
    List<Fittings.Node> nodes(Named<NodeText> named) {
        NodeText text = named.value();
        double[] right = three(text.at(), named.name().text());
        boolean centre = text.sides() == Sides.CENTRE || text.sides() == Sides.BOTH && right[1] == 0;
        String name = named.name().text();
        List<Fittings.Node> nodes = new ArrayList<>();
        if (centre || text.sides() != Sides.BOTH) {
            double y = text.sides() == Sides.LEFT ? -Math.abs(right[1]) : right[1];
            nodes.add(new Fittings.Node(name, new double[] {right[0], y, right[2]}));
        } else {
            double y = Math.abs(right[1]);
            nodes.add(new Fittings.Node(name + " L", new double[] {right[0], -y, right[2]}));
            nodes.add(new Fittings.Node(name + " R", new double[] {right[0], y, right[2]}));
        }
        nodes.forEach(n -> add(named.name(), n.name(), n.position()));
        return nodes;
    }

    /** Three numbers. */
    static double[] three(Amounts amounts, String key) {
        if (amounts.si().length != 3) {
            throw new DesignError(
                    amounts.place(),
                    key + ": " + amounts.si().length + " numbers are given",
                    "three are due: x aft, y to the right and z up, with one unit: \"300, 560, 310 mm\"");
        }
        return amounts.si();
    }
}
