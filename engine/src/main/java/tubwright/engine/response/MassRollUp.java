// SPDX-License-Identifier: Apache-2.0
package tubwright.engine.response;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import tubwright.engine.mesh.Mesh;
import tubwright.engine.mesh.Region;
import tubwright.engine.structure.LumpedMass;
import tubwright.engine.structure.Part;
import tubwright.engine.structure.Structure;

/**
 * Adds up mass, centre of mass and inertia. A shell element's mass sits where the laminate's centre of mass lies, off
 * the reference surface; it is spread one third to the corners and two thirds to the centre, which gives a flat
 * parallelogram its exact second moments.
 */
public final class MassRollUp {
    private MassRollUp() {}

    /** The mass roll-up of a structure. */
    public static MassAnswer of(Structure structure) {
        Mesh mesh = structure.mesh();
        Map<ItemKey, double[]> items = new LinkedHashMap<>();
        Map<String, Moments> pieces = new LinkedHashMap<>();
        Moments whole = new Moments();
        for (int e = 0; e < mesh.elementCount(); e++) {
            int r = mesh.elementRegions()[e];
            Region region = mesh.regions().get(r);
            double area = mesh.area(e);
            double mass = area * structure.arealMass(r);
            double[] entry = items.computeIfAbsent(
                    new ItemKey(structure.parts().get(structure.partOfRegion(r)), region.piece()), k -> new double[2]);
            entry[0] += area;
            entry[1] += mass;
            Moments piece = pieces.computeIfAbsent(region.piece(), k -> new Moments());
            addElement(mesh, e, mass, structure.massOffset(r), piece);
            addElement(mesh, e, mass, structure.massOffset(r), whole);
        }
        for (LumpedMass lump : structure.lumpedMasses()) {
            double[] entry = items.computeIfAbsent(
                    new ItemKey(structure.parts().get(lump.owner()), lump.piece()), k -> new double[2]);
            entry[1] += lump.mass();
            pieces.computeIfAbsent(lump.piece(), k -> new Moments())
                    .add(lump.mass(), lump.centre()[0], lump.centre()[1], lump.centre()[2]);
            whole.add(lump.mass(), lump.centre()[0], lump.centre()[1], lump.centre()[2]);
        }
        List<MassAnswer.Item> list = new ArrayList<>();
        items.forEach((key, entry) ->
                list.add(new MassAnswer.Item(key.part.kind(), key.part.name(), key.piece, entry[0], entry[1])));
        List<MassAnswer.Body> bodies = new ArrayList<>();
        pieces.forEach((name, moments) -> bodies.add(moments.body(name)));
        return new MassAnswer(list, bodies, whole.body("whole"));
    }

    private static void addElement(Mesh mesh, int e, double mass, double offset, Moments to) {
        int corners = mesh.cornerCount(e);
        double[] centre = new double[3];
        double[] x = new double[3];
        for (int c = 0; c < corners; c++) {
            int n = mesh.elementNodes()[4 * e + c];
            for (int d = 0; d < 3; d++) {
                x[d] = mesh.nodes()[3 * n + d] + offset * mesh.cornerNormals()[12 * e + 3 * c + d];
                centre[d] += x[d] / corners;
            }
            // One twelfth a corner suits both: parallelograms want 2/3 left at the centre, triangles 3/4.
            to.add(mass / 12, x[0], x[1], x[2]);
        }
        to.add(mass * (corners == 4 ? 2.0 / 3 : 3.0 / 4), centre[0], centre[1], centre[2]);
    }

    private record ItemKey(Part part, String piece) {}

    /** Running sums of mass and its moments about the design datum. */
    private static final class Moments {
        private final double[] sums = new double[10];

        void add(double mass, double x, double y, double z) {
            sums[0] += mass;
            sums[1] += mass * x;
            sums[2] += mass * y;
            sums[3] += mass * z;
            sums[4] += mass * x * x;
            sums[5] += mass * y * y;
            sums[6] += mass * z * z;
            sums[7] += mass * x * y;
            sums[8] += mass * y * z;
            sums[9] += mass * z * x;
        }

        MassAnswer.Body body(String name) {
            double m = sums[0];
            double x = m > 0 ? sums[1] / m : 0;
            double y = m > 0 ? sums[2] / m : 0;
            double z = m > 0 ? sums[3] / m : 0;
            double xx = sums[4] - m * x * x;
            double yy = sums[5] - m * y * y;
            double zz = sums[6] - m * z * z;
            double[] inertia = {
                yy + zz, zz + xx, xx + yy, -(sums[7] - m * x * y), -(sums[8] - m * y * z), -(sums[9] - m * z * x)
            };
            return new MassAnswer.Body(name, m, new double[] {x, y, z}, inertia);
        }
    }
}
