// SPDX-License-Identifier: Apache-2.0
package tubwright.engine.material;

import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import tubwright.engine.quantity.Dimension;

/**
 * The properties a material may have. Directions: 1 along the fibres (warp) or along the honeycomb's ribbon, 2 across in
 * the plane, 3 through the thickness. Strengths are positive numbers.
 */
public enum Property {
    DENSITY("density", Dimension.DENSITY, Sign.POSITIVE, "mass per volume"),
    THICKNESS("thickness", Dimension.LENGTH, Sign.POSITIVE, "cured thickness of one ply, or of a bond line"),
    AREAL_MASS("areal mass", Dimension.AREAL_DENSITY, Sign.POSITIVE, "mass per area of one cured ply or film"),
    FIBRE_VOLUME_FRACTION("fibre volume fraction", Dimension.DIMENSIONLESS, Sign.FRACTION, "fibre volume over total"),
    CELL_SIZE("cell size", Dimension.LENGTH, Sign.POSITIVE, "distance across the flats of a honeycomb cell"),

    E1("E1", Dimension.PRESSURE, Sign.POSITIVE, "modulus along 1"),
    E2("E2", Dimension.PRESSURE, Sign.POSITIVE, "modulus along 2"),
    E3("E3", Dimension.PRESSURE, Sign.POSITIVE, "modulus through the thickness (a core's compression modulus)"),
    E1C("E1c", Dimension.PRESSURE, Sign.POSITIVE, "compression modulus along 1"),
    E2C("E2c", Dimension.PRESSURE, Sign.POSITIVE, "compression modulus along 2"),
    NU12("nu12", Dimension.DIMENSIONLESS, Sign.ANY, "Poisson's ratio: contraction along 2 under load along 1"),
    NU23("nu23", Dimension.DIMENSIONLESS, Sign.ANY, "Poisson's ratio: contraction along 3 under load along 2"),
    G12("G12", Dimension.PRESSURE, Sign.POSITIVE, "in-plane shear modulus"),
    G13("G13", Dimension.PRESSURE, Sign.POSITIVE, "transverse shear modulus 1-3 (a honeycomb's L direction)"),
    G23("G23", Dimension.PRESSURE, Sign.POSITIVE, "transverse shear modulus 2-3 (a honeycomb's W direction)"),

    XT("XT", Dimension.PRESSURE, Sign.POSITIVE, "tensile strength along 1 (a metal's ultimate)"),
    XC("XC", Dimension.PRESSURE, Sign.POSITIVE, "compressive strength along 1"),
    YT("YT", Dimension.PRESSURE, Sign.POSITIVE, "tensile strength along 2"),
    YC("YC", Dimension.PRESSURE, Sign.POSITIVE, "compressive strength along 2"),
    S12("S12", Dimension.PRESSURE, Sign.POSITIVE, "in-plane shear strength"),
    ZT("ZT", Dimension.PRESSURE, Sign.POSITIVE, "flatwise tensile strength through the thickness"),
    ZC("ZC", Dimension.PRESSURE, Sign.POSITIVE, "compressive (crushing) strength through the thickness"),
    S13("S13", Dimension.PRESSURE, Sign.POSITIVE, "transverse shear strength 1-3 (a honeycomb's L direction)"),
    S23("S23", Dimension.PRESSURE, Sign.POSITIVE, "transverse shear strength 2-3 (a honeycomb's W direction)"),
    TENSILE_YIELD("tensile yield", Dimension.PRESSURE, Sign.POSITIVE, "tensile yield strength (0.2 %)"),
    COMPRESSIVE_YIELD("compressive yield", Dimension.PRESSURE, Sign.POSITIVE, "compressive yield strength (0.2 %)"),
    BEARING_ULTIMATE("bearing ultimate", Dimension.PRESSURE, Sign.POSITIVE, "bearing strength at edge distance 2 d"),
    BEARING_YIELD("bearing yield", Dimension.PRESSURE, Sign.POSITIVE, "bearing yield strength at edge distance 2 d"),
    FORCED_CRIPPLING(
            "forced crippling",
            Dimension.PRESSURE,
            Sign.POSITIVE,
            "C of C k^(2/3) (tU/t)^(1/3), at which folds of buckled sheet cripple a bar on one side of it"),
    SHEAR_STRAIN_LIMIT("shear strain limit", Dimension.DIMENSIONLESS, Sign.POSITIVE, "total shear strain at failure"),
    GIC("GIc", Dimension.TOUGHNESS, Sign.POSITIVE, "fracture toughness, mode I"),
    GIIC(
            "GIIc",
            Dimension.TOUGHNESS,
            Sign.POSITIVE,
            "fracture toughness, mode II (a core's in shear, through its thickness)"),
    GFT("GfT", Dimension.TOUGHNESS, Sign.POSITIVE, "energy to break fibres in tension, per area of crack across them"),
    GFC(
            "GfC",
            Dimension.TOUGHNESS,
            Sign.POSITIVE,
            "energy to crush fibres in compression, per area of band across them"),

