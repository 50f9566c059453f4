// SPDX-License-Identifier: Apache-2.0
package tubwright.engine.structure;

/** Geometry and strain operators that quads and triangles share. */
final class ShellGeometry {
    private ShellGeometry() {}

    /** Position, material axes, inverse metric and area factor at a point with given nodal functions. */
    static void frame(
            double[] x, double[] ref, double[] n, double[] nr, double[] ns, int nodes, int p, ShellWorkspace w) {
        double px = 0;
        double py = 0;
        double pz = 0;
        double rx = 0;
        double ry = 0;
        double rz = 0;
        double sx = 0;
        double sy = 0;
        double sz = 0;
        for (int i = 0; i < nodes; i++) {
            double a = x[3 * i];
            double b = x[3 * i + 1];
            double c = x[3 * i + 2];
            px += n[i] * a;
            py += n[i] * b;
            pz += n[i] * c;
            rx += nr[i] * a;
            ry += nr[i] * b;
            rz += nr[i] * c;
            sx += ns[i] * a;
            sy += ns[i] * b;
            sz += ns[i] * c;
        }
        double nx = ry * sz - rz * sy;
        double ny = rz * sx - rx * sz;
        double nz = rx * sy - ry * sx;
        double area = Math.sqrt(nx * nx + ny * ny + nz * nz);
        if (!(area > 0)) {
            throw new IllegalArgumentException("shell element has no area at a strain point; move its corners apart");
        }
        nx /= area;
        ny /= area;
        nz /= area;
        double dot = ref[0] * nx + ref[1] * ny + ref[2] * nz;
        double ex = ref[0] - dot * nx;
        double ey = ref[1] - dot * ny;
        double ez = ref[2] - dot * nz;
        double len = Math.sqrt(ex * ex + ey * ey + ez * ez);
        double full = Math.sqrt(ref[0] * ref[0] + ref[1] * ref[1] + ref[2] * ref[2]);
        if (!(len > 1e-9 * full)) {
            throw new IllegalArgumentException(
                    "reference direction is normal to the shell; choose one that lies along the surface");
        }
        ex /= len;
        ey /= len;
        ez /= len;
        double fx = ny * ez - nz * ey;
        double fy = nz * ex - nx * ez;
        double fz = nx * ey - ny * ex;
        double[] e = w.axes[p];
        e[0] = ex;
        e[1] = ey;
        e[2] = ez;
        e[3] = fx;
        e[4] = fy;
        e[5] = fz;
        e[6] = nx;
        e[7] = ny;
        e[8] = nz;
        double[] pos = w.position[p];
        pos[0] = px;
        pos[1] = py;
        pos[2] = pz;
        double j11 = rx * ex + ry * ey + rz * ez;
        double j12 = rx * fx + ry * fy + rz * fz;
        double j21 = sx * ex + sy * ey + sz * ez;
        double j22 = sx * fx + sy * fy + sz * fz;
        double det = j11 * j22 - j12 * j21;
        double[] inv = w.inverse[p];
        inv[0] = j22 / det;
        inv[1] = -j12 / det;
        inv[2] = -j21 / det;
        inv[3] = j11 / det;
        if (p < w.points) {
            w.weight[p] = area;
        } else {
            w.centreArea = area;
        }
    }

    /** Derivatives of nodal and side functions along the material axes of point p. */
    static void gradients(double[] nr, double[] ns, double[] er, double[] es, int nodes, int p, ShellWorkspace w) {
        double[] inv = w.inverse[p];
        double[] x = w.nodeX[p];
        double[] y = w.nodeY[p];
        double[] sx = w.sideX[p];
        double[] sy = w.sideY[p];
        for (int i = 0; i < nodes; i++) {
            x[i] = inv[0] * nr[i] + inv[1] * ns[i];
            y[i] = inv[2] * nr[i] + inv[3] * ns[i];
            sx[i] = inv[0] * er[i] + inv[1] * es[i];
            sy[i] = inv[2] * er[i] + inv[3] * es[i];
        }
    }

