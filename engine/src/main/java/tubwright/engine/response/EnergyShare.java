// SPDX-License-Identifier: Apache-2.0
package tubwright.engine.response;

/**
 * Strain energy stored in one part under a case: where the flexibility lives.
 *
 * @param kind what the part is
 * @param name its name
 * @param energy J under the case's load
 * @param share of the whole, 0 to 1
 */
public record EnergyShare(Kind kind, String name, double energy, double share) {
    /** Kinds of part that store energy. */
    public enum Kind {
        ZONE,
        WALL,
        JOINT,
        HARDPOINT,
        STIFFENER,
        SUPPORT
    }
}
