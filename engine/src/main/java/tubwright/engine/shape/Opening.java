// SPDX-License-Identifier: Apache-2.0
package tubwright.engine.shape;

import java.util.List;

/**
 * An opening in the skin: cockpit, access hole. Its contour is drawn in a view and cut through the named strips.
 *
 * @param name unique among openings
 * @param strips one or several neighbouring strips it cuts; it must stay inside them
 * @param view {@link View#PLAN} (u = x, v = y) or {@link View#SIDE} (u = x, v = z)
 * @param side {@link Side#CENTRE} for one opening across the centreline (plan view only); otherwise the contour is drawn
 *     as the right-hand one (y positive in plan) and mirrored for the left
 * @param contour closed contour, m
 */
public record Opening(String name, List<String> strips, View view, Side side, Contour contour) {
    public Opening {
        strips = List.copyOf(strips);
    }
}
