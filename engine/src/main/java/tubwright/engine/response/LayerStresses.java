// SPDX-License-Identifier: Apache-2.0
package tubwright.engine.response;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import tubwright.engine.laminate.Climate;
import tubwright.engine.laminate.Laminate;
import tubwright.engine.laminate.LaminateResponse;
import tubwright.engine.laminate.Layer;
import tubwright.engine.laminate.LayerRole;
import tubwright.engine.material.Material;
import tubwright.engine.material.MaterialException;
import tubwright.engine.material.Ply;
import tubwright.engine.material.Property;
import tubwright.engine.strength.Check;
import tubwright.engine.strength.InSituStrengths;
import tubwright.engine.strength.LayerCriteria;
import tubwright.engine.strength.PlyCriterion;
import tubwright.engine.strength.PreparedCriterion;
import tubwright.engine.strength.StrengthBasis;

/**
 * One laminate made ready for many points: for each ply and each of its criteria a slot, with what turns shell strains
 * into stresses along the ply, and the stress left by the cure.
 */
final class LayerStresses {
    /**
     * A ply under one criterion.
     *
     * @param layer place, 0 at the outer face
     * @param rows stress (1, 2, 12) per strain (x, y, xy), 3 × 3 row-major, Pa
     * @param z of the outer and the inner surface, m
     * @param residual stress left by the cure at the outer (0..2) and the inner surface (3..5), Pa
     * @param criterion ready for use
     */
    record Slot(int layer, double[] rows, double[] z, double[] residual, PlyCriterion criterion) {
        /** Stress under the load at the height of a surface, into three numbers. */
        void stress(double[] strains, int surface, double[] into) {
            double x = strains[0] + z[surface] * strains[3];
            double y = strains[1] + z[surface] * strains[4];
            double xy = strains[2] + z[surface] * strains[5];
            for (int i = 0; i < 3; i++) {
                into[i] = rows[3 * i] * x + rows[3 * i + 1] * y + rows[3 * i + 2] * xy;
            }
        }
    }

    /**
     * Plies of one material, angle and strengths under one criterion. Along the height their stresses are one straight
     * line, so that those of the outermost and innermost surface bound the rest.
     *
     * @param check place of the criterion's name in {@link #checks()}
     * @param slots places of its slots, from outside inward
     * @param first the outermost
     * @param last the innermost
     * @param bounded whether clear ends make the rest clear
     */
    record Alike(int check, int[] slots, Slot first, Slot last, boolean bounded) {}

    private final List<Slot> slots = new ArrayList<>();
    private final List<String> checks = new ArrayList<>();
    private final List<Alike> alike = new ArrayList<>();
    private final List<Check.NotChecked> notChecked = new ArrayList<>();

    /** Of a laminate that is not looked at. */
    static final LayerStresses NONE = new LayerStresses();

    private LayerStresses() {}

