// SPDX-License-Identifier: Apache-2.0
package tubwright.engine.shape;

/**
 * The section of the skin at one station with its rate of change along x. Straight sides joined by true tangent arcs;
 * strip k runs from the middle of the arc at corner k to the middle of the arc at corner k+1 (at the centreline the
 * middle of keel and ridge).
 *
 * <p>Arrays are the section's own: read only.
 */
public final class Section {
    private double x;
    final int n;
    final double[] y;
    final double[] z;
    final double[] radius;
    final double[] yRate;
    final double[] zRate;
    final double[] radiusRate;
    /** Unit direction of side k and its rate. */
    final double[] dirY;

    final double[] dirZ;
    final double[] spin;
    final double[] chord;
    final double[] chordRate;
    /** Turn at corner k, positive where the outline is convex. */
    final double[] turn;

    final double[] turnRate;
    /** Distance from corner to tangent point. */
    final double[] tangent;

    final double[] tangentRate;
    /** Half the arc at corner k. */
    final double[] halfArc;

    final double[] halfArcRate;

    Section(LoftCurves curves, double x, int interval) {
        this(curves.width / 3);
        fill(curves, x, interval, 0, n - 1);
    }

    /** An empty holder for {@link #fill}. */
    Section(int corners) {
        n = corners;
        y = new double[n];
        z = new double[n];
        radius = new double[n];
        yRate = new double[n];
        zRate = new double[n];
        radiusRate = new double[n];
        dirY = new double[n - 1];
        dirZ = new double[n - 1];
        spin = new double[n - 1];
        chord = new double[n - 1];
        chordRate = new double[n - 1];
        turn = new double[n];
        turnRate = new double[n];
        tangent = new double[n];
        tangentRate = new double[n];
        halfArc = new double[n];
        halfArcRate = new double[n];
    }

    /** Makes corners first to last (and what the strips between them need) valid at a station. */
    void fill(LoftCurves curves, double at, int interval, int first, int last) {
        x = at;
        int from = Math.max(0, first - 1);
        int to = Math.min(n - 1, last + 1);
        for (int k = from; k <= to; k++) {
            y[k] = curves.value(interval, 3 * k, x);
            z[k] = curves.value(interval, 3 * k + 1, x);
            radius[k] = Math.max(0, curves.value(interval, 3 * k + 2, x));
            yRate[k] = curves.slope(interval, 3 * k, x);
            zRate[k] = curves.slope(interval, 3 * k + 1, x);
            radiusRate[k] = curves.slope(interval, 3 * k + 2, x);
        }
        for (int k = from; k < to; k++) {
            double dy = y[k + 1] - y[k];
            double dz = z[k + 1] - z[k];
            double vy = yRate[k + 1] - yRate[k];
            double vz = zRate[k + 1] - zRate[k];
            double length = Math.sqrt(dy * dy + dz * dz);
            chord[k] = length;
            dirY[k] = dy / length;
            dirZ[k] = dz / length;
            chordRate[k] = dirY[k] * vy + dirZ[k] * vz;
            spin[k] = (dirY[k] * vz - dirZ[k] * vy) / length;
        }
        for (int k = first; k <= last; k++) {
            // Across the centreline the neighbour side is the mirror image.
            double ay = k == 0 ? dirY[0] : dirY[k - 1];
            double az = k == 0 ? -dirZ[0] : dirZ[k - 1];
            double as = k == 0 ? -spin[0] : spin[k - 1];
            double by = k == n - 1 ? dirY[n - 2] : dirY[k];
            double bz = k == n - 1 ? -dirZ[n - 2] : dirZ[k];
            double bs = k == n - 1 ? -spin[n - 2] : spin[k];
            double cross = ay * bz - az * by;
            double dot = ay * by + az * bz;
            double theta = Math.atan2(cross, dot);
            double sign = theta < 0 ? -1 : 1;
            double t = Math.abs(cross) / (1 + dot);
            turn[k] = theta;
            turnRate[k] = bs - as;
            tangent[k] = radius[k] * t;
            tangentRate[k] = radiusRate[k] * t + radius[k] * sign * turnRate[k] / 2 * (1 + t * t);
            halfArc[k] = radius[k] * Math.abs(theta) / 2;
            halfArcRate[k] = radiusRate[k] * Math.abs(theta) / 2 + radius[k] * sign * turnRate[k] / 2;
        }
    }

    /** Station, m. */
    public double x() {
        return x;
    }

    /** A corner's y before rounding, m. */
    public double cornerY(int corner) {
        return y[corner];
    }

    /** A corner's z before rounding, m. */
    public double cornerZ(int corner) {
        return z[corner];
    }

