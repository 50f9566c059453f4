// SPDX-License-Identifier: Apache-2.0
package tubwright.engine.make.mould;

import java.util.ArrayDeque;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.Comparator;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import tubwright.engine.mesh.Mesh;
import tubwright.engine.mesh.Region;

/**
 * Looks at a piece along a pull direction. The mould is female: the piece leaves it where its outward normal n looks
 * against the pull d, and the draft is asin(−n · d). Where n looks along the pull the mould reaches over the piece; how far
 * is followed down the steepest edges of the mesh to where the face stands upright, between two points as on an arc of
 * circle through them.
 */
public final class DraftCheck {
    private static final int SAMPLES = 4;

    private final PieceFace face;
    private final Mesh mesh;
    private final double[] pull;
    /** Per node of the mesh its normal (3), 0 where the piece has none; and how far along the pull it lies. */
    private final double[] normals;

    private final boolean[] used;
    private final Map<Integer, List<Integer>> beside = new HashMap<>();
    private final double[] hook;
    private final double[] height;

    private DraftCheck(PieceFace face, double[] pull) {
        this.face = face;
        this.mesh = face.mesh();
        this.pull = pull;
        normals = new double[3 * mesh.nodeCount()];
        used = new boolean[mesh.nodeCount()];
        hook = new double[mesh.nodeCount()];
        height = new double[mesh.nodeCount()];
    }

    /**
     * The draft of a piece.
     *
     * @param pull unit vector along which the piece is taken out
     * @param wanted draft asked for, rad
     * @param edges of the piece
     */
    public static Draft of(PieceFace face, double[] pull, double wanted, List<SplitLines.Edge> edges) {
        return new DraftCheck(face, pull).check(wanted, edges);
    }

    private Draft check(double wanted, List<SplitLines.Edge> edges) {
        int[] elements = face.elements();
        double[] drafts = new double[elements.length];
        double least = Math.PI / 2;
        double area = 0;
        double little = 0;
        double under = 0;
        List<Integer> bad = new ArrayList<>();
        for (int i = 0; i < elements.length; i++) {
            int e = elements[i];
            double[] corners = corners(e);
            drafts[i] = Arrays.stream(corners).min().orElseThrow();
            least = Math.min(least, drafts[i]);
            double a = mesh.area(e);
            area += a;
            under += a * below(corners, -Draft.UPRIGHT);
            little += a * (below(corners, wanted) - below(corners, -Draft.UPRIGHT));
            if (drafts[i] < -Draft.UPRIGHT) {
                bad.add(e);
            }
            gather(e);
        }
        follow();
        return new Draft(pull, wanted, drafts, least, area, little, under, places(bad, edges));
    }

    /** Draft at the corners of an element; a triangle's third counts twice. */
    private double[] corners(int e) {
        double[] d = new double[4];
        for (int k = 0; k < 4; k++) {
            int c = 12 * e + 3 * Math.min(k, mesh.cornerCount(e) - 1);
            double along = 0;
            for (int i = 0; i < 3; i++) {
                along += mesh.cornerNormals()[c + i] * pull[i];
            }
            d[k] = Math.asin(Math.clamp(-along, -1.0, 1.0));
        }
        return d;
    }

    /** Share of an element whose draft, between its corners, is less than a limit. */
    private static double below(double[] c, double limit) {
        int count = 0;
        for (int i = 0; i < SAMPLES; i++) {
            for (int j = 0; j < SAMPLES; j++) {
                double u = (i + 0.5) / SAMPLES;
                double v = (j + 0.5) / SAMPLES;
                double d = (1 - u) * (1 - v) * c[0] + u * (1 - v) * c[1] + u * v * c[2] + (1 - u) * v * c[3];
                count += d < limit ? 1 : 0;
            }
        }
        return count / (double) (SAMPLES * SAMPLES);
    }

    private void gather(int e) {
        int sides = mesh.cornerCount(e);
        for (int k = 0; k < sides; k++) {
            int n = mesh.elementNodes()[4 * e + k];
            used[n] = true;
            for (int i = 0; i < 3; i++) {
                normals[3 * n + i] += mesh.cornerNormals()[12 * e + 3 * k + i];
            }
            for (int m = k + 1; m < sides; m++) {
                int other = mesh.elementNodes()[4 * e + m];
                beside.computeIfAbsent(n, x -> new ArrayList<>(8)).add(other);
                beside.computeIfAbsent(other, x -> new ArrayList<>(8)).add(n);
            }
        }
    }

