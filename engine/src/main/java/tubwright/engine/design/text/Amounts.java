// SPDX-License-Identifier: Apache-2.0
package tubwright.engine.design.text;

/**
 * Several quantities that share the unit written after the last: {@code 0, 40, 40, 0 mm}.
 *
 * @param si their values in SI units
 * @param places where each was read
 * @param place where the first was read
 */
public record Amounts(double[] si, Place[] places, Place place) {}
