// SPDX-License-Identifier: Apache-2.0
package tubwright.engine.strength;

import static tubwright.engine.material.Property.*;

import java.util.List;
import java.util.Map;
import tubwright.engine.material.Provenance;
import tubwright.engine.material.Trust;

/**
 * Knock-downs with a source, to choose from. They were measured on one material each and are carried over to others at
 * the user's risk: a measured value of the material in use goes before.
 */
public final class KnockDowns {
    /** Hot and wet: 121 °C after saturation, 180 °C epoxy and intermediate-modulus carbon. */
    public static final KnockDown HOT_WET_121 = new KnockDown(
            "hot-wet 121 °C",
            Map.of(XT, 0.92, XC, 0.70, YT, 0.38, YC, 0.46, S12, 0.42, G12, 0.46, S13, 0.48),
            transcribed("IM7/8552, means at 250 °F wet over room temperature dry: NCP-RP-2009-028 Rev B table 3-3"));

    /** B-basis over mean of a tape whose plies scatter little. */
    public static final KnockDown B_BASIS_IM7 = new KnockDown(
            "B-basis (IM7/8552)",
            Map.of(XT, 0.89, YT, 0.82, YC, 0.88),
            transcribed("IM7/8552, room temperature: NCP-RP-2009-028 Rev B table 3-3; no value for XC and S12"));

    /** B-basis over mean of an older tape, all five strengths. */
    public static final KnockDown B_BASIS_AS4 = new KnockDown(
            "B-basis (AS4/3502)",
            Map.of(XT, 0.79, XC, 0.84, YT, 0.81, YC, 0.77, S12, 0.91),
            transcribed("AS4/3502, room temperature: MIL-HDBK-17-2F (2002) table 4.2.8"));

    /**
     * A-basis over mean, from {@link #B_BASIS_AS4} for a normal distribution of many tests: 1 − (2.326/1.282)(1 − B/mean), the
     * one-sided fractiles of 99 and 90 %.
     */
    public static final KnockDown A_BASIS_AS4 = new KnockDown(
            "A-basis (from B of AS4/3502)",
            Map.of(XT, 0.62, XC, 0.71, YT, 0.66, YC, 0.58, S12, 0.84),
            new Provenance(
                    "computed from MIL-HDBK-17-2F (2002) table 4.2.8, B-basis over mean, normal distribution",
                    Trust.COMPUTED));

    /** A quarter-inch hole, not filled, in a quasi-isotropic laminate under tension. */
    public static final KnockDown OPEN_HOLE = new KnockDown(
            "open hole 6.35 mm, tension",
            Map.of(XT, 0.56),
            new Provenance(
                    "Whitney and Nuismer 1974, point stress, quasi-isotropic, radius 3.175 mm, d0 from memory",
                    Trust.COMPUTED));

    /** Barely visible damage from a blow, compression. */
    public static final KnockDown BARELY_VISIBLE_DAMAGE = new KnockDown(
            "barely visible damage, compression",
            Map.of(XC, 0.31),
            transcribed(
                    "AS4/8552 quasi-isotropic, 4.5 mm, some 30 J, strength after impact 171 to 182 MPa over unnotched:"
                            + " CAM-RP-2010-002 section 2.3.31"));

    /** Tensile strength of a tape test used in a laminate of many directions. */
    public static final KnockDown TAPE_IN_LAMINATE = new KnockDown(
            "tape strength in a laminate, tension",
            Map.of(XT, 0.77),
            new Provenance(
                    "lowest of six measured over predicted laminate strengths (0.77 to 0.89), AS4/8552 and IM7/8552:"
                            + " CAM-RP-2010-002, CAM-RP-2009-015",
                    Trust.COMPUTED));

    private KnockDowns() {}

    /** All of them. */
    public static List<KnockDown> all() {
        return List.of(
                HOT_WET_121, B_BASIS_IM7, B_BASIS_AS4, A_BASIS_AS4, OPEN_HOLE, BARELY_VISIBLE_DAMAGE, TAPE_IN_LAMINATE);
    }

    private static Provenance transcribed(String source) {
        return new Provenance(source, Trust.TRANSCRIBED);
    }
}
