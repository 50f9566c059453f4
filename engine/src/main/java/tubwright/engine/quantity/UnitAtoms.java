// SPDX-License-Identifier: Apache-2.0
package tubwright.engine.quantity;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/**
 * The indivisible units and their prefixes.
 *
 * <p>Factors are exact by definition: the international yard and pound (1959: 1 in = 25.4 mm, 1 lb = 0.45359237 kg),
 * standard gravity 9.80665 m/s² (CGPM 1901), 1 °F = 5/9 K.
 */
final class UnitAtoms {
    /** An atom: SI value of one, offset of its zero in SI (temperatures only), base units, whether prefixes apply. */
    record Atom(double factor, double offset, Exponents exponents, boolean prefixable) {}

    private static final double INCH = 0.0254;
    private static final double POUND = 0.45359237;
    private static final double GRAVITY = 9.80665;
    private static final double POUND_FORCE = POUND * GRAVITY;

    private static final Map<String, Atom> ATOMS = new LinkedHashMap<>();
    private static final Map<String, Double> PREFIXES = new LinkedHashMap<>();

    static {
        Exponents number = Exponents.NONE;
        Exponents length = new Exponents(1, 0, 0, 0, 0);
        Exponents mass = new Exponents(0, 1, 0, 0, 0);
        Exponents time = new Exponents(0, 0, 1, 0, 0);
        Exponents temperature = new Exponents(0, 0, 0, 1, 0);
        Exponents angle = new Exponents(0, 0, 0, 0, 1);
        Exponents force = new Exponents(1, 1, -2, 0, 0);
        Exponents pressure = new Exponents(-1, 1, -2, 0, 0);
        Exponents energy = new Exponents(2, 1, -2, 0, 0);

        prefixed("m", 1, length);
        plain(INCH, length, "in", "inch", "\"");
        plain(12 * INCH, length, "ft", "foot");
        plain(36 * INCH, length, "yd");
        plain(5280 * 12 * INCH, length, "mi", "mile");
        plain(INCH / 1000, length, "mil", "thou");
        prefixed("g", 1e-3, mass);
        prefixed("t", 1e3, mass);
        plain(POUND, mass, "lb", "lbm");
        plain(POUND / 16, mass, "oz");
        prefixed("s", 1, time);
        plain(60, time, "min");
        plain(3600, time, "h", "hr");
        plain(86_400, time, "day", "days");
        plain(7 * 86_400, time, "week", "weeks");
        prefixed("Hz", 1, new Exponents(0, 0, -1, 0, 0));
        prefixed("K", 1, temperature);
        ATOMS.put("°C", new Atom(1, 273.15, temperature, false));
        ATOMS.put("degC", ATOMS.get("°C"));
        ATOMS.put("°F", new Atom(5.0 / 9.0, 459.67 * 5.0 / 9.0, temperature, false));
        ATOMS.put("degF", ATOMS.get("°F"));
        prefixed("rad", 1, angle);
        plain(Math.PI / 180, angle, "deg", "°", "degree", "degrees");
        prefixed("N", 1, force);
        plain(POUND_FORCE, force, "lbf");
        plain(1000 * POUND_FORCE, force, "kip", "kips");
        plain(GRAVITY, force, "kgf");
        prefixed("Pa", 1, pressure);
        prefixed("bar", 1e5, pressure);
        plain(POUND_FORCE / (INCH * INCH), pressure, "psi");
        plain(1e3 * POUND_FORCE / (INCH * INCH), pressure, "ksi");
        plain(1e6 * POUND_FORCE / (INCH * INCH), pressure, "Msi", "msi");
        prefixed("J", 1, energy);
        prefixed("mol", 1, new Exponents(0, 0, 0, 0, 0, 1));
        prefixed("W", 1, new Exponents(2, 1, -3, 0, 0));
        plain(GRAVITY, new Exponents(1, 0, -2, 0, 0), "g0", "gn");
        plain(5280 * 12 * INCH / 3600, new Exponents(1, 0, -1, 0, 0), "mph");
        plain(1e-3, new Exponents(-2, 1, 0, 0, 0), "gsm");
        plain(POUND / Math.pow(12 * INCH, 3), new Exponents(-3, 1, 0, 0, 0), "pcf");
        plain(1e-3, new Exponents(3, 0, 0, 0, 0), "l", "litre", "litres");
        plain(0.01, number, "%", "percent");
        plain(1e-6, number, "ppm", "µε", "microstrain");

        PREFIXES.put("G", 1e9);
        PREFIXES.put("M", 1e6);
        PREFIXES.put("k", 1e3);
        PREFIXES.put("d", 1e-1);
        PREFIXES.put("c", 1e-2);
        PREFIXES.put("m", 1e-3);
        PREFIXES.put("µ", 1e-6);
        PREFIXES.put("u", 1e-6);
        PREFIXES.put("n", 1e-9);
    }

    private UnitAtoms() {}

    private static void prefixed(String name, double factor, Exponents exponents) {
        ATOMS.put(name, new Atom(factor, 0, exponents, true));
    }

    private static void plain(double factor, Exponents exponents, String... names) {
        for (String name : names) {
            ATOMS.put(name, new Atom(factor, 0, exponents, false));
        }
    }

    /** An atom, bare or with one prefix. */
    static Optional<Atom> find(String name) {
        Atom bare = ATOMS.get(name);
        if (bare != null) {
            return Optional.of(bare);
        }
        for (var prefix : PREFIXES.entrySet()) {
            if (name.startsWith(prefix.getKey())) {
                Atom rest = ATOMS.get(name.substring(prefix.getKey().length()));
                if (rest != null && rest.prefixable()) {
                    return Optional.of(new Atom(prefix.getValue() * rest.factor(), 0, rest.exponents(), false));
                }
            }
        }
        return Optional.empty();
    }

    /** Every spelling that {@link #find} knows, for suggestions. */
    static List<String> spellings() {
        List<String> names = new ArrayList<>(ATOMS.keySet());
        for (var atom : ATOMS.entrySet()) {
            if (atom.getValue().prefixable()) {
                for (String prefix : List.of("k", "M", "G", "m", "c", "µ")) {
                    names.add(prefix + atom.getKey());
                }
            }
        }
        return names;
    }
}
