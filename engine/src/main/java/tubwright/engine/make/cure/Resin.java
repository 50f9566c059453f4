// SPDX-License-Identifier: Apache-2.0
package tubwright.engine.make.cure;

import java.util.Optional;
import tubwright.engine.material.PropertyValue;
import tubwright.engine.material.Provenance;

/**
 * A resin while it cures. What is not known is absent, never guessed: checks that need it say so.
 *
 * @param name by which plies name it
 * @param description one line for a reader
 * @param law how fast it cures
 * @param lawFrom where the law's constants come from
 * @param heat heat of reaction from α = 0 to 1, J/kg of resin
 * @param density kg/m³
 * @param specificHeat J/(kg K)
 * @param conductivity W/(m K)
 * @param start degree of cure as laid up
 * @param gel degree of cure at which it no longer flows
 * @param least degree of cure asked of a finished part
 * @param hottest temperature it may reach, K
 * @param glassTransition against degree of cure
 */
public record Resin(
        String name,
        String description,
        CureLaw law,
        Provenance lawFrom,
        PropertyValue heat,
        PropertyValue density,
        PropertyValue specificHeat,
        PropertyValue conductivity,
        PropertyValue start,
        Optional<PropertyValue> gel,
        Optional<PropertyValue> least,
        Optional<PropertyValue> hottest,
        Optional<GlassTransition> glassTransition) {}
