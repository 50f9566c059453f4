// SPDX-License-Identifier: Apache-2.0
package tubwright.engine.trim;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import tubwright.engine.laminate.Laminate;
import tubwright.engine.laminate.Layer;
import tubwright.engine.material.Core;
import tubwright.engine.material.Elasticity;
import tubwright.engine.material.Ply;

/**
 * The laminates of a tub as functions of what scatters, quick enough to be asked a hundred thousand times: factors on the
 * stiffness and thickness of each ply material and on the shear of each core, and an error of angle for each ply of each
 * zone and patch. Membrane, coupling and bending stiffness by lamination theory; transverse shear goes with the core's
 * factor, or in solid laminates with stiffness times thickness of the plies. Immutable.
 */
final class ScatteredPlies {
    private static final int A66 = 14;
    private static final int SHEAR = 36;
    private static final int DRILLING = 40;

    /** Layers of one block, side by side. */
    private record Stack(
            int[] ply,
            int[] core,
            int[] angleOf,
            double[] thickness,
            double[] angle,
            double[][] invariants,
            double share) {}

    private final LoadedTub tub;
    private final List<String> plies;
    private final List<String> cores;
    private final int angles;
    private final Stack[] stacks;

    /** What is drawn: a factor or an error for each. */
    record Draw(double[] stiffness, double[] thickness, double[] cores, double[] angles) {}

    private ScatteredPlies(LoadedTub tub, List<String> plies, List<String> cores, int angles, Stack[] stacks) {
        this.tub = tub;
        this.plies = plies;
        this.cores = cores;
        this.angles = angles;
        this.stacks = stacks;
    }

    static ScatteredPlies of(LoadedTub tub) {
        Map<String, Integer> plies = new TreeMap<>();
        Map<String, Integer> cores = new TreeMap<>();
        List<Blocks.Block> blocks = tub.blocks().all();
        for (Blocks.Block block : blocks) {
            for (Layer layer : tub.nominal().laminate(block).layers()) {
                if (layer.material() instanceof Ply) {
                    plies.putIfAbsent(layer.material().name(), 0);
                } else if (layer.material() instanceof Core) {
                    cores.putIfAbsent(layer.material().name(), 0);
                }
            }
        }
        number(plies);
        number(cores);
        Map<String, Integer> angles = new HashMap<>();
        Stack[] stacks = new Stack[blocks.size()];
        for (int b = 0; b < stacks.length; b++) {
            Blocks.Block block = blocks.get(b);
            List<String> names = new ArrayList<>();
            Laminate zone = tub.nominal().zones().get(block.zone());
            for (int i = 0; i < zone.layers().size(); i++) {
                names.add("zone " + block.zone() + " " + i);
            }
            for (String patch : block.patches()) {
                int count =
                        tub.nominal().patches().getOrDefault(patch, List.of()).size();
                for (int i = 0; i < count; i++) {
                    names.add("patch " + Owner.Patch.of(patch).name() + " " + i);
                }
            }
            stacks[b] = stack(tub.nominal().laminate(block), names, plies, cores, angles);
        }
        return new ScatteredPlies(tub, List.copyOf(plies.keySet()), List.copyOf(cores.keySet()), angles.size(), stacks);
    }

    private static void number(Map<String, Integer> names) {
        int next = 0;
        for (Map.Entry<String, Integer> each : names.entrySet()) {
            each.setValue(next++);
        }
    }

    private static Stack stack(
            Laminate laminate,
            List<String> names,
            Map<String, Integer> plies,
            Map<String, Integer> cores,
            Map<String, Integer> angles) {
        int n = laminate.layers().size();
        int[] ply = new int[n];
        int[] core = new int[n];
        int[] angleOf = new int[n];
        double[] thickness = new double[n];
        double[] angle = new double[n];
        double[][] invariants = new double[n][];
        for (int i = 0; i < n; i++) {
            Layer layer = laminate.layers().get(i);
            boolean laid = layer.material() instanceof Ply;
            ply[i] = laid ? plies.get(layer.material().name()) : -1;
            core[i] = layer.material() instanceof Core
                    ? cores.get(layer.material().name())
                    : -1;
            angleOf[i] = laid ? angles.computeIfAbsent(names.get(i), _ -> angles.size()) : -1;
            thickness[i] = layer.thickness();
            angle[i] = layer.angle();
            invariants[i] = invariants(layer.material().elasticity());
        }
        return new Stack(
                ply,
                core,
                angleOf,
                thickness,
                angle,
                invariants,
                laminate.reference().zOfOuterSurface(1));
    }

