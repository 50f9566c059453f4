// SPDX-License-Identifier: Apache-2.0
package tubwright.desk.work;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.HashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.Set;
import java.util.function.Consumer;
import tubwright.desk.answer.CureAnswer;
import tubwright.desk.answer.MouldAnswer;
import tubwright.engine.laminate.Laminate;
import tubwright.engine.make.cure.CureLibrary;
import tubwright.engine.make.cure.CureShop;
import tubwright.engine.make.cure.CureStudy;
import tubwright.engine.make.cure.LaminateCure;
import tubwright.engine.make.cure.MouldExpansion;
import tubwright.engine.make.cure.Tool;
import tubwright.engine.make.flat.Distortion;
import tubwright.engine.make.flat.Flattening;
import tubwright.engine.make.lay.PlyLayer;
import tubwright.engine.make.mould.Draft;
import tubwright.engine.make.mould.DraftCheck;
import tubwright.engine.make.mould.MouldAdvice;
import tubwright.engine.make.mould.PieceFace;
import tubwright.engine.make.mould.PullSearch;
import tubwright.engine.make.mould.SplitLines;
import tubwright.engine.make.surface.MeshSurface;
import tubwright.engine.make.surface.TriangleSurface;
import tubwright.engine.material.Metal;
import tubwright.engine.mesh.Mesh;
import tubwright.engine.mesh.MeshSettings;
import tubwright.engine.mesh.Mesher;
import tubwright.engine.mesh.Region;
import tubwright.engine.shape.TubShape;
import tubwright.engine.structure.Tub;
import tubwright.numerics.solver.Solvers;

/** Looks at the pieces of a tub and at the moulds they come out of. */
public final class MouldWork {
    private final Tub tub;
    private final Request request;
    private final CureStudy study;
    private final CureShop shop;
    private final Consumer<String> says;

    private MouldWork(Tub tub, Request request, Consumer<String> says) {
        this.tub = tub;
        this.request = request;
        this.says = says;
        Tool tool = request.library.tool(request.mould);
        shop = new CureShop(
                tool,
                tool.thickness().si(),
                CureShop.USUAL_TRANSFER,
                CureShop.USUAL_TRANSFER,
                request.library.cycle(request.cycle),
                request.library.cycle(request.cycle),
                CureShop.Order.THREE_CURES,
                CureShop.USUAL_HUMIDITY,
                OptionalDouble.empty());
        study = new CureStudy(request.library, shop);
    }

    /**
     * What is asked.
     *
     * @param library data of cures and of what moulds are made of
     * @param mould material of moulds, by name
     * @param cycle of cure, by name
     * @param pulls by piece, unit vectors; the best is found for the others
     * @param wanted draft, rad
     */
    public record Request(CureLibrary library, String mould, String cycle, Map<String, double[]> pulls, double wanted) {
        /** What nobody said otherwise: moulds of carbon and epoxy, cured at 180 °C, 2° of draft. */
        public static Request usual(CureLibrary library) {
            return new Request(library, "carbon-epoxy", "solid-180", Map.of(), Draft.USUAL);
        }
    }

    /** The answer on a mesh of its own. */
    public static MouldAnswer moulds(
            Tub tub, String variant, Request request, String stamp, String version, Consumer<String> says) {
        says.accept("faces of the pieces");
        Mesh mesh = Mesher.mesh(tub.shape(), tub.layout(), MeshSettings.of(PlyLayer.USUAL_SIZE));
        return on(mesh, tub, variant, request, stamp, version, says);
    }

    /** The answer on a mesh there is. */
    public static MouldAnswer on(
            Mesh mesh, Tub tub, String variant, Request request, String stamp, String version, Consumer<String> says) {
        boolean metal = tub.laminates().values().stream()
                .allMatch(l -> l.layers().stream().allMatch(layer -> layer.material() instanceof Metal));
        if (metal) {
            throw new UserMistake("variant \"" + variant + "\" is metal sheet: it is folded, not moulded"
                    + "\n    name a variant of carbon with --variant");
        }
        return new MouldWork(tub, request, says).answer(mesh, variant, stamp, version);
    }

    private MouldAnswer answer(Mesh mesh, String variant, String stamp, String version) {
        SplitLines lines = new SplitLines(mesh);
        List<PieceFace> faces = PieceFace.all(mesh);
        List<String> skins =
                faces.stream().filter(f -> !f.plate()).map(PieceFace::piece).toList();
        for (String named : request.pulls.keySet()) {
            if (!skins.contains(named)) {
                throw TrimWork.unknown("piece of the skin", named, skins);
            }
        }
        List<MouldAnswer.Piece> pieces = new ArrayList<>();
        for (PieceFace face : faces) {
            says.accept("draft of " + face.piece());
            pieces.add(face.plate() ? plate(face) : piece(face, lines));
        }
        List<MouldAnswer.Bend> bends = bends(mesh);
        return new MouldAnswer(
                tub.name(),
                variant,
                stamp,
                version,
                mesh,
                request.wanted,
                shop.tool().description(),
                shop.solid().hottest() - CureWork.ROOM,
                pieces,
                bends,
                factors(),
                new ToolingList(tub, shop.tool(), request.library).of(pieces, bends));
    }

    private MouldAnswer.Piece plate(PieceFace face) {
        double[] normal =
                Arrays.copyOfRange(face.mesh().cornerNormals(), 12 * face.elements()[0], 12 * face.elements()[0] + 3);
        return new MouldAnswer.Piece(
                face,
                face.area(),
                face.size(normal),
                Map.of(),
                Optional.empty(),
                false,
                Optional.empty(),
                factor(face, shop.tool()),
                List.of());
    }

