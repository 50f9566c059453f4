// SPDX-License-Identifier: Apache-2.0
package tubwright.engine.strength;

import java.util.List;
import java.util.Optional;
import tubwright.engine.material.Adhesive;
import tubwright.engine.material.Core;
import tubwright.engine.material.Material;
import tubwright.engine.material.Metal;
import tubwright.engine.material.Ply;
import tubwright.engine.material.Property;

/** The ply criteria to choose from, each with the usual choices where it leaves one. */
public enum Criterion {
    MAXIMUM_STRESS("maximum stress"),
    MAXIMUM_STRAIN("maximum strain"),
    TSAI_HILL("Tsai-Hill"),
    MODIFIED_TSAI_HILL("modified Tsai-Hill"),
    TSAI_WU("Tsai-Wu"),
    HASHIN("Hashin"),
    PUCK("Puck");

    /** Plies at least this stiff along the fibres take Puck's slopes for carbon, softer ones those for glass, Pa. */
    private static final double CARBON_FROM = 70e9;

    private final String words;

    Criterion(String words) {
        this.words = words;
    }

    /** In words. */
    public String words() {
        return words;
    }

    /** Whether it may be used where both directions are fibres. */
    public boolean holdsForCloth() {
        return this != HASHIN && this != PUCK;
    }

    /** With the strengths of a material after a knock-down. */
    public PreparedCriterion prepare(Material material, KnockDown knockDown) {
        return prepare(material, knockDown, Optional.empty());
    }

    /**
     * With the strengths of a material after a knock-down.
     *
     * <p>A metal is checked for yield whichever criterion is chosen. Hashin and Puck do not hold for cloth and say so.
     *
     * @param inSitu strengths of the embedded ply in place of YT and S12 (before the knock-down)
     */
    public PreparedCriterion prepare(Material material, KnockDown knockDown, Optional<InSituStrengths> inSitu) {
        return switch (material) {
            case Metal metal -> metal(metal);
            case Core _ -> notChecked(material, "the sandwich checks: a core is no ply");
            case Adhesive _ -> notChecked(material, "the joint checks: an adhesive is no ply");
            case Ply ply -> ply(ply, knockDown, inSitu);
        };
    }

    private PreparedCriterion ply(Ply ply, KnockDown knockDown, Optional<InSituStrengths> inSitu) {
        Optional<PlyStrengths> known = PlyStrengths.of(ply);
        if (known.isEmpty()) {
            return new Check.NotChecked(title(ply), PlyStrengths.missing(ply));
        }
        PlyStrengths whole = inSitu.map(s -> known.get().withInSitu(s.transverseTension(), s.shear()))
                .orElse(known.get());
        PlyStrengths s = whole.reducedBy(knockDown);
        if (s.woven() && !holdsForCloth()) {
            return notChecked(ply, "a criterion for cloth (maximum stress, maximum strain, Tsai-Wu)");
        }
        return switch (this) {
            case MAXIMUM_STRESS -> MaximumStress.of(s);
            case MAXIMUM_STRAIN ->
                MaximumStrain.of(
                        StrainLimits.linear(
                                s,
                                ply.elasticity(),
                                ply.properties().si(Property.E1C),
                                ply.properties().si(Property.E2C)),
                        ply.elasticity(),
                        s.woven());
            case TSAI_HILL -> TsaiHill.plain(s);
            case MODIFIED_TSAI_HILL -> TsaiHill.modified(s);
            case TSAI_WU -> TsaiWu.of(s, TsaiWu.USUAL_INTERACTION);
            case HASHIN -> Hashin.of(s);
            case PUCK -> Puck.of(s, ply.elasticity().e1() >= CARBON_FROM ? PuckSlopes.CARBON : PuckSlopes.GLASS);
        };
    }

    private PreparedCriterion metal(Metal metal) {
        var yield = metal.properties().si(Property.TENSILE_YIELD);
        if (yield.isEmpty()) {
            return notChecked(metal, "tensile yield of " + metal.name());
        }
        return VonMises.of(Math.min(
                yield.getAsDouble(),
                metal.properties().si(Property.COMPRESSIVE_YIELD).orElse(Double.POSITIVE_INFINITY)));
    }

    private Check.NotChecked notChecked(Material material, String need) {
        return new Check.NotChecked(title(material), List.of(need));
    }

    private String title(Material material) {
        return words + " of " + material.name();
    }
}
