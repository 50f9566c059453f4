// SPDX-License-Identifier: Apache-2.0
package tubwright.desk.picture;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.function.IntFunction;
import tubwright.engine.mesh.Mesh;
import tubwright.engine.mesh.Region;

/**
 * Pictures of one mesh. Its edges are found once and serve every picture.
 *
 * <p>Safe for use by several threads.
 */
public final class TubPicture {
    private static final int MARGIN = 18;
    private static final int PAPER = 0xdfe3e6;

    private final Mesh mesh;
    private final List<Edges.Edge> edges;

    /** Prepares pictures of {@code mesh}. */
    public TubPicture(Mesh mesh) {
        this.mesh = mesh;
        edges = Edges.of(mesh);
    }

    /**
     * A picture and how it lies about the tub.
     *
     * @param image pixels
     * @param view maps stations to columns
     * @param labels where on the picture something is best named
     */
    public record Picture(Image image, View view, List<Label> labels) {
        public Picture {
            labels = List.copyOf(labels);
        }
    }

    /**
     * A place to write a name.
     *
     * @param text what to write
     * @param x pixel column
     * @param y pixel row
     */
    public record Label(String text, double x, double y) {}

    /**
     * The tub coloured by energy density.
     *
     * @param densities J/m² per element
     * @param scale colours
     * @param from the side looked from
     * @param cut whether the left half is taken away
     * @param width pixels
     */
    public Picture energy(double[] densities, EnergyScale scale, View.From from, boolean cut, int width) {
        double[] values = CornerValues.smooth(mesh, densities);
        for (int i = 0; i < values.length; i++) {
            values[i] = scale.position(values[i]);
        }
        int[] ramp = Palette.ramp();
        Scene scene = new Scene(mesh, mesh.nodes(), values, e -> ramp, edges, cut, Optional.empty());
        View view = View.fit(mesh.nodes(), from, width, MARGIN);
        return new Picture(Finish.shrink(scene.paint(view)), view, List.of());
    }

    /** The tub in plain paper colour. */
    public Picture plain(View.From from, int width, int margin) {
        int[] ramp = Palette.plain(PAPER);
        double[] values = new double[4 * mesh.elementCount()];
        Scene scene = new Scene(mesh, mesh.nodes(), values, e -> ramp, edges, false, Optional.empty());
        View view = View.fit(mesh.nodes(), from, width, margin);
        return new Picture(Finish.shrink(scene.paint(view)), view, List.of());
    }

    /**
     * Zones, each in its own colour, numbered where there is most room.
     *
     * @param zones names; the number on the picture is the place in this list, from 1
     * @param from the side looked from
     * @param cut whether the left half is taken away
     * @param width pixels
     */
    public Picture zones(List<String> zones, View.From from, boolean cut, int width) {
        List<int[]> ramps = new ArrayList<>();
        for (Region region : mesh.regions()) {
            int kind = Math.max(0, zones.indexOf(region.zone()));
            ramps.add(Palette.plain(Palette.kind(kind)));
        }
        IntFunction<int[]> ramp = e -> ramps.get(mesh.elementRegions()[e]);
        double[] values = new double[4 * mesh.elementCount()];
        Scene scene = new Scene(mesh, mesh.nodes(), values, ramp, edges, cut, Optional.empty());
        View view = View.fit(mesh.nodes(), from, width, MARGIN);
        Rasteriser painted = scene.paint(view);
        int[] zoneOfElement = new int[mesh.elementCount()];
        for (int e = 0; e < zoneOfElement.length; e++) {
            zoneOfElement[e] = zones.indexOf(mesh.region(e).zone());
        }
        return new Picture(Finish.shrink(painted), view, Roomiest.labels(painted, zoneOfElement, zones.size()));
    }

    /**
     * The tub with one level of the ramp on each element, not smoothed: for values that may jump from zone to zone.
     *
     * @param levels 0 (quiet) to 1 (hot) per element
     * @param from the side looked from
     * @param cut whether the left half is taken away
     * @param width pixels
     */
    public Picture levels(double[] levels, View.From from, boolean cut, int width) {
        double[] values = new double[4 * mesh.elementCount()];
        for (int i = 0; i < values.length; i++) {
            values[i] = Math.clamp(levels[i / 4], 0, 1);
        }
        int[] ramp = Palette.ramp();
        Scene scene = new Scene(mesh, mesh.nodes(), values, e -> ramp, edges, cut, Optional.empty());
        View view = View.fit(mesh.nodes(), from, width, MARGIN);
        return new Picture(Finish.shrink(scene.paint(view)), view, List.of());
    }

    /**
     * Elements by kind, each kind in its own colour and numbered from 1 where there is most room.
     *
     * @param kinds kind of each element from 0; negative for none, left in plain paper colour
     * @param count number of kinds
     * @param from the side looked from
     * @param cut whether the left half is taken away
     * @param width pixels
     */
    public Picture kinds(int[] kinds, int count, View.From from, boolean cut, int width) {
        int[][] ramps = new int[count + 1][];
        ramps[0] = Palette.plain(PAPER);
        for (int k = 0; k < count; k++) {
            ramps[k + 1] = Palette.plain(Palette.kind(k));
        }
        double[] values = new double[4 * mesh.elementCount()];
        Scene scene = new Scene(mesh, mesh.nodes(), values, e -> ramps[kinds[e] + 1], edges, cut, Optional.empty());
        View view = View.fit(mesh.nodes(), from, width, MARGIN);
        Rasteriser painted = scene.paint(view);
        return new Picture(Finish.shrink(painted), view, Roomiest.labels(painted, kinds, count));
    }

    /**
     * The tub twisted out of all proportion, its undeformed edges drawn through it.
     *
     * @param displacements 6 numbers per node, m and rad
     * @param exaggeration factor on displacements
     * @param from the side looked from
     * @param width pixels
     */
    public Picture deformed(double[] displacements, double exaggeration, View.From from, int width) {
        double[] moved = mesh.nodes().clone();
        double[] size = new double[mesh.nodeCount()];
        double most = 0;
        for (int n = 0; n < mesh.nodeCount(); n++) {
            double sum = 0;
            for (int d = 0; d < 3; d++) {
                double u = displacements[6 * n + d];
                moved[3 * n + d] += exaggeration * u;
                sum += u * u;
            }
            size[n] = Math.sqrt(sum);
            most = Math.max(most, size[n]);
        }
        double[] values = new double[4 * mesh.elementCount()];
        for (int e = 0; e < mesh.elementCount(); e++) {
            for (int i = 0; i < mesh.cornerCount(e); i++) {
                values[4 * e + i] = most > 0 ? size[mesh.elementNodes()[4 * e + i]] / most : 0;
            }
        }
        int[] ramp = Palette.ramp();
        double[] both = new double[2 * moved.length];
        System.arraycopy(mesh.nodes(), 0, both, 0, moved.length);
        System.arraycopy(moved, 0, both, moved.length, moved.length);
        View view = View.fit(both, from, width, MARGIN);
        Scene scene = new Scene(mesh, moved, values, e -> ramp, edges, false, Optional.of(mesh.nodes()));
        return new Picture(Finish.shrink(scene.paint(view)), view, List.of());
    }
}