    /**
     * Side normals (mean of the end directors) and bow vectors −(n × t)/8 for side i, from node i to the next. Eight times
     * the sag of a side is (nj − ni)·t; where the square of that over the effective thickness exceeds 1/rate, the bow
     * fades: rotations about the normals of a strongly curved side would cost stretching.
     */
    static void sides(double[] x, double[] d, double[] nominal, int nodes, double bowRate, ShellWorkspace w) {
        double rate = bowRate * inverseSquareThickness(nominal);
        for (int i = 0; i < nodes; i++) {
            int j = i + 1 == nodes ? 0 : i + 1;
            double nx = d[3 * i] + d[3 * j];
            double ny = d[3 * i + 1] + d[3 * j + 1];
            double nz = d[3 * i + 2] + d[3 * j + 2];
            double len = Math.sqrt(nx * nx + ny * ny + nz * nz);
            if (!(len > 1e-6)) {
                throw new IllegalArgumentException("directors at two neighbouring corners oppose; check the normals");
            }
            nx /= len;
            ny /= len;
            nz /= len;
            double tx = x[3 * j] - x[3 * i];
            double ty = x[3 * j + 1] - x[3 * i + 1];
            double tz = x[3 * j + 2] - x[3 * i + 2];
            double sag = (d[3 * j] - d[3 * i]) * tx
                    + (d[3 * j + 1] - d[3 * i + 1]) * ty
                    + (d[3 * j + 2] - d[3 * i + 2]) * tz;
            double bow = fade(rate, sag * sag) / 8;
            w.sideNormal[3 * i] = nx;
            w.sideNormal[3 * i + 1] = ny;
            w.sideNormal[3 * i + 2] = nz;
            w.bow[3 * i] = bow * (nz * ty - ny * tz);
            w.bow[3 * i + 1] = bow * (nx * tz - nz * tx);
            w.bow[3 * i + 2] = bow * (ny * tx - nx * ty);
        }
    }

    /** Natural strain {@code row}: covariant stretch t·Δu/4 of the chord from node i to node j, t its vector. */
    static void sideStretch(double[] x, int i, int j, int row, int freedoms, ShellWorkspace w) {
        double[] b = w.natural;
        int o = row * freedoms;
        java.util.Arrays.fill(b, o, o + freedoms, 0);
        for (int c = 0; c < 3; c++) {
            double t = (x[3 * j + c] - x[3 * i + c]) / 4;
            b[o + 6 * i + c] = -t;
            b[o + 6 * j + c] = t;
        }
    }

    /** Natural strain {@code row}: (θj − θi)·n of the side from node i to node j, n the normal of side i. */
    static void bowDifference(int i, int j, int row, int freedoms, ShellWorkspace w) {
        double[] b = w.natural;
        int o = row * freedoms;
        java.util.Arrays.fill(b, o, o + freedoms, 0);
        for (int c = 0; c < 3; c++) {
            b[o + 6 * i + 3 + c] = -w.sideNormal[3 * i + c];
            b[o + 6 * j + 3 + c] = w.sideNormal[3 * i + c];
        }
    }

    /** Compatible membrane strain at point p of the bows, whose natural strains begin at row {@code first}. */
    static void bowStrain(int nodes, int first, int p, ShellWorkspace w) {
        int n = ShellWorkspace.NATURAL;
        double[] b = w.compatible[p];
        double[] e = w.axes[p];
        double[] m = w.bow;
        for (int i = 0; i < nodes; i++) {
            double m1 = e[0] * m[3 * i] + e[1] * m[3 * i + 1] + e[2] * m[3 * i + 2];
            double m2 = e[3] * m[3 * i] + e[4] * m[3 * i + 1] + e[5] * m[3 * i + 2];
            b[first + i] = m1 * w.sideX[p][i];
            b[n + first + i] = m2 * w.sideY[p][i];
            b[2 * n + first + i] = m1 * w.sideY[p][i] + m2 * w.sideX[p][i];
        }
    }

