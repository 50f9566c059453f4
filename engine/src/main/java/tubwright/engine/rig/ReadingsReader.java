// SPDX-License-Identifier: Apache-2.0
package tubwright.engine.rig;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.Set;
import tubwright.engine.quantity.Dimension;
import tubwright.engine.quantity.NearestName;
import tubwright.engine.quantity.Unit;
import tubwright.engine.rig.DataText.Line;

/**
 * Reads a file of torsion readings: settings and gauges one a line, then a table. The form is told in
 * docs/how-to/read-a-torsion-test.md. Everything wrong is told at once.
 */
public final class ReadingsReader {
    private static final List<String> SETTINGS = List.of(
            "test",
            "held station",
            "loaded station",
            "arm",
            "torque uncertainty",
            "gauge spacing uncertainty",
            "gauge resolution",
            "rig stiffness",
            "dummy test",
            "mass",
            "wheel-rate torsion",
            "wanted share",
            "gauge");
    private static final int FEWEST_STEPS = 4;

    private final DataText file;
    private final Map<String, Line> settings = new HashMap<>();
    private final List<Gauge> gauges = new ArrayList<>();
    private final List<Step> steps = new ArrayList<>();
    private List<Column> columns = List.of();
    /** Gauges whose declaration was at fault, told already. */
    private final Set<String> refused = new HashSet<>();

    private int headerLine;

    private sealed interface Column {
        record Cycle() implements Column {}

        record Torque(Unit unit) implements Column {}

        record Load(Unit unit) implements Column {}

        record Reading(int gauge, Unit unit) implements Column {}

        /** Kept in the file, not used here. */
        record Remark() implements Column {}
    }

    private ReadingsReader(DataText file) {
        this.file = file;
    }

    /**
     * Reads the text of a file.
     *
     * @param source its name, for messages
     * @throws ReadingsException with everything that is wrong
     */
    public static Readings read(String source, String text) {
        return new ReadingsReader(new DataText(source, text)).read();
    }

    private Readings read() {
        List<Line> lines = file.lines();
        if (lines.isEmpty()) {
            throw new ReadingsException(file.source() + ": the file holds no readings");
        }
        int i = 0;
        while (i < lines.size() && !isHeader(lines.get(i))) {
            setting(lines.get(i++));
        }
        if (i == lines.size()) {
            file.fault(
                    lines.getLast().number(),
                    "the table of readings is missing: a line such as \"cycle, torque [N·m], front right [mm], ...\" and"
                            + " the readings below it");
            file.check();
        }
        header(lines.get(i++));
        OptionalDouble arm = settings.containsKey("arm")
                ? file.size(settings.get("arm"), 1, Dimension.LENGTH, "arm")
                : OptionalDouble.empty();
        boolean loads = columns.stream().anyMatch(Column.Load.class::isInstance);
        if (loads && arm.isEmpty() && !settings.containsKey("arm")) {
            file.fault(headerLine, "the table gives a load: say its arm, for instance \"arm, 600 mm\"");
        }
        boolean torques = columns.stream().anyMatch(Column.Torque.class::isInstance);
        if (!loads && !torques && lines.get(i - 1).cells().stream().noneMatch(ReadingsReader::saysLoad)) {
            file.fault(
                    headerLine,
                    "no column says the load: \"torque [N·m]\", or \"load [N]\" with a line \"arm, 600 mm\"");
        }
        if (file.sound()) {
            for (; i < lines.size(); i++) {
                row(lines.get(i), arm.orElse(0));
            }
            if (!file.sound()) {
                // What is said of steps below would only follow from the cells already at fault.
                file.check();
            } else if (steps.size() < FEWEST_STEPS) {
                file.fault(
                        lines.getLast().number(),
                        steps.size() + " load steps are too few: a slope, a zero and their scatter need at least "
                                + FEWEST_STEPS);
            } else if (steps.stream().map(Step::cycle).distinct().count() > steps.size() / 3) {
                file.fault(
                        headerLine,
                        steps.stream().map(Step::cycle).distinct().count() + " cycles in " + steps.size()
                                + " load steps are too many: \"cycle\" counts how often the load went up and down again,"
                                + " not the steps; each cycle needs 3 steps or more");
            } else if (steps.stream().mapToDouble(Step::torque).distinct().count() < 3) {
                file.fault(
                        headerLine,
                        "fewer than three different torques: nothing can be said about straightness or scatter");
            }
        }
        Setup setup = new SetupReader(file, settings).read();
        file.check();
        return new Readings(file.source(), setup, gauges, steps);
    }

    private static boolean saysLoad(String cell) {
        String name = cell.toLowerCase(Locale.ROOT);
        return name.startsWith("torque") || name.startsWith("load");
    }

    private static boolean isHeader(Line line) {
        return line.cells().stream().anyMatch(c -> c.endsWith("]") && c.contains("["))
                || line.cells().getFirst().equalsIgnoreCase("cycle");
    }

    private void setting(Line line) {
        if (line.cell(0).equalsIgnoreCase("gauge")) {
            gauge(line);
        } else {
            file.setting(line, SETTINGS, settings);
        }
    }

