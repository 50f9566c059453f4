// SPDX-License-Identifier: Apache-2.0
package tubwright.desk.export;

import java.util.ArrayList;
import java.util.List;
import java.util.stream.Stream;

/**
 * A list that goes to a shop, written as comma-separated values (RFC 4180) or as a sheet of a workbook.
 *
 * @param name of the sheet
 * @param heads headings, with units where there are any
 * @param rows cells; those that read as plain numbers are numbers in a workbook
 */
record ListTable(String name, List<String> heads, List<List<String>> rows) {
    ListTable {
        heads = List.copyOf(heads);
        rows = rows.stream().map(List::copyOf).toList();
        int width = heads.size();
        if (rows.stream().anyMatch(r -> r.size() != width)) {
            throw new IllegalArgumentException("rows of '" + name + "' differ in length from its headings");
        }
    }

    /** With a column at the end that says the same in each row. */
    ListTable with(String head, String cell) {
        List<List<String>> longer = new ArrayList<>();
        rows.forEach(r -> longer.add(Stream.concat(r.stream(), Stream.of(cell)).toList()));
        return new ListTable(
                name, Stream.concat(heads.stream(), Stream.of(head)).toList(), longer);
    }

    /** As comma-separated values. */
    String csv() {
        StringBuilder text = new StringBuilder();
        Stream.concat(Stream.of(heads), rows.stream())
                .forEach(r -> text.append(String.join(
                                ",", r.stream().map(ListTable::quoted).toList()))
                        .append("\r\n"));
        return text.toString();
    }

    private static String quoted(String cell) {
        return cell.matches("[^\",\r\n]*") ? cell : '"' + cell.replace("\"", "\"\"") + '"';
    }
}
