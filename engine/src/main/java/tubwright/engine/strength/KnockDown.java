// SPDX-License-Identifier: Apache-2.0
package tubwright.engine.strength;

import java.util.EnumMap;
import java.util.Map;
import tubwright.engine.material.Property;
import tubwright.engine.material.PropertyTable;
import tubwright.engine.material.PropertyValue;
import tubwright.engine.material.Provenance;
import tubwright.engine.material.Trust;

/**
 * Factors by which properties are reduced for one reason, with the source.
 *
 * @param name short, as printed beside a reserve factor
 * @param factors share that remains, by property; what is not named stays whole
 * @param provenance where the factors come from
 */
public record KnockDown(String name, Map<Property, Double> factors, Provenance provenance) {
    /** Nothing taken off. */
    public static final KnockDown NONE = new KnockDown("none", Map.of(), new Provenance("no knock-down", Trust.STATED));

    public KnockDown {
        EnumMap<Property, Double> copy = new EnumMap<>(Property.class);
        copy.putAll(factors);
        copy.forEach((property, factor) -> {
            if (!(factor > 0 && factor <= 2)) {
                throw new IllegalArgumentException("the knock-down '" + name + "' multiplies " + property.key() + " by "
                        + factor + "; a share that remains is wanted, greater than zero and usually below one");
            }
        });
        factors = java.util.Collections.unmodifiableMap(copy);
    }

    /** Share that remains of a property. */
    public double factor(Property property) {
        return factors.getOrDefault(property, 1.0);
    }

    /** This and another one after it. */
    public KnockDown and(KnockDown other) {
        if (factors.isEmpty()) {
            return other;
        }
        if (other.factors.isEmpty()) {
            return this;
        }
        EnumMap<Property, Double> both = new EnumMap<>(factors.isEmpty() ? other.factors : factors);
        other.factors.forEach((property, factor) -> both.merge(property, factor, (a, b) -> a * b));
        Trust weaker = provenance.trust().compareTo(other.provenance.trust()) > 0
                ? provenance.trust()
                : other.provenance.trust();
        return new KnockDown(
                name + " x " + other.name,
                both,
                new Provenance(provenance.source() + "; " + other.provenance.source(), weaker));
    }

    /** A table of properties with the factors applied; each changed value says so. */
    public PropertyTable applyTo(PropertyTable table) {
        PropertyTable reduced = table;
        for (Map.Entry<Property, Double> each : factors.entrySet()) {
            var value = reduced.find(each.getKey());
            if (value.isPresent()) {
                PropertyValue old = value.get();
                reduced = reduced.with(
                        each.getKey(),
                        old.si() * each.getValue(),
                        new Provenance(
                                old.provenance().source() + " x " + each.getValue() + " (" + name + ": "
                                        + provenance.source() + ")",
                                old.provenance().trust()));
            }
        }
        return reduced;
    }
}
