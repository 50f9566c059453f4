// SPDX-License-Identifier: Apache-2.0
package tubwright.engine.trim;

import java.util.ArrayList;
import java.util.Collections;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import tubwright.engine.mesh.Mesh;
import tubwright.engine.mesh.Region;

/**
 * The shells grouped by what they carry: all regions of one zone under the same patches, left and right, whatever their
 * piece, form one block, because one laminate decides them all.
 */
public final class Blocks {
    private final List<Block> blocks = new ArrayList<>();
    private final List<List<Integer>> elements = new ArrayList<>();
    private final List<Map<String, Double>> pieces = new ArrayList<>();
    private int[] ofRegion = new int[0];

    /**
     * One block.
     *
     * @param zone whose laminate it carries
     * @param patches whose plies lie on it, in their order
     * @param wall whether it belongs to a wall
     * @param area m²
     */
    public record Block(String zone, List<String> patches, boolean wall, double area) {
        public Block {
            patches = List.copyOf(patches);
        }

        /** Whether a zone's laminate or a patch's plies are part of its laminate. */
        boolean carries(Owner owner) {
            return switch (owner) {
                case Owner.Zone(String name) -> name.equals(zone);
                case Owner.Patch patch ->
                    patches.stream().anyMatch(p -> Owner.Patch.of(p).equals(patch));
                case Owner.Joint _ -> false;
            };
        }
    }

    private Blocks() {}

    /** The blocks of a mesh, in the order of its regions. */
    public static Blocks of(Mesh mesh) {
        record Key(String zone, List<String> patches) {}
        Blocks result = new Blocks();
        Map<Key, Integer> index = new LinkedHashMap<>();
        List<Region> regions = mesh.regions();
        int[] ofRegion = new int[regions.size()];
        for (int r = 0; r < regions.size(); r++) {
            Key key = new Key(regions.get(r).zone(), regions.get(r).patches());
            ofRegion[r] = index.computeIfAbsent(key, _ -> index.size());
        }
        result.ofRegion = ofRegion;
        double[] areas = new double[index.size()];
        boolean[] wall = new boolean[index.size()];
        index.forEach((_, _) -> {
            result.elements.add(new ArrayList<>());
            result.pieces.add(new TreeMap<>());
        });
        for (int e = 0; e < mesh.elementCount(); e++) {
            int b = ofRegion[mesh.elementRegions()[e]];
            areas[b] += mesh.area(e);
            wall[b] = mesh.region(e).surface() == Region.Surface.WALL;
            result.elements.get(b).add(e);
            result.pieces.get(b).merge(mesh.region(e).piece(), mesh.area(e), Double::sum);
        }
        index.forEach((key, b) -> result.blocks.add(new Block(key.zone, key.patches, wall[b], areas[b])));
        return result;
    }

    /** All of them. */
    public List<Block> all() {
        return Collections.unmodifiableList(blocks);
    }

    /** The block of a region of the mesh. */
    int ofRegion(int region) {
        return ofRegion[region];
    }

    /** Elements of a block. */
    List<Integer> elements(int block) {
        return elements.get(block);
    }

    /** Area of a block by the piece it is laid up with, m². */
    Map<String, Double> areaByPiece(int block) {
        return pieces.get(block);
    }

    /** Area of all blocks that a zone's laminate or a patch's plies are part of, m². Zero for a joint. */
    public double area(Owner owner) {
        return blocks.stream()
                .filter(b -> b.carries(owner))
                .mapToDouble(Block::area)
                .sum();
    }
}
