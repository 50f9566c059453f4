// SPDX-License-Identifier: Apache-2.0
package tubwright.engine.rig;

import java.util.ArrayList;
import java.util.Collection;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import tubwright.engine.quantity.Dimension;
import tubwright.engine.quantity.NearestName;
import tubwright.engine.quantity.Quantity;
import tubwright.engine.quantity.QuantityException;
import tubwright.engine.quantity.Unit;

/**
 * A file of test data as lines and cells: comma, semicolon or tab between cells, lines that begin with # are remarks.
 * Gathers everything that is wrong, each fault with its line, to be told at once.
 */
public final class DataText {
    /** Faults told at most: a whole column in the wrong form makes one a line. */
    private static final int MOST = 8;

    private final String source;
    private final List<Line> lines;
    private final List<String> faults = new ArrayList<>();

    /**
     * A line that is no remark.
     *
     * @param number in the file, from 1
     * @param cells without blanks and quotes around them
     */
    public record Line(int number, List<String> cells) {
        /** The cell of that place, or nothing. */
        public String cell(int i) {
            return i < cells.size() ? cells.get(i) : "";
        }
    }

    /**
     * Takes a file apart.
     *
     * @param source its name, for messages
     * @param text its content
     */
    public DataText(String source, String text) {
        this.source = source;
        this.lines = lines(text);
    }

    /** Name of the file. */
    public String source() {
        return source;
    }

    /** Its lines, remarks left out. */
    public List<Line> lines() {
        return lines;
    }

    /** Whether nothing is wrong so far. */
    public boolean sound() {
        return faults.isEmpty();
    }

    /** Tells what is wrong, if anything is. */
    public void check() {
        if (faults.size() > MOST + 1) {
            List<String> told = new ArrayList<>(faults.subList(0, MOST));
            told.add("and " + (faults.size() - MOST) + " more, the last in "
                    + faults.getLast().substring(0, faults.getLast().indexOf(": ")));
            throw new ReadingsException(told);
        }
        if (!faults.isEmpty()) {
            throw new ReadingsException(faults);
        }
    }

    /**
     * Takes in a line that states a setting; one that is unknown or was said before is a fault.
     *
     * @param line its first cell is the setting's name
     * @param known names there are
     * @param said settings so far, by name
     */
    public void setting(Line line, Collection<String> known, Map<String, Line> said) {
        String key = line.cell(0).toLowerCase(Locale.ROOT);
        if (!known.contains(key)) {
            fault(
                    line.number(),
                    "\"" + line.cell(0) + "\" is no setting"
                            + NearestName.of(key, known)
                                    .map(n -> "; did you mean \"" + n + "\"?")
                                    .orElse("; settings are: " + String.join(", ", known)));
        } else if (said.putIfAbsent(key, line) != null) {
            fault(
                    line.number(),
                    "\"" + key + "\" was already said in line " + said.get(key).number());
        }
    }

    /** Notes a fault. */
    public void fault(int line, String words) {
        String text = source + ":" + line + ": " + words;
        if (!faults.contains(text)) {
            faults.add(text);
        }
    }

    /** A quantity in a cell, in SI. */
    public OptionalDouble value(Line line, int cell, Dimension dimension, String what) {
        if (line.cell(cell).isEmpty()) {
            fault(line.number(), what + " is missing; units that fit: " + String.join(", ", dimension.usualUnits()));
            return OptionalDouble.empty();
        }
        try {
            return OptionalDouble.of(Quantity.parse(line.cell(cell), dimension).si());
        } catch (QuantityException e) {
            fault(line.number(), what + ": " + e.getMessage());
            return OptionalDouble.empty();
        }
    }

    /** A quantity greater than zero in a cell, in SI. */
    public OptionalDouble size(Line line, int cell, Dimension dimension, String what) {
        OptionalDouble value = value(line, cell, dimension, what);
        if (value.isPresent() && !(value.getAsDouble() > 0)) {
            fault(line.number(), what + " is " + line.cell(cell) + "; it must be greater than zero");
            return OptionalDouble.empty();
        }
        return value;
    }

    /** A bare number in a cell of the table. */
    public OptionalDouble number(Line line, String text) {
        if (text.isEmpty()) {
            fault(line.number(), "a cell is empty that needs a number: " + String.join(", ", line.cells()));
            return OptionalDouble.empty();
        }
        try {
            double value = Double.parseDouble(text.replace('\u2212', '-'));
            if (Double.isFinite(value)) {
                return OptionalDouble.of(value);
            }
        } catch (NumberFormatException e) {
            // Told below.
        }
        fault(
                line.number(),
                "\"" + text + "\" is not a number" + (text.contains(",") ? "; write a point for decimals" : ""));
        return OptionalDouble.empty();
    }

    /** The unit of a column. */
    public Optional<Unit> unit(int line, String column, String text, Dimension wanted) {
        if (text.isEmpty()) {
            fault(
                    line,
                    "the column \"" + column + "\" has no unit: write \"" + column + " ["
                            + wanted.usualUnits().getFirst() + "]\"");
            return Optional.empty();
        }
        try {
            Unit unit = Unit.of(text);
            if (!wanted.accepts(unit)) {
                fault(
                        line,
                        "the column \"" + column + "\" is in " + text + ", which is no unit of " + wanted.words()
                                + "; units that fit: " + String.join(", ", wanted.usualUnits()));
                return Optional.empty();
            }
            return Optional.of(unit);
        } catch (QuantityException e) {
            fault(line, "the column \"" + column + "\": " + e.getMessage());
            return Optional.empty();
        }
    }

    private static List<Line> lines(String text) {
        List<Line> result = new ArrayList<>();
        String[] raw = text.replace("\uFEFF", "").split("\\R", -1);
        String separator = ",";
        for (String each : raw) {
            String line = each.strip();
            if (!line.isEmpty() && !line.startsWith("#")) {
                separator = line.contains(";") ? ";" : line.contains("\t") ? "\t" : ",";
                break;
            }
        }
        for (int i = 0; i < raw.length; i++) {
            String line = raw[i].strip();
            if (line.isEmpty() || line.startsWith("#")) {
                continue;
            }
            List<String> cells = new ArrayList<>();
            for (String cell : line.split(separator, -1)) {
                cells.add(cell.strip().replaceAll("^\"|\"$", "").strip());
            }
            result.add(new Line(i + 1, cells));
        }
        return result;
    }
}
