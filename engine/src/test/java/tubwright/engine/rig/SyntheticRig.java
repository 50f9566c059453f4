// SPDX-License-Identifier: Apache-2.0
package tubwright.engine.rig;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Random;

/** A rig of which everything is known: a tub of given stiffness, a soft held end, bodily motion, noise. */
final class SyntheticRig {
    static final double TUB = 12_000 * 180 / Math.PI;
    static final double[] STATIONS = {0.3, 0.9, 1.5, 2.4};

    double noise = 0;
    double heldTurn = 0.3;
    double bodily = 0.8e-3;
    double hysteresis = 0;
    double drift = 0;
    int cycles = 3;
    boolean back = true;
    String settings = "";
    /** Line of the table (from 0), gauge, m to add. */
    int slipRow = -1;

    String leave = "";
    /** Gauges whose columns stay empty. */
    List<String> unread = List.of();

    String exchange = "";
    String flip = "";
    /** By how much a gauge stands further to the right than the file says, m. */
    Map<String, Double> placed = Map.of();

    final Random random;

    SyntheticRig(long seed) {
        random = new Random(seed);
    }

    /** A test in the file's own words; torque up to 2000 N·m at the front, held at the rear. */
    String text() {
        StringBuilder text = new StringBuilder("test, tub only\nheld station, 2400 mm\nloaded station, 300 mm\n");
        text.append(settings);
        List<String> names = new ArrayList<>();
        for (int s = 0; s < STATIONS.length; s++) {
            for (String side : List.of("L", "R")) {
                String name = "g" + s + side;
                if (!name.equals(leave)) {
                    names.add(name);
                    text.append(String.format(
                            Locale.ROOT,
                            "gauge, %s, %.0f mm, z, %d mm, 0 mm%n",
                            name,
                            1000 * STATIONS[s],
                            side.equals("L") ? -500 : 500));
                }
            }
        }
        text.append("cycle, torque [N·m]");
        names.forEach(n -> text.append(", ").append(n).append(" [mm]"));
        text.append('\n');
        int row = 0;
        for (int c = 1; c <= cycles; c++) {
            double scale = Math.exp(drift * random.nextGaussian());
            for (int i = 0; i <= (back ? 16 : 8); i++) {
                double torque = 250 * (i <= 8 ? i : 16 - i);
                text.append(c).append(String.format(Locale.ROOT, ", %.1f", torque));
                for (String name : names) {
                    String read = name.equals(exchange + "L")
                            ? exchange + "R"
                            : name.equals(exchange + "R") ? exchange + "L" : name;
                    int s = read.charAt(1) - '0';
                    double y = read.endsWith("L") ? -0.5 : 0.5;
                    double share = (2.4 - STATIONS[s]) / 2.1;
                    double lag = i > 8 ? hysteresis : 0;
                    double angle = torque / TUB * scale * (share + heldTurn) + lag * share;
                    y += placed.getOrDefault(name, 0.0);
                    double value = bodily * torque / 2000 + y * angle + noise * random.nextGaussian();
                    if (row == slipRow && name.equals("g0R")) {
                        value += 5e-4;
                    }
                    if (name.equals(flip)) {
                        value = -value;
                    }
                    text.append(unread.contains(name) ? ", " : String.format(Locale.ROOT, ", %.6f", 1000 * value));
                }
                text.append('\n');
                row++;
            }
        }
        return text.toString();
    }

    TorsionReading reduce() {
        return TorsionReduction.of(ReadingsReader.read("test.csv", text()), false);
    }
}
