// SPDX-License-Identifier: Apache-2.0
package tubwright.engine.response;

import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import tubwright.engine.laminate.Laminate;
import tubwright.engine.laminate.Layer;
import tubwright.engine.mesh.Mesh;
import tubwright.engine.strength.FailureMode;
import tubwright.engine.strength.PlyFailure;
import tubwright.engine.strength.StrengthBasis;
import tubwright.engine.structure.ShellKernel;
import tubwright.engine.structure.ShellWorkspace;
import tubwright.engine.structure.Structure;

/** Turns what a sweep found into rows: for each case, zone and criterion the worst ply. */
final class PlyReserves {
    private final Structure structure;
    private final Laminate[] laminates;
    private final LayerStresses[] regions;
    private final Resolution resolution;
    private final StrengthBasis basis;
    private final ShellKernel kernel;

    PlyReserves(
            Structure structure,
            Laminate[] laminates,
            LayerStresses[] regions,
            Resolution resolution,
            StrengthBasis basis) {
        this.structure = structure;
        this.laminates = laminates;
        this.regions = regions;
        this.resolution = resolution;
        this.basis = basis;
        kernel = new ShellKernel(structure);
    }

    private record Key(String zone, String criterion, int kind) {}

    private record Worst(int region, int slot, int where, double value) {}

    void add(PlySweep sweep, int c, String load, double[] u, List<Reserve> rows) {
        Map<Key, Worst> worst = new LinkedHashMap<>();
        for (int r = 0; r < regions.length; r++) {
            String zone = structure.parts().get(structure.partOfRegion(r)).name();
            for (int k = 0; k < regions[r].checks().size(); k++) {
                for (int kind = 0; kind < PlySweep.KINDS; kind++) {
                    double value = sweep.least(c, r, k, kind);
                    if (value < Double.POSITIVE_INFINITY) {
                        worst.merge(
                                new Key(zone, regions[r].checks().get(k), kind),
                                new Worst(r, sweep.slot(c, r, k, kind), sweep.where(c, r, k, kind), value),
                                (a, b) -> b.value() < a.value() ? b : a);
                    }
                }
            }
        }
        worst.forEach((key, at) -> rows.add(row(key, at, load, u)));
    }

    /** Adds every element's lowest factor of fibres to a map. */
    void map(PlySweep sweep, List<double[]> fields, ReserveMap.Builder map) {
        for (int e = 0; e < structure.mesh().elementCount(); e++) {
            double value = sweep.lowest(e);
            if (value < Double.POSITIVE_INFINITY) {
                LayerStresses.Slot slot =
                        regions[structure.mesh().elementRegions()[e]].slots().get(sweep.lowestSlot(e));
                int c = sweep.lowestCase(e);
                map.lower(e, c, value, mode(slot, sweep.lowestWhere(e), fields.get(c), true));
            }
        }
    }

    /** How a slot fails at a place under displacements u. */
    private String mode(LayerStresses.Slot slot, int where, double[] u, boolean fibre) {
        int e = where >> 3;
        int p = where >> 1 & 3;
        int side = where & 1;
        ShellWorkspace w = kernel.strainPoints(e);
        double[] strains = new double[ShellWorkspace.STRAINS];
        w.strainAt(p, kernel.displacements(e, u), strains);
        double[] stress = new double[3];
        slot.stress(strains, side, stress);
        double[] residual = java.util.Arrays.copyOfRange(slot.residual(), 3 * side, 3 * side + 3);
        return switch (slot.criterion().assess(stress, residual, fibre)) {
            case PlyFailure.Reached reached -> words(reached.mode());
            case PlyFailure.ByResidualStress broken -> words(broken.mode()) + " by cure stress alone";
            case PlyFailure.Never _ -> "";
        };
    }

    private Reserve row(Key key, Worst at, String load, double[] u) {
        int e = at.where() >> 3;
        LayerStresses.Slot slot = regions[at.region()].slots().get(at.slot());
        boolean fibre = key.kind() % 2 == 0;
        String mode = mode(slot, at.where(), u, fibre);
        Layer layer = laminates[at.region()].layers().get(slot.layer());
        return new Reserve(
                load,
                key.criterion(),
                mode,
                !fibre,
                key.zone(),
                String.format(
                        Locale.ROOT,
                        "layer %d, %s at %.0f°",
                        slot.layer() + 1,
                        layer.material().name(),
                        layer.degrees()),
                centre(structure.mesh(), e),
                at.value(),
                basis.knockDown().name(),
                key.kind() >= 2,
                resolution.settledBy(e),
                slot.criterion().basis());
    }

    private static String words(FailureMode mode) {
        return mode.words();
    }

    /** Mean of an element's corners, m. */
    static double[] centre(Mesh mesh, int e) {
        double[] x = new double[3];
        int corners = mesh.cornerCount(e);
        for (int k = 0; k < corners; k++) {
            for (int d = 0; d < 3; d++) {
                x[d] += mesh.nodes()[3 * mesh.elementNodes()[4 * e + k] + d] / corners;
            }
        }
        return x;
    }
}
