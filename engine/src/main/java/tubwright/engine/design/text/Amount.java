// SPDX-License-Identifier: Apache-2.0
package tubwright.engine.design.text;

/**
 * A quantity as written.
 *
 * @param si its value in SI units
 * @param text as written
 * @param place where it was read
 */
public record Amount(double si, String text, Place place) {
    @Override
    public String toString() {
        return text;
    }
}
