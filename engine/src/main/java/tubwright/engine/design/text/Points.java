// SPDX-License-Identifier: Apache-2.0
package tubwright.engine.design.text;

/**
 * Points in a plane that share the unit written after the last: {@code (0, 140) (130, 140) (150, 330) mm}.
 *
 * @param si two coordinates per point, m
 * @param places where each was read
 * @param place where the first was read
 */
public record Points(double[][] si, Place[] places, Place place) {}
