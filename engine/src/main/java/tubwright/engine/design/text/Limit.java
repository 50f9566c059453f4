// SPDX-License-Identifier: Apache-2.0
package tubwright.engine.design.text;

/**
 * A bound: {@code at least 12 kN·m/deg}, {@code at most 30 kg}.
 *
 * @param atLeast true for a lower bound, false for an upper
 * @param si the bound in SI units
 * @param text as written
 * @param place where it was read
 */
public record Limit(boolean atLeast, double si, String text, Place place) {
    @Override
    public String toString() {
        return text;
    }
}
