// SPDX-License-Identifier: Apache-2.0
package tubwright.desk.work;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import java.util.concurrent.CancellationException;
import java.util.function.BooleanSupplier;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Collectors;
import tubwright.desk.answer.DamageAnswer;
import tubwright.engine.design.Design;
import tubwright.engine.quantity.Dimension;
import tubwright.engine.quantity.Quantity;
import tubwright.engine.quantity.QuantityException;
import tubwright.engine.response.Progress;
import tubwright.engine.safety.damage.Aftermath;
import tubwright.engine.safety.damage.DamageModel;
import tubwright.engine.safety.damage.Degree;
import tubwright.engine.safety.damage.Patch;
import tubwright.engine.safety.damage.PatchAnswer;
import tubwright.engine.safety.damage.Patches;
import tubwright.engine.shape.ShapeException;
import tubwright.engine.structure.Structure;
import tubwright.engine.structure.StructureException;
import tubwright.engine.structure.Tub;
import tubwright.numerics.solver.Solvers;

/** Takes patches out of a design's tubs. */
public final class DamageWork {
    private static final String NUMBER = "\\s*([-+]?[0-9.]+)\\s*";
    private static final Pattern POINT =
            Pattern.compile("\\(?" + NUMBER + "," + NUMBER + "," + NUMBER + "\\)?\\s*([a-z]+)");

    private DamageWork() {}

    /**
     * What is asked.
     *
     * @param on variant (none for all) and mesh
     * @param size diameter of the patch, m
     * @param at a point, a hardpoint, a zone, wall or strip; empty for a scan
     * @param degree empty for all of a single patch, for a hole in a scan
     * @param positions of a scan
     * @param beyond how many of its weakest places to look at beyond the border of the hole
     */
    public record Request(
            TrimWork.Request on,
            double size,
            Optional<String> at,
            Optional<Degree> degree,
            int positions,
            int beyond) {}

    /**
     * Works it out.
     *
     * @param stop asked now and then whether to give up
     * @throws CancellationException where it says so
     */
    public static DamageAnswer damage(
            Design design,
            Request request,
            String stamp,
            String version,
            Workbench.Listener listener,
            BooleanSupplier stop) {
        List<Design.Variant> variants =
                request.on.variant().isPresent() ? List.of(TrimWork.variant(design, request.on)) : design.variants();
        List<DamageAnswer.PerVariant> answers = new ArrayList<>();
        for (Design.Variant variant : variants) {
            try {
                answers.add(of(variant, request, listener, stop));
            } catch (StructureException | ShapeException fault) {
                throw design.explain(variant, fault);
            }
        }
        return new DamageAnswer(
                design.name(), request.size, request.at, request.degree.orElse(Degree.HOLE), answers, stamp, version);
    }

    private static DamageAnswer.PerVariant of(
            Design.Variant variant, Request request, Workbench.Listener listener, BooleanSupplier stop) {
        Tub tub = variant.tub();
        listener.stage(variant.name() + ": mesh and solution");
        DamageModel model = DamageModel.of(tub, TrimWork.meshSize(tub, request.on), Solvers.best());
        if (request.at.isEmpty()) {
            DamageAnswer.PerVariant scanned = new DamageAnswer.PerVariant(
                    variant.name(),
                    tub.construction(),
                    model.structure().mesh(),
                    model.structure().unknowns(),
                    scan(model, variant.name(), request, listener, stop));
            return new DamageAnswer.PerVariant(
                    scanned.name(),
                    scanned.construction(),
                    scanned.mesh(),
                    scanned.unknowns(),
                    scanned.patches(),
                    Optional.empty(),
                    hotSpots(model, scanned, request.beyond, listener, stop));
        }
        Patch patch = patch(model.patches(), model.structure(), request.at.get(), request.size);
        List<PatchAnswer> patches = one(model, patch, request, listener);
        Optional<Aftermath> aftermath = Optional.empty();
        if (request.degree.orElse(Degree.HOLE) == Degree.HOLE) {
            listener.stage(variant.name() + ": buckling, joints and inserts with the patch gone");
            aftermath = Optional.of(model.aftermath(patch, Solvers.best()));
        }
        return new DamageAnswer.PerVariant(
                variant.name(),
                tub.construction(),
                model.structure().mesh(),
                model.structure().unknowns(),
                patches,
                aftermath,
                List.of());
    }

