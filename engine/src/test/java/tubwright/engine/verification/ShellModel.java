// SPDX-License-Identifier: Apache-2.0
package tubwright.engine.verification;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.function.ToDoubleFunction;
import java.util.function.UnaryOperator;
import tubwright.engine.structure.ShellQuad;
import tubwright.engine.structure.ShellTriangle;
import tubwright.engine.structure.ShellWorkspace;

/** A shell model small enough to be written by hand: nodes, elements, supports, loads, and its solution. */
class ShellModel {
    final List<double[]> nodes = new ArrayList<>();
    final List<int[]> elements = new ArrayList<>();
    /** True surface normal at a position; empty results mean the element's own corner normals. */
    UnaryOperator<double[]> normal = x -> new double[0];

    UnaryOperator<double[]> reference = x -> new double[] {1, 0, 0};
    double[] laminate;
    double[] nominal;
    double[] displacement;
    final Map<Integer, Double> held = new HashMap<>();
    final Map<Integer, Double> loads = new HashMap<>();
    private final ShellWorkspace workspace = new ShellWorkspace();

    ShellModel(double[] laminate) {
        this.laminate = laminate;
        this.nominal = laminate;
    }

    int node(double x, double y, double z) {
        nodes.add(new double[] {x, y, z});
        return nodes.size() - 1;
    }

    void element(int... corners) {
        elements.add(corners);
    }

    /** Two triangles; the diagonal runs from a to c, or from b to d when flipped. */
    void triangles(boolean flipped, int a, int b, int c, int d) {
        if (flipped) {
            element(a, b, d);
            element(b, c, d);
        } else {
            element(a, b, c);
            element(a, c, d);
        }
    }

    /** Holds the freedoms (0..5) of a node at zero. */
    void hold(int node, int... freedoms) {
        for (int f : freedoms) {
            held.put(6 * node + f, 0.0);
        }
    }

    void prescribe(int node, int freedom, double value) {
        held.put(6 * node + freedom, value);
    }

    void load(int node, int freedom, double value) {
        loads.merge(6 * node + freedom, value, Double::sum);
    }

    double[] corners(int e) {
        int[] q = elements.get(e);
        double[] x = new double[3 * q.length];
        for (int i = 0; i < q.length; i++) {
            System.arraycopy(nodes.get(q[i]), 0, x, 3 * i, 3);
        }
        return x;
    }

    double[] directors(int e) {
        int[] q = elements.get(e);
        int m = q.length;
        double[] d = new double[3 * m];
        for (int i = 0; i < m; i++) {
            double[] a = nodes.get(q[i]);
            double[] n = normal.apply(a);
            if (n.length == 0) {
                double[] b = nodes.get(q[(i + 1) % m]);
                double[] c = nodes.get(q[(i + m - 1) % m]);
                n = Vectors.unit(Vectors.cross(Vectors.minus(b, a), Vectors.minus(c, a)));
            }
            System.arraycopy(n, 0, d, 3 * i, 3);
        }
        return d;
    }

    double[] reference(int e) {
        double[] x = corners(e);
        double[] c = new double[3];
        for (int i = 0; i < x.length; i++) {
            c[i % 3] += x[i] * 3 / x.length;
        }
        return reference.apply(c);
    }

    void strainPoints(int e, ShellWorkspace w) {
        if (elements.get(e).length == 4) {
            ShellQuad.strainPoints(corners(e), directors(e), reference(e), nominal, w);
        } else {
            ShellTriangle.strainPoints(corners(e), directors(e), reference(e), nominal, w);
        }
    }

    double[] stiffness(int e) {
        int n = 6 * elements.get(e).length;
        double[] k = new double[n * n];
        if (n == 24) {
            ShellQuad.stiffness(corners(e), directors(e), reference(e), laminate, nominal, workspace, k);
        } else {
            ShellTriangle.stiffness(corners(e), directors(e), reference(e), laminate, nominal, workspace, k);
        }
        return k;
    }

    /** Adds the consistent load of a force per area (N/m², global axes) on every element. */
    void surfaceLoad(double fx, double fy, double fz) {
        double[] g = {fx, fy, fz};
        for (int e = 0; e < elements.size(); e++) {
            int[] q = elements.get(e);
            double[] f = new double[6 * q.length];
            if (q.length == 4) {
                ShellQuad.weight(corners(e), directors(e), 1, 0, g, f);
            } else {
                ShellTriangle.weight(corners(e), directors(e), 1, 0, g, f);
            }
            spread(q, f);
        }
    }

