// SPDX-License-Identifier: Apache-2.0
package tubwright.desk.report;

import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.List;
import tubwright.desk.answer.RunAnswer;
import tubwright.engine.response.VariantAnswer;

/**
 * The engineering note: one page of HTML that needs nothing but itself, for reading on a screen or on paper. Well-formed
 * as XML too.
 */
public final class Note {
    /** No scripts, nothing loaded: the page carries its pictures and its looks. */
    static final String POLICY = "default-src 'none'; style-src 'unsafe-inline'; img-src data:";

    private Note() {}

    /** The whole page. */
    public static String write(RunAnswer answer) {
        Gallery gallery = Gallery.paint(answer);
        List<Section> sections = new ArrayList<>();
        sections.add(Summary.section(answer));
        sections.addAll(TwistSections.of(answer, gallery));
        sections.add(InstalledSection.of(answer));
        sections.add(ReserveSection.of(answer, gallery));
        sections.addAll(StabilitySection.of(answer, gallery));
        sections.addAll(MakeSections.of(answer, gallery));
        sections.addAll(TrustSections.of(answer));
        return page(answer.tub() + ": torsion note", head(answer), sections, StackDrawing.patterns());
    }

    /** A page of numbered sections below a title block. */
    static String page(String title, String head, List<Section> sections, String patterns) {
        StringBuilder page = new StringBuilder(1 << 20);
        page.append("<!DOCTYPE html>\n<html lang=\"en\" xmlns=\"http://www.w3.org/1999/xhtml\"><head>\n");
        page.append("<meta charset=\"utf-8\"/>\n<meta http-equiv=\"Content-Security-Policy\" content=\"")
                .append(POLICY)
                .append("\"/>\n<meta name=\"viewport\" content=\"width=device-width, initial-scale=1\"/>\n<title>");
        page.append(Html.escape(title)).append("</title>\n<style>");
        page.append(style()).append("</style>\n</head>\n<body>\n").append(patterns);
        page.append("<main>\n").append(head);
        int number = 1;
        for (Section section : sections) {
            if (section.body().isEmpty()) {
                continue;
            }
            page.append("<section><div class=\"margin\"><span class=\"number\">")
                    .append(number++)
                    .append("</span><h2>")
                    .append(Html.escape(section.title()))
                    .append("</h2>");
            if (!section.aside().isEmpty()) {
                page.append("<p>").append(Html.escape(section.aside())).append("</p>");
            }
            page.append("</div><div class=\"body\">").append(section.body()).append("</div></section>\n");
        }
        page.append("<footer><p>").append(Html.escape(RunAnswer.CAUTION)).append("</p></footer>\n");
        return page.append("</main>\n</body></html>\n").toString();
    }

    /** The title block, as on a drawing. */
    private static String head(RunAnswer answer) {
        VariantAnswer main = answer.main();
        StringBuilder cells = new StringBuilder();
        cell(cells, "computed", answer.stamp());
        cell(cells, "with", "Tubwright " + answer.version());
        cell(cells, "variants", Integer.toString(answer.variants().size()));
        int loads = main.reserves().loads().size();
        cell(cells, "cases", main.cases().size() + (loads == 0 ? "" : " of stiffness, " + loads + " of loads"));
        cell(
                cells,
                "mesh",
                tubwright.desk.text.Figures.fixed(main.mesh().elementCount(), 0, "\u202f") + " elements, "
                        + tubwright.desk.text.Figures.fixed(main.mesh().nodeCount(), 0, "\u202f") + " nodes");
        String about = answer.about().isEmpty() ? "" : "<p>" + Html.escape(answer.about()) + "</p>";
        return "<header><div class=\"name\"><p class=\"kicker\">Torsion note</p><h1>" + Html.escape(answer.tub())
                + "</h1>" + about + "</div><dl class=\"block\">" + cells + "</dl></header>\n";
    }

    static void cell(StringBuilder cells, String name, String value) {
        cells.append("<div><dt>")
                .append(name)
                .append("</dt><dd>")
                .append(Html.escape(value))
                .append("</dd></div>");
    }

    /** The style sheet of every page. */
    static String style() {
        try (InputStream in = Note.class.getResourceAsStream("note.css")) {
            return new String(in.readAllBytes(), StandardCharsets.UTF_8);
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }
}
