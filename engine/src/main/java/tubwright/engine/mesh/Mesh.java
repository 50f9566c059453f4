// SPDX-License-Identifier: Apache-2.0
package tubwright.engine.mesh;

import java.util.List;

/**
 * A shell mesh of quadrilaterals and triangles on the reference surface (outer mould surface of the skin, middle surface
 * of walls). The arrays are shared, not copied: treat them as read-only.
 *
 * @param nodes 3 coordinates per node, m
 * @param elementNodes 4 node indices per element, anticlockwise seen from the side the normal points to; a triangle has
 *     -1 in fourth place
 * @param cornerNormals 12 numbers per element: the unit outward normal of the true surface at each corner
 * @param referenceDirections 3 numbers per element: unit vector in the surface at the element's centre, the 0 degree
 *     direction of its plies (before mirroring)
 * @param elementRegions index into {@code regions} per element
 * @param regions the laminate regions
 * @param lines named lines
 */
public record Mesh(
        double[] nodes,
        int[] elementNodes,
        double[] cornerNormals,
        double[] referenceDirections,
        int[] elementRegions,
        List<Region> regions,
        List<MeshLine> lines) {

    public Mesh {
        regions = List.copyOf(regions);
        lines = List.copyOf(lines);
        if (nodes.length % 3 != 0 || elementNodes.length % 4 != 0) {
            throw new IllegalArgumentException("node array must hold triples, element array quadruples");
        }
        int elements = elementNodes.length / 4;
        if (cornerNormals.length != 12 * elements
                || referenceDirections.length != 3 * elements
                || elementRegions.length != elements) {
            throw new IllegalArgumentException("element arrays disagree about the number of elements");
        }
    }

    /** Number of nodes. */
    public int nodeCount() {
        return nodes.length / 3;
    }

    /** Number of elements. */
    public int elementCount() {
        return elementNodes.length / 4;
    }

    /** Whether element {@code e} is a triangle. */
    public boolean isTriangle(int e) {
        return elementNodes[4 * e + 3] < 0;
    }

    /** Number of corners of element {@code e}: 3 or 4. */
    public int cornerCount(int e) {
        return isTriangle(e) ? 3 : 4;
    }

    /** The region of element {@code e}. */
    public Region region(int e) {
        return regions.get(elementRegions[e]);
    }

    /** Area of element {@code e} in m²: half the cross product of the diagonals for a quadrilateral. */
    public double area(int e) {
        int a = 3 * elementNodes[4 * e];
        int b = 3 * elementNodes[4 * e + 1];
        int c = 3 * elementNodes[4 * e + 2];
        int d = isTriangle(e) ? a : 3 * elementNodes[4 * e + 3];
        double px = nodes[c] - nodes[a];
        double py = nodes[c + 1] - nodes[a + 1];
        double pz = nodes[c + 2] - nodes[a + 2];
        double qx = nodes[d] - nodes[b];
        double qy = nodes[d + 1] - nodes[b + 1];
        double qz = nodes[d + 2] - nodes[b + 2];
        double nx = py * qz - pz * qy;
        double ny = pz * qx - px * qz;
        double nz = px * qy - py * qx;
        return 0.5 * Math.sqrt(nx * nx + ny * ny + nz * nz);
    }
}
