// SPDX-License-Identifier: Apache-2.0
package tubwright.bench;

import java.io.IOException;
import java.io.PrintWriter;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.Comparator;
import java.util.HashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.OptionalDouble;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Collectors;
import tubwright.engine.laminate.Laminate;
import tubwright.engine.laminate.Layer;
import tubwright.engine.laminate.Reference;
import tubwright.engine.material.Elasticity;
import tubwright.engine.material.Material;
import tubwright.engine.material.MaterialLibrary;
import tubwright.engine.material.Ply;
import tubwright.engine.material.Property;
import tubwright.engine.material.PropertyTable;
import tubwright.engine.material.Provenance;
import tubwright.engine.safety.rules.PanelTest;
import tubwright.engine.safety.spread.Energies;
import tubwright.engine.safety.spread.LoadPath;
import tubwright.engine.safety.spread.Panel;
import tubwright.engine.safety.spread.SpreadAnswer;
import tubwright.engine.strength.StrengthBasis;
import tubwright.numerics.solver.Solvers;

/**
 * Largest loads of measured sandwich panels in three-point bending against what is predicted, as found: by following the load past
 * its peak, and by the lowest of the beam formulas. The set gives no strengths: they come from cards of the library nearest in kind,
 * which is the larger part of what differs.
 */
public final class MeasuredPanelsRun {
    private static final MaterialLibrary LIBRARY = MaterialLibrary.shipped();
    private static final Pattern PLY = Pattern.compile("(-?\\d+)([FU])(\\d*)");
    /** Lends what a tape's card does not say of its strength across the fibres and in shear. */
    private static final String ACROSS = "ud-im7-8552";

    private static final double PAD = 0.05;
    private static final String HEAD = """
            # Measured panels: largest load, predicted and measured

            19 panels in three-point bending of a public set of 38 (five student groups), as found, nothing tuned. The set gives layups,
            moduli and the largest load, but no strength of any ply or core and no manner of failure. Strengths are those of the nearest
            card of the shipped library (last columns), of plies scaled so that they break at that card's strain. Fracture energies are
            assumed: fibres 80, matrix 1, core 5 kJ/m². The push is 50 mm long across the whole width, its length assumed. Plies at room
            temperature, no knock-downs. `spread`: the load followed past its peak, on 40 x 10 elements; it does not follow wrinkling or
            dimpling. `formulas`: the lowest of the beam formulas of `PanelTest`, indentation by a narrow roller left out in the first
            and counted in the second. A group's year stands in the panel's name. Made by

            ```
            java --enable-native-access=ALL-UNNAMED -cp "bench/target/tubwright-bench-0.1.0.jar:bench/target/lib/*" \\
                tubwright.bench.MeasuredPanelsRun \\
                engine/src/test/resources/tubwright/engine/rig/sandwich_panels_3pb.csv bench/results/measured-panels.md
            ```

            | panel | measured, kN | spread, kN | over measured | first to begin, and what had gone at the peak | formulas, kN | over \
            measured | by | with a narrow roller, kN | over measured | by | energy balance, % | strengths of |
            |---|--:|--:|--:|---|--:|--:|---|--:|--:|---|--:|---|""";

    private MeasuredPanelsRun() {}

    /**
     * @param arguments the set, file to write, then names of panels (default: all)
     * @throws IOException if one cannot be read or the other not be written
     */
    public static void main(String[] arguments) throws IOException {
        List<String> rows = new ArrayList<>();
        List<double[]> ratios = new ArrayList<>();
        for (Map<String, String> row : rows(Path.of(arguments[0]))) {
            if (arguments.length > 2 && Arrays.stream(arguments).skip(2).noneMatch(row.get("panel")::equals)) {
                continue;
            }
            rows.add(row(row, ratios));
            System.out.println(rows.getLast());
        }
        try (PrintWriter out = new PrintWriter(Files.newBufferedWriter(Path.of(arguments[1])))) {
            out.println(HEAD);
            rows.forEach(out::println);
            out.println();
            out.println("Predicted over measured: " + spread(ratios, 0, "spread") + "; "
                    + spread(ratios, 1, "lowest formula without indentation") + "; "
                    + spread(ratios, 2, "lowest formula with it") + ".");
        }
    }

