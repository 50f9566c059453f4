// SPDX-License-Identifier: Apache-2.0
package tubwright.engine.make.ply;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Set;
import java.util.TreeMap;
import tubwright.engine.laminate.Layer;
import tubwright.engine.laminate.LayerRole;
import tubwright.engine.make.surface.Neighbours;
import tubwright.engine.material.Ply;
import tubwright.engine.mesh.Mesh;
import tubwright.engine.mesh.Region;
import tubwright.engine.structure.Tub;

/**
 * Every cut piece of a tub's plies, films and cores. A ply runs through all neighbouring zones of its piece whose stacks
 * have it at the same place; over the centreline only where it means the same on both sides (a cloth at 0, 45 or 90
 * degrees, tape at 0 or 90). Metal sheet is no ply and is left out.
 *
 * @param mesh what the plies' elements are numbered in
 * @param plies piece by piece, in the order of laying
 */
public record PlyPlan(Mesh mesh, List<LaidPly> plies) {
    public PlyPlan {
        plies = List.copyOf(plies);
    }

    /** The plies of a tub on one of its meshes. */
    public static PlyPlan of(Tub tub, Mesh mesh) {
        Map<String, List<Integer>> byPiece = new LinkedHashMap<>();
        for (int e = 0; e < mesh.elementCount(); e++) {
            byPiece.computeIfAbsent(mesh.region(e).piece(), p -> new ArrayList<>())
                    .add(e);
        }
        int[] across = Neighbours.of(mesh);
        List<LaidPly> plies = new ArrayList<>();
        byPiece.forEach((piece, elements) -> new OnePiece(tub, mesh, across, piece, elements).into(plies));
        return new PlyPlan(mesh, plies);
    }

    /** The plies of one piece. */
    private static final class OnePiece {
        private final Tub tub;
        private final Mesh mesh;
        private final int[] across;
        private final String piece;
        private final List<Integer> elements;
        private int sequence;

        OnePiece(Tub tub, Mesh mesh, int[] across, String piece, List<Integer> elements) {
            this.tub = tub;
            this.mesh = mesh;
            this.across = across;
            this.piece = piece;
            this.elements = elements;
        }

        void into(List<LaidPly> plies) {
            Map<String, Double> areas = new TreeMap<>();
            Map<String, Set<Integer>> patches = new LinkedHashMap<>();
            for (int e : elements) {
                Region region = mesh.region(e);
                areas.merge(region.zone(), mesh.area(e), Double::sum);
                region.patches()
                        .forEach(p -> patches.computeIfAbsent(p, k -> new LinkedHashSet<>())
                                .add(e));
            }
            StackMerge merge = new StackMerge();
            areas.entrySet().stream()
                    .sorted(Map.Entry.<String, Double>comparingByValue(Comparator.reverseOrder()))
                    .forEach(zone -> merge.add(zone.getKey(), layers(zone.getKey())));
            for (StackMerge.Entry entry : merge.order()) {
                if (entry.layer().role() == LayerRole.SHEET) {
                    continue;
                }
                List<Integer> covered = elements.stream()
                        .filter(e -> entry.inZone().containsKey(mesh.region(e).zone()))
                        .toList();
                lay(plies, entry.layer(), "", covered, e -> {
                    String zone = mesh.region(e).zone();
                    return thickness(layers(zone).subList(0, entry.inZone().get(zone)));
                });
            }
            patches.forEach((patch, covered) -> {
                List<Layer> own = tub.patchPlies().getOrDefault(patch, List.of());
                for (int i = 0; i < own.size(); i++) {
                    int index = i;
                    lay(plies, own.get(i), patch, List.copyOf(covered), e -> {
                        Region region = mesh.region(e);
                        double depth = thickness(layers(region.zone())) + thickness(own.subList(0, index));
                        for (String before : region.patches()) {
                            if (before.equals(patch)) {
                                break;
                            }
                            depth += thickness(tub.patchPlies().getOrDefault(before, List.of()));
                        }
                        return depth;
                    });
                }
            });
        }

        private List<Layer> layers(String zone) {
            return tub.laminates().get(zone).layers();
        }

        private static double thickness(List<Layer> layers) {
            return layers.stream().mapToDouble(Layer::thickness).sum();
        }

        private interface Depth {
            double of(int element);
        }

        private void lay(List<LaidPly> plies, Layer layer, String patch, List<Integer> covered, Depth depth) {
            sequence++;
            List<int[]> parts = parts(covered, sameOnBothSides(layer));
            for (int i = 0; i < parts.size(); i++) {
                int[] part = parts.get(i);
                double[] depths = Arrays.stream(part).mapToDouble(depth::of).toArray();
                List<String> zones = Arrays.stream(part)
                        .mapToObj(e -> mesh.region(e).zone())
                        .distinct()
                        .toList();
                String suffix = parts.size() == 1 ? "" : " " + (char) ('a' + i % 26) + (i < 26 ? "" : "" + i / 26);
                plies.add(new LaidPly(
                        String.format(Locale.ROOT, "%s %02d%s", piece, sequence, suffix),
                        piece,
                        sequence,
                        layer.material(),
                        layer.thickness(),
                        layer.angle(),
                        layer.role(),
                        patch,
                        zones,
                        part,
                        depths));
            }
        }

        private static boolean sameOnBothSides(Layer layer) {
            if (!(layer.material() instanceof Ply ply)) {
                return true;
            }
            double period = ply.form() == Ply.Form.CLOTH ? Math.PI / 2 : Math.PI;
            return Math.abs(Math.IEEEremainder(2 * layer.angle(), period)) < 1e-6;
        }

        /** Connected parts, the one of the least element first. */
        private List<int[]> parts(List<Integer> covered, boolean overTheCentre) {
            Map<Integer, Boolean> left = new LinkedHashMap<>();
            covered.forEach(e -> left.put(e, true));
            List<int[]> parts = new ArrayList<>();
            for (int first : covered) {
                if (!left.containsKey(first)) {
                    continue;
                }
                left.remove(first);
                int[] part = new int[covered.size()];
                int count = 1;
                part[0] = first;
                for (int i = 0; i < count; i++) {
                    for (int k = 0; k < 4; k++) {
                        int next = across[4 * part[i] + k];
                        if (next >= 0
                                && left.containsKey(next)
                                && (overTheCentre
                                        || mesh.region(next).mirrored()
                                                == mesh.region(part[i]).mirrored())) {
                            left.remove(next);
                            part[count++] = next;
                        }
                    }
                }
                parts.add(Arrays.copyOf(part, count));
            }
            return parts;
        }
    }
}