    LayerStresses(Laminate laminate, StrengthBasis basis) {
        Optional<LaminateResponse> cured = cured(laminate, basis);
        LaminateResponse[] unit = new LaminateResponse[3];
        for (int k = 0; k < 3; k++) {
            double[] strain = new double[6];
            strain[k] = 1;
            unit[k] = LaminateResponse.underStrains(laminate, strain, Climate.NONE);
        }
        double[] z = laminate.surfaces();
        List<Kind> kinds = new ArrayList<>();
        List<List<PreparedCriterion>> criteria = new ArrayList<>();
        List<List<Integer>> members = new ArrayList<>();
        for (int i = 0; i < laminate.layers().size(); i++) {
            Layer layer = laminate.layers().get(i);
            if (layer.role() != LayerRole.PLY && layer.role() != LayerRole.SHEET) {
                continue;
            }
            double[] rows = new double[9];
            for (int k = 0; k < 3; k++) {
                double[] column = unit[k].layers().get(i).outer().plyStress();
                for (int r = 0; r < 3; r++) {
                    rows[3 * r + k] = column[r];
                }
            }
            double[] residual = new double[6];
            if (cured.isPresent()) {
                var state = cured.get().layers().get(i);
                System.arraycopy(state.outer().plyStress(), 0, residual, 0, 3);
                System.arraycopy(state.inner().plyStress(), 0, residual, 3, 3);
            }
            Optional<InSituStrengths> inSitu =
                    basis.inSitu() ? LayerCriteria.strengthsInSitu(laminate, i) : Optional.empty();
            if (basis.inSitu() && inSitu.isEmpty() && isTape(layer.material())) {
                notChecked.add(new Check.NotChecked(
                        "in-situ strengths of " + layer.material().name() + ": those of the free ply are used,",
                        List.of("GIc and GIIc of " + layer.material().name())));
            }
            Kind kind = new Kind(layer.material(), layer.angle(), inSitu);
            int k = kinds.indexOf(kind);
            if (k < 0) {
                k = kinds.size();
                kinds.add(kind);
                criteria.add(basis.criteria(layer.material()).stream()
                        .map(each -> each.prepare(layer.material(), basis.knockDown(), inSitu))
                        .toList());
                members.add(new ArrayList<>());
            }
            members.get(k).add(slots.size());
            for (PreparedCriterion each : criteria.get(k)) {
                switch (each) {
                    case PlyCriterion ready ->
                        slots.add(new Slot(i, rows, new double[] {z[i], z[i + 1]}, residual, ready));
                    case Check.NotChecked not -> notChecked.add(not);
                }
            }
        }
        for (int k = 0; k < kinds.size(); k++) {
            int count = (int) criteria.get(k).stream()
                    .filter(PlyCriterion.class::isInstance)
                    .count();
            for (int n = 0; n < count; n++) {
                int nth = n;
                alike(members.get(k).stream().mapToInt(first -> first + nth).toArray());
            }
        }
    }

    private record Kind(Material material, double angle, Optional<InSituStrengths> inSitu) {}

    private void alike(int[] places) {
        Slot first = slots.get(places[0]);
        Slot last = slots.get(places[places.length - 1]);
        PlyCriterion criterion = first.criterion();
        if (!checks.contains(criterion.name())) {
            checks.add(criterion.name());
        }
        double[] r = first.residual();
        double[] s = last.residual();
        boolean bounded = criterion.bounds(r[0], r[1], r[2]) && criterion.bounds(s[3], s[4], s[5]);
        alike.add(new Alike(checks.indexOf(criterion.name()), places, first, last, bounded));
    }

    private static boolean isTape(Material material) {
        return material instanceof Ply ply && ply.form() == Ply.Form.UNIDIRECTIONAL;
    }

    List<Slot> slots() {
        return slots;
    }

    /** Names of the criteria, each once. */
    List<String> checks() {
        return checks;
    }

    /** All slots, those that bound each other together. */
    List<Alike> alike() {
        return alike;
    }

    List<Check.NotChecked> notChecked() {
        return notChecked;
    }

    /** The laminate as it comes from the cure; empty where there is no ply, or something is not known. */
    private Optional<LaminateResponse> cured(Laminate laminate, StrengthBasis basis) {
        double highest = Double.NEGATIVE_INFINITY;
        for (Layer layer : laminate.layers()) {
            if (layer.material() instanceof Ply ply) {
                OptionalDouble free = ply.properties().si(Property.STRESS_FREE_TEMPERATURE);
                if (free.isEmpty()) {
                    notChecked.add(new Check.NotChecked(
                            "cure stress in laminates with " + ply.name(),
                            List.of("stress-free temperature of " + ply.name())));
                    return Optional.empty();
                }
                highest = Math.max(highest, free.getAsDouble());
            }
        }
        if (highest == Double.NEGATIVE_INFINITY) {
            return Optional.empty();
        }
        try {
            return Optional.of(LaminateResponse.underResultants(
                    laminate, new double[6], new Climate(basis.serviceTemperature() - highest, 0)));
        } catch (MaterialException e) {
            notChecked.add(new Check.NotChecked("cure stress", List.of(e.getMessage())));
            return Optional.empty();
        }
    }
}
