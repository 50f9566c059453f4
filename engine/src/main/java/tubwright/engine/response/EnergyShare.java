// SPDX-License-Identifier: Apache-2.0
package tubwright.engine.response;

import tubwright.engine.structure.Part;

/**
 * Strain energy stored in one part under a case: where the flexibility lives.
 *
 * @param kind what the part is
 * @param name its name
 * @param energy J under the case's load
 * @param share of the whole, 0 to 1
 */
public record EnergyShare(Part.Kind kind, String name, double energy, double share) {}
