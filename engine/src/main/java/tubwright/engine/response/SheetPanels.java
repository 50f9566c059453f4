// SPDX-License-Identifier: Apache-2.0
package tubwright.engine.response;

import java.util.Arrays;
import java.util.List;
import java.util.Set;
import tubwright.engine.joint.ShearPanel;
import tubwright.engine.strength.Check;
import tubwright.engine.strength.KnockDown;
import tubwright.engine.structure.ShellKernel;
import tubwright.engine.structure.ShellWorkspace;
import tubwright.engine.structure.Structure;
import tubwright.engine.structure.Tub;

/**
 * The panels of thin metal sheet of a tub and the shear they carry.
 *
 * @param panels each between walls, seams and bars
 */
record SheetPanels(List<Panel> panels) {
    /** Of a tub without them. */
    static final SheetPanels NONE = new SheetPanels(List.of());

    /**
     * One panel.
     *
     * @param name strips or wall, with its stations
     * @param elements of the mesh
     * @param axis mean direction of its length, unit vector
     * @param shear what it is as a sheet in shear
     */
    record Panel(String name, int[] elements, double[] axis, ShearPanel shear) {}

    SheetPanels {
        panels = List.copyOf(panels);
    }

    /** Those of a tub on its mesh. */
    static SheetPanels of(Tub tub, Structure structure) {
        return new SheetPanels(PanelFinder.find(tub, structure));
    }

    /**
     * Mean shear stress of a panel, Pa, signed.
     *
     * @param solved structure with the same elements, whose laminates may differ
     * @param u its displacements
     */
    static double shearStress(Panel panel, Structure solved, double[] u) {
        double sum = 0;
        double area = 0;
        double[] strains = new double[ShellWorkspace.STRAINS];
        ShellKernel kernel = new ShellKernel(solved);
        for (int e : panel.elements()) {
            ShellWorkspace w = kernel.strainPoints(e);
            double[] own = kernel.displacements(e, u);
            double[] stiffness = solved.laminate(solved.mesh().elementRegions()[e]);
            for (int p = 0; p < w.points(); p++) {
                w.strainAt(p, own, strains);
                double[] n = new double[3];
                for (int i = 0; i < 3; i++) {
                    for (int j = 0; j < 8; j++) {
                        n[i] += stiffness[8 * i + j] * strains[j];
                    }
                }
                double c = dot(panel.axis(), Arrays.copyOf(w.axes(p), 3));
                double s = dot(panel.axis(), Arrays.copyOfRange(w.axes(p), 3, 6));
                double length = Math.hypot(c, s);
                c /= length;
                s /= length;
                sum += w.weight(p) * ((n[1] - n[0]) * s * c + n[2] * (c * c - s * s));
                area += w.weight(p);
            }
        }
        return sum / area / panel.shear().thickness();
    }

    /** Adds the rows of every panel that a case shears. */
    void add(Structure solved, String load, double[] u, List<Reserve> rows, Set<Check.NotChecked> notChecked) {
        for (Panel panel : panels) {
            double tau = shearStress(panel, solved, u);
            for (Check check : panel.shear().checks(tau)) {
                switch (check) {
                    case Check.NotChecked not -> notChecked.add(not);
                    case Check.Reserve made -> {
                        if (made.reserveFactor() < Double.POSITIVE_INFINITY) {
                            rows.add(new Reserve(
                                    load,
                                    made.mode(),
                                    "",
                                    false,
                                    panel.name(),
                                    "",
                                    PlyReserves.centre(solved.mesh(), panel.elements()[panel.elements().length / 2]),
                                    made.reserveFactor(),
                                    KnockDown.NONE.name(),
                                    false,
                                    0,
                                    made.basis()));
                        }
                    }
                }
            }
            if (Math.abs(tau) > panel.shear().bucklingStress()) {
                notChecked.add(new Check.NotChecked(
                        "bars and rivets along buckled sheet: the pull of its folds is not in their rows,",
                        List.of("a check by hand after NACA TN 2661: rivets take q (1 + 0.414 k)")));
            }
        }
    }

    private static double dot(double[] a, double[] b) {
        return a[0] * b[0] + a[1] * b[1] + a[2] * b[2];
    }
}
