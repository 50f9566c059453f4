// SPDX-License-Identifier: Apache-2.0
package tubwright.engine.load;

/**
 * A straight bar with a ball joint at either end, so that it carries force along its axis only.
 *
 * @param name as the designer calls it: "upper front leg"
 * @param inner end at the tub (or at the rocker), m, 3 numbers
 * @param outer end at the upright, m, 3 numbers
 * @param tube what it is made of
 */
public record Link(String name, double[] inner, double[] outer, LinkTube tube) {
    public Link {
        if (!(Vectors.length(Vectors.minus(outer, inner)) > 1e-6)) {
            throw new LoadException("the link '" + name + "' has no length", "give its two ends apart");
        }
    }

    /** A bar that does not stretch. */
    public Link(String name, double[] inner, double[] outer) {
        this(name, inner, outer, LinkTube.RIGID);
    }

    /** Length, m. */
    public double length() {
        return Vectors.length(Vectors.minus(outer, inner));
    }

    /** Stretch for each newton of tension, m/N. */
    public double flexibility() {
        return length() / tube.axialStiffness();
    }

    /** Unit vector from the outer to the inner end: the force of a pulled link on the upright. */
    public double[] inward() {
        return Vectors.unit(Vectors.minus(inner, outer));
    }

    /** Unit vector from its inner to its outer end. */
    public double[] direction() {
        return Vectors.times(-1, inward());
    }

    /** Its mirror image across the middle plane of the car under another name. */
    Link mirrored(String other) {
        return new Link(other, Vectors.mirrored(inner), Vectors.mirrored(outer), tube);
    }
}
