// SPDX-License-Identifier: Apache-2.0
package tubwright.engine.design.text;

/**
 * From here to there: {@code 950 .. 1650 mm}.
 *
 * @param from smaller end, SI
 * @param to larger end, SI
 * @param text as written
 * @param place where it was read
 */
public record Span(double from, double to, String text, Place place) {}
