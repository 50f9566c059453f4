// SPDX-License-Identifier: Apache-2.0
package tubwright.engine.make.drape;

/**
 * How a net is laid.
 *
 * @param spacing distance between neighbouring crossings along either thread, m; the threads of the net stand for the
 *     many of the cloth
 * @param stop shear at which the net goes no further, rad, less than a right angle
 */
public record NetSettings(double spacing, double stop) {
    /** Nets are drawn up to here, well beyond any lock, so that what lies beyond a lock is seen and measured. */
    public static final double FURTHEST = Math.toRadians(75);

    public NetSettings {
        if (!(spacing > 0) || !Double.isFinite(spacing)) {
            throw new IllegalArgumentException("the net's spacing must be greater than zero, not " + spacing + " m");
        }
        if (!(stop > 0) || stop >= Math.PI / 2) {
            throw new IllegalArgumentException("a net must stop between 0 and 90 degrees of shear");
        }
    }

    /** A net of this spacing that goes on to {@link #FURTHEST}. */
    public static NetSettings of(double spacing) {
        return new NetSettings(spacing, FURTHEST);
    }
}
