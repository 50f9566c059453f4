// SPDX-License-Identifier: Apache-2.0
package tubwright.engine.load;

/**
 * What a link is made of.
 *
 * @param axialStiffness Young's modulus times section EA, N; infinity for a bar that does not stretch
 * @param bendingStiffness Young's modulus times second moment EI, N·m²; infinity for one that does not buckle
 * @param pullYield tension at which it yields, N; infinity where the metal has no such value
 * @param pushYield compression at which it yields, N
 */
public record LinkTube(double axialStiffness, double bendingStiffness, double pullYield, double pushYield) {
    /** A bar that neither stretches nor gives way. */
    public static final LinkTube RIGID = elastic(Double.POSITIVE_INFINITY);

    public LinkTube {
        if (!(axialStiffness > 0 && bendingStiffness > 0 && pullYield > 0 && pushYield > 0)) {
            throw new LoadException("a link's tube has no stiffness or strength", "give its size and metal");
        }
    }

    /** A bar that stretches, of unknown strength. */
    public static LinkTube elastic(double axialStiffness) {
        double none = Double.POSITIVE_INFINITY;
        return new LinkTube(axialStiffness, none, none, none);
    }

    /** Compression at which a bar of that length with ball joints buckles, N: π² EI/L² (Euler 1744). */
    public double buckling(double length) {
        return Math.PI * Math.PI * bendingStiffness / (length * length);
    }

    /**
     * Force it carries over the force it feels: by yield when pulled, by yield or buckling when pressed.
     *
     * @param tension N, compression negative
     * @param length between its joints, m
     */
    public double reserve(double tension, double length) {
        return tension >= 0 ? pullYield / tension : Math.min(pushYield, buckling(length)) / -tension;
    }
}
