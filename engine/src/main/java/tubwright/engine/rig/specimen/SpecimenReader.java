// SPDX-License-Identifier: Apache-2.0
package tubwright.engine.rig.specimen;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import tubwright.engine.quantity.Dimension;
import tubwright.engine.quantity.NearestName;
import tubwright.engine.quantity.Unit;
import tubwright.engine.rig.DataText;
import tubwright.engine.rig.DataText.Line;
import tubwright.engine.rig.PanelBend.Spring;
import tubwright.engine.rig.ReadingsException;
import tubwright.engine.rig.specimen.SpecimenTest.Kind;

/**
 * Reads a file of specimen readings: settings and specimens one a line, then a table. The form is told in
 * docs/how-to/test-panels-and-coupons.md. Everything wrong is told at once.
 */
public final class SpecimenReader {
    private static final List<String> SETTINGS =
            List.of("test", "arrangement", "zone", "material", "rig stiffness", "specimen");

    /** No laminate of a tub stretches further; a rubber band does. */
    private static final double HIGHEST_STRAIN = 0.5;

    private final DataText file;
    private final Map<String, Line> settings = new LinkedHashMap<>();
    private final Map<String, Line> specimens = new LinkedHashMap<>();

    private SpecimenReader(DataText file) {
        this.file = file;
    }

    /**
     * Reads the text of a file.
     *
     * @param source its name, for messages
     * @throws ReadingsException with everything that is wrong
     */
    public static SpecimenTest read(String source, String text) {
        return new SpecimenReader(new DataText(source, text)).read();
    }

    private SpecimenTest read() {
        List<Line> lines = file.lines();
        if (lines.isEmpty()) {
            throw new ReadingsException(file.source() + ": the file holds no readings");
        }
        int i = 0;
        while (i < lines.size() && !isHeader(lines.get(i))) {
            setting(lines.get(i++));
        }
        Kind kind = kind(lines.getFirst());
        if (i == lines.size()) {
            file.fault(
                    lines.getLast().number(),
                    "the table of readings is missing: a line such as \"specimen, load [N], " + kind.movement() + " ["
                            + (kind == Kind.COUPON_TENSION ? "%" : "mm") + "]\" and the readings below it");
        }
        file.check();
        List<Curve> curves = table(lines, i, kind);
        Arrangement arrangement = arrangement();
        Optional<Spring> rig = rig();
        file.check();
        return new SpecimenTest(file.source(), kind, arrangement, word("zone"), word("material"), rig, curves);
    }

    private static boolean isHeader(Line line) {
        return line.cells().stream().anyMatch(c -> c.endsWith("]") && c.contains("["));
    }

    private void setting(Line line) {
        if (line.cell(0).equalsIgnoreCase("specimen")) {
            if (line.cell(1).isEmpty()) {
                file.fault(line.number(), "the specimen has no name");
            } else if (specimens.putIfAbsent(line.cell(1), line) != null) {
                file.fault(line.number(), "there are two specimens \"" + line.cell(1) + "\"");
            }
        } else {
            file.setting(line, SETTINGS, settings);
        }
    }

    private Kind kind(Line first) {
        Line said = settings.get("test");
        List<String> words = Arrays.stream(Kind.values()).map(Kind::word).toList();
        if (said == null) {
            file.fault(first.number(), "say what was tested: \"test, " + String.join("\", \"test, ", words) + "\"");
            return Kind.PANEL_BEND;
        }
        for (Kind each : Kind.values()) {
            if (each.word().equalsIgnoreCase(said.cell(1))) {
                return each;
            }
        }
        file.fault(
                said.number(), "\"" + said.cell(1) + "\" is no kind of test; there are: " + String.join(", ", words));
        return Kind.PANEL_BEND;
    }

    private Arrangement arrangement() {
        Line said = settings.get("arrangement");
        if (said == null) {
            return Arrangement.THREE_POINT;
        }
        for (Arrangement each : Arrangement.values()) {
            if (each.word().equalsIgnoreCase(said.cell(1))) {
                return each;
            }
        }
        file.fault(
                said.number(),
                "\"" + said.cell(1) + "\" is no arrangement; there are: "
                        + String.join(
                                ", ",
                                Arrays.stream(Arrangement.values())
                                        .map(Arrangement::word)
                                        .toList()));
        return Arrangement.THREE_POINT;
    }

    private Optional<Spring> rig() {
        Line said = settings.get("rig stiffness");
        if (said == null) {
            return Optional.empty();
        }
        OptionalDouble value = file.size(said, 1, Dimension.STIFFNESS, "rig stiffness");
        OptionalDouble error = said.cell(2).isEmpty()
                ? OptionalDouble.of(0)
                : file.value(said, 2, Dimension.STIFFNESS, "its standard uncertainty");
        return value.isPresent() && error.isPresent()
                ? Optional.of(new Spring(value.getAsDouble(), error.getAsDouble()))
                : Optional.empty();
    }

    private Optional<String> word(String key) {
        return Optional.ofNullable(settings.get(key)).map(l -> l.cell(1)).filter(w -> !w.isEmpty());
    }

