// SPDX-License-Identifier: Apache-2.0
package tubwright.engine.structure;

import java.util.Optional;
import tubwright.engine.joint.BarStrength;

/**
 * A bar fixed along a {@link tubwright.engine.mesh.MeshLine}: folded edge, angle, tube, capping.
 *
 * @param line name of the mesh line it follows
 * @param section its section and material
 * @param offset distance of its centroid below the surface, m, against the outward normal
 * @param description in words for the report
 */
public record Stiffener(String line, Section section, double offset, String description) {
    /**
     * Section of a bar.
     *
     * @param youngsModulus Pa
     * @param shearModulus Pa
     * @param density kg/m³
     * @param area m²
     * @param inertiaAcross second moment for bending out of the surface, m⁴
     * @param inertiaIn second moment for bending in the surface, m⁴
     * @param torsionConstant m⁴
     * @param strength what it bears; empty where only its stiffness is known
     */
    public record Section(
            double youngsModulus,
            double shearModulus,
            double density,
            double area,
            double inertiaAcross,
            double inertiaIn,
            double torsionConstant,
            Optional<BarStrength> strength) {}
}
