// SPDX-License-Identifier: Apache-2.0
package tubwright.engine.load;

/**
 * A straight bar with a ball joint at either end, so that it carries force along its axis only.
 *
 * @param name as the designer calls it: "upper front leg"
 * @param inner end at the tub (or at the rocker), m, 3 numbers
 * @param outer end at the upright, m, 3 numbers
 */
public record Link(String name, double[] inner, double[] outer) {
    public Link {
        if (!(Vectors.length(Vectors.minus(outer, inner)) > 1e-6)) {
            throw new LoadException("the link '" + name + "' has no length", "give its two ends apart");
        }
    }

    /** Unit vector from the outer to the inner end: the force of a pulled link on the upright. */
    double[] inward() {
        return Vectors.unit(Vectors.minus(inner, outer));
    }
}