    /** Number of strips. */
    public int stripCount() {
        return n - 1;
    }

    /** Arc length of a strip, one side, m. */
    public double length(int strip) {
        return halfArc[strip] + chord[strip] - tangent[strip] - tangent[strip + 1] + halfArc[strip + 1];
    }

    /** Fraction of the strip's length at which its first half-arc ends and its straight begins. */
    public double straightFrom(int strip) {
        return halfArc[strip] / length(strip);
    }

    /** Fraction of the strip's length at which its straight ends and its last half-arc begins. */
    public double straightTo(int strip) {
        return 1 - halfArc[strip + 1] / length(strip);
    }

    /** Length of the half-arc that a strip has at corner {@code corner}, m. */
    public double halfArc(int corner) {
        return halfArc[corner];
    }

    /** Fillet radius at a corner, m. */
    public double radius(int corner) {
        return radius[corner];
    }

    /** Angle by which the outline turns at a corner, rad, positive where convex; on the centreline the whole angle. */
    public double turn(int corner) {
        return turn[corner];
    }

    /** Perimeter of the whole section, both sides, m. */
    public double perimeter() {
        double sum = 0;
        for (int k = 0; k < n - 1; k++) {
            sum += length(k);
        }
        return 2 * sum;
    }

    /** Enclosed area of the whole section, both sides, m². */
    public double area() {
        double half = 0;
        for (int k = 0; k < n - 1; k++) {
            half += (y[k] * z[k + 1] - y[k + 1] * z[k]) / 2;
        }
        double area = 2 * half;
        for (int k = 0; k < n; k++) {
            double a = Math.abs(turn[k]) / 2;
            // Between tangents and arc: r² (tan(θ/2) - θ/2), once at keel and ridge, twice elsewhere.
            double lost = Math.signum(turn[k]) * radius[k] * radius[k] * (Math.tan(a) - a);
            area -= k == 0 || k == n - 1 ? lost : 2 * lost;
        }
        return area;
    }

    /** Height of the skin on the centreline at the bottom, m. */
    public double bottom() {
        SkinPoint p = new SkinPoint();
        at(0, 0, p);
        return p.z;
    }

    /** Height of the skin on the centreline at the top, m. */
    public double top() {
        SkinPoint p = new SkinPoint();
        at(n - 2, 1, p);
        return p.z;
    }

    /**
     * Evaluates a point of the right half.
     *
     * @param strip strip, 0 at the bottom
     * @param t fraction of the strip's arc length, 0 at its lower boundary
     * @param p receives position, tangent, normal and rates
     */
    public void at(int strip, double t, SkinPoint p) {
        int k = strip;
        double dy = dirY[k];
        double dz = dirZ[k];
        double w = spin[k];
        double length = length(k);
        double lengthRate = halfArcRate[k] + chordRate[k] - tangentRate[k] - tangentRate[k + 1] + halfArcRate[k + 1];
        double s = t * length;
        double sRate = t * lengthRate;
        double straightEnd = length - halfArc[k + 1];
        p.x = x;
        p.length = length;
        if (s < halfArc[k] && radius[k] > 0) {
            double q = halfArc[k] - s;
            double qRate = halfArcRate[k] - sRate;
            double baseY = y[k] + dy * tangent[k];
            double baseZ = z[k] + dz * tangent[k];
            double rateY = yRate[k] + dy * tangentRate[k] - dz * w * tangent[k];
            double rateZ = zRate[k] + dz * tangentRate[k] + dy * w * tangent[k];
            arc(p, baseY, baseZ, rateY, rateZ, dy, dz, w, k, q, qRate, -1);
        } else if (s > straightEnd && radius[k + 1] > 0) {
            double q = s - straightEnd;
            double qRate = sRate - (lengthRate - halfArcRate[k + 1]);
            double baseY = y[k + 1] - dy * tangent[k + 1];
            double baseZ = z[k + 1] - dz * tangent[k + 1];
            double rateY = yRate[k + 1] - dy * tangentRate[k + 1] + dz * w * tangent[k + 1];
            double rateZ = zRate[k + 1] - dz * tangentRate[k + 1] - dy * w * tangent[k + 1];
            arc(p, baseY, baseZ, rateY, rateZ, dy, dz, w, k + 1, q, qRate, 1);
        } else {
            double a = tangent[k] + s - halfArc[k];
            double aRate = tangentRate[k] + sRate - halfArcRate[k];
            p.y = y[k] + dy * a;
            p.z = z[k] + dz * a;
            p.rateY = yRate[k] + dy * aRate - dz * w * a;
            p.rateZ = zRate[k] + dz * aRate + dy * w * a;
            p.tangentY = dy;
            p.tangentZ = dz;
            p.curvature = 0;
        }
        p.finish();
    }

