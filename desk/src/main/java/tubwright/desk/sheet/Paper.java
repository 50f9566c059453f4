// SPDX-License-Identifier: Apache-2.0
package tubwright.desk.sheet;

import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.util.ArrayList;
import java.util.List;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.apache.pdfbox.pdmodel.PDPage;
import org.apache.pdfbox.pdmodel.PDPageContentStream;
import org.apache.pdfbox.pdmodel.common.PDRectangle;
import org.apache.pdfbox.pdmodel.font.PDFont;
import org.apache.pdfbox.pdmodel.font.PDType1Font;
import org.apache.pdfbox.pdmodel.font.Standard14Fonts;
import org.apache.pdfbox.pdmodel.graphics.image.PDImageXObject;

/**
 * A4 pages written from the top down: headings, paragraphs, tables and drawings, with a foot on each page. The same
 * content gives the same bytes.
 */
final class Paper implements AutoCloseable {
    static final float MARGIN = 48;
    static final float WIDTH = PDRectangle.A4.getWidth() - 2 * MARGIN;
    private static final float BOTTOM = 60;
    private static final PDFont PLAIN = new PDType1Font(Standard14Fonts.FontName.HELVETICA);
    private static final PDFont BOLD = new PDType1Font(Standard14Fonts.FontName.HELVETICA_BOLD);

    private final PDDocument document = new PDDocument();
    private final String foot;
    private final String caution;
    private PDPageContentStream content;
    private float y;
    private int pages;

    /**
     * @param title of the document
     * @param foot line at the bottom of each page: issue, date, fingerprint
     */
    Paper(String title, String foot) {
        this(title, foot, "");
    }

    /**
     * @param title of the document
     * @param foot line at the bottom of each page: issue, date, fingerprint
     * @param caution below it on each page
     */
    Paper(String title, String foot, String caution) {
        this.foot = foot;
        this.caution = caution;
        document.getDocumentInformation().setTitle(title);
        document.getDocumentInformation().setCreator("Tubwright");
        // Without a seed of our own the file would carry the time it was made.
        document.setDocumentId((long) (title + foot).hashCode());
        page();
    }

    /** Begins a new page. */
    void page() {
        run(() -> {
            if (content != null) {
                content.close();
            }
            PDPage page = new PDPage(PDRectangle.A4);
            document.addPage(page);
            content = new PDPageContentStream(document, page);
            y = PDRectangle.A4.getHeight() - MARGIN;
            pages++;
            text(PLAIN, 7.5f, MARGIN, 36, foot);
            text(PLAIN, 7.5f, MARGIN + WIDTH - 30, 36, "page " + pages);
            text(BOLD, fitted(BOLD, 7.5f, caution, WIDTH), MARGIN, 24, caution);
        });
    }

    /** The next line begins this far from the bottom, points. */
    float place() {
        return y;
    }

    /** Leaves room for a drawing of this height and says where its lower edge lies, points. */
    float room(float height) {
        need(height);
        y -= height;
        return y;
    }

    void title(String words) {
        y -= 20;
        run(() -> text(BOLD, 18, MARGIN, y, words));
        y -= 10;
    }

    void heading(String words) {
        need(60);
        y -= 20;
        run(() -> text(BOLD, 11.5f, MARGIN, y, words));
        y -= 5;
    }

    void paragraph(String words) {
        for (String line : wrapped(words, PLAIN, 9.5f, WIDTH)) {
            need(14);
            y -= 13;
            run(() -> text(PLAIN, 9.5f, MARGIN, y, line));
        }
        y -= 3;
    }

    /**
     * A table; the first row is its head, repeated on each page it runs over.
     *
     * @param shares of the width for each column
     * @param rows cells; an empty cell is a box to write in
     * @param height of a row, points
     */
    void table(float[] shares, List<List<String>> rows, float height) {
        boolean first = true;
        for (int r = 0; r < rows.size(); r++) {
            if (y - height < BOTTOM || first) {
                if (!first || y - 2 * height < BOTTOM) {
                    page();
                }
                row(shares, rows.getFirst(), height, true);
                first = false;
                if (r == 0) {
                    continue;
                }
            }
            row(shares, rows.get(r), height, false);
        }
        y -= 6;
    }