    ALPHA1("alpha1", Dimension.EXPANSION, Sign.ANY, "thermal expansion along 1"),
    ALPHA2("alpha2", Dimension.EXPANSION, Sign.ANY, "thermal expansion along 2"),
    BETA1("beta1", Dimension.MOISTURE_EXPANSION, Sign.ANY, "strain along 1 per mass fraction of moisture"),
    BETA2("beta2", Dimension.MOISTURE_EXPANSION, Sign.ANY, "strain along 2 per mass fraction of moisture"),
    STRESS_FREE_TEMPERATURE("stress-free temperature", Dimension.TEMPERATURE, Sign.POSITIVE, "no residual stress here"),

    SHEAR_WARNING("shear warning", Dimension.ANGLE, Sign.POSITIVE, "shear of a draped cloth from which it wants care"),
    LOCKING_ANGLE("locking angle", Dimension.ANGLE, Sign.POSITIVE, "shear at which a draped cloth locks and wrinkles"),
    STEERING_STRAIN("steering strain", Dimension.DIMENSIONLESS, Sign.POSITIVE, "edge strain a steered tape bears"),
    TAPE_WIDTH("tape width", Dimension.LENGTH, Sign.POSITIVE, "width in which tape is laid");

    /** Which numbers make sense. */
    private enum Sign {
        POSITIVE,
        FRACTION,
        ANY
    }

    private final String key;
    private final Dimension dimension;
    private final Sign sign;
    private final String meaning;

    Property(String key, Dimension dimension, Sign sign, String meaning) {
        this.key = key;
        this.dimension = dimension;
        this.sign = sign;
        this.meaning = meaning;
    }

    /** The word used in material files. */
    public String key() {
        return key;
    }

    /** What it measures. */
    public Dimension dimension() {
        return dimension;
    }

    /** One line for a reader. */
    public String meaning() {
        return meaning;
    }

    /** True for thicknesses, moduli and strengths, which must be greater than zero. */
    public boolean mustBePositive() {
        return sign != Sign.ANY;
    }

    /** Why a value cannot be right; empty if it can. */
    Optional<String> fault(double si) {
        if (!Double.isFinite(si)) {
            return Optional.of(key + " must be a finite number");
        }
        if (mustBePositive() && si <= 0) {
            return Optional.of(key + " (" + meaning + ") must be greater than zero");
        }
        if (sign == Sign.FRACTION && si >= 1) {
            return Optional.of(key + " must lie between 0 and 1");
        }
        return Optional.empty();
    }

    /** The property with this key. */
    public static Optional<Property> withKey(String key) {
        return Arrays.stream(values()).filter(p -> p.key.equals(key)).findFirst();
    }

    /** All keys, for suggestions. */
    public static List<String> keys() {
        return Arrays.stream(values()).map(Property::key).toList();
    }
}