    private static String spread(List<double[]> ratios, int k, String name) {
        double[] sorted = ratios.stream()
                .mapToDouble(r -> r[k])
                .filter(Double::isFinite)
                .sorted()
                .toArray();
        return sorted.length == 0
                ? name + ": none"
                : String.format(
                        Locale.ROOT,
                        "%s median %.2f, from %.2f to %.2f",
                        name,
                        sorted[sorted.length / 2],
                        sorted[0],
                        sorted[sorted.length - 1]);
    }

    private static String row(Map<String, String> row, List<double[]> ratios) {
        Laminate laminate = laminate(row);
        double span = number(row, "span_m");
        double width = number(row, "width_m");
        double measured = number(row, "P_max_N");
        Energies assumed = new Energies(
                OptionalDouble.of(80e3), OptionalDouble.of(1e3), OptionalDouble.of(5e3), OptionalDouble.empty());
        Panel panel = new Panel(laminate, span, width, span, false, PAD, 40, 10);
        SpreadAnswer path = LoadPath.of(
                panel.model(StrengthBasis.USUAL, assumed),
                new LoadPath.Manner(200, 0.5, 1e-3, 0.04),
                Solvers.best(),
                n -> {},
                () -> false);
        double peak = path.peak().factor();
        String order = path.events().stream()
                .filter(e -> e.movement() <= path.peak().movement() && !e.what().contains("between fibres"))
                .map(e -> String.format(
                        Locale.ROOT,
                        "%.1f kN %s",
                        1e-3 * e.factor(),
                        e.zone().equals("panel") ? e.what() : e.zone() + " " + e.what()))
                .collect(Collectors.joining(", "));
        List<PanelTest.Way> ways =
                PanelTest.of("panel", laminate, span, width).orElseThrow().ways();
        PanelTest.Way wide = ways.stream()
                .filter(w -> !w.mode().equals("core crushed under the roller"))
                .findFirst()
                .orElseThrow();
        PanelTest.Way narrow = ways.getFirst();
        ratios.add(new double[] {peak / measured, wide.load() / measured, narrow.load() / measured});
        return String.format(
                Locale.ROOT,
                "| %s | %.1f | %.1f | %.2f | %s; %s | %.1f | %.2f | %s | %.1f | %.2f | %s | %.1f | %s |",
                row.get("panel"),
                1e-3 * measured,
                1e-3 * peak,
                peak / measured,
                order,
                path.ended(),
                1e-3 * wide.load(),
                wide.load() / measured,
                wide.mode(),
                1e-3 * narrow.load(),
                narrow.load() / measured,
                narrow.mode(),
                100 * path.energyGap(),
                laminate.layers().stream()
                        .map(l -> l.material().name())
                        .distinct()
                        .collect(Collectors.joining(", ")));
    }

    /** Outer skin upward. */
    private static Laminate laminate(Map<String, String> row) {
        String name = row.get("panel").replaceFirst("^(E20\\d\\d\\.BB\\.[\\d.]+|[A-Z]\\d\\d)_", "");
        String[] skins = name.replaceFirst("_(small|v3|30mmflex)$", "").split("_C_");
        List<Layer> layers = new ArrayList<>(skin(skins[0], row));
        List<Layer> inner = skin(skins[1].equals("ditto") ? skins[0] : skins[1], row);
        layers.add(new Layer(core(row), number(row, "core_t_m"), 0));
        layers.addAll(skins[1].equals("ditto") ? inner.reversed() : inner);
        return new Laminate(layers, Reference.MIDDLE);
    }

