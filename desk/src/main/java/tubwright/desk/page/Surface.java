// SPDX-License-Identifier: Apache-2.0
package tubwright.desk.page;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import tubwright.desk.answer.RunAnswer;
import tubwright.desk.picture.Edges;
import tubwright.desk.work.Gathering;
import tubwright.engine.design.Design;
import tubwright.engine.laminate.Laminate;
import tubwright.engine.mesh.Mesh;
import tubwright.engine.mesh.Region;
import tubwright.engine.response.MassAnswer;
import tubwright.engine.response.MassRollUp;
import tubwright.engine.response.Study;
import tubwright.engine.structure.Structure;
import tubwright.engine.structure.Tub;

/**
 * The surface of one variant, ready to be shown before anything is solved.
 *
 * @param structure on the mesh that answers will live on
 * @param bytes the document of {@link TubView} with its arrays
 */
record Surface(Structure structure, byte[] bytes) {
    /**
     * Meshes a variant.
     *
     * @param name by which the page knows it
     */
    static Surface of(String name, Design.Variant variant, String revision, double meshSize) {
        Tub tub = variant.tub();
        Mesh mesh = Study.mesh(tub, meshSize);
        Structure structure = Structure.of(tub, mesh);
        MassAnswer mass = MassRollUp.of(structure);
        Map<Laminate, Integer> stacks = new LinkedHashMap<>();
        List<TubView.RegionView> regions = new ArrayList<>();
        for (Region region : mesh.regions()) {
            Laminate laminate = tub.laminate(region);
            // Left and right are one stack to the reader; the drawing turns the directions.
            int stack = stacks.computeIfAbsent(region.mirrored() ? laminate.mirrored() : laminate, _ -> stacks.size());
            regions.add(new TubView.RegionView(
                    region.zone(),
                    region.part(),
                    region.surface() == Region.Surface.WALL,
                    region.piece(),
                    region.patches(),
                    region.mirrored(),
                    stack));
        }
        TubView view = new TubView(
                name,
                revision,
                meshSize,
                tub.meshSize(),
                mass.whole().mass(),
                pieces(mass),
                regions,
                stacks.keySet().stream().map(Stacks::of).toList(),
                Gathering.landmarks(tub.shape()).stream()
                        .map(m -> new TubView.LandmarkView(
                                m.name(), m.kind() == RunAnswer.Landmark.Kind.WALL, m.from(), m.to()))
                        .toList());
        List<Edges.Edge> edges = Edges.of(mesh);
        return new Surface(
                structure,
                new BinaryDocument(view)
                        .floats("nodes", mesh.nodes())
                        .ints("corners", mesh.elementNodes())
                        .floats("normals", mesh.cornerNormals())
                        .floats("directions", mesh.referenceDirections())
                        .ints("regions", mesh.elementRegions())
                        .ints(
                                "edges",
                                edges.stream().flatMapToInt(Surface::numbers).toArray())
                        .bytes());
    }

    static List<TubView.PieceView> pieces(MassAnswer mass) {
        return mass.pieces().stream()
                .map(p -> new TubView.PieceView(p.name(), p.mass()))
                .toList();
    }

    /** Two nodes, the rank of the kind (0 boldest), and an element beside it. */
    private static java.util.stream.IntStream numbers(Edges.Edge edge) {
        return java.util.stream.IntStream.of(edge.a(), edge.b(), edge.kind().ordinal(), edge.element());
    }
}
