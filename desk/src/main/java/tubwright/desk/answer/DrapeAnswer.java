// SPDX-License-Identifier: Apache-2.0
package tubwright.desk.answer;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import tubwright.desk.text.Figures;
import tubwright.engine.make.lay.DrapedPly;
import tubwright.engine.make.lay.DrapedStiffness;
import tubwright.engine.make.lay.LaidTub;
import tubwright.engine.make.ply.LaidPly;

/**
 * Every ply of a tub laid, and what that costs.
 *
 * @param tub name
 * @param variant name
 * @param laid the plies
 * @param stiffness with the true fibres; empty where it was not asked for or there is no torsion case
 * @param seconds the laying took
 * @param stamp time
 * @param version of the program
 */
public record DrapeAnswer(
        String tub,
        String variant,
        LaidTub laid,
        Optional<DrapedStiffness> stiffness,
        double seconds,
        String stamp,
        String version) {

    /** Plies that pass a limit. */
    public List<DrapedPly> passing() {
        return laid.plies().stream().filter(p -> !p.advice().isEmpty()).toList();
    }

    /** What would help, plies with the same advice told together. */
    public List<String> advice() {
        Map<String, List<String>> byText = new LinkedHashMap<>();
        passing()
                .forEach(p -> p.advice()
                        .forEach(a -> byText.computeIfAbsent(a, k -> new ArrayList<>())
                                .add(p.ply().name())));
        return byText.entrySet().stream()
                .map(e -> String.join(", ", e.getValue()) + ": " + e.getKey())
                .toList();
    }

    /** What a ply is, in words: {@code "45° pw-t650-976"}; film and core without an angle that means anything. */
    public static String words(LaidPly ply) {
        return switch (ply.role()) {
            case PLY ->
                Math.round(Math.toDegrees(ply.angle())) + "° " + ply.material().name();
            case CORE -> ply.material().name() + " " + Figures.significant(1e3 * ply.thickness(), 3, "") + " mm";
            default -> ply.material().name();
        };
    }

    /** The limits cloth was held against and where they come from, one line each material. */
    public List<String> limits() {
        return laid.plies().stream()
                .filter(p -> p.ply().cloth() || p.ply().tape())
                .map(p -> p.ply().cloth()
                        ? p.ply().material().name() + ": care from "
                                + degrees(p.limits().warning()) + ", locks at "
                                + degrees(p.limits().locking()) + " ("
                                + p.limits().provenance().get(1).source() + ", "
                                + p.limits().provenance().get(1).trust().mark() + ")"
                        : p.ply().material().name() + ": edge strain of steered tape "
                                + Figures.significant(100 * p.limits().strain(), 2, "") + " % ("
                                + p.limits().provenance().get(2).source() + ", "
                                + p.limits().provenance().get(2).trust().mark() + ")")
                .distinct()
                .toList();
    }

    /** An angle in degrees with one digit after the point. */
    public static String degrees(double radians) {
        return Figures.fixed(Math.toDegrees(radians), 1, "") + "°";
    }

    /** The cost in words, for people. */
    public String cost(String gap) {
        return stiffness
                .map(s -> "Torsional stiffness with every ply at its nominal angle "
                        + Figures.significant(s.nominal() * Math.PI / 180e3, 4, gap)
                        + " kN·m/deg, with the fibres where they come to lie "
                        + Figures.significant(s.draped() * Math.PI / 180e3, 4, gap) + " kN·m/deg: draping "
                        + (s.cost() >= 0 ? "costs " : "gives ")
                        + Figures.fixed(Math.abs(100 * s.cost()), 1, "") + " %.")
                .orElse("What draping does to the torsional stiffness was not computed.");
    }
}