    private static List<Layer> skin(String code, Map<String, String> row) {
        List<Layer> layers = new ArrayList<>();
        Matcher times = Pattern.compile("\\((.*)\\)x(\\d)").matcher(code);
        boolean repeated = times.matches();
        for (int k = 0; k < (repeated ? Integer.parseInt(times.group(2)) : 1); k++) {
            for (String each : (repeated ? times.group(1) : code).split("_")) {
                Matcher ply = PLY.matcher(each);
                if (!ply.matches()) {
                    throw new IllegalArgumentException("not a ply: " + each);
                }
                int count = ply.group(3).isEmpty() ? 1 : Integer.parseInt(ply.group(3));
                for (int i = 0; i < count; i++) {
                    layers.add(layer(ply.group(2).equals("F") ? "fab" : "uni", Double.parseDouble(ply.group(1)), row));
                }
            }
        }
        return layers;
    }

    /** Moduli of the set; strengths of a card, at the same strain. */
    private static Layer layer(String kind, double degrees, Map<String, String> row) {
        Material card = LIBRARY.get(ply(kind, row));
        double shear = number(row, kind + "_G12_Pa");
        double one = number(row, kind + "_E1_Pa");
        double two = number(row, kind + "_E2_Pa");
        Elasticity elasticity = new Elasticity(one, two, number(row, kind + "_nu12"), shear, shear, shear);
        PropertyTable table = PropertyTable.EMPTY.with(Property.DENSITY, 1550, Provenance.STATED);
        for (Property property : List.of(Property.XT, Property.XC, Property.YT, Property.YC, Property.S12)) {
            boolean cloth = kind.equals("fab");
            double by = switch (property) {
                case XT, XC -> one / card.elasticity().e1();
                case YT, YC -> cloth ? two / card.elasticity().e2() : 1;
                default -> 1;
            };
            double strength = card.properties()
                    .si(property)
                    .orElseGet(() -> LIBRARY.get(ACROSS).properties().require(property));
            table = table.with(property, by * strength, Provenance.STATED);
        }
        Ply.Form form = kind.equals("fab") ? Ply.Form.CLOTH : Ply.Form.UNIDIRECTIONAL;
        return new Layer(
                new Ply(card.name(), "", form, table, elasticity), number(row, kind + "_t_m"), Math.toRadians(degrees));
    }

    /** The card that lends a ply its strengths: of tapes the kind of fibre by their modulus, of cloths the weave by their thickness. */
    private static String ply(String kind, Map<String, String> row) {
        double one = number(row, kind + "_E1_Pa");
        if (kind.equals("fab")) {
            return number(row, "fab_t_m") > 0.35e-3 ? "8hs-t650-976" : "pw-t650-976";
        }
        return one > 300e9 ? "ud-m55j-epoxy" : one > 190e9 ? "ud-m46j-epoxy" : one > 140e9 ? ACROSS : "ud-as4-8552";
    }

    /** The honeycomb nearest in density and stiffness: of aluminium, or of aramid where the set's is soft in shear. */
    private static Material core(Map<String, String> row) {
        double shear = number(row, "core_GL_Pa");
        double density = number(row, "core_rho_kg_m3");
        return LIBRARY.names().stream()
                .filter(n -> n.startsWith(shear > 100e6 ? "al-honeycomb" : "aramid-honeycomb"))
                .map(LIBRARY::get)
                .filter(m -> m.properties().has(Property.S13))
                .min(Comparator.comparingDouble(m -> Math.abs(
                                Math.log(m.elasticity().g13() / shear))
                        // One row's density is a thirtieth of any honeycomb's.
                        + (density < 10 ? 0 : Math.abs(Math.log(m.properties().require(Property.DENSITY) / density)))))
                .orElseThrow();
    }

    private static double number(Map<String, String> row, String key) {
        return Double.parseDouble(row.get(key));
    }

    private static List<Map<String, String>> rows(Path file) throws IOException {
        List<String> lines = Files.readAllLines(file);
        String[] keys = lines.get(1).split(",");
        List<Map<String, String>> result = new ArrayList<>();
        for (String line : lines.subList(2, lines.size())) {
            String[] cells = line.split(",", -1);
            Map<String, String> row = new HashMap<>();
            for (int c = 0; c < keys.length; c++) {
                row.put(keys[c], cells[c]);
            }
            result.add(row);
        }
        return result;
    }
}
