// SPDX-License-Identifier: Apache-2.0
package tubwright.engine.design;

import java.util.List;
import java.util.Optional;
import tubwright.engine.design.text.Amount;
import tubwright.engine.design.text.In;
import tubwright.engine.design.text.InByKey;
import tubwright.engine.design.text.Name;
import tubwright.engine.design.text.Named;
import tubwright.engine.design.text.Otherwise;
import tubwright.engine.design.text.Place;
import tubwright.engine.design.text.Says;
import tubwright.engine.quantity.Dimension;

/** The strengths of load cases as written. */
@Says(
        "With which strengths load cases are judged. Each choice is a set of factors on the strengths of plies, measured on"
                + " one material and carried over: measured values of your own go before. Several multiply. Without this"
                + " section strengths are the materials' own, which are means unless they say otherwise.")
record StrengthText(
        @Says(
                "Criteria for plies: maximum stress, maximum strain, Tsai-Hill, modified Tsai-Hill, Tsai-Wu, Hashin, Puck. Left"
                        + " out: maximum stress, Tsai-Wu and Puck. Hashin and Puck are passed over for cloth.")
        List<Name> criteria,

        @Says("\"room temperature\", or \"hot wet\": saturated at 121 °C (IM7/8552, public qualification).")
        @Otherwise("room temperature")
        Environment environment,

        @Says("\"mean\", \"b basis\" or \"a basis\" (AS4/3502, MIL-HDBK-17-2F; A computed from B).") @Otherwise("mean")
        Scatter scatter,

        @Says("\"none\", or \"open hole\": 6.35 mm, in tension (Whitney and Nuismer 1974).") @Otherwise("none")
        Holes holes,

        @Says("\"none\", or \"barely visible\": a blow, in compression (AS4/8552, public qualification).")
        @Otherwise("none")
        Damage damage,

        @Says("Whether the tensile strength of tape is lowered to what tape was seen to bear inside laminates (0.77).")
        @Otherwise("no")
        boolean tapeInLaminates,

        @Says("Whether plies held between others take their in-situ strengths across the fibres and in shear.")
        @Otherwise("no")
        boolean inSitu,

        @Says(
                "Temperature at which the loads act; the stress left by the cure grows with its distance from the stress-free"
                        + " temperature.")
        @In(Dimension.TEMPERATURE)
        @Otherwise("20 °C")
        Amount serviceTemperature,

        @Says("Own factors by strength, each the share that remains: {XT: 0.85, S12: 0.9}.")
        @InByKey(StrengthFactors.class)
        List<Named<Amount>> factors,

        @Says("Where the own factors come from; needed with them.")
        Optional<String> factorsFrom,

        Place place) {

    /** Climates with known factors. */
    enum Environment {
        ROOM_TEMPERATURE,
        HOT_WET
    }

    /** What share of specimens is stronger: half, 90 % or 99 %. */
    enum Scatter {
        MEAN,
        B_BASIS,
        A_BASIS
    }

    /** Holes. */
    enum Holes {
        NONE,
        OPEN_HOLE
    }

    /** Damage. */
    enum Damage {
        NONE,
        BARELY_VISIBLE
    }
}
