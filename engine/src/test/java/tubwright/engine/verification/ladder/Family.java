// SPDX-License-Identifier: Apache-2.0
package tubwright.engine.verification.ladder;

import java.util.Locale;

/** The rungs of the ladder, in the order of the report. */
public enum Family {
    ELEMENT(
            "Element",
            "One element, or a handful: rigid motion, patch tests in membrane, bending, shear and laminated form,"
                    + " turning and renumbering, drilling, no spurious modes."),
    BEAMS("Beams and couplings", "Bars, frames, arms and elastic ties against beam theory."),
    MACNEAL_HARDER(
            "MacNeal–Harder set", "Straight, curved and twisted cantilevers and plates of few, distorted elements."),
    OBSTACLE_COURSE(
            "Shell obstacle course",
            "Curved shells in bending, stretching and both, moderately to very thin, on regular and distorted meshes."),
    NAFEMS("NAFEMS statics and composites", "Membrane, shell, skew plate, strip and sandwich of the standard tests."),
    EXACT_LAMINATES(
            "Three-dimensional exact laminates",
            "Laminates and sandwich plates under a sine of pressure, against the theory of elasticity: what first-order"
                    + " shear theory can and cannot do."),
    LAMINATED_PLATES("Laminated plates", "Deflection, buckling and frequencies of laminated plates."),
    FREQUENCIES("Plate and shell frequencies", "Natural frequencies of isotropic plates and shells."),
    BUCKLING("Buckling", "Isotropic, orthotropic and sandwich panels and shells."),
    TORSION("Torsion of thin-walled sections", "Closed, divided, slit and laminated tubes: what a tub is."),
    LAMINATES("Laminate worked examples", "Stiffness, strain and stress of stacks."),
    TRANSVERSE_SHEAR("Transverse shear", "Shear stiffness of stacks and sandwiches from their own energy."),
    CLIMATE("Heat and moisture", "Free expansion and residual stress."),
    CRITERIA("Failure criteria", "Plies and laminates: where criteria say they fail."),
    SANDWICH("Sandwich", "Failure modes of faces and core, inserts."),
    JOINTS("Joints", "Bonded laps, shear webs, bearing and bypass."),
    FASTENERS("Fasteners", "Flexibility and load share."),
    FRACTURE("Fracture", "Layers that break and interfaces that unzip: the energy they take, the load they bear."),
    WEIGHT_BACK(
            "Weight back",
            "Derivatives by laminates, intervals that must hold, buckling factors that move, optima known in closed form."),
    CURE("Cure and kit", "Kinetics of resins, heat of thick places, bends and moulds; what plies weigh and take."),
    DRAPE("Drape and flats", "Cloth as a pin-jointed net on curved faces, tape that is steered, faces laid flat."),
    SOLVER("Solver and structure", "Equilibrium, energy, reciprocity, units, two backends, random valid designs.");

    final String title;
    final String purpose;

    Family(String title, String purpose) {
        this.title = title;
        this.purpose = purpose;
    }

    /** Name of the family's page, without ending. */
    String slug() {
        return name().toLowerCase(Locale.ROOT).replace('_', '-');
    }
}
