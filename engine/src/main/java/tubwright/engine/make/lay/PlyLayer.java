// SPDX-License-Identifier: Apache-2.0
package tubwright.engine.make.lay;

import java.nio.IntBuffer;
import java.util.ArrayList;
import java.util.Collections;
import java.util.Comparator;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.concurrent.CancellationException;
import java.util.concurrent.atomic.AtomicInteger;
import java.util.stream.IntStream;
import tubwright.engine.make.ply.LaidPly;
import tubwright.engine.make.ply.PlyPlan;
import tubwright.engine.mesh.Mesh;
import tubwright.engine.mesh.MeshSettings;
import tubwright.engine.mesh.Mesher;
import tubwright.engine.mesh.Region;
import tubwright.engine.structure.StructureException;
import tubwright.engine.structure.Tub;
import tubwright.numerics.DirectSolver;
import tubwright.numerics.Parallel;

/** Lays every ply of a tub: cloth as a net, everything else flattened and, where it must not stretch, cut, on all cores. */
public final class PlyLayer {
    /** Edge length of the mesh plies are laid on, m: fine enough for a cutter's outline. */
    public static final double USUAL_SIZE = 0.015;

    private PlyLayer() {}

    /** Hears of every ply that lies, from any thread, and may stop the work. */
    public interface Progress {
        /** One more ply lies. */
        void laid(LaidPly ply, int done, int all);

        /** Whether to stop before the next ply. */
        default boolean cancelled() {
            return false;
        }
    }

    /**
     * Lays the plies of a tub on a mesh of this size.
     *
     * @throws CancellationException when the listener says stop
     */
    public static LaidTub lay(Tub tub, double size, DirectSolver solver, Progress progress) {
        return lay(tub, List.of(), size, solver, progress);
    }

    /**
     * Lays the plies of a tub on a mesh of this size.
     *
     * @param starts where cloth is to be laid from; where none is chosen the best is sought
     * @throws CancellationException when the listener says stop
     * @throws StructureException naming a start on which there is no ply or from which it cannot be draped
     */
    public static LaidTub lay(Tub tub, List<LayStart> starts, double size, DirectSolver solver, Progress progress) {
        Mesh mesh = Mesher.mesh(tub.shape(), tub.layout(), MeshSettings.of(size));
        PlyPlan plan = PlyPlan.of(tub, mesh);
        Rims rims = new Rims(mesh);
        ClothLayer cloth = new ClothLayer(
                mesh,
                new Mould(tub.shape(), mesh, size),
                rims,
                plan.plies(),
                new LayStarts(mesh, starts, plan.plies()));
        OutlineFlats flats = new OutlineFlats(mesh, solver);
        SheetLayer sheet =
                new SheetLayer(mesh, flats, solver, rims, new CoreMarks(mesh, rims, plan.plies(), tub.hardpoints()));
        Parting parting = new Parting(mesh, flats, solver);
        int all = plan.plies().size();
        List<List<DrapedPly>> draped = new ArrayList<>(Collections.nCopies(all, List.of()));
        AtomicInteger done = new AtomicInteger();
        int[] order = order(plan.plies());
        Parallel.run(all, turn -> {
            if (progress.cancelled()) {
                throw new CancellationException("stopped");
            }
            int i = order[turn];
            LaidPly ply = plan.plies().get(i);
            boolean onSkin = mesh.region(ply.elements()[0]).surface() == Region.Surface.SKIN;
            boolean drapes = ply.cloth() && onSkin && Advice.area(mesh, ply) > Advice.CRUMB;
            // The solver on one thread: plies are many and small, and two solvers on two threads each wait for one
            // another.
            List<DrapedPly> parts = Parallel.alone(() -> drapes
                    ? List.of(cloth.lay(ply))
                    : onSkin && Parting.mayBeCut(ply) ? inParts(sheet, parting, ply) : List.of(sheet.lay(ply)));
            draped.set(i, parts.stream().map(p -> Advice.on(mesh, p)).toList());
            progress.laid(ply, done.incrementAndGet(), all);
        });
        return new LaidTub(tub, mesh, draped.stream().flatMap(List::stream).toList());
    }

    /**
     * Whose turn when: the first of each outline and angle before those that share what is found for it, so that nobody waits
     * for a neighbour, and the largest first, so that the cores end together.
     */
    private static int[] order(List<LaidPly> plies) {
        Map<List<Object>, Integer> seen = new HashMap<>();
        int[] rank = new int[plies.size()];
        for (int i = 0; i < rank.length; i++) {
            LaidPly ply = plies.get(i);
            List<Object> outline = List.of(IntBuffer.wrap(ply.elements()), ply.cloth() ? ply.angle() : "sheet");
            rank[i] = seen.merge(outline, 1, Integer::sum);
        }
        return IntStream.range(0, rank.length)
                .boxed()
                .sorted(Comparator.<Integer>comparingInt(i -> Math.min(2, rank[i]))
                        .thenComparingInt(i -> -plies.get(i).elements().length))
                .mapToInt(i -> i)
                .toArray();
    }

    /** A sheet as it is, or cut where in one it would have to stretch. */
    private static List<DrapedPly> inParts(SheetLayer sheet, Parting parting, LaidPly ply) {
        SheetLayer.Sheet whole = sheet.flat(ply);
        if (whole.distortion().beyond() <= DrapedPly.CRUMBS) {
            return List.of(sheet.lay(ply, whole));
        }
        List<LaidPly> parts = parting.of(ply);
        if (parts.size() == 1) {
            return List.of(sheet.lay(ply, whole));
        }
        String words = parting.words(ply, parts, whole.distortion());
        return parts.stream().map(p -> sheet.lay(p).with(words)).toList();
    }
}
