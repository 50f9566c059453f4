// SPDX-License-Identifier: Apache-2.0
package tubwright.engine.make.cure;

import tubwright.engine.material.PropertyValue;
import tubwright.engine.material.Provenance;

/**
 * What a mould is made of.
 *
 * @param name by which it is asked for
 * @param description one line for a reader
 * @param properties for heat
 * @param heatFrom where they come from
 * @param expansion 1/K
 * @param thickness usual thickness of its wall, m
 */
public record Tool(
        String name,
        String description,
        HeatProperties properties,
        Provenance heatFrom,
        PropertyValue expansion,
        PropertyValue thickness) {}
