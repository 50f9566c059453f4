// SPDX-License-Identifier: Apache-2.0
package tubwright.engine.structure;

import tubwright.engine.joint.JointDetail;

/**
 * What holds two pieces together along a {@link tubwright.engine.mesh.MeshLine}: an elastic tie per length.
 *
 * @param line name of the mesh line
 * @param alongStiffness shear stiffness along the line, N/m per m of line
 * @param acrossStiffness in-surface stiffness square to the line, N/m per m
 * @param normalStiffness stiffness normal to the surface joined onto, N/m per m
 * @param rotationStiffness rotational stiffness about the line, N·m/rad per m
 * @param massPerLength adhesive, tape and fasteners, kg/m
 * @param fastenerPitch pitch of fasteners, m; 0 where there are none
 * @param fastenerRows number of rows; 0 where there are none
 * @param description in words for the report: "bonded lap, 25 mm × 0.2 mm"
 * @param detail how it is made, for its strength
 */
public record Joint(
        String line,
        double alongStiffness,
        double acrossStiffness,
        double normalStiffness,
        double rotationStiffness,
        double massPerLength,
        double fastenerPitch,
        int fastenerRows,
        String description,
        JointDetail detail) {

    /** One of which nothing but its stiffness is known. */
    public Joint(
            String line,
            double alongStiffness,
            double acrossStiffness,
            double normalStiffness,
            double rotationStiffness,
            double massPerLength,
            double fastenerPitch,
            int fastenerRows,
            String description) {
        this(
                line,
                alongStiffness,
                acrossStiffness,
                normalStiffness,
                rotationStiffness,
                massPerLength,
                fastenerPitch,
                fastenerRows,
                description,
                JointDetail.UNKNOWN);
    }

    /** The same joint with every stiffness multiplied by a factor. */
    public Joint stiffer(double factor) {
        return new Joint(
                line,
                factor * alongStiffness,
                factor * acrossStiffness,
                factor * normalStiffness,
                factor * rotationStiffness,
                massPerLength,
                fastenerPitch,
                fastenerRows,
                description,
                detail);
    }
}