    /** Adds three membrane rows, given on the first natural strains, to the strain operator of a point. */
    static void spreadMembrane(double[] b, int count, int freedoms, ShellWorkspace w, double[] out) {
        for (int row = 0; row < 3; row++) {
            int to = row * freedoms;
            for (int k = 0; k < count; k++) {
                double f = b[ShellWorkspace.NATURAL * row + k];
                int from = k * freedoms;
                for (int j = 0; j < freedoms; j++) {
                    out[to + j] += f * w.natural[from + j];
                }
            }
        }
    }

    /**
     * Curvature rows: the change of the director gradient, referred to lengths on the reference surface, so that the
     * strain at height ζ is ε + ζκ to first order in ζ over the radius of curvature.
     */
    static void bending(double[] d, int nodes, int p, ShellWorkspace w) {
        double[] e = w.axes[p];
        double[] x = w.nodeX[p];
        double[] y = w.nodeY[p];
        double b11 = 0;
        double b12 = 0;
        double b21 = 0;
        double b22 = 0;
        double c1 = 0;
        double c2 = 0;
        for (int i = 0; i < nodes; i++) {
            double d1 = e[0] * d[3 * i] + e[1] * d[3 * i + 1] + e[2] * d[3 * i + 2];
            double d2 = e[3] * d[3 * i] + e[4] * d[3 * i + 1] + e[5] * d[3 * i + 2];
            double d3 = e[6] * d[3 * i] + e[7] * d[3 * i + 1] + e[8] * d[3 * i + 2];
            b11 += x[i] * d1;
            b12 += x[i] * d2;
            b21 += y[i] * d1;
            b22 += y[i] * d2;
            c1 += x[i] * d3;
            c2 += y[i] * d3;
        }
        double[] out = w.strain[p];
        int f = w.freedoms;
        int rx = 3 * f;
        int ry = 4 * f;
        int rxy = 5 * f;
        for (int i = 0; i < nodes; i++) {
            double xi = x[i];
            double yi = y[i];
            double g1 = b11 * xi + b12 * yi;
            double g2 = b21 * xi + b22 * yi;
            double nx = c1 * xi;
            double ny = c2 * yi;
            double nxy = c1 * yi + c2 * xi;
            int o = 6 * i;
            for (int c = 0; c < 3; c++) {
                out[rx + o + c] = nx * e[6 + c] - g1 * e[c];
                out[ry + o + c] = ny * e[6 + c] - g2 * e[3 + c];
                out[rxy + o + c] = nxy * e[6 + c] - g2 * e[c] - g1 * e[3 + c];
            }
            double n1 = d[3 * i];
            double n2 = d[3 * i + 1];
            double n3 = d[3 * i + 2];
            // e · (θ × n) = θ · (n × e)
            double p1 = n2 * e[2] - n3 * e[1];
            double p2 = n3 * e[0] - n1 * e[2];
            double p3 = n1 * e[1] - n2 * e[0];
            double q1 = n2 * e[5] - n3 * e[4];
            double q2 = n3 * e[3] - n1 * e[5];
            double q3 = n1 * e[4] - n2 * e[3];
            out[rx + o + 3] = xi * p1;
            out[rx + o + 4] = xi * p2;
            out[rx + o + 5] = xi * p3;
            out[ry + o + 3] = yi * q1;
            out[ry + o + 4] = yi * q2;
            out[ry + o + 5] = yi * q3;
            out[rxy + o + 3] = yi * p1 + xi * q1;
            out[rxy + o + 4] = yi * p2 + xi * q2;
            out[rxy + o + 5] = yi * p3 + xi * q3;
        }
    }

    /** Square of (curvature × area / effective thickness of the nominal laminate): how far a facet is from its surface. */
    static double bulge(double[] d, double[] nominal, int nodes, double area, ShellWorkspace w) {
        double[] e = w.axes[w.points];
        double sum = 0;
        for (int c = 0; c < 3; c++) {
            double dx = 0;
            double dy = 0;
            for (int i = 0; i < nodes; i++) {
                dx += w.nodeX[w.points][i] * d[3 * i + c];
                dy += w.nodeY[w.points][i] * d[3 * i + c];
            }
            sum += dx * dx + dy * dy;
        }
        return sum * area * area * inverseSquareThickness(nominal);
    }

