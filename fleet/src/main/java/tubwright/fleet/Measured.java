// SPDX-License-Identifier: Apache-2.0
package tubwright.fleet;

import java.util.Comparator;
import java.util.List;
import java.util.concurrent.CancellationException;
import java.util.function.BooleanSupplier;
import tubwright.engine.design.Design;
import tubwright.engine.laminate.Laminate;
import tubwright.engine.laminate.Layer;
import tubwright.engine.mesh.Mesh;
import tubwright.engine.response.InstalledAnswer;
import tubwright.engine.response.MassRollUp;
import tubwright.engine.response.Progress;
import tubwright.engine.response.Reserve;
import tubwright.engine.response.StabilityAsk;
import tubwright.engine.response.Study;
import tubwright.engine.response.VariantAnswer;
import tubwright.engine.shape.Section;
import tubwright.engine.shape.TubShape;
import tubwright.engine.structure.Case;
import tubwright.engine.structure.Mode;
import tubwright.engine.structure.Solution;
import tubwright.engine.structure.StaticSolver;
import tubwright.engine.structure.StepTimes;
import tubwright.engine.structure.Structure;
import tubwright.engine.structure.Tub;
import tubwright.engine.trim.Blocks;
import tubwright.engine.trim.Layup;
import tubwright.numerics.solver.Solvers;

/**
 * One design of which numbers are read. Each number is computed in its own way whatever else is read, so that it does not
 * depend on the company it keeps; what several need is computed once.
 */
final class Measured {
    private final Design.Variant variant;
    private final Tub tub;
    private final double size;
    private final BooleanSupplier stop;
    private Mesh mesh;
    private Structure structure;
    private List<Solution> solutions;
    private VariantAnswer answer;
    private VariantAnswer stability;
    private Relightened relightened;

    Measured(Design.Variant variant, double meshSize, BooleanSupplier stop) {
        this.variant = variant;
        this.stop = stop;
        tub = variant.tub();
        size = meshSize > 0 ? meshSize : tub.meshSize();
    }

    double value(Reading reading) {
        if (stop.getAsBoolean()) {
            throw new CancellationException("stopped");
        }
        return switch (reading.kind()) {
            case MASS -> MassRollUp.of(structure()).whole().mass();
            case TORSION -> stiffness(Case.Torsion.class, reading);
            case BENDING -> stiffness(Case.Bending.class, reading);
            case HUB ->
                answer().installed()
                        .flatMap(InstalledAnswer::hubToHub)
                        .orElseThrow(() -> new FleetException("there is no car to read hub to hub", "write \"car:\""))
                        .stiffness();
            case RESERVE -> reserve();
            case BUCKLING ->
                stability()
                        .stability()
                        .first()
                        .orElseThrow(() -> new FleetException("nothing buckles", ""))
                        .lowest()
                        .orElseThrow()
                        .factor();
            case FREQUENCY ->
                stability()
                        .stability()
                        .free()
                        .flatMap(v -> v.first(Mode.Motion.TORSION))
                        .orElseThrow(() -> new FleetException("no torsion mode was found", ""))
                        .frequency();
            case SKIN -> skin();
            case PLIES -> plies(Layup.of(tub), tub.laminates());
            case LAID -> laid(Layup.of(tub), Blocks.of(mesh()));
            case ENCLOSED -> section(reading).area();
            case PERIMETER -> section(reading).perimeter();
            case WIDTH -> width(section(reading));
            case HEIGHT -> section(reading).top() - section(reading).bottom();
            case LIGHTEST, LIGHTEST_BOUND, LIGHTEST_PLIES, LIGHTEST_LAID, STIFFEST ->
                relightened().value(reading);
        };
    }

    private Mesh mesh() {
        if (mesh == null) {
            mesh = Study.mesh(tub, size);
        }
        return mesh;
    }

    private Structure structure() {
        if (structure == null) {
            structure = Structure.of(tub, mesh());
        }
        return structure;
    }

