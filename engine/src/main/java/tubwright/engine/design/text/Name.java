// SPDX-License-Identifier: Apache-2.0
package tubwright.engine.design.text;

/**
 * A name as written, with its place: what it refers to is found later, and if nothing is found the place is told.
 *
 * @param text the name
 * @param place where it was read
 */
public record Name(String text, Place place) {
    @Override
    public String toString() {
        return text;
    }
}