    private MouldAnswer.Piece piece(PieceFace face, SplitLines lines) {
        List<SplitLines.Edge> edges = lines.of(face);
        boolean given = request.pulls.containsKey(face.piece());
        double[] pull = given ? request.pulls.get(face.piece()) : PullSearch.best(face, request.wanted);
        Draft draft = DraftCheck.of(face, pull, request.wanted, edges);
        return new MouldAnswer.Piece(
                face,
                face.area(),
                face.size(pull),
                lines.lengths(face),
                Optional.of(draft),
                given,
                Optional.of(developed(face)),
                factor(face, shop.tool()),
                MouldAdvice.of(face, draft, edges));
    }

    private static MouldAnswer.Developed developed(PieceFace face) {
        boolean[] in = new boolean[face.mesh().elementCount()];
        Arrays.stream(face.elements()).forEach(e -> in[e] = true);
        TriangleSurface surface = MeshSurface.of(face.mesh(), e -> in[e]).surface();
        double[] flat = Flattening.isometric(surface, Solvers.best());
        double[] sum = new double[5];
        int n = flat.length / 2;
        for (int i = 0; i < n; i++) {
            sum[0] += flat[2 * i] / n;
            sum[1] += flat[2 * i + 1] / n;
        }
        for (int i = 0; i < n; i++) {
            double x = flat[2 * i] - sum[0];
            double y = flat[2 * i + 1] - sum[1];
            sum[2] += x * x;
            sum[3] += x * y;
            sum[4] += y * y;
        }
        double turn = Math.atan2(2 * sum[3], sum[2] - sum[4]) / 2;
        double[] box = {1e9, 1e9, -1e9, -1e9};
        for (int i = 0; i < n; i++) {
            double x = Math.cos(turn) * flat[2 * i] + Math.sin(turn) * flat[2 * i + 1];
            double y = Math.cos(turn) * flat[2 * i + 1] - Math.sin(turn) * flat[2 * i];
            box = new double[] {Math.min(box[0], x), Math.min(box[1], y), Math.max(box[2], x), Math.max(box[3], y)};
        }
        Distortion distortion = Distortion.of(surface, flat);
        return new MouldAnswer.Developed(
                box[2] - box[0], box[3] - box[1], face.area() * (1 + distortion.area()), distortion);
    }

    /** Cold size over the part's for a piece: with the mean expansion of its laminates; NaN where none is known. */
    private double factor(PieceFace face, Tool tool) {
        Set<String> zones = new LinkedHashSet<>();
        Arrays.stream(face.elements())
                .forEach(e -> zones.add(face.mesh().region(e).zone()));
        return zones.stream()
                .map(this::springIn)
                .flatMap(Optional::stream)
                .mapToDouble(b -> b.formula().alongExpansion())
                .average()
                .stream()
                .map(along -> expansion(along, tool))
                .findFirst()
                .orElse(Double.NaN);
    }

    private double expansion(double along, Tool tool) {
        double change = shop.solid().hottest() - CureWork.ROOM;
        return new MouldExpansion(along, tool.expansion().si(), change).factor();
    }

    private Optional<LaminateCure.Bend> springIn(String zone) {
        Laminate laminate = tub.laminates().get(zone);
        return laminate == null ? Optional.empty() : study.bend(laminate);
    }

    private List<MouldAnswer.Factor> factors() {
        OptionalDouble along = tub.laminates().keySet().stream()
                .map(this::springIn)
                .flatMap(Optional::stream)
                .mapToDouble(b -> b.formula().alongExpansion())
                .average();
        if (along.isEmpty()) {
            return List.of();
        }
        return request.library.tools().values().stream()
                .map(t -> new MouldAnswer.Factor(
                        t.name(),
                        t.description(),
                        t.expansion().si(),
                        expansion(along.getAsDouble(), t),
                        t.expansion().provenance().toString()))
                .toList();
    }

    private List<MouldAnswer.Bend> bends(Mesh mesh) {
        TubShape shape = tub.shape();
        Map<String, String> pieceOf = new HashMap<>();
        for (Region region : mesh.regions()) {
            pieceOf.putIfAbsent(region.part() + "\n" + region.zone(), region.piece());
            pieceOf.putIfAbsent(region.part(), region.piece());
        }
        List<MouldAnswer.Bend> bends = new ArrayList<>();
        for (CureAnswer.Bend bend : CureWork.bends(tub, this::springIn)) {
            for (int corner = 1; corner < shape.strips().size(); corner++) {
                String below = shape.strips().get(corner - 1);
                String above = shape.strips().get(corner);
                if (!bend.between().equals(below + " and " + above)) {
                    continue;
                }
                double least = Double.POSITIVE_INFINITY;
                double most = 0;
                for (double x : CureWork.stations(shape)) {
                    if (x >= bend.from() - 1e-9 && x <= bend.to() + 1e-9) {
                        double radius = shape.section(x).radius(corner);
                        least = Math.min(least, radius);
                        most = Math.max(most, radius);
                    }
                }
                String piece = pieceOf.getOrDefault(below + "\n" + bend.zone(), pieceOf.getOrDefault(below, ""));
                String other = pieceOf.getOrDefault(above, piece);
                double thickness = Optional.ofNullable(tub.laminates().get(bend.zone()))
                        .map(Laminate::thickness)
                        .orElse(0.0);
                bends.add(new MouldAnswer.Bend(
                        piece.equals(other) ? piece : piece + " / " + other, bend, least, most, thickness));
            }
        }
        return bends;
    }
}
