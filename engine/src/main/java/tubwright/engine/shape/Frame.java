// SPDX-License-Identifier: Apache-2.0
package tubwright.engine.shape;

import java.util.List;

/**
 * A closed cross-section of the tub at a station, given by the corners of its right half from bottom centre to top
 * centre; the left half is its mirror image. The first and the last corner lie on the centreline, where a radius rounds
 * keel or ridge.
 *
 * @param x station, m aft of the design datum
 * @param corners at least 3, the same number in every frame
 */
public record Frame(double x, List<OutlineCorner> corners) {
    public Frame {
        corners = List.copyOf(corners);
    }
}
