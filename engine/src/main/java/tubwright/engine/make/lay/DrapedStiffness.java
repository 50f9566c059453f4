// SPDX-License-Identifier: Apache-2.0
package tubwright.engine.make.lay;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import tubwright.engine.laminate.Laminate;
import tubwright.engine.laminate.Layer;
import tubwright.engine.laminate.LayerRole;
import tubwright.engine.make.ply.LaidPly;
import tubwright.engine.make.surface.MeshSurface;
import tubwright.engine.make.surface.PointLocator;
import tubwright.engine.material.Ply;
import tubwright.engine.mesh.Mesh;
import tubwright.engine.mesh.Region;
import tubwright.engine.response.Study;
import tubwright.engine.structure.Case;
import tubwright.engine.structure.StaticSolver;
import tubwright.engine.structure.StepTimes;
import tubwright.engine.structure.Structure;
import tubwright.engine.structure.Tub;
import tubwright.numerics.DirectSolver;

/**
 * What draping costs: torsional stiffness with every ply at its nominal angle, and with the fibres where they come to lie.
 * Both on one mesh, which has one laminate an element for the second.
 *
 * @param nominal N·m/rad
 * @param draped N·m/rad
 * @param elements of the mesh
 * @param asLaid share of the skin's area whose laminate was taken as laid; the rest, at the borders of zones, is nominal
 */
public record DrapedStiffness(double nominal, double draped, int elements, double asLaid) {
    /** Share of the stiffness that draping costs; negative where it gives some. */
    public double cost() {
        return 1 - draped / nominal;
    }

    /** Of a laid tub in its first torsion case; empty where it has none. */
    public static Optional<DrapedStiffness> of(LaidTub laid, double size, DirectSolver solver) {
        Optional<Case> torsion = laid.tub().cases().stream()
                .filter(Case.Torsion.class::isInstance)
                .findFirst();
        return torsion.map(c -> new Work(laid, size, solver).of(c));
    }

    private static final class Work {
        /** A layer this near to a ply's depth is that ply, m. */
        private static final double SAME = 1e-6;

        private final LaidTub laid;
        private final DirectSolver solver;
        private final Mesh mesh;
        /** Per element of the laying mesh its plies: index of the ply and of the element in it. */
        private final Map<Integer, List<int[]>> plies = new HashMap<>();

        private double taken;
        private double skin;

        Work(LaidTub laid, double size, DirectSolver solver) {
            this.laid = laid;
            this.solver = solver;
            mesh = Study.mesh(laid.tub(), size);
            for (int p = 0; p < laid.plies().size(); p++) {
                int[] elements = laid.plies().get(p).ply().elements();
                for (int i = 0; i < elements.length; i++) {
                    plies.computeIfAbsent(elements[i], e -> new ArrayList<>()).add(new int[] {p, i});
                }
            }
        }

        DrapedStiffness of(Case torsion) {
            double nominal = stiffness(laid.tub(), mesh, torsion);
            List<Region> regions = new ArrayList<>();
            Map<String, Laminate> laminates = new HashMap<>(laid.tub().laminates());
            int[] regionOf = new int[mesh.elementCount()];
            MeshSurface surface =
                    MeshSurface.of(laid.mesh(), e -> laid.mesh().region(e).surface() == Region.Surface.SKIN);
            PointLocator locator = new PointLocator(surface.surface());
            Map<Integer, Integer> walls = new HashMap<>();
            for (int e = 0; e < mesh.elementCount(); e++) {
                Region region = mesh.region(e);
                if (region.surface() == Region.Surface.WALL) {
                    regionOf[e] = walls.computeIfAbsent(mesh.elementRegions()[e], r -> {
                        regions.add(region);
                        return regions.size() - 1;
                    });
                    continue;
                }
                double[] at = Mould.centre(mesh, e);
                int there = surface.element()[
                        locator.nearest(at[0], at[1], at[2]).point().triangle()];
                String zone = region.zone() + " " + e;
                laminates.put(zone, laminate(e, region, there));
                regionOf[e] = regions.size();
                regions.add(new Region(region.part(), region.surface(), zone, List.of(), region.piece(), false));
            }
            Tub tub = laid.tub()
                    .with(
                            laminates,
                            laid.tub().patchPlies(),
                            laid.tub().joints(),
                            laid.tub().hardpoints());
            Mesh each = new Mesh(
                    mesh.nodes(),
                    mesh.elementNodes(),
                    mesh.cornerNormals(),
                    mesh.referenceDirections(),
                    regionOf,
                    regions,
                    mesh.lines());
            return new DrapedStiffness(nominal, stiffness(tub, each, torsion), mesh.elementCount(), taken / skin);
        }

        private double stiffness(Tub tub, Mesh on, Case torsion) {
            Structure structure = Structure.of(tub, on);
            return Study.stiffness(
                    structure,
                    StaticSolver.solve(structure, List.of(torsion), solver, new StepTimes())
                            .getFirst());
        }

        /** The laminate of an element with the fibres of the laying mesh's element there, mirrored already. */
        private Laminate laminate(int e, Region region, int there) {
            Laminate nominal = laid.tub().laminate(region);
            double area = mesh.area(e);
            skin += area;
            Region laidThere = laid.mesh().region(there);
            boolean same = laidThere.zone().equals(region.zone())
                    && laidThere.patches().equals(region.patches());
            if (!same) {
                return new Laminate(asHalves(nominal), nominal.reference());
            }
            taken += area;
            List<Layer> layers = new ArrayList<>();
            double depth = 0;
            for (Layer layer : nominal.layers()) {
                layers.addAll(layer(layer, depth, there));
                depth += layer.thickness();
            }
            return new Laminate(layers, nominal.reference());
        }

        private static List<Layer> asHalves(Laminate nominal) {
            return nominal.layers().stream()
                    .flatMap(l -> cloth(l)
                            ? ShearedCloth.halves(l, l.angle(), l.angle() + Math.PI / 2).stream()
                            : List.of(l).stream())
                    .toList();
        }

        private static boolean cloth(Layer layer) {
            return layer.role() == LayerRole.PLY && layer.material() instanceof Ply ply && ply.form() == Ply.Form.CLOTH;
        }

        private List<Layer> layer(Layer layer, double depth, int there) {
            for (int[] at : plies.getOrDefault(there, List.of())) {
                DrapedPly draped = laid.plies().get(at[0]);
                LaidPly ply = draped.ply();
                if (Math.abs(ply.depths()[at[1]] - depth) < SAME && ply.role() == layer.role()) {
                    double warp = draped.fibres().warp()[at[1]];
                    double weft = draped.fibres().weft()[at[1]];
                    if (Double.isNaN(warp)) {
                        break;
                    }
                    if (cloth(layer)) {
                        return ShearedCloth.halves(layer, warp, weft);
                    }
                    return layer.role() == LayerRole.FILM
                            ? List.of(layer)
                            : List.of(new Layer(layer.material(), layer.thickness(), warp, layer.role()));
                }
            }
            return cloth(layer)
                    ? ShearedCloth.halves(layer, layer.angle(), layer.angle() + Math.PI / 2)
                    : List.of(layer);
        }
    }
}
