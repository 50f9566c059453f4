// SPDX-License-Identifier: Apache-2.0
package tubwright.engine.quantity;

import java.util.Arrays;
import java.util.List;
import java.util.Optional;

/**
 * What a quantity measures, as the trade names it.
 *
 * <p>Two dimensions may share their base units (a moment and an energy are both N·m; a force per length and a spring
 * stiffness are both N/m). They are kept apart by name because a reader of a message must be told what is wanted.
 */
public enum Dimension {
    DIMENSIONLESS("number", 0, 0, 0, 0, 0, "1", "%"),
    LENGTH("length", 1, 0, 0, 0, 0, "mm", "m", "in"),
    AREA("area", 2, 0, 0, 0, 0, "m²", "mm²", "in²"),
    VOLUME("volume", 3, 0, 0, 0, 0, "l", "m³", "mm³", "in³"),
    SECOND_MOMENT_OF_AREA("second moment of area", 4, 0, 0, 0, 0, "mm⁴", "m⁴", "in⁴"),
    MASS("mass", 0, 1, 0, 0, 0, "kg", "g", "lb"),
    TIME("time", 0, 0, 1, 0, 0, "s", "min", "h"),
    FREQUENCY("frequency", 0, 0, -1, 0, 0, "Hz"),
    VELOCITY("velocity", 1, 0, -1, 0, 0, "m/s", "km/h", "mph"),
    ACCELERATION("acceleration", 1, 0, -2, 0, 0, "g0", "m/s²"),
    ANGLE("angle", 0, 0, 0, 0, 1, "deg", "rad"),
    ANGLE_PER_LENGTH("angle per length", -1, 0, 0, 0, 1, "deg/m", "rad/m"),
    CURVATURE("curvature", -1, 0, 0, 0, 0, "1/m"),
    TEMPERATURE("temperature", 0, 0, 0, 1, 0, "°C", "K", "°F"),
    TEMPERATURE_DIFFERENCE("temperature difference", 0, 0, 0, 1, 0, "K", "°C", "°F"),
    TEMPERATURE_RATE("temperature rate", 0, 0, -1, 1, 0, "K/min", "°F/min"),
    EXPANSION("thermal expansion", 0, 0, 0, -1, 0, "1e-6/K", "1/K", "1/°F"),
    MOISTURE_EXPANSION("moisture expansion (strain per mass fraction)", 0, 0, 0, 0, 0, "1"),
    FORCE("force", 1, 1, -2, 0, 0, "N", "kN", "lbf"),
    MOMENT("moment", 2, 1, -2, 0, 0, "N·m", "kN·m", "lbf·ft"),
    ENERGY("energy", 2, 1, -2, 0, 0, "J", "kJ"),
    POWER("power", 2, 1, -3, 0, 0, "W", "kW"),
    PRESSURE("stress, pressure or modulus", -1, 1, -2, 0, 0, "MPa", "GPa", "kPa", "psi", "ksi", "Msi"),
    DENSITY("density", -3, 1, 0, 0, 0, "kg/m³", "g/cm³", "lb/ft³", "lb/in³"),
    AREAL_DENSITY("mass per area", -2, 1, 0, 0, 0, "g/m²", "kg/m²", "oz/yd²"),
    LINEAR_DENSITY("mass per length", -1, 1, 0, 0, 0, "kg/m", "lb/ft"),
    FORCE_PER_LENGTH("force per length", 0, 1, -2, 0, 0, "N/mm", "N/m", "lbf/in"),
    MOMENT_PER_LENGTH("moment per length", 1, 1, -2, 0, 0, "N·m/m", "lbf·in/in"),
    STIFFNESS("stiffness", 0, 1, -2, 0, 0, "N/mm", "kN/mm", "N/m", "lbf/in"),
    STIFFNESS_PER_LENGTH("stiffness per length", -1, 1, -2, 0, 0, "N/mm/mm", "N/m/m"),
    TOUGHNESS("fracture toughness (energy per area)", 0, 1, -2, 0, 0, "J/m²", "kJ/m²", "N/mm", "lbf·in/in²"),
    FLEXIBILITY("flexibility", 0, -1, 2, 0, 0, "mm/N", "m/N", "in/lbf"),
    TORSIONAL_STIFFNESS("torsional stiffness", 2, 1, -2, 0, -1, "kN·m/deg", "N·m/deg", "N·m/rad", "lbf·ft/deg"),
    TORSIONAL_FLEXIBILITY("torsional flexibility", -2, -1, 2, 0, 1, "deg/kN/m", "rad/N/m"),
    TORSIONAL_RIGIDITY("torsional rigidity GJ (moment per angle per length)", 3, 1, -2, 0, -1, "kN·m²/deg", "N·m²/rad"),
    BENDING_RIGIDITY("bending rigidity EI", 3, 1, -2, 0, 0, "N·m²", "kN·m²", "lbf·in²"),
    MOMENT_OF_INERTIA("moment of inertia", 2, 1, 0, 0, 0, "kg·m²", "lb·ft²"),
    THERMAL_CONDUCTIVITY("thermal conductivity", 1, 1, -3, -1, 0, "W/m/K"),
    SPECIFIC_HEAT("specific heat", 2, 0, -2, -1, 0, "J/kg/K"),
    AREA_RATE("area per time", 2, 0, -1, 0, 0, "m²/min", "m²/s", "m²/h"),
    HEAT_TRANSFER("heat transfer coefficient", 0, 1, -3, -1, 0, "W/m²/K"),
    HEAT_OF_REACTION("heat of reaction per mass", 2, 0, -2, 0, 0, "kJ/kg", "J/kg"),
    SPECIFIC_ENERGY("energy per mass", 2, 0, -2, 0, 0, "kJ/kg", "J/kg"),
    RATE_CONSTANT("rate constant", 0, 0, -1, 0, 0, "1/s", "1/min"),
    ACTIVATION_ENERGY("activation energy", new Exponents(2, 1, -2, 0, 0, -1), "kJ/mol", "J/mol");

    private final String words;
    private final Exponents exponents;
    private final List<String> usualUnits;

    Dimension(String words, int length, int mass, int time, int temperature, int angle, String... usualUnits) {
        this(words, new Exponents(length, mass, time, temperature, angle), usualUnits);
    }

    Dimension(String words, Exponents exponents, String... usualUnits) {
        this.words = words;
        this.exponents = exponents;
        this.usualUnits = List.of(usualUnits);
    }

    /** The name a message uses, for instance {@code torsional stiffness}. */
    public String words() {
        return words;
    }

    /** The name with its article: {@code a length}, {@code an acceleration}. */
    public String withArticle() {
        return ("aeiou".indexOf(words.charAt(0)) >= 0 ? "an " : "a ") + words;
    }

    /** Units a designer would use, the preferred one first; each is readable by {@link Unit#of(String)}. */
    public List<String> usualUnits() {
        return usualUnits;
    }

    Exponents exponents() {
        return exponents;
    }

    /** True if a number in the unit can stand for this dimension (same base units). */
    public boolean accepts(Unit unit) {
        return exponents.equals(unit.exponents());
    }

    /** First dimension in declaration order with these base units. */
    static Optional<Dimension> firstWith(Exponents exponents) {
        return Arrays.stream(values())
                .filter(d -> d.exponents.equals(exponents))
                .findFirst();
    }
}
