// SPDX-License-Identifier: Apache-2.0
package tubwright.engine.material;

/**
 * One value of a material.
 *
 * @param si SI value
 * @param provenance where it comes from
 */
public record PropertyValue(double si, Provenance provenance) {}
