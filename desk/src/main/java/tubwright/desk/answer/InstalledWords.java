// SPDX-License-Identifier: Apache-2.0
package tubwright.desk.answer;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import tubwright.engine.response.InstalledAnswer;

/** What console and page say alike of a tub with everything bolted to it. */
public final class InstalledWords {
    /** What the series of springs is and is not. */
    public static final String SERIES =
            "Hub to hub: a couple through the hubs of one axle against those of the other, the"
                    + " body free, spring and damper units solid unless the design says how stiff. Springs in series: the twists"
                    + " of all add up, and each one's share is its share of the strain energy. No tyres, wheels, bearings or"
                    + " uprights, no bending of legs or rockers. On the finest mesh, not carried to size zero.";

    /** What the stiffness of a pick-up is. */
    public static final String PICK_UPS =
            "A force along the link at one pick-up over the movement of that point against"
                    + " the mean motion of the whole tub, which is free and resists by its mass: insert, skin beside it and the"
                    + " tub's own bending.";

    /** What is lost of alignment. */
    public static final String ALIGNMENT =
            "Change of the wheel's angles against the mean motion of the tub, by the give of"
                    + " tub, inserts and links, springs and dampers solid. Camber: top outward positive; toe: in positive.";

    private InstalledWords() {}

    /** A sentence where the masses of the model and the car's do not agree within 3 %; empty where they do. */
    public static Optional<String> massGap(InstalledAnswer answer) {
        InstalledAnswer.Masses m = answer.masses();
        double placed = m.tub() + m.bolted();
        if (!(Math.abs(placed - m.sprung()) > 0.03 * m.sprung())) {
            return Optional.empty();
        }
        return Optional.of(String.format(
                java.util.Locale.ROOT,
                "Tub and what is bolted on weigh %.0f kg, the car less its wheels %.0f kg: inertia acts on what is placed."
                        + " Put the rest under \"masses\".",
                placed,
                m.sprung()));
    }

    /** The worst change of each wheel over all cases: camber first, then toe, in the order of the wheels. */
    public static List<InstalledAnswer.Lost> worst(InstalledAnswer answer) {
        Map<String, InstalledAnswer.Lost> camber = new LinkedHashMap<>();
        Map<String, InstalledAnswer.Lost> toe = new LinkedHashMap<>();
        for (InstalledAnswer.Lost each : answer.alignment()) {
            camber.merge(each.wheel(), each, (a, b) -> Math.abs(b.camber()) > Math.abs(a.camber()) ? b : a);
            toe.merge(each.wheel(), each, (a, b) -> Math.abs(b.toe()) > Math.abs(a.toe()) ? b : a);
        }
        List<InstalledAnswer.Lost> rows = new ArrayList<>();
        camber.forEach((wheel, lost) -> {
            rows.add(lost);
            InstalledAnswer.Lost other = toe.get(wheel);
            if (!other.equals(lost)) {
                rows.add(other);
            }
        });
        return rows;
    }
}
