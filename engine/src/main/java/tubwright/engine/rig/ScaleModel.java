// SPDX-License-Identifier: Apache-2.0
package tubwright.engine.rig;

import java.util.HashMap;
import java.util.List;
import java.util.Map;
import tubwright.engine.laminate.Laminate;
import tubwright.engine.laminate.Layer;
import tubwright.engine.laminate.LayerRole;
import tubwright.engine.mesh.Mesh;
import tubwright.engine.response.MassRollUp;
import tubwright.engine.response.Study;
import tubwright.engine.structure.Case;
import tubwright.engine.structure.Solution;
import tubwright.engine.structure.StaticSolver;
import tubwright.engine.structure.StepTimes;
import tubwright.engine.structure.Structure;
import tubwright.engine.structure.Tub;
import tubwright.numerics.DirectSolver;

/**
 * What a small model tells of the full-size tub.
 *
 * <p>By dimensional analysis (Buckingham 1914) a model of length scale λ whose plies are τ times as thick as those of the
 * tub is, in everything that has no scale, the full-size tub with plies τ/λ times as thick; its forces are λ² of that
 * tub's at equal strain, its torsional stiffness λ³, its mass λ³. So one more solution of the full-size model, with other
 * thicknesses, gives the model exactly, whether its plies scale or not. Materials, adhesives and inserts are taken as
 * those of the tub, inserts and bond lines as built to scale.
 *
 * @param length λ, model over full size
 * @param plies τ, thickness of a ply in the model over that in the tub: λ if everything is to scale, 1 for the same plies
 * @param cores the same for cores
 * @param fullStiffness torsional stiffness of the tub as computed, N·m/rad
 * @param modelStiffness that of the model as computed, N·m/rad
 * @param fullMass kg
 * @param modelMass kg
 */
public record ScaleModel(
        double length,
        double plies,
        double cores,
        double fullStiffness,
        double modelStiffness,
        double fullMass,
        double modelMass) {

    /**
     * Computes tub and model.
     *
     * @param tub full size
     * @param loading its torsion case
     * @param length λ, above 0 and at most 1
     * @param plies τ
     * @param cores the same for cores
     * @param meshSize of the full-size tub, m
     */
    public static ScaleModel of(
            Tub tub,
            Case.Torsion loading,
            double length,
            double plies,
            double cores,
            double meshSize,
            DirectSolver solver) {
        if (!(length > 0 && length <= 1 && plies > 0 && cores > 0)) {
            throw new IllegalArgumentException(
                    "a model's scale lies above 0 and at most at 1, and its layers have a thickness");
        }
        Mesh mesh = Study.mesh(tub, meshSize);
        Structure full = Structure.of(tub, mesh);
        Structure model = Structure.of(thicker(tub, plies / length, cores / length), mesh);
        double cube = length * length * length;
        return new ScaleModel(
                length,
                plies,
                cores,
                stiffness(full, loading, solver),
                cube * stiffness(model, loading, solver),
                MassRollUp.of(full).whole().mass(),
                cube * MassRollUp.of(model).whole().mass());
    }

    /** Stiffness of the full-size tub that a measured model speaks for, N·m/rad. */
    public double fullSize(double measuredModel) {
        return measuredModel * fullStiffness / modelStiffness;
    }

    /**
     * By how much the plain rule K ~ λ³, which holds when everything is to scale, would be wrong for this model, as a
     * share.
     */
    public double errorOfPlainRule() {
        return modelStiffness / (length * length * length) / fullStiffness - 1;
    }

    /**
     * Torque on the model that strains it as the full-size torque strains the tub: at equal twist, N·m.
     *
     * @param fullTorque N·m
     */
    public double torqueOfEqualStrain(double fullTorque) {
        return fullTorque * modelStiffness / fullStiffness;
    }

    private static Tub thicker(Tub tub, double plies, double cores) {
        Map<String, Laminate> laminates = new HashMap<>();
        tub.laminates()
                .forEach((name, laminate) -> laminates.put(
                        name, new Laminate(layers(laminate.layers(), plies, cores), laminate.reference())));
        Map<String, List<Layer>> patches = new HashMap<>();
        tub.patchPlies().forEach((name, layers) -> patches.put(name, layers(layers, plies, cores)));
        return tub.with(laminates, patches, tub.joints(), tub.hardpoints());
    }

    private static List<Layer> layers(List<Layer> layers, double plies, double cores) {
        return layers.stream()
                .map(l -> new Layer(
                        l.material(),
                        l.thickness() * (l.role() == LayerRole.CORE ? cores : plies),
                        l.angle(),
                        l.role()))
                .toList();
    }

    private static double stiffness(Structure structure, Case.Torsion loading, DirectSolver solver) {
        Solution solution = StaticSolver.solve(structure, List.of(loading), solver, new StepTimes())
                .getFirst();
        return Study.stiffness(structure, solution);
    }
}