    /** Of the first case of a kind, or the one named. All cases that have a stiffness are solved together. */
    private double stiffness(Class<? extends Case> kind, Reading reading) {
        List<Case> read =
                tub.cases().stream().filter(c -> !(c instanceof Case.Loads)).toList();
        Case wanted = read.stream()
                .filter(kind::isInstance)
                .filter(c -> reading.of().map(c.name()::equals).orElse(true))
                .findFirst()
                .orElseThrow(() -> new FleetException(
                        reading.of()
                                .map(name -> "there is no case \"" + name + "\" to read "
                                        + reading.kind().words() + " in")
                                .orElse("there is no case to read "
                                        + reading.kind().words() + " in"),
                        "write one under \"cases:\""));
        if (solutions == null) {
            solutions = StaticSolver.solve(structure(), read, Solvers.best(), new StepTimes());
        }
        return Study.stiffness(structure(), solutions.get(read.indexOf(wanted)));
    }

    private Progress progress() {
        return new Progress() {
            @Override
            public void step(String of, String step, double meshSize, int done, int all) {}

            @Override
            public boolean cancelled() {
                return stop.getAsBoolean();
            }
        };
    }

    private VariantAnswer answer() {
        if (answer == null) {
            answer = study(StabilityAsk.NONE, tub);
        }
        return answer;
    }

    private VariantAnswer stability() {
        if (stability == null) {
            stability = study(variant.stability().orUsual(), tub);
        }
        return stability;
    }

    private VariantAnswer study(StabilityAsk ask, Tub of) {
        return new Study(Solvers.best(), List.of(size / tub.meshSize()), progress(), ask)
                .answer(List.of(of))
                .getFirst();
    }

    private double reserve() {
        return answer().reserves().rows().stream()
                .filter(r -> !r.local() && !r.firstCrack())
                .min(Comparator.comparingDouble(Reserve::value))
                .orElseThrow(() -> new FleetException(
                        "there is no load case to read a reserve factor in", "write one under \"cases:\""))
                .value();
    }

    private double skin() {
        TubShape shape = tub.shape();
        double area = 0;
        for (int s = 0; s < shape.strips().size(); s++) {
            area += shape.netStripArea(s);
        }
        return area;
    }

    private Section section(Reading reading) {
        double x = reading.at().orElseThrow();
        if (x < tub.shape().front() || x > tub.shape().rear()) {
            throw new FleetException(reading.text() + ": there is no tub there", "");
        }
        return tub.shape().section(x);
    }

    private static double width(Section section) {
        double half = 0;
        tubwright.engine.shape.SkinPoint point = new tubwright.engine.shape.SkinPoint();
        for (int s = 0; s < section.stripCount(); s++) {
            for (int i = 0; i <= 64; i++) {
                section.at(s, i / 64.0, point);
                half = Math.max(half, Math.abs(point.y));
            }
        }
        return 2 * half;
    }

    /** Plies of all zones of some size and of all patches, each counted once. */
    static double plies(Layup layup, java.util.Map<String, Laminate> zones) {
        long count = 0;
        for (String zone : zones.keySet()) {
            count += count(layup.zones().get(zone).layers());
        }
        for (List<Layer> plies : layup.patchesByName().values()) {
            count += count(plies);
        }
        return count;
    }

    /** m² of plies on a mesh's surfaces. */
    static double laid(Layup layup, Blocks blocks) {
        double area = 0;
        for (Blocks.Block block : blocks.all()) {
            area += block.area() * count(layup.laminate(block).layers());
        }
        return area;
    }

    private static long count(List<Layer> layers) {
        return layers.stream().filter(Measured::ply).count();
    }

    private static boolean ply(Layer layer) {
        return layer.material() instanceof tubwright.engine.material.Ply;
    }

    private Relightened relightened() {
        if (relightened == null) {
            relightened = new Relightened(variant, mesh(), stop);
        }
        return relightened;
    }
}