    private void gauge(Line line) {
        String name = line.cell(1);
        Optional<Gauge.Sense> sense = switch (line.cell(3).toLowerCase(Locale.ROOT)) {
            case "y" -> Optional.of(Gauge.Sense.Y);
            case "z" -> Optional.of(Gauge.Sense.Z);
            case "angle" -> Optional.of(Gauge.Sense.ANGLE);
            default -> Optional.empty();
        };
        if (name.isEmpty() || sense.isEmpty()) {
            refused.add(name.toLowerCase(Locale.ROOT));
            file.fault(
                    line.number(),
                    "a gauge is written \"gauge, name, station, y or z or angle, y place, z place\", for instance"
                            + " \"gauge, front right, 300 mm, z, 600 mm, 0 mm\"");
            return;
        }
        if (gauges.stream().anyMatch(g -> g.name().equalsIgnoreCase(name))) {
            file.fault(line.number(), "there are two gauges \"" + name + "\"");
            return;
        }
        double station = file.value(line, 2, Dimension.LENGTH, "station").orElse(0);
        boolean angle = sense.get() == Gauge.Sense.ANGLE;
        double y = angle ? 0 : file.value(line, 4, Dimension.LENGTH, "y place").orElse(0);
        double z = angle || line.cell(5).isEmpty()
                ? 0
                : file.value(line, 5, Dimension.LENGTH, "z place").orElse(0);
        gauges.add(new Gauge(name, station, sense.get(), y, z, line.number()));
    }

    private void header(Line line) {
        headerLine = line.number();
        List<Column> result = new ArrayList<>();
        Set<String> seen = new HashSet<>();
        Set<Integer> read = new HashSet<>();
        for (String cell : line.cells()) {
            int bracket = cell.indexOf('[');
            String name = (bracket < 0 ? cell : cell.substring(0, bracket)).strip();
            String unit = bracket < 0
                    ? ""
                    : cell.substring(bracket + 1).replace("]", "").strip();
            if (!seen.add(name.toLowerCase(Locale.ROOT))) {
                file.fault(headerLine, "there are two columns \"" + name + "\"");
            }
            result.add(column(name, unit, read));
        }
        for (int g = 0; g < gauges.size(); g++) {
            if (!read.contains(g)) {
                file.fault(
                        headerLine,
                        "no column for the gauge \"" + gauges.get(g).name() + "\" of line "
                                + gauges.get(g).line());
            }
        }
        if (gauges.isEmpty() && refused.isEmpty()) {
            file.fault(headerLine, "no gauge is declared above the table");
        }
        columns = result;
    }

    private Column column(String name, String unit, Set<Integer> read) {
        switch (name.toLowerCase(Locale.ROOT)) {
            case "cycle":
                return new Column.Cycle();
            case "note", "remark", "":
                return new Column.Remark();
            case "torque":
                return file.unit(headerLine, name, unit, Dimension.MOMENT)
                        .<Column>map(Column.Torque::new)
                        .orElseGet(Column.Remark::new);
            case "load":
                return file.unit(headerLine, name, unit, Dimension.FORCE)
                        .<Column>map(Column.Load::new)
                        .orElseGet(Column.Remark::new);
            default:
        }
        for (int g = 0; g < gauges.size(); g++) {
            Gauge gauge = gauges.get(g);
            if (gauge.name().equalsIgnoreCase(name)) {
                read.add(g);
                int index = g;
                Dimension wanted = gauge.sense() == Gauge.Sense.ANGLE ? Dimension.ANGLE : Dimension.LENGTH;
                return file.unit(headerLine, name, unit, wanted)
                        .<Column>map(u -> new Column.Reading(index, u))
                        .orElseGet(Column.Remark::new);
            }
        }
        if (refused.contains(name.toLowerCase(Locale.ROOT))) {
            return new Column.Remark();
        }
        List<String> known = new ArrayList<>(List.of("cycle", "torque", "load", "note"));
        gauges.forEach(g -> known.add(g.name()));
        file.fault(
                headerLine,
                "the column \"" + name + "\" belongs to no gauge"
                        + NearestName.of(name, known)
                                .map(n -> "; did you mean \"" + n + "\"?")
                                .orElse("; declare it above the table, or call it \"note\""));
        return new Column.Remark();
    }

    private void row(Line line, double arm) {
        if (line.cells().size() != columns.size()) {
            file.fault(
                    line.number(),
                    line.cells().size() + " values stand below " + columns.size() + " columns"
                            + (line.cells().size() > 1.5 * columns.size()
                                    ? "; are there decimal commas? Write points"
                                    : ""));
            return;
        }
        int cycle = 1;
        double torque = Double.NaN;
        double[] readings = new double[gauges.size()];
        for (int c = 0; c < columns.size(); c++) {
            String text = line.cell(c);
            switch (columns.get(c)) {
                case Column.Cycle _ -> cycle = cycle(line, text);
                case Column.Torque(Unit unit) ->
                    torque = unit.toSi(file.number(line, text).orElse(0));
                case Column.Load(Unit unit) ->
                    torque = arm * unit.toSi(file.number(line, text).orElse(0));
                case Column.Reading(int gauge, Unit unit) ->
                    readings[gauge] = text.isEmpty()
                            ? Double.NaN
                            : unit.toSi(file.number(line, text).orElse(0));
                case Column.Remark _ -> {}
            }
        }
        boolean unloading = false;
        if (!steps.isEmpty() && steps.getLast().cycle() == cycle) {
            unloading = Math.abs(torque) < Math.abs(steps.getLast().torque());
        }
        steps.add(new Step(cycle, torque, readings, unloading, line.number()));
    }

    private int cycle(Line line, String text) {
        double number = file.number(line, text).orElse(1);
        if (number != Math.rint(number) || Math.abs(number) > 1e6) {
            file.fault(line.number(), "cycle " + text + " is no whole number");
        }
        return (int) number;
    }
}