    private void row(float[] shares, List<String> cells, float height, boolean head) {
        y -= height;
        float[] x = {MARGIN};
        run(() -> {
            for (int c = 0; c < cells.size(); c++) {
                float width = shares[c] * WIDTH;
                if (head) {
                    content.setNonStrokingColor(0.92f, 0.93f, 0.94f);
                    content.addRect(x[0], y, width, height);
                    content.fill();
                }
                content.setStrokingColor(0.6f, 0.6f, 0.6f);
                content.setLineWidth(0.4f);
                content.addRect(x[0], y, width, height);
                content.stroke();
                float size = fitted(head ? BOLD : PLAIN, 8.2f, cells.get(c), width - 6);
                text(head ? BOLD : PLAIN, size, x[0] + 3, y + height / 2 - size / 3, cells.get(c));
                x[0] += width;
            }
        });
    }

    /** A picture (PNG) as wide as the text. */
    void picture(byte[] png, int pixelsWide, int pixelsHigh) {
        float height = WIDTH * pixelsHigh / pixelsWide;
        float bottom = room(height + 8) + 4;
        run(() -> content.drawImage(
                PDImageXObject.createFromByteArray(document, png, "picture"), MARGIN, bottom, WIDTH, height));
    }

    /** A line in a drawing, points; grey from 0 (black) to 1. */
    void line(float x1, float y1, float x2, float y2, float width, float grey) {
        run(() -> {
            content.setStrokingColor(grey, grey, grey);
            content.setLineWidth(width);
            content.moveTo(x1, y1);
            content.lineTo(x2, y2);
            content.stroke();
        });
    }

    /** A filled dot in a drawing. */
    void dot(float x, float at, float radius) {
        run(() -> {
            float k = 0.5523f * radius;
            content.setNonStrokingColor(0.1f, 0.1f, 0.1f);
            content.moveTo(x + radius, at);
            content.curveTo(x + radius, at + k, x + k, at + radius, x, at + radius);
            content.curveTo(x - k, at + radius, x - radius, at + k, x - radius, at);
            content.curveTo(x - radius, at - k, x - k, at - radius, x, at - radius);
            content.curveTo(x + k, at - radius, x + radius, at - k, x + radius, at);
            content.fill();
        });
    }

    /** Words in a drawing, centred on x. */
    void label(float x, float at, String words) {
        run(() -> text(PLAIN, 7.5f, x - width(PLAIN, 7.5f, words) / 2, at, words));
    }

    /** The finished file. */
    byte[] done() {
        ByteArrayOutputStream bytes = new ByteArrayOutputStream();
        run(() -> {
            content.close();
            content = null;
            document.save(bytes);
        });
        return bytes.toByteArray();
    }

    @Override
    public void close() {
        run(() -> {
            if (content != null) {
                content.close();
            }
            document.close();
        });
    }

    private void need(float height) {
        if (y - height < BOTTOM) {
            page();
        }
    }

    private void text(PDFont font, float size, float x, float at, String words) throws IOException {
        content.setNonStrokingColor(0.1f, 0.1f, 0.1f);
        content.beginText();
        content.setFont(font, size);
        content.newLineAtOffset(x, at);
        content.showText(printable(words));
        content.endText();
    }

    /** The letters the standard PDF fonts have (Windows-1252): what they lack is said with what they have. */
    static String printable(String words) {
        StringBuilder result = new StringBuilder();
        for (char c : words.toCharArray()) {
            switch (c) {
                case '−' -> result.append('-');
                case '\u202f', '\u2009', '\n', '\t' -> result.append(' ');
                case '≥' -> result.append(">=");
                case '≤' -> result.append("<=");
                case 'θ' -> result.append("angle");
                default -> result.append(c < 256 || "–—‘’“”•…€".indexOf(c) >= 0 ? c : '?');
            }
        }
        return result.toString();
    }

    private static List<String> wrapped(String words, PDFont font, float size, float width) {
        List<String> lines = new ArrayList<>();
        String line = "";
        for (String word : words.split(" ")) {
            String longer = line.isEmpty() ? word : line + " " + word;
            if (width(font, size, longer) > width && !line.isEmpty()) {
                lines.add(line);
                line = word;
            } else {
                line = longer;
            }
        }
        lines.add(line);
        return lines;
    }

    private static float fitted(PDFont font, float size, String words, float width) {
        float wide = width(font, size, words);
        return wide <= width ? size : Math.max(5, size * width / wide);
    }

    private static float width(PDFont font, float size, String words) {
        try {
            return font.getStringWidth(printable(words)) / 1000 * size;
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    private interface Writing {
        void run() throws IOException;
    }

    private static void run(Writing writing) {
        try {
            writing.run();
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }
}
