// SPDX-License-Identifier: Apache-2.0
package tubwright.engine.material;

/**
 * Where a value comes from.
 *
 * @param source publication, table and condition, or the rule by which the value was estimated
 * @param trust how far to trust it
 */
public record Provenance(String source, Trust trust) {
    /** For values a design file gives without saying where they come from. */
    public static final Provenance STATED = new Provenance("stated in the design", Trust.STATED);

    @Override
    public String toString() {
        return source + " [" + trust.mark() + "]";
    }
}
