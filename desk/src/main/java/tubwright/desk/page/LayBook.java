// SPDX-License-Identifier: Apache-2.0
package tubwright.desk.page;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.function.Consumer;
import tubwright.desk.answer.DrapeAnswer;
import tubwright.desk.answer.PackAnswer;
import tubwright.desk.answer.PackWords;
import tubwright.desk.work.DrapeWork;
import tubwright.desk.work.TrimWork;
import tubwright.desk.work.UserMistake;
import tubwright.desk.work.Workbench;
import tubwright.engine.make.lay.DrapedPly;
import tubwright.engine.mesh.Mesh;
import tubwright.engine.mesh.Region;

/** The plies laid last, step by step. */
final class LayBook {
    private final OpenProject project;
    private final Errand errand;
    private final String version;
    private LayView view = LayView.NONE;
    private List<DrapedPly> plies = List.of();
    private Mesh laid;
    private int[] under = {};

    LayBook(OpenProject project, Queue queue, String version, Consumer<Happening> hear) {
        this.project = project;
        this.version = version;
        errand = new Errand("laying", Happening.What.LAYING, queue, hear);
    }

    RunView work() {
        return errand.view();
    }

    RunView stop() {
        return errand.stop();
    }

    synchronized LayView view() {
        return view;
    }

    /** Begins to lay them. */
    RunView start(String variant) {
        return errand.start(steps -> lay(variant, steps));
    }

    private String lay(String name, Errand.Steps steps) {
        Workings workings = project.workings();
        DrapeAnswer answer = DrapeWork.drape(
                workings.design(),
                new TrimWork.Request(
                        Optional.of(name), Optional.empty(), OptionalDouble.of(workings.meshSize(name)), false),
                false,
                "",
                version,
                new Workbench.Listener() {
                    @Override
                    public void stage(String words) {
                        steps.step(words, 0.02);
                    }

                    @Override
                    public void step(String words, int done, int of) {
                        steps.step(words, 0.02 + 0.95 * done / of);
                    }
                });
        Mesh shown = workings.surface(name).structure().mesh();
        int[] nearest = Overlay.nearest(shown, answer.laid().mesh());
        Map<String, List<DrapedPly>> byPiece = new LinkedHashMap<>();
        answer.laid()
                .plies()
                .forEach(p -> byPiece.computeIfAbsent(p.ply().piece(), _ -> new ArrayList<>())
                        .add(p));
        List<LayView.LaidPieceView> pieces = new ArrayList<>();
        List<DrapedPly> all = new ArrayList<>();
        byPiece.forEach((piece, own) -> {
            int last =
                    (int) own.stream().map(p -> p.ply().sequence()).distinct().count();
            pieces.add(new LayView.LaidPieceView(
                    piece,
                    own.stream()
                            .map(p -> {
                                all.add(p);
                                return ply(p, all.size() - 1, last, List.of());
                            })
                            .toList()));
        });
        synchronized (this) {
            view = new LayView(name, workings.revision(), pieces);
            plies = all;
            laid = answer.laid().mesh();
            under = nearest;
        }
        return all.size() + " plies laid; go through them step by step";
    }

    private static LayView.PlyView ply(DrapedPly p, int number, int steps, List<double[]> outlines) {
        boolean flat = !p.flat().outlines().isEmpty();
        return new LayView.PlyView(
                number,
                p.ply().name(),
                p.ply().sequence(),
                steps,
                DrapeAnswer.words(p.ply()),
                p.ply().zones(),
                p.ply().patch(),
                p.figures().area(),
                PackAnswer.mass(p),
                p.ply().cloth(),
                Math.toDegrees(p.figures().largestShear()),
                Math.toDegrees(p.limits().locking()),
                Math.toDegrees(p.figures().largestTurn()),
                p.advice(),
                PackWords.debulk(p.ply().sequence(), steps, p.ply()),
                new double[] {flat ? p.flat().length() : 0, flat ? p.flat().width() : 0},
                outlines,
                p.flat().start(),
                p.flat().reference());
    }