    private static List<DamageAnswer.HotSpot> hotSpots(
            DamageModel model,
            DamageAnswer.PerVariant scanned,
            int count,
            Workbench.Listener listener,
            BooleanSupplier stop) {
        List<DamageAnswer.HotSpot> spots = new ArrayList<>();
        // Where something hangs loose or a load has gone there is nothing to buckle: the scan has said all.
        List<PatchAnswer> carrying = scanned.weakest().stream()
                .filter(p -> !p.loose() && p.disconnected().isEmpty())
                .limit(count)
                .toList();
        for (PatchAnswer weak : carrying) {
            if (stop.getAsBoolean()) {
                throw new CancellationException("stopped");
            }
            listener.stage(scanned.name() + ": buckling, joints and inserts, weak place " + (spots.size() + 1) + " of "
                    + carrying.size());
            spots.add(new DamageAnswer.HotSpot(weak, model.aftermath(weak.patch(), Solvers.best())));
        }
        return spots;
    }

    private static List<PatchAnswer> one(DamageModel model, Patch patch, Request request, Workbench.Listener listener) {
        List<Degree> degrees = request.degree.map(List::of).orElse(Arrays.asList(Degree.values()));
        return degrees.stream()
                .map(d -> {
                    listener.stage(model.tub().variant() + ": " + d.words());
                    return model.answer(patch, d);
                })
                .toList();
    }

    private static List<PatchAnswer> scan(
            DamageModel model, String name, Request request, Workbench.Listener listener, BooleanSupplier stop) {
        listener.stage(name + ": " + request.positions + " positions");
        List<Patch> patches = model.patches().moving(request.size, request.positions);
        return model.answer(patches, request.degree.orElse(Degree.HOLE), new Progress() {
            @Override
            public void step(String variant, String step, double meshSize, int done, int all) {
                listener.stage(name + ": " + 100L * done / all + " % of the positions");
            }

            @Override
            public boolean cancelled() {
                return stop.getAsBoolean();
            }
        });
    }

    /** The patch at a point, at a hardpoint's insert, or the whole of a zone, wall or strip. */
    static Patch patch(Patches patches, Structure structure, String at, double size) {
        Optional<double[]> point = point(at);
        boolean hardpoint =
                structure.hardpoints().stream().anyMatch(h -> h.name().equals(at));
        try {
            return point.isPresent()
                    ? patches.disc(point.get(), size)
                    : hardpoint ? patches.at(at, size) : patches.whole(at);
        } catch (StructureException fault) {
            // Typed, not written in the design: no line of it is at fault.
            String hardpoints = point.isPresent()
                    ? ""
                    : "\n    hardpoints: "
                            + structure.hardpoints().stream().map(h -> h.name()).collect(Collectors.joining(", "));
            throw new UserMistake("--at " + at + ": " + fault.getMessage() + "\n    " + fault.remedy() + hardpoints);
        }
    }

    /** A point in m; empty where the text is a name. */
    private static Optional<double[]> point(String at) {
        Matcher point = POINT.matcher(at);
        if (!point.matches()) {
            if (at.contains(",")) {
                throw new UserMistake("--at " + at + ": a point is three numbers and their unit, for instance"
                        + " \"620, 240, 300 mm\"");
            }
            return Optional.empty();
        }
        double[] x = new double[3];
        for (int d = 0; d < 3; d++) {
            try {
                x[d] = Quantity.parse(point.group(d + 1) + " " + point.group(4), Dimension.LENGTH)
                        .si();
            } catch (QuantityException e) {
                throw new UserMistake("--at " + at + ": " + e.getMessage());
            }
        }
        return Optional.of(x);
    }
}