    /** Adds a pressure along the normal on every element. */
    void pressure(double p) {
        pressure(x -> p);
    }

    /** Adds a pressure that changes from place to place: on every element that of its middle. */
    void pressure(ToDoubleFunction<double[]> field) {
        for (int e = 0; e < elements.size(); e++) {
            int[] q = elements.get(e);
            double[] f = new double[6 * q.length];
            double[] middle = new double[3];
            for (int node : q) {
                for (int c = 0; c < 3; c++) {
                    middle[c] += nodes.get(node)[c] / q.length;
                }
            }
            double p = field.applyAsDouble(middle);
            if (q.length == 4) {
                ShellQuad.pressure(corners(e), p, f);
            } else {
                ShellTriangle.pressure(corners(e), p, f);
            }
            spread(q, f);
        }
    }

    private void spread(int[] q, double[] f) {
        for (int i = 0; i < f.length; i++) {
            load(q[i / 6], i % 6, f[i]);
        }
    }

    /** Solves and keeps the displacements. */
    ShellModel solve() {
        int n = nodes.size();
        int[] order = EnvelopeSolver.order(n, elements);
        int[] place = new int[n];
        for (int i = 0; i < n; i++) {
            place[order[i]] = i;
        }
        int[] unknown = new int[6 * n];
        Arrays.fill(unknown, -1);
        int count = 0;
        for (int i = 0; i < n; i++) {
            for (int f = 0; f < 6; f++) {
                int d = 6 * order[i] + f;
                if (!held.containsKey(d)) {
                    unknown[d] = count++;
                }
            }
        }
        int[] start = new int[count];
        for (int i = 0; i < count; i++) {
            start[i] = i;
        }
        for (int[] q : elements) {
            int low = count;
            for (int a : q) {
                for (int f = 0; f < 6; f++) {
                    int u = unknown[6 * a + f];
                    low = u >= 0 ? Math.min(low, u) : low;
                }
            }
            for (int a : q) {
                for (int f = 0; f < 6; f++) {
                    int u = unknown[6 * a + f];
                    if (u >= 0) {
                        start[u] = Math.min(start[u], low);
                    }
                }
            }
        }
        EnvelopeSolver solver = new EnvelopeSolver(start);
        double[] right = new double[count];
        loads.forEach((d, v) -> {
            if (unknown[d] >= 0) {
                right[unknown[d]] += v;
            }
        });
        for (int e = 0; e < elements.size(); e++) {
            int[] q = elements.get(e);
            double[] k = stiffness(e);
            int m = 6 * q.length;
            for (int i = 0; i < m; i++) {
                int u = unknown[6 * q[i / 6] + i % 6];
                if (u < 0) {
                    continue;
                }
                for (int j = 0; j < m; j++) {
                    int d = 6 * q[j / 6] + j % 6;
                    if (unknown[d] >= 0) {
                        solver.add(u, unknown[d], k[i * m + j]);
                    } else {
                        right[u] -= k[i * m + j] * held.get(d);
                    }
                }
            }
        }
        solver.factorise();
        solver.solve(right);
        displacement = new double[6 * n];
        for (int d = 0; d < 6 * n; d++) {
            displacement[d] = unknown[d] >= 0 ? right[unknown[d]] : held.get(d);
        }
        return this;
    }

    /** Work of the loads on the displacements of the solution. */
    double work() {
        double[] sum = new double[1];
        loads.forEach((d, v) -> sum[0] += v * displacement[d]);
        return sum[0];
    }

    double at(int node, int freedom) {
        return displacement[6 * node + freedom];
    }

    double[] elementDisplacement(int e) {
        int[] q = elements.get(e);
        double[] u = new double[6 * q.length];
        for (int i = 0; i < u.length; i++) {
            u[i] = displacement[6 * q[i / 6] + i % 6];
        }
        return u;
    }

    /** Twice the strain energy of the solution. */
    double twiceEnergy() {
        double sum = 0;
        for (int e = 0; e < elements.size(); e++) {
            double[] u = elementDisplacement(e);
            double[] k = stiffness(e);
            for (int i = 0; i < u.length; i++) {
                for (int j = 0; j < u.length; j++) {
                    sum += u[i] * k[i * u.length + j] * u[j];
                }
            }
        }
        return sum;
    }

    /** Nodes where a condition on the coordinates holds. */
    int[] where(java.util.function.Predicate<double[]> condition) {
        return java.util.stream.IntStream.range(0, nodes.size())
                .filter(i -> condition.test(nodes.get(i)))
                .toArray();
    }
}
