// SPDX-License-Identifier: Apache-2.0
package tubwright.desk.answer;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.stream.Stream;
import tubwright.engine.make.kit.CutPiece;
import tubwright.engine.make.kit.KitNest;
import tubwright.engine.make.kit.PlyMass;
import tubwright.engine.make.kit.ShopData;
import tubwright.engine.make.lay.DrapedPly;
import tubwright.engine.make.lay.LaidTub;
import tubwright.engine.material.Material;

/**
 * What an outside shop needs to quote for the parts of a tub and to lay them up.
 *
 * @param tub name
 * @param variant name
 * @param issue letter or number of this issue
 * @param date of this issue, as the user wrote it
 * @param fingerprint of the design's text: the first sixteen digits of its SHA-256
 * @param laid every ply on its mould
 * @param shop rolls that patterns are cut from
 * @param pieces what is cut, those of a spliced ply one after the other
 * @param kits where they lie, a kit for each piece and material
 * @param build from pattern to delivery
 * @param structuralMass of the laminates in the structural model, kg
 * @param version of the program
 */
public record PackAnswer(
        String tub,
        String variant,
        String issue,
        String date,
        String fingerprint,
        LaidTub laid,
        ShopData shop,
        List<CutPiece> pieces,
        List<KitNest> kits,
        BuildAnswer build,
        double structuralMass,
        String version) {
    public PackAnswer {
        pieces = List.copyOf(pieces);
        kits = List.copyOf(kits);
    }

    /** Plies of each piece in the order of laying. */
    public Map<String, List<DrapedPly>> byPiece() {
        Map<String, List<DrapedPly>> byPiece = new LinkedHashMap<>();
        laid.plies()
                .forEach(p -> byPiece.computeIfAbsent(p.ply().piece(), k -> new ArrayList<>())
                        .add(p));
        return byPiece;
    }

    /** What a ply is cut as; nothing where it has no pattern. */
    public List<CutPiece> cut(DrapedPly ply) {
        return pieces.stream().filter(c -> c.ply() == ply).toList();
    }

    /** Mass of all plies as laid, kg. */
    public double massLaid() {
        return laid.plies().stream().mapToDouble(PackAnswer::mass).sum();
    }

    /** Mass of a ply as laid, overlaps of splices not counted, kg. */
    public static double mass(DrapedPly ply) {
        return PlyMass.mass(ply.ply(), ply.figures().area());
    }

    /** Plies without a pattern or with one that no nest holds: too small, out of reach, overlapping themselves. */
    public List<String> left() {
        return Stream.concat(
                        laid.plies().stream()
                                .filter(p -> cut(p).isEmpty())
                                .map(p -> "'" + p.ply().name() + "' has no pattern: cut it to fit"),
                        kits.stream().flatMap(k -> k.left().stream()))
                .toList();
    }

    /** Pieces beyond one a ply. */
    public long splices() {
        return pieces.stream().filter(p -> p.part() > 1).count();
    }

    /**
     * What is laid, cut and bought of one material, one tub.
     *
     * @param material which
     * @param pieces cut
     * @param areaLaid m²
     * @param massLaid kg
     * @param roll length used, m
     * @param bought mass of that, kg
     * @param used share of the roll that patterns cover
     */
    public record OfMaterial(
            Material material, int pieces, double areaLaid, double massLaid, double roll, double bought, double used) {}

    /** By material, in the order they are first laid. */
    public List<OfMaterial> materials() {
        Map<Material, List<DrapedPly>> plies = new LinkedHashMap<>();
        laid.plies()
                .forEach(p -> plies.computeIfAbsent(p.ply().material(), k -> new ArrayList<>())
                        .add(p));
        return plies.entrySet().stream()
                .map(e -> {
                    List<KitNest> own = kits.stream()
                            .filter(k -> k.material().equals(e.getKey()))
                            .toList();
                    double bought = own.stream().mapToDouble(KitNest::bought).sum();
                    return new OfMaterial(
                            e.getKey(),
                            (int) pieces.stream()
                                    .filter(c -> c.ply().ply().material().equals(e.getKey()))
                                    .count(),
                            e.getValue().stream()
                                    .mapToDouble(p -> p.figures().area())
                                    .sum(),
                            e.getValue().stream().mapToDouble(PackAnswer::mass).sum(),
                            own.stream()
                                    .mapToDouble(
                                            k -> k.nest().map(n -> n.length()).orElse(0.0))
                                    .sum(),
                            bought,
                            bought > 0 ? own.stream().mapToDouble(KitNest::used).sum() / bought : 0);
                })
                .toList();
    }

    /** Foot of every sheet. */
    public String foot() {
        return tub + ", " + variant + " · issue " + issue + " · " + date
                + " · mm, kg, °C unless said otherwise · design " + fingerprint;
    }
}
