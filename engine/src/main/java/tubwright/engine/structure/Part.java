// SPDX-License-Identifier: Apache-2.0
package tubwright.engine.structure;

/**
 * Something that stores strain energy under its own name.
 *
 * @param kind what it is
 * @param name its name
 */
public record Part(Kind kind, String name) {
    /** Kinds of part. */
    public enum Kind {
        /** Skin of one laminate. */
        ZONE,
        WALL,
        JOINT,
        HARDPOINT,
        STIFFENER,
        /** A tube bolted on. */
        TUBE,
        /** An engine or other body bolted on. */
        BODY
    }
}