    /** How far each undercut point is reached over, the lowest first. */
    private void follow() {
        double[] along = new double[mesh.nodeCount()];
        List<Integer> order = new ArrayList<>();
        for (int n = 0; n < used.length; n++) {
            if (used[n]) {
                double l = Math.sqrt(normals[3 * n] * normals[3 * n]
                        + normals[3 * n + 1] * normals[3 * n + 1]
                        + normals[3 * n + 2] * normals[3 * n + 2]);
                for (int i = 3 * n; i < 3 * n + 3; i++) {
                    normals[i] /= l;
                    along[n] += mesh.nodes()[i] * pull[i % 3];
                }
                if (draft(n) < -Draft.UPRIGHT) {
                    order.add(n);
                }
            }
        }
        order.sort(Comparator.comparingDouble(n -> along[n]));
        for (int n : order) {
            int below = -1;
            double steepest = 0.05;
            double apart = 0;
            for (int m : beside.get(n)) {
                double d = distance(n, m);
                double steep = (along[n] - along[m]) / Math.max(d, 1e-12);
                if (steep > steepest) {
                    steepest = steep;
                    below = m;
                    apart = d;
                }
            }
            if (below < 0) {
                continue;
            }
            double[] aside = aside(n, below);
            double over = 0;
            for (int i = 0; i < 3; i++) {
                over += aside[i] * (mesh.nodes()[3 * below + i] - mesh.nodes()[3 * n + i]);
            }
            if (draft(below) < -Draft.UPRIGHT) {
                hook[n] = Math.max(0, hook[below] + over);
                height[n] = height[below] + along[n] - along[below];
            } else {
                // Upright somewhere between the two: on the arc that turns from one draft to the other.
                double turn = draft(below) - draft(n);
                double radius = apart / (2 * Math.sin(Math.min(turn, Math.PI) / 2));
                hook[n] = radius * (1 - Math.cos(draft(n)));
                height[n] = Math.min(along[n] - along[below], radius * Math.sin(-draft(n)));
            }
        }
    }

    private double draft(int n) {
        double d = normals[3 * n] * pull[0] + normals[3 * n + 1] * pull[1] + normals[3 * n + 2] * pull[2];
        return Math.asin(Math.clamp(-d, -1.0, 1.0));
    }

    private double distance(int a, int b) {
        double sum = 0;
        for (int i = 0; i < 3; i++) {
            double d = mesh.nodes()[3 * a + i] - mesh.nodes()[3 * b + i];
            sum += d * d;
        }
        return Math.sqrt(sum);
    }

    /** The mean normal of two points, square to the pull, of unit length. */
    private double[] aside(int a, int b) {
        double[] h = new double[3];
        double along = 0;
        for (int i = 0; i < 3; i++) {
            h[i] = normals[3 * a + i] + normals[3 * b + i];
            along += h[i] * pull[i];
        }
        double sum = 0;
        for (int i = 0; i < 3; i++) {
            h[i] -= along * pull[i];
            sum += h[i] * h[i];
        }
        for (int i = 0; i < 3 && sum > 0; i++) {
            h[i] /= Math.sqrt(sum);
        }
        return h;
    }

    private List<Draft.Undercut> places(List<Integer> bad, List<SplitLines.Edge> edges) {
        Map<Integer, String> edgeAt = new HashMap<>();
        edges.forEach(edge -> {
            edgeAt.put(edge.from(), edge.beside());
            edgeAt.put(edge.to(), edge.beside());
        });
        Map<Integer, List<Integer>> byNode = new HashMap<>();
        for (int e : bad) {
            for (int k = 0; k < mesh.cornerCount(e); k++) {
                byNode.computeIfAbsent(mesh.elementNodes()[4 * e + k], n -> new ArrayList<>())
                        .add(e);
            }
        }
        Map<Integer, Boolean> left = new LinkedHashMap<>();
        bad.forEach(e -> left.put(e, true));
        List<Draft.Undercut> places = new ArrayList<>();
        for (int first : bad) {
            if (left.remove(first) != null) {
                places.add(place(first, left, byNode, edgeAt));
            }
        }
        places.sort(Comparator.comparingDouble(p -> -p.area()));
        return places;
    }

    private Draft.Undercut place(
            int first, Map<Integer, Boolean> left, Map<Integer, List<Integer>> byNode, Map<Integer, String> edgeAt) {
        ArrayDeque<Integer> queue = new ArrayDeque<>(List.of(first));
        Map<String, Double> parts = new LinkedHashMap<>();
        Map<String, Integer> sides = new LinkedHashMap<>();
        double from = Double.POSITIVE_INFINITY;
        double to = Double.NEGATIVE_INFINITY;
        double worst = 0;
        double area = 0;
        double reach = 0;
        double tall = 0;
        while (!queue.isEmpty()) {
            int e = queue.poll();
            double[] corners = corners(e);
            double share = mesh.area(e) * below(corners, -Draft.UPRIGHT);
            area += share;
            Region region = mesh.region(e);
            parts.merge(region.part() + (region.mirrored() ? " L" : " R"), mesh.area(e), Double::sum);
            for (int k = 0; k < mesh.cornerCount(e); k++) {
                int n = mesh.elementNodes()[4 * e + k];
                from = Math.min(from, mesh.nodes()[3 * n]);
                to = Math.max(to, mesh.nodes()[3 * n]);
                worst = Math.min(worst, corners[k]);
                reach = Math.max(reach, hook[n]);
                tall = Math.max(tall, height[n]);
                if (draft(n) < -Draft.UPRIGHT && edgeAt.containsKey(n)) {
                    sides.merge(edgeAt.get(n), 1, Integer::sum);
                }
                for (int next : byNode.get(n)) {
                    if (left.remove(next) != null) {
                        queue.add(next);
                    }
                }
            }
        }
        return new Draft.Undercut(most(parts), from, to, worst, area, reach, tall, most(sides));
    }

    private static <N extends Number> String most(Map<String, N> weights) {
        return weights.entrySet().stream()
                .max(Comparator.comparingDouble(e -> e.getValue().doubleValue()))
                .map(Map.Entry::getKey)
                .orElse("");
    }
}
