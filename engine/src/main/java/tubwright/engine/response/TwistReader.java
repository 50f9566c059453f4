// SPDX-License-Identifier: Apache-2.0
package tubwright.engine.response;

import tubwright.engine.mesh.Mesh;

/** Reads how far the skin's section at a station has turned: what gauges on the skin see on the average. */
public final class TwistReader {
    private final SkinSections sections;

    /** For solutions on this mesh. */
    public TwistReader(Mesh mesh) {
        this.sections = new SkinSections(mesh);
    }

    /**
     * Rotation about +x of the section at a station, rad.
     *
     * @param station x, m; beyond the skin's ends the end counts
     * @param displacements 6 per node
     */
    public double twist(double station, double[] displacements) {
        return TwistLines.motion(sections, displacements, station).twist();
    }

    /** Stations of the foremost and rearmost skin, m. */
    public double[] extent() {
        return sections.extent();
    }
}
