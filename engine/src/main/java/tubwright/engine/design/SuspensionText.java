// SPDX-License-Identifier: Apache-2.0
package tubwright.engine.design;

import java.util.Optional;
import tubwright.engine.design.text.Place;
import tubwright.engine.design.text.Says;

/** The links of the car as written. */
@Says("Links, rods and rockers of the right-hand side; the left is their mirror image.")
record SuspensionText(
        @Says("Front corners.") Optional<CornerText> front,
        @Says("Rear corners.") Optional<CornerText> rear,
        Place place) {}
