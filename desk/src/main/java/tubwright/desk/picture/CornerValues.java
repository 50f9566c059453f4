// SPDX-License-Identifier: Apache-2.0
package tubwright.desk.picture;

import java.util.HashMap;
import java.util.List;
import java.util.Map;
import tubwright.engine.mesh.Mesh;
import tubwright.engine.mesh.Region;

/** Element values made smooth for the eye: means at the corners, never across a boundary of laminate, part or piece. */
final class CornerValues {
    private record Laminate(String part, String zone, List<String> patches, String piece) {}

    private CornerValues() {}

    /**
     * Area-weighted means of the values of all elements of one laminate that meet at a corner.
     *
     * @param mesh the mesh
     * @param values one per element
     * @return four per element; the fourth of a triangle is unused
     */
    static double[] smooth(Mesh mesh, double[] values) {
        int elements = mesh.elementCount();
        Map<Laminate, Integer> numbers = new HashMap<>();
        int[] group = new int[mesh.regions().size()];
        for (int r = 0; r < group.length; r++) {
            Region region = mesh.regions().get(r);
            Laminate laminate = new Laminate(region.part(), region.zone(), region.patches(), region.piece());
            Integer number = numbers.putIfAbsent(laminate, numbers.size());
            group[r] = number == null ? numbers.size() - 1 : number;
        }
        int[] start = new int[mesh.nodeCount() + 1];
        for (int e = 0; e < elements; e++) {
            for (int i = 0; i < mesh.cornerCount(e); i++) {
                start[mesh.elementNodes()[4 * e + i] + 1]++;
            }
        }
        for (int n = 0; n < mesh.nodeCount(); n++) {
            start[n + 1] += start[n];
        }
        int[] next = start.clone();
        int[] around = new int[start[mesh.nodeCount()]];
        double[] areas = new double[elements];
        for (int e = 0; e < elements; e++) {
            areas[e] = mesh.area(e);
            for (int i = 0; i < mesh.cornerCount(e); i++) {
                around[next[mesh.elementNodes()[4 * e + i]]++] = e;
            }
        }
        double[] result = new double[4 * elements];
        for (int e = 0; e < elements; e++) {
            int mine = group[mesh.elementRegions()[e]];
            for (int i = 0; i < mesh.cornerCount(e); i++) {
                int node = mesh.elementNodes()[4 * e + i];
                double sum = 0;
                double weight = 0;
                for (int k = start[node]; k < start[node + 1]; k++) {
                    int f = around[k];
                    if (group[mesh.elementRegions()[f]] == mine) {
                        sum += areas[f] * values[f];
                        weight += areas[f];
                    }
                }
                result[4 * e + i] = weight > 0 ? sum / weight : values[e];
            }
        }
        return result;
    }
}