    /** A66/12D66 of a nominal laminate: one over the square of the thickness of a sheet that bends as it does. */
    private static double inverseSquareThickness(double[] nominal) {
        double a66 = nominal[18];
        double b66 = nominal[21];
        return a66 / (12 * (nominal[45] - b66 * b66 / a66));
    }

    /**
     * Factor on a drilling strain, 1 on flat elements: rotations of a curved facet agree with its surface only to order
     * size² times curvature, so where that exceeds the effective thickness the strain fades to what bending costs, and
     * a thin curved shell does not lock.
     */
    static double fade(double rate, double bulge) {
        return 1 / Math.sqrt(1 + rate * bulge);
    }

    /** Writes d × a, the coefficients of θ in a · (θ × d). */
    static void crossInto(double[] d, int o, double ax, double ay, double az, double[] out, int to) {
        out[to] = d[o + 1] * az - d[o + 2] * ay;
        out[to + 1] = d[o + 2] * ax - d[o] * az;
        out[to + 2] = d[o] * ay - d[o + 1] * ax;
    }

    /** Rotation of the surface about its normal per unit rotation difference of a side. */
    static double spin(double[] e, double[] bow, int side, double dx, double dy) {
        double along1 = e[0] * bow[3 * side] + e[1] * bow[3 * side + 1] + e[2] * bow[3 * side + 2];
        double along2 = e[3] * bow[3 * side] + e[4] * bow[3 * side + 1] + e[5] * bow[3 * side + 2];
        return (along2 * dx - along1 * dy) / 2;
    }

    /** Inverse of the membrane block of an 8×8 laminate. */
    static void membraneCompliance(double[] c, double[] s) {
        double a = c[0];
        double b = c[1];
        double d = c[2];
        double e = c[9];
        double f = c[10];
        double g = c[18];
        double m00 = e * g - f * f;
        double m01 = d * f - b * g;
        double m02 = b * f - d * e;
        double det = a * m00 + b * m01 + d * m02;
        if (!(det > 0) || !(a > 0) || !(a * e - b * b > 0)) {
            throw new IllegalArgumentException("nominal membrane stiffness is not positive definite; give a laminate"
                    + " with stiffness in every in-plane direction");
        }
        s[0] = m00 / det;
        s[1] = m01 / det;
        s[2] = m02 / det;
        s[3] = s[1];
        s[4] = (a * g - d * d) / det;
        s[5] = (b * d - a * f) / det;
        s[6] = s[2];
        s[7] = s[5];
        s[8] = (a * e - b * b) / det;
    }

    /** Solves the symmetric positive definite 4×4 system h·z = g for several right sides, overwriting both. */
    static void solve4(double[] h, double[] g, int columns) {
        for (int k = 0; k < 4; k++) {
            double pivot = h[5 * k];
            if (!(pivot > 0)) {
                throw new IllegalArgumentException("shell element is too distorted: its strain field is singular");
            }
            double inv = 1 / pivot;
            for (int i = k + 1; i < 4; i++) {
                double f = h[4 * i + k] * inv;
                for (int j = k + 1; j < 4; j++) {
                    h[4 * i + j] -= f * h[4 * k + j];
                }
                for (int j = 0; j < columns; j++) {
                    g[i * columns + j] -= f * g[k * columns + j];
                }
            }
        }
        for (int k = 3; k >= 0; k--) {
            double inv = 1 / h[5 * k];
            for (int j = 0; j < columns; j++) {
                double v = g[k * columns + j];
                for (int i = k + 1; i < 4; i++) {
                    v -= h[4 * k + i] * g[i * columns + j];
                }
                g[k * columns + j] = v * inv;
            }
        }
    }
}