    private List<Curve> table(List<Line> lines, int at, Kind kind) {
        Line header = lines.get(at);
        int specimen = -1;
        int load = -1;
        int movement = -1;
        Unit loadUnit = Unit.of("N");
        Unit movementUnit = kind == Kind.COUPON_TENSION ? Unit.of("%") : Unit.of("mm");
        for (int c = 0; c < header.cells().size(); c++) {
            String cell = header.cell(c);
            int bracket = cell.indexOf('[');
            String name =
                    (bracket < 0 ? cell : cell.substring(0, bracket)).strip().toLowerCase(Locale.ROOT);
            String unit = bracket < 0
                    ? ""
                    : cell.substring(bracket + 1).replace("]", "").strip();
            if (name.equals("specimen")) {
                specimen = c;
            } else if (name.equals("load")) {
                load = c;
                loadUnit =
                        file.unit(header.number(), name, unit, Dimension.FORCE).orElse(loadUnit);
            } else if (name.equals(kind.movement())) {
                movement = c;
                Dimension wanted = kind == Kind.COUPON_TENSION ? Dimension.DIMENSIONLESS : Dimension.LENGTH;
                movementUnit = file.unit(header.number(), name, unit, wanted).orElse(movementUnit);
            } else if (!name.equals("note") && !name.isEmpty()) {
                file.fault(
                        header.number(),
                        "the column \"" + name + "\" is not known here; columns are specimen, load, " + kind.movement()
                                + ", note");
            }
        }
        if (specimen < 0 || load < 0 || movement < 0) {
            file.fault(
                    header.number(),
                    "the table needs the columns specimen, load and " + kind.movement() + "; missing: "
                            + String.join(
                                    ", ",
                                    java.util.stream.Stream.of(
                                                    specimen < 0 ? "specimen" : "",
                                                    load < 0 ? "load" : "",
                                                    movement < 0 ? kind.movement() : "")
                                            .filter(w -> !w.isEmpty())
                                            .toList()));
        }
        if (specimens.isEmpty()) {
            file.fault(
                    header.number(),
                    "no specimen is declared above the table: \"specimen, name, " + String.join(", ", kind.sizes())
                            + "\", each size with its unit");
        }
        file.check();
        Map<String, List<double[]>> rows = new LinkedHashMap<>();
        specimens.keySet().forEach(name -> rows.put(name, new ArrayList<>()));
        for (int r = at + 1; r < lines.size(); r++) {
            Line line = lines.get(r);
            String name = line.cell(specimen);
            if (!rows.containsKey(name)) {
                file.fault(
                        line.number(),
                        "there is no specimen \"" + name + "\""
                                + NearestName.of(name, specimens.keySet())
                                        .map(n -> "; did you mean \"" + n + "\"?")
                                        .orElse("; declare it above the table"));
                continue;
            }
            if (String.join(
                                    "",
                                    line.cells()
                                            .subList(
                                                    Math.min(
                                                            header.cells().size(),
                                                            line.cells().size()),
                                                    line.cells().size()))
                            .length()
                    > 0) {
                file.fault(
                        line.number(),
                        "the line has " + line.cells().size() + " cells under "
                                + header.cells().size()
                                + " columns; write a point for decimals, or part cells by semicolons");
                continue;
            }
            OptionalDouble force = file.number(line, line.cell(load));
            OptionalDouble moved = file.number(line, line.cell(movement));
            if (force.isPresent() && moved.isPresent()) {
                rows.get(name)
                        .add(new double[] {loadUnit.toSi(force.getAsDouble()), movementUnit.toSi(moved.getAsDouble())});
            }
        }
        return curves(rows, kind);
    }

    /** Faults that no single cell shows: a sign turned, columns exchanged, a strain in millionths, a gauge stuck. */
    private void plausible(Curve curve, int line, Kind kind) {
        String who = "specimen \"" + curve.name() + "\": ";
        double[] load = curve.load();
        double[] moved = curve.movement();
        if (load.length < 5) {
            return;
        }
        double most = Arrays.stream(load).max().orElse(0);
        double least = Arrays.stream(load).min().orElse(0);
        double far = Arrays.stream(moved).max().orElse(0);
        double near = Arrays.stream(moved).min().orElse(0);
        if (most == least) {
            file.fault(line, who + "the load never changes; were the columns exchanged?");
        } else if (far == near) {
            file.fault(line, who + "the " + kind.movement() + " never changes; was the gauge on it, and free to move?");
        } else if (most <= 0 || -least > most) {
            file.fault(line, who + "the load is negative; write the load that breaks the specimen as positive");
        } else if (-near > far) {
            file.fault(
                    line,
                    who + "the " + kind.movement() + " goes the other way than the load; turn its sign so that both"
                            + " grow together");
        } else if (kind == Kind.COUPON_TENSION && far > HIGHEST_STRAIN) {
            file.fault(
                    line,
                    who + "the strain reaches " + String.format(Locale.ROOT, "%.0f", 100 * far)
                            + " %, which no laminate bears; millionths are written as 1e-6 times the number under"
                            + " \"strain [1]\", or their ten-thousandth part under \"strain [%]\"");
        }
    }

    private List<Curve> curves(Map<String, List<double[]>> rows, Kind kind) {
        List<Curve> result = new ArrayList<>();
        specimens.forEach((name, line) -> {
            double[] sizes = new double[kind.sizes().size()];
            for (int s = 0; s < sizes.length; s++) {
                sizes[s] = file.size(line, 2 + s, Dimension.LENGTH, kind.sizes().get(s))
                        .orElse(1);
            }
            List<double[]> read = rows.get(name);
            if (read.size() < 5) {
                file.fault(
                        line.number(),
                        "specimen \"" + name + "\" has " + read.size() + (read.size() == 1 ? " reading" : " readings")
                                + "; at least 5 are needed");
            }
            result.add(new Curve(
                    name,
                    sizes,
                    read.stream().mapToDouble(r -> r[0]).toArray(),
                    read.stream().mapToDouble(r -> r[1]).toArray(),
                    file.source() + ":" + line.number()));
            plausible(result.getLast(), line.number(), kind);
        });
        return result;
    }
}