    /** U1 to U5 of Tsai and Pagano (1968). */
    private static double[] invariants(Elasticity e) {
        double q11 = e.q11();
        double q22 = e.q22();
        double q12 = e.q12();
        double q66 = e.g12();
        return new double[] {
            (3 * q11 + 3 * q22 + 2 * q12 + 4 * q66) / 8,
            (q11 - q22) / 2,
            (q11 + q22 - 2 * q12 - 4 * q66) / 8,
            (q11 + q22 + 6 * q12 - 4 * q66) / 8,
            (q11 + q22 - 2 * q12 + 4 * q66) / 8
        };
    }

    List<String> plies() {
        return plies;
    }

    List<String> cores() {
        return cores;
    }

    /** Plies with an angle of their own. */
    int angles() {
        return angles;
    }

    int blocks() {
        return stacks.length;
    }

    /** Nothing drawn. */
    Draw nominal() {
        return new Draw(ones(plies.size()), ones(plies.size()), ones(cores.size()), new double[angles]);
    }

    private static double[] ones(int count) {
        double[] ones = new double[count];
        java.util.Arrays.fill(ones, 1);
        return ones;
    }

    /** Stiffness of a block, 41 numbers. */
    double[] stiffness(int block, Draw draw) {
        Stack s = stacks[block];
        int n = s.ply.length;
        double h = 0;
        for (int i = 0; i < n; i++) {
            h += s.ply[i] < 0 ? s.thickness[i] : s.thickness[i] * draw.thickness[s.ply[i]];
        }
        double top = s.share * h;
        double[] a = new double[6];
        double[] b = new double[6];
        double[] d = new double[6];
        double shear = 0;
        double weight = 0;
        int core = -1;
        for (int i = 0; i < n; i++) {
            boolean laid = s.ply[i] >= 0;
            double t = laid ? s.thickness[i] * draw.thickness[s.ply[i]] : s.thickness[i];
            double factor = laid ? draw.stiffness[s.ply[i]] : s.core[i] >= 0 ? draw.cores[s.core[i]] : 1;
            double bottom = top - t;
            double m0 = factor * t;
            double m1 = factor * 0.5 * (top * top - bottom * bottom);
            double m2 = factor * (top * top * top - bottom * bottom * bottom) / 3;
            add(s.invariants[i], laid ? s.angle[i] + draw.angles[s.angleOf[i]] : s.angle[i], m0, m1, m2, a, b, d);
            core = s.core[i] >= 0 ? s.core[i] : core;
            shear += factor * t;
            weight += s.thickness[i];
            top = bottom;
        }
        double[] nominal = tub.laminate(block);
        double[] c = new double[Constitutive.ENTRIES];
        for (int r = 0; r < 3; r++) {
            for (int k = 0; k < 3; k++) {
                int at = r <= k ? r * (5 - r) / 2 + k : k * (5 - k) / 2 + r;
                c[6 * r + k] = a[at];
                c[6 * r + k + 3] = b[at];
                c[6 * (r + 3) + k] = b[at];
                c[6 * (r + 3) + k + 3] = d[at];
            }
        }
        double through = core >= 0 ? draw.cores[core] : shear / weight;
        for (int k = SHEAR; k < DRILLING; k++) {
            c[k] = nominal[k] * through;
        }
        c[DRILLING] = nominal[DRILLING] * c[A66] / nominal[A66];
        return c;
    }

    /** Q11, Q12, Q16, Q22, Q26, Q66 turned, times three weights. */
    private static void add(
            double[] u, double angle, double m0, double m1, double m2, double[] a, double[] b, double[] d) {
        double c2 = Math.cos(2 * angle);
        double s2 = Math.sin(2 * angle);
        double c4 = c2 * c2 - s2 * s2;
        double s4 = 2 * c2 * s2;
        double q11 = u[0] + u[1] * c2 + u[2] * c4;
        double q12 = u[3] - u[2] * c4;
        double q16 = 0.5 * u[1] * s2 + u[2] * s4;
        double q22 = u[0] - u[1] * c2 + u[2] * c4;
        double q26 = 0.5 * u[1] * s2 - u[2] * s4;
        double q66 = u[4] - u[2] * c4;
        double[] q = {q11, q12, q16, q22, q26, q66};
        for (int k = 0; k < 6; k++) {
            a[k] += m0 * q[k];
            b[k] += m1 * q[k];
            d[k] += m2 * q[k];
        }
    }
}
