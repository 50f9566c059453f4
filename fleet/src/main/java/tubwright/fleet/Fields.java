// SPDX-License-Identifier: Apache-2.0
package tubwright.fleet;

import java.util.ArrayList;
import java.util.List;

/** Texts of any content on one line: separated by tabs; tabs, line ends and backslashes written as {@code \t \n \r \\}. */
final class Fields {
    private Fields() {}

    static String join(List<String> fields) {
        StringBuilder line = new StringBuilder();
        for (int i = 0; i < fields.size(); i++) {
            line.append(i == 0 ? "" : "\t");
            String field = fields.get(i);
            for (int c = 0; c < field.length(); c++) {
                switch (field.charAt(c)) {
                    case '\t' -> line.append("\\t");
                    case '\n' -> line.append("\\n");
                    case '\r' -> line.append("\\r");
                    case '\\' -> line.append("\\\\");
                    default -> line.append(field.charAt(c));
                }
            }
        }
        return line.toString();
    }

    /** @throws IllegalArgumentException where a backslash stands before something else */
    static List<String> split(String line) {
        List<String> fields = new ArrayList<>();
        for (String raw : line.split("\t", -1)) {
            StringBuilder field = new StringBuilder(raw.length());
            for (int c = 0; c < raw.length(); c++) {
                char letter = raw.charAt(c);
                if (letter != '\\') {
                    field.append(letter);
                    continue;
                }
                c++;
                field.append(
                        switch (c < raw.length() ? raw.charAt(c) : ' ') {
                            case 't' -> '\t';
                            case 'n' -> '\n';
                            case 'r' -> '\r';
                            case '\\' -> '\\';
                            default -> throw new IllegalArgumentException("not a line of fields: " + raw);
                        });
            }
            fields.add(field.toString());
        }
        return fields;
    }
}
