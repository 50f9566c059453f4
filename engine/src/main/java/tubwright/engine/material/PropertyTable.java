// SPDX-License-Identifier: Apache-2.0
package tubwright.engine.material;

import java.util.Collections;
import java.util.EnumMap;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import tubwright.engine.quantity.Quantity;

/** An immutable table of properties with their provenance. */
public final class PropertyTable {
    /** Nothing known. */
    public static final PropertyTable EMPTY = new PropertyTable(Map.of());

    private final Map<Property, PropertyValue> values;

    /** Takes over the values; an impossible one (a negative modulus) is refused with {@link MaterialException}. */
    public PropertyTable(Map<Property, PropertyValue> values) {
        EnumMap<Property, PropertyValue> copy = new EnumMap<>(Property.class);
        copy.putAll(values);
        copy.forEach((property, value) -> property.fault(value.si()).ifPresent(fault -> {
            throw new MaterialException(fault + ", not " + value.si());
        }));
        this.values = Collections.unmodifiableMap(copy);
    }

    /** All values in the order of {@link Property}. */
    public Map<Property, PropertyValue> values() {
        return values;
    }

    /** True if the property is known. */
    public boolean has(Property property) {
        return values.containsKey(property);
    }

    /** The value with its provenance. */
    public Optional<PropertyValue> find(Property property) {
        return Optional.ofNullable(values.get(property));
    }

    /** The SI value. */
    public OptionalDouble si(Property property) {
        PropertyValue value = values.get(property);
        return value == null ? OptionalDouble.empty() : OptionalDouble.of(value.si());
    }

    /** The SI value of a property that must be there; {@link MaterialException} says which is missing. */
    public double require(Property property) {
        PropertyValue value = values.get(property);
        if (value == null) {
            throw new MaterialException(property.key() + " is missing (" + property.meaning() + ")");
        }
        return value.si();
    }

    /** The value as a quantity. */
    public Optional<Quantity> quantity(Property property) {
        return find(property).map(value -> new Quantity(value.si(), property.dimension()));
    }

    /** This table with one value set. */
    public PropertyTable with(Property property, double si, Provenance provenance) {
        EnumMap<Property, PropertyValue> copy = new EnumMap<>(Property.class);
        copy.putAll(values);
        copy.put(property, new PropertyValue(si, provenance));
        return new PropertyTable(copy);
    }

    /** This table with one value set where there is none yet. */
    PropertyTable withDefault(Property property, double si, String rule, Trust trust) {
        return has(property) ? this : with(property, si, new Provenance(rule, trust));
    }

    /** The least trustworthy mark in the table: the last in the order of {@link Trust} that occurs. */
    public Optional<Trust> weakestTrust() {
        return values.values().stream().map(v -> v.provenance().trust()).max(Enum::compareTo);
    }

    @Override
    public boolean equals(Object other) {
        return other instanceof PropertyTable table && values.equals(table.values);
    }

    @Override
    public int hashCode() {
        return values.hashCode();
    }

    @Override
    public String toString() {
        return values.toString();
    }
}
