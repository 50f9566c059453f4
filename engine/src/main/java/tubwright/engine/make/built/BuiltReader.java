// SPDX-License-Identifier: Apache-2.0
package tubwright.engine.make.built;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.OptionalDouble;
import tubwright.engine.make.built.BuiltTub.Kind;
import tubwright.engine.make.data.DataException;
import tubwright.engine.quantity.Dimension;
import tubwright.engine.quantity.NearestName;
import tubwright.engine.quantity.QuantityException;
import tubwright.engine.quantity.Unit;

/**
 * Reads what a shop wrote down: comma-separated values (RFC 4180) with the headings of the form that comes with the pack, in
 * any order, units in round brackets. Columns the form does not have are a mistake; those it has and nobody filled may be
 * left out, but for {@code kind}.
 */
public final class BuiltReader {
    private static final List<String> WORDS =
            List.of("kind", "piece", "pattern", "material", "batch", "words", "released by", "issue", "date", "design");
    private static final Map<String, Dimension> NUMBERS = new LinkedHashMap<>();

    static {
        NUMBERS.put("planned mass", Dimension.MASS);
        NUMBERS.put("mass", Dimension.MASS);
        NUMBERS.put("planned areal mass", Dimension.AREAL_DENSITY);
        NUMBERS.put("areal mass", Dimension.AREAL_DENSITY);
        NUMBERS.put("planned thickness", Dimension.LENGTH);
        NUMBERS.put("thickness", Dimension.LENGTH);
    }

    private final String file;
    private final Map<String, Integer> columns = new LinkedHashMap<>();
    private final Map<String, Unit> units = new LinkedHashMap<>();

    private BuiltReader(String file) {
        this.file = file;
    }

    /**
     * Reads a file.
     *
     * @param file its name, for messages
     * @throws DataException naming file, line and column if it is not right
     */
    public static BuiltTub read(String file, String text) {
        return new BuiltReader(file).read(text.startsWith("\ufeff") ? text.substring(1) : text);
    }

    private BuiltTub read(String text) {
        List<BuiltTub.Line> lines = new ArrayList<>();
        String issue = "";
        String design = "";
        int number = 0;
        for (String row : text.split("\r\n|\n|\r", -1)) {
            number++;
            if (row.isBlank()) {
                continue;
            }
            List<String> cells = cells(row, number);
            if (columns.isEmpty()) {
                heads(cells, number);
            } else {
                if (cells.size() != columns.size()) {
                    throw fault(
                            number,
                            cells.size() + " cells under " + columns.size()
                                    + " headings; a comma inside words wants the words in quotes");
                }
                lines.add(line(cells, number));
                issue = issue.isEmpty() ? word(cells, "issue") : issue;
                design = design.isEmpty() ? word(cells, "design") : design;
            }
        }
        if (lines.isEmpty()) {
            throw new DataException(file + ": nothing stands in it; fill in the form that \"tubwright pack\" writes");
        }
        return new BuiltTub(file, lines, issue, design);
    }

    private void heads(List<String> cells, int number) {
        for (String cell : cells) {
            String head = cell.strip().toLowerCase(java.util.Locale.ROOT);
            int bracket = head.indexOf('(');
            String name = (bracket < 0 ? head : head.substring(0, bracket)).strip();
            Dimension dimension = NUMBERS.get(name);
            if (dimension == null && !WORDS.contains(name)) {
                List<String> known = new ArrayList<>(WORDS);
                known.addAll(NUMBERS.keySet());
                throw fault(
                        number,
                        "no column is called '" + name + "'"
                                + NearestName.of(name, known)
                                        .map(n -> "; did you mean '" + n + "'?")
                                        .orElse("; there are " + String.join(", ", known)));
            }
            if (columns.put(name, columns.size()) != null) {
                throw fault(number, "the column '" + name + "' is there twice");
            }
            if (dimension != null) {
                units.put(name, unit(cell, name, dimension, number));
            }
        }
        if (!columns.containsKey("kind")) {
            throw fault(number, "the column 'kind' is missing; the first line holds the headings of the form");
        }
    }

    private Unit unit(String cell, String name, Dimension dimension, int number) {
        int from = cell.indexOf('(');
        int to = cell.lastIndexOf(')');
        String usual = "'" + name + " (" + dimension.usualUnits().getFirst() + ")'";
        if (from < 0 || to < from) {
            throw fault(number, "the column '" + name + "' has no unit; write for instance " + usual);
        }
        try {
            Unit unit = Unit.of(cell.substring(from + 1, to));
            if (dimension.accepts(unit)) {
                return unit;
            }
            throw fault(number, "'" + unit + "' is no unit of " + dimension.words() + "; write for instance " + usual);
        } catch (QuantityException e) {
            throw fault(number, e.getMessage());
        }
    }

    private BuiltTub.Line line(List<String> cells, int number) {
        String word = word(cells, "kind");
        Kind kind = Arrays.stream(Kind.values())
                .filter(k -> k.word().equals(word.toLowerCase(java.util.Locale.ROOT)))
                .findFirst()
                .orElseThrow(() -> fault(
                        number,
                        "'" + word + "' is no kind of line; there are "
                                + String.join(
                                        ", ",
                                        Arrays.stream(Kind.values())
                                                .map(Kind::word)
                                                .toList())));
        return new BuiltTub.Line(
                number,
                kind,
                word(cells, "piece"),
                word(cells, "pattern"),
                word(cells, "material"),
                word(cells, "batch"),
                amount(cells, "planned mass", number),
                amount(cells, "mass", number),
                amount(cells, "planned areal mass", number),
                amount(cells, "areal mass", number),
                amount(cells, "planned thickness", number),
                amount(cells, "thickness", number),
                word(cells, "words"),
                word(cells, "released by"));
    }

    private String word(List<String> cells, String name) {
        Integer at = columns.get(name);
        return at == null ? "" : cells.get(at).strip();
    }

    private OptionalDouble amount(List<String> cells, String name, int number) {
        String cell = word(cells, name);
        if (cell.isEmpty()) {
            return OptionalDouble.empty();
        }
        double value;
        try {
            value = Double.parseDouble(cell);
        } catch (NumberFormatException e) {
            throw fault(number, "'" + cell + "' under '" + name + "' is no number; the unit stands in the heading");
        }
        if (!(value > 0) || Double.isInfinite(value)) {
            throw fault(
                    number,
                    "'" + cell + "' under '" + name + "': nothing weighs or measures that; leave the cell empty"
                            + " where nothing was measured");
        }
        return OptionalDouble.of(units.get(name).toSi(value));
    }

    private List<String> cells(String row, int number) {
        List<String> cells = new ArrayList<>();
        StringBuilder cell = new StringBuilder();
        boolean quoted = false;
        for (int i = 0; i < row.length(); i++) {
            char c = row.charAt(i);
            if (quoted && c == '"' && i + 1 < row.length() && row.charAt(i + 1) == '"') {
                cell.append('"');
                i++;
            } else if (c == '"') {
                quoted = !quoted;
            } else if (c == ',' && !quoted) {
                cells.add(cell.toString());
                cell.setLength(0);
            } else {
                cell.append(c);
            }
        }
        if (quoted) {
            throw fault(number, "a quote is opened and not closed");
        }
        cells.add(cell.toString());
        return cells;
    }

    private DataException fault(int number, String message) {
        return new DataException(file + ":" + number + ": " + message);
    }
}
