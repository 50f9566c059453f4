// SPDX-License-Identifier: Apache-2.0
package tubwright.desk.page;

import java.util.List;

/** A tub's surface and what it is laid up of. The numbers of its mesh travel beside it, as arrays. */
@Meaning("A tub's surface and what it is laid up of; the arrays beside it hold its mesh")
public record TubView(
        @Meaning("whose") String variant,
        @Meaning("of the file it was made from") String revision,
        @Meaning("of the mesh that is shown and solved, m") double meshSize,

        @Meaning("that the design asks for, m; answers of a coarser mesh are for a quick look")
        double designMeshSize,

        @Meaning("kg") double mass,
        @Meaning("kg, by piece") List<PieceView> pieces,

        @Meaning("index into these for each element, in the array 'regions'")
        List<RegionView> regions,

        @Meaning("laminates in use") List<StackView> stacks,
        @Meaning("openings and walls along the tub") List<LandmarkView> landmarks) {

    /** What comes out of one mould. */
    @Meaning("What comes out of one mould")
    public record PieceView(String name, @Meaning("kg") double mass) {}

    /** One laminate's worth of mesh. */
    @Meaning("Elements that share zone, patches, piece and side of the car")
    public record RegionView(
            @Meaning("whose laminate it carries") String zone,
            @Meaning("strip or wall") String part,
            @Meaning("whether it belongs to a wall") boolean wall,
            @Meaning("what comes out of one mould") String piece,

            @Meaning("laid over the zone here, in their order")
            List<String> patches,

            @Meaning("whether ply angles run the other way round here")
            boolean mirrored,

            @Meaning("index of the whole laminate here, patches included")
            int stack) {}

    /** A laminate. */
    @Meaning("A laminate, from the outer surface inward")
    public record StackView(
            @Meaning("orientation code") String code,
            @Meaning("m") double thickness,
            @Meaning("kg/m²") double arealMass,
            List<LayerView> layers) {}

    /** A layer. */
    @Meaning("A layer")
    public record LayerView(
            @Meaning("its name") String material,
            LayerKind kind,

            @Meaning("of its direction 1 from the reference direction, degrees, −90 to 90")
            double degrees,

            @Meaning("m") double thickness) {}

    /** How a layer is drawn. */
    public enum LayerKind {
        CLOTH,
        TAPE,
        HONEYCOMB,
        FOAM,
        FILM,
        SHEET
    }

    /** Something along the tub. */
    @Meaning("An opening or a wall")
    public record LandmarkView(
            String name,
            boolean wall,
            @Meaning("station, m") double from,
            @Meaning("station, m") double to) {}
}
