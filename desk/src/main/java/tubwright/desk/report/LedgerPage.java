// SPDX-License-Identifier: Apache-2.0
package tubwright.desk.report;

import static tubwright.desk.report.Html.escape;
import static tubwright.desk.text.Figures.NARROW_SPACE;
import static tubwright.desk.text.Figures.fixed;
import static tubwright.desk.text.Figures.significant;

import java.util.Base64;
import java.util.List;
import java.util.Optional;
import tubwright.desk.answer.LedgerAnswer;
import tubwright.desk.answer.StiffnessUnit;
import tubwright.desk.picture.EnergyScale;
import tubwright.desk.picture.Png;
import tubwright.desk.picture.TubPicture;
import tubwright.desk.picture.TubPicture.Picture;
import tubwright.desk.picture.View.From;
import tubwright.engine.trim.Guard;
import tubwright.engine.trim.Ledger;
import tubwright.engine.trim.LedgerEntry;

/** The ledger as one page of HTML: the tub coloured by stiffness per kilogram, and every entry. */
public final class LedgerPage {
    private final LedgerAnswer answer;
    private final EnergyScale scale;
    private final TubPicture painter;

    private LedgerPage(LedgerAnswer answer) {
        this.answer = answer;
        scale = EnergyScale.of(answer.mesh(), answer.worth());
        painter = new TubPicture(answer.mesh());
    }

    /** The whole page. */
    public static String write(LedgerAnswer answer) {
        return new LedgerPage(answer).page();
    }

    /** The leading picture by itself, as a PNG file. */
    public static byte[] picture(LedgerAnswer answer) {
        return Png.encode(new LedgerPage(answer)
                .paint(From.THREE_QUARTER_FRONT, false, 1280)
                .image());
    }

    private Picture paint(From from, boolean cut, int width) {
        return painter.energy(answer.worth(), scale, from, cut, width);
    }

    private String page() {
        return Note.page(
                answer.tub() + ": ply ledger",
                head(),
                List.of(
                        new Section(
                                "Stiffness for each kilogram",
                                "What the tub would lose for each kilogram were a spot's laminate thinned evenly. Pale skin is"
                                        + " where weight comes back cheaply.",
                                pictures()),
                        new Section(
                                "The ledger",
                                "Cheapest first. Each row gives up one ply, half of a thin core or "
                                        + fixed(1000 * Ledger.CORE_STEP, 0, "")
                                        + " mm of a thick one, or half of a joint's stiffness, and is solved anew. Lost is"
                                        + " negative where the tub gains: a thinner core lets the inner skin stand further out."
                                        + " The bracket is what the nominal solution proves without a new one. Rows do not"
                                        + " simply add up; ask what-if for several at once.",
                                table())),
                "");
    }

    private String head() {
        StiffnessUnit unit = answer.unit();
        StringBuilder cells = new StringBuilder();
        Note.cell(cells, "computed", answer.stamp());
        Note.cell(cells, "with", "Tubwright " + answer.version());
        Note.cell(cells, "variant", answer.variant());
        Note.cell(cells, "case", answer.loading());
        Note.cell(cells, "stiffness", stiffness(answer.ledger().stiffness()) + " " + unit.text());
        Note.cell(cells, "between sections", stiffness(answer.ledger().sectionStiffness()) + " " + unit.text());
        Note.cell(cells, "mass", significant(answer.ledger().mass(), 4, NARROW_SPACE) + " kg");
        return "<header><div class=\"name\"><p class=\"kicker\">Ply ledger</p><h1>" + escape(answer.tub())
                + "</h1><p>Stiffness is counted between loaded and held hardpoints, with their inserts and the skin around"
                + " them; read between skin sections the tub is stiffer.</p></div><dl class=\"block\">" + cells
                + "</dl></header>\n";
    }

    private String stiffness(double si) {
        return significant(answer.unit().of(si), 5, NARROW_SPACE);
    }

    private String pictures() {
        double factor = answer.unit().of(1);
        // The scale is logarithmic, so another unit only renames its ticks.
        EnergyScale shown = new EnergyScale(factor * scale.low(), factor * scale.high());
        return figure(paint(From.THREE_QUARTER_FRONT, false, 1280), "The tub coloured by stiffness per kilogram", "")
                + TwistSections.scaleBar(
                        shown,
                        "Colour scale of stiffness per kilogram",
                        answer.unit().text() + " per kg")
                + figure(
                        paint(From.INTO_THE_CUT, true, 1160),
                        "Cut along the middle",
                        "Cut along its middle plane: right half with the walls.");
    }

    private static String figure(Picture picture, String label, String caption) {
        String uri = "data:image/png;base64," + Base64.getEncoder().encodeToString(Png.encode(picture.image()));
        return TwistSections.figure(new Gallery.Plate(picture, uri), "plate", label, caption);
    }

    private String table() {
        StiffnessUnit unit = answer.unit();
        StringBuilder rows = new StringBuilder();
        for (LedgerEntry e : answer.ledger().entries()) {
            double stiffness = answer.ledger().stiffness();
            rows.append("<tr><td>")
                    .append(escape(LedgerAnswer.place(e)))
                    .append("</td><td>")
                    .append(escape(LedgerAnswer.words(e)))
                    .append("</td>");
            number(rows, e.mass() > 0 ? significant(1000 * e.mass(), 3, NARROW_SPACE) : "");
            number(rows, significant(unit.of(e.lost()), 3, NARROW_SPACE));
            number(rows, e.mass() > 0 ? fixed(unit.of(e.lostPerKilogram()), 0, NARROW_SPACE) : "");
            if (!answer.ledger().watched().isEmpty()) {
                guard(rows, e.lowestReserve());
                guard(rows, e.lowestBuckling());
            }
            number(
                    rows,
                    significant(unit.of(stiffness - e.firstOrder().high()), 3, NARROW_SPACE) + " … "
                            + significant(unit.of(stiffness - e.firstOrder().low()), 3, NARROW_SPACE));
            rows.append("</tr>");
        }
        String guards = answer.ledger().watched().isEmpty()
                ? ""
                : "<th class=\"n\">reserve factor</th><th class=\"n\">buckling</th>";
        return "<table class=\"tight\"><thead><tr><th>Where</th><th>Given up</th><th class=\"n\">g</th><th class=\"n\">lost, "
                + unit.text() + "</th><th class=\"n\">per kg</th>" + guards
                + "<th class=\"n\">bracket</th></tr></thead><tbody>"
                + rows
                + "</tbody></table>";
    }

    private static void guard(StringBuilder rows, Optional<Guard> guard) {
        rows.append("<td class=\"n\" title=\"")
                .append(escape(guard.map(g -> g.load() + ": " + g.what()).orElse("")))
                .append("\">")
                .append(escape(LedgerAnswer.factors(guard)))
                .append("</td>");
    }

    private static void number(StringBuilder rows, String text) {
        rows.append("<td class=\"n\">").append(text).append("</td>");
    }
}
