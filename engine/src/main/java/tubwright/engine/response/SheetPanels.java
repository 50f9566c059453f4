// SPDX-License-Identifier: Apache-2.0
package tubwright.engine.response;

import java.util.Arrays;
import java.util.List;
import java.util.Set;
import java.util.stream.IntStream;
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
     * Mean shear stresses of the panels, Pa, signed, one row a field. An element's strain operators serve all fields.
     *
     * @param solved structure with the same elements, whose laminates may differ
     * @param fields displacements
     */
    double[][] shearStresses(Structure solved, List<double[]> fields) {
        double[][] stresses = new double[fields.size()][panels.size()];
        IntStream.range(0, panels.size()).parallel().forEach(k -> {
            double[] ofPanel = shearStresses(panels.get(k), solved, fields);
            for (int c = 0; c < ofPanel.length; c++) {
                stresses[c][k] = ofPanel[c];
            }
        });
        return stresses;
    }

    private static double[] shearStresses(Panel panel, Structure solved, List<double[]> fields) {
        double[] sums = new double[fields.size()];
        double area = 0;
        double[] strains = new double[ShellWorkspace.STRAINS];
        double[] n = new double[3];
        ShellKernel kernel = new ShellKernel(solved);
        for (int e : panel.elements()) {
            ShellWorkspace w = kernel.strainPoints(e);
            double[] stiffness = solved.laminate(solved.mesh().elementRegions()[e]);
            for (int p = 0; p < w.points(); p++) {
                double[] axes = w.axes(p);
                double c = dot(panel.axis(), axes, 0);
                double s = dot(panel.axis(), axes, 3);
                double length = Math.hypot(c, s);
                c /= length;
                s /= length;
                for (int f = 0; f < sums.length; f++) {
                    w.strainAt(p, kernel.displacements(e, fields.get(f)), strains);
                    for (int i = 0; i < 3; i++) {
                        n[i] = 0;
                        for (int j = 0; j < 8; j++) {
                            n[i] += stiffness[8 * i + j] * strains[j];
                        }
                    }
                    sums[f] += w.weight(p) * ((n[1] - n[0]) * s * c + n[2] * (c * c - s * s));
                }
                area += w.weight(p);
            }
        }
        for (int f = 0; f < sums.length; f++) {
            sums[f] /= area * panel.shear().thickness();
        }
        return sums;
    }

    /**
     * Adds the rows of every panel that a case shears.
     *
     * @param stresses the case's row of {@link #shearStresses}
     */
    void add(Structure solved, String load, double[] stresses, List<Reserve> rows, Set<Check.NotChecked> notChecked) {
        for (int k = 0; k < stresses.length; k++) {
            Panel panel = panels.get(k);
            double tau = stresses[k];
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
        }
    }

    /**
     * What the folds of buckled sheet pull on the edges of it in one case.
     *
     * @param structure with the elements
     * @param stresses the case's row of {@link #shearStresses}
     */
    SheetFolds folds(Structure structure, double[] stresses) {
        int[] panelOf = new int[structure.mesh().elementCount()];
        Arrays.fill(panelOf, -1);
        for (int p = 0; p < stresses.length; p++) {
            for (int e : panels.get(p).elements()) {
                panelOf[e] = p;
            }
        }
        return new SheetFolds(
                panels.stream().map(Panel::shear).toList(),
                Arrays.stream(stresses).map(Math::abs).toArray(),
                panelOf);
    }

    private static double dot(double[] a, double[] b, int from) {
        return a[0] * b[from] + a[1] * b[from + 1] + a[2] * b[from + 2];
    }
}
