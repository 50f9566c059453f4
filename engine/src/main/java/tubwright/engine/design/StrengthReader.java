// SPDX-License-Identifier: Apache-2.0
package tubwright.engine.design;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import tubwright.engine.design.text.Amount;
import tubwright.engine.design.text.DesignError;
import tubwright.engine.design.text.Name;
import tubwright.engine.design.text.Named;
import tubwright.engine.material.Property;
import tubwright.engine.material.Provenance;
import tubwright.engine.material.Trust;
import tubwright.engine.strength.Check;
import tubwright.engine.strength.Criterion;
import tubwright.engine.strength.KnockDown;
import tubwright.engine.strength.KnockDowns;
import tubwright.engine.strength.StrengthBasis;

/** The choice of strengths of a design. */
final class StrengthReader {
    private StrengthReader() {}

    static StrengthBasis read(Optional<StrengthText> text) {
        return text.map(StrengthReader::read).orElse(StrengthBasis.USUAL);
    }

    private static StrengthBasis read(StrengthText text) {
        KnockDown all = KnockDown.NONE;
        List<Check.NotChecked> gaps = new ArrayList<>();
        if (text.environment() == StrengthText.Environment.HOT_WET) {
            all = all.and(KnockDowns.HOT_WET_121);
            gaps.add(new Check.NotChecked(
                    "cores, adhesives, metals and inserts hot and wet: their strengths are those of room temperature,",
                    List.of("strengths at that temperature, as materials of the design")));
        }
        all = switch (text.scatter()) {
            case MEAN -> all;
            case B_BASIS -> all.and(KnockDowns.B_BASIS_AS4);
            case A_BASIS -> all.and(KnockDowns.A_BASIS_AS4);
        };
        if (text.scatter() != StrengthText.Scatter.MEAN) {
            gaps.add(new Check.NotChecked(
                    "scatter of cores, adhesives and inserts: their strengths are as the materials give them,",
                    List.of("lower values as materials of the design")));
        }
        if (text.holes() == StrengthText.Holes.OPEN_HOLE) {
            all = all.and(KnockDowns.OPEN_HOLE);
        }
        if (text.damage() == StrengthText.Damage.BARELY_VISIBLE) {
            all = all.and(KnockDowns.BARELY_VISIBLE_DAMAGE);
        }
        if (text.tapeInLaminates()) {
            all = all.and(KnockDowns.TAPE_IN_LAMINATE);
        }
        if (!text.factors().isEmpty()) {
            all = all.and(own(text));
        }
        List<Criterion> criteria = text.criteria().stream()
                .map(StrengthReader::criterion)
                .distinct()
                .toList();
        return StrengthBasis.of(
                criteria.isEmpty() ? StrengthBasis.USUAL_CRITERIA : criteria,
                all,
                text.inSitu(),
                text.serviceTemperature().si(),
                gaps);
    }

    private static KnockDown own(StrengthText text) {
        String source = text.factorsFrom()
                .orElseThrow(() -> new DesignError(
                        text.factors().getFirst().name().place(),
                        "the factors do not say where they come from",
                        "write \"factors from: ...\" beside them: a test, a handbook, or your own judgement"));
        Map<Property, Double> factors = new EnumMap<>(Property.class);
        for (Named<Amount> each : text.factors()) {
            double share = each.value().si();
            if (share > 1) {
                throw new DesignError(
                        each.value().place(),
                        each.name() + ": " + each.value() + " would raise the strength",
                        "a share that remains, at most 1; a better material has a better value of its own");
            }
            factors.put(Property.withKey(each.name().text()).orElseThrow(), share);
        }
        return new KnockDown("own factors", factors, new Provenance(source, Trust.STATED));
    }

    private static Criterion criterion(Name name) {
        List<String> known =
                Arrays.stream(Criterion.values()).map(Criterion::words).toList();
        return Arrays.stream(Criterion.values())
                .filter(c -> c.words().equalsIgnoreCase(name.text()))
                .findFirst()
                .orElseThrow(() -> Names.unknown(name, known, "criterion"));
    }
}
