// SPDX-License-Identifier: Apache-2.0
package tubwright.engine.response;

import java.util.HashSet;
import java.util.List;
import java.util.OptionalDouble;
import tubwright.engine.joint.JointDetail;
import tubwright.engine.laminate.Laminate;
import tubwright.engine.strength.StrengthBasis;
import tubwright.engine.structure.JointPoint;
import tubwright.engine.structure.JointRun;
import tubwright.engine.structure.Structure;

/** What the bond lines of a structure bear, point by point, under any forces. Safe to use from several threads. */
public final class BondLimits {
    private final JointReserves reserves;
    private final List<JointPoint> points;

    /** @param laminates of the regions of the mesh */
    public BondLimits(Structure structure, Laminate[] laminates, StrengthBasis basis) {
        reserves = new JointReserves(structure, laminates, basis, new HashSet<>());
        points = reserves.points();
    }

    /** All points of joints whose making is known. */
    public List<JointPoint> points() {
        return points;
    }

    /** The joint a point belongs to. */
    public JointRun run(int point) {
        return reserves.run(point);
    }

    /** Whether a point is held by a bond line alone. */
    public boolean bonded(int point) {
        JointDetail detail = run(point).joint().detail();
        return detail.bond().isPresent() && detail.fasteners().isEmpty();
    }

    /**
     * Factor on the forces at which the bond line of a point first gives way, the elastic checks of the reserve table.
     *
     * @param forces per length along, across, normal (N/m) and about the line (N)
     * @return empty where nothing gives way
     */
    public OptionalDouble factor(int point, double[] forces) {
        return reserves.factor(point, forces);
    }
}
