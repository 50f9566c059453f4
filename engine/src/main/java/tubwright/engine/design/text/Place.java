// SPDX-License-Identifier: Apache-2.0
package tubwright.engine.design.text;

/**
 * Where something was read.
 *
 * @param file as the user named it
 * @param line from 1; 0 means the file as a whole
 * @param column from 1
 */
public record Place(String file, int line, int column) {
    /** The file as a whole. */
    public static Place of(String file) {
        return new Place(file, 0, 0);
    }

    /** The place so many characters further on the same line. */
    public Place plus(int columns) {
        return new Place(file, line, column + columns);
    }

    /** {@code file:line:column}, as editors and terminals link it. */
    @Override
    public String toString() {
        return line == 0 ? file : file + ":" + line + ":" + column;
    }
}