    /** A point on the arc at corner c, q along the arc away from its tangent point; way = -1 against the outline's run. */
    private void arc(
            SkinPoint p,
            double baseY,
            double baseZ,
            double rateY,
            double rateZ,
            double dy,
            double dz,
            double w,
            int c,
            double q,
            double qRate,
            int way) {
        double r = radius[c];
        double sign = turn[c] < 0 ? -1 : 1;
        double psi = q / r;
        double psiRate = (qRate - psi * radiusRate[c]) / r;
        double cos = Math.cos(psi);
        double sin = Math.sin(psi);
        double across = sign * r * (1 - cos);
        double along = way * r * sin;
        double acrossRate = sign * (radiusRate[c] * (1 - cos) + r * sin * psiRate);
        double alongRate = way * (radiusRate[c] * sin + r * cos * psiRate);
        // Left normal of the side is (-dz, dy); the side turns with rate w, so d' = w n and n' = -w d.
        p.y = baseY - dz * across + dy * along;
        p.z = baseZ + dy * across + dz * along;
        p.rateY = rateY - dz * acrossRate + dy * alongRate - w * dy * across - w * dz * along;
        p.rateZ = rateZ + dy * acrossRate + dz * alongRate - w * dz * across + w * dy * along;
        double side = way * sign * sin;
        p.tangentY = dy * cos - dz * side;
        p.tangentZ = dz * cos + dy * side;
        p.curvature = sign / r;
    }

    /**
     * Signed distance in the section's plane from the outline, both sides, m; negative inside. Exact near the outline
     * and everywhere in sign.
     */
    public double distance(double py, double pz) {
        double u = Math.abs(py);
        boolean inside = false;
        double best = Double.POSITIVE_INFINITY;
        boolean decided = false;
        for (int k = 0; k < n - 1; k++) {
            // The ray runs to +y, so the right half alone decides.
            if ((z[k] > pz) != (z[k + 1] > pz) && u < y[k] + (pz - z[k]) / (z[k + 1] - z[k]) * (y[k + 1] - y[k])) {
                inside = !inside;
            }
            double ry = u - y[k];
            double rz = pz - z[k];
            double s = Math.clamp(
                    ry * dirY[k] + rz * dirZ[k], tangent[k], Math.max(tangent[k], chord[k] - tangent[k + 1]));
            double ey = ry - s * dirY[k];
            double ez = rz - s * dirZ[k];
            best = Math.min(best, ey * ey + ez * ez);
        }
        best = Math.sqrt(best);
        boolean capped = inside;
        for (int k = 0; k < n; k++) {
            if (tangent[k] <= 0) {
                continue;
            }
            double sign = turn[k] < 0 ? -1 : 1;
            int side = k == n - 1 ? n - 2 : k;
            double way = k == n - 1 ? -1 : 1;
            double cy = y[k] + way * dirY[side] * tangent[k] - sign * dirZ[side] * radius[k];
            double cz = z[k] + way * dirZ[side] * tangent[k] + sign * dirY[side] * radius[k];
            double my = y[k] - cy;
            double mz = z[k] - cz;
            double qy = u - cy;
            double qz = pz - cz;
            double towards = qy * my + qz * mz;
            if (towards < -1e-15) {
                continue; // behind the arc, as most points are: no roots, no cosine
            }
            double m = Math.sqrt(my * my + mz * mz);
            double q = Math.sqrt(qy * qy + qz * qz);
            if (q > 0 && towards >= q * m * Math.cos(Math.abs(turn[k]) / 2) - 1e-15) {
                best = Math.min(best, Math.abs(q - radius[k]));
                if (!decided && q > radius[k] && inCap(k, sign, u, pz)) {
                    capped = sign < 0;
                    decided = true;
                }
            }
        }
        return capped ? -best : best;
    }

    /** Whether a height lies above or below all corners, so that nothing at that height is inside. */
    boolean clear(double height) {
        boolean above = true;
        boolean below = true;
        for (double corner : z) {
            above &= height > corner;
            below &= height < corner;
        }
        return above || below;
    }

    private boolean inCap(int k, double sign, double py, double pz) {
        double ry = py - y[k];
        double rz = pz - z[k];
        double ay = k == 0 ? dirY[0] : dirY[k - 1];
        double az = k == 0 ? -dirZ[0] : dirZ[k - 1];
        double by = k == n - 1 ? dirY[n - 2] : dirY[k];
        double bz = k == n - 1 ? -dirZ[n - 2] : dirZ[k];
        return (ay * rz - az * ry) * sign >= 0 && (by * rz - bz * ry) * sign >= 0;
    }
}