    /** One ply with where it lies on the tub as it is shown. */
    synchronized byte[] ply(String variant, int number) {
        if (!view.variant().equals(variant) || number < 0 || number >= plies.size()) {
            throw new UserMistake("there is no ply " + number + " of \"" + variant + "\"; lay them again");
        }
        DrapedPly p = plies.get(number);
        Map<Integer, Integer> place = new LinkedHashMap<>();
        for (int i = 0; i < p.ply().elements().length; i++) {
            place.put(p.ply().elements()[i], i);
        }
        double[] shear = new double[under.length];
        double[] warp = new double[3 * under.length];
        Arrays.fill(shear, Double.NaN);
        Arrays.fill(warp, Double.NaN);
        for (int e = 0; e < under.length; e++) {
            Integer i = place.get(under[e]);
            if (i != null) {
                double[] direction =
                        Overlay.direction(laid, under[e], p.fibres().warp()[i]);
                System.arraycopy(direction, 0, warp, 3 * e, 3);
                shear[e] = p.ply().cloth() ? Math.toDegrees(Math.abs(p.fibres().shear(i))) : 0;
            }
        }
        int steps = view.pieces().stream()
                .flatMap(q -> q.plies().stream())
                .filter(q -> q.number() == number)
                .findFirst()
                .orElseThrow()
                .steps();
        return new BinaryDocument(ply(p, number, steps, p.flat().outlines()))
                .floats("shear", shear)
                .floats("warp", warp)
                .bytes();
    }

    /** One mesh of a surface over another. */
    static final class Overlay {
        private Overlay() {}

        /** For each element of a mesh, the element of the other one nearest to it on the same strip or wall and side. */
        static int[] nearest(Mesh shown, Mesh other) {
            Map<String, List<Integer>> byPart = new LinkedHashMap<>();
            for (int e = 0; e < other.elementCount(); e++) {
                byPart.computeIfAbsent(key(other.region(e)), _ -> new ArrayList<>())
                        .add(e);
            }
            double[] middles = new double[3 * other.elementCount()];
            for (int e = 0; e < other.elementCount(); e++) {
                System.arraycopy(middle(other, e), 0, middles, 3 * e, 3);
            }
            int[] nearest = new int[shown.elementCount()];
            for (int e = 0; e < nearest.length; e++) {
                double[] m = middle(shown, e);
                double least = Double.POSITIVE_INFINITY;
                nearest[e] = -1;
                for (int o : byPart.getOrDefault(key(shown.region(e)), List.of())) {
                    double x = middles[3 * o] - m[0];
                    double y = middles[3 * o + 1] - m[1];
                    double z = middles[3 * o + 2] - m[2];
                    double d = x * x + y * y + z * z;
                    if (d < least) {
                        least = d;
                        nearest[e] = o;
                    }
                }
            }
            return nearest;
        }

        private static String key(Region region) {
            return region.part() + (region.mirrored() ? " left" : " right");
        }

        private static double[] middle(Mesh mesh, int e) {
            double[] m = new double[3];
            int corners = mesh.cornerCount(e);
            for (int c = 0; c < corners; c++) {
                for (int d = 0; d < 3; d++) {
                    m[d] += mesh.nodes()[3 * mesh.elementNodes()[4 * e + c] + d] / corners;
                }
            }
            return m;
        }

        /** Unit vector at an angle from the reference direction, anticlockwise about the outward normal. */
        static double[] direction(Mesh mesh, int e, double angle) {
            double[] n = Arrays.copyOfRange(mesh.cornerNormals(), 12 * e, 12 * e + 3);
            double[] a = Arrays.copyOfRange(mesh.referenceDirections(), 3 * e, 3 * e + 3);
            double[] b = {n[1] * a[2] - n[2] * a[1], n[2] * a[0] - n[0] * a[2], n[0] * a[1] - n[1] * a[0]};
            double[] d = new double[3];
            for (int i = 0; i < 3; i++) {
                d[i] = Math.cos(angle) * a[i] + Math.sin(angle) * b[i];
            }
            return d;
        }
    }
}
