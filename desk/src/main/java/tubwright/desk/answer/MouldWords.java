// SPDX-License-Identifier: Apache-2.0
package tubwright.desk.answer;

import static tubwright.desk.text.Figures.fixed;

import java.util.ArrayList;
import java.util.List;
import java.util.stream.Collectors;
import tubwright.engine.make.mould.MouldAdvice;

/** Pieces and moulds in words and rows, as terminal, page and paper have them alike. */
public final class MouldWords {
    /** Heads of {@link #pieces}. */
    public static final List<String> PIECE_HEAD = List.of(
            "piece", "pull", "m²", "L × W × H mm", "develops to mm", "least draft", "little cm²", "undercut cm²");

    /** Heads of {@link #bends}. */
    public static final List<String> BEND_HEAD =
            List.of("piece", "between", "zone", "x mm", "turns", "radius mm", "inside mm", "open the mould by");

    /** Heads of {@link #factors}. */
    public static final List<String> FACTOR_HEAD = List.of("mould of", "1e-6/K", "cold over part", "on 1000 mm");

    /** Heads of {@link #tooling}. */
    public static final List<String> TOOLING_HEAD = List.of("piece", "what", "size mm", "kg", "how");

    private MouldWords() {}

    /** One row a piece. */
    public static List<List<String>> pieces(MouldAnswer answer, String gap) {
        List<List<String>> rows = new ArrayList<>();
        for (MouldAnswer.Piece p : answer.pieces()) {
            rows.add(List.of(
                    p.name(),
                    p.draft()
                            .map(d -> MouldAdvice.words(d.pull()) + (p.given() ? ", given" : ""))
                            .orElse("plate"),
                    fixed(p.area(), 3, gap),
                    size(p.size(), gap),
                    p.flat()
                            .map(f -> fixed(1e3 * f.length(), 0, gap) + " × " + fixed(1e3 * f.width(), 0, gap))
                            .orElse("flat"),
                    p.draft().map(d -> degrees(d.least())).orElse("–"),
                    p.draft().map(d -> fixed(1e4 * d.little(), 0, gap)).orElse("–"),
                    p.draft().map(d -> fixed(1e4 * d.under(), 0, gap)).orElse("–")));
        }
        return rows;
    }

    /** Where a piece ends, in one sentence; "" for a plate. */
    public static String edges(MouldAnswer.Piece piece) {
        return piece.edges().isEmpty()
                ? ""
                : piece.name() + ": "
                        + piece.edges().entrySet().stream()
                                .map(e -> switch (e.getKey()) {
                                    case "front end", "rear end" ->
                                        fixed(1e3 * e.getValue(), 0, " ") + " mm " + e.getKey();
                                    case "opening" -> fixed(1e3 * e.getValue(), 0, " ") + " mm round openings";
                                    default ->
                                        "split line of " + fixed(1e3 * e.getValue(), 0, " ") + " mm to " + e.getKey();
                                })
                                .collect(Collectors.joining(", "))
                        + ".";
    }

    /** One row a bend. */
    public static List<List<String>> bends(MouldAnswer answer, String gap) {
        List<List<String>> rows = new ArrayList<>();
        for (MouldAnswer.Bend b : answer.bends()) {
            rows.add(List.of(
                    b.piece(),
                    b.bend().between(),
                    b.bend().zone(),
                    fixed(1e3 * b.bend().from(), 0, gap) + " to "
                            + fixed(1e3 * b.bend().to(), 0, gap),
                    range(degrees(b.bend().least()), degrees(b.bend().most())),
                    range(fixed(1e3 * b.leastRadius(), 0, gap), fixed(1e3 * b.mostRadius(), 0, gap)),
                    fixed(1e3 * b.inside(), 1, gap),
                    Double.isNaN(b.bend().mostClosing())
                            ? "not known"
                            : range(
                                    fixed(Math.toDegrees(b.bend().leastClosing()), 2, "") + "°",
                                    fixed(Math.toDegrees(b.bend().mostClosing()), 2, "") + "°")));
        }
        return rows;
    }

    /** One row a mould material. */
    public static List<List<String>> factors(MouldAnswer answer, String gap) {
        return answer.factors().stream()
                .map(f -> List.of(
                        f.description(),
                        fixed(1e6 * f.expansion(), 1, gap),
                        fixed(f.factor(), 5, ""),
                        fixed(1000 * f.factor(), 2, gap)))
                .toList();
    }

    /** One row a tool. */
    public static List<List<String>> tooling(MouldAnswer answer, String gap) {
        return answer.tooling().stream()
                .map(t -> List.of(
                        t.piece().isEmpty() ? "whole tub" : t.piece(),
                        t.what(),
                        size(t.size(), gap),
                        Double.isNaN(t.mass()) ? "" : fixed(t.mass(), 1, gap),
                        t.note()))
                .toList();
    }

    /** What would help, each with its piece. */
    public static List<String> advice(MouldAnswer answer) {
        return answer.pieces().stream()
                .flatMap(p -> p.advice().stream().map(a -> p.name() + ": " + a))
                .toList();
    }

    private static String range(String a, String b) {
        return a.equals(b) ? a : a + " to " + b;
    }

    private static String size(double[] size, String gap) {
        return fixed(1e3 * size[0], 0, gap) + " × " + fixed(1e3 * size[1], 0, gap)
                + (size[2] < 5e-4 ? "" : " × " + fixed(1e3 * size[2], 0, gap));
    }

    private static String degrees(double angle) {
        return fixed(Math.toDegrees(angle), 1, "") + "°";
    }
}
