// SPDX-License-Identifier: Apache-2.0
package tubwright.desk.export;

import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.LocalDateTime;
import java.util.List;
import java.util.zip.ZipEntry;
import java.util.zip.ZipFile;
import java.util.zip.ZipOutputStream;
import org.dhatim.fastexcel.Position;
import org.dhatim.fastexcel.Workbook;
import org.dhatim.fastexcel.Worksheet;

/** Lists as a workbook (Office Open XML, ISO/IEC 29500): a sheet each, with a foot on every page. The same lists give the same bytes. */
final class ListBook {
    /** The first moment an archive of this kind can tell. */
    private static final LocalDateTime NO_TIME = LocalDateTime.of(1980, 1, 1, 0, 0);

    private static final double WIDEST = 46;

    private ListBook() {}

    /**
     * The file.
     *
     * @param foot of every sheet: issue, date, units, fingerprint; also its first row
     */
    static byte[] write(List<ListTable> tables, String foot) throws IOException {
        ByteArrayOutputStream bytes = new ByteArrayOutputStream();
        try (Workbook book = new Workbook(bytes, "Tubwright", "1.0")) {
            for (ListTable table : tables) {
                sheet(book.newWorksheet(table.name()), table, foot);
            }
        }
        return timeless(bytes.toByteArray());
    }

    private static void sheet(Worksheet sheet, ListTable table, String foot) {
        sheet.value(0, 0, table.name());
        sheet.style(0, 0).bold().fontSize(14).set();
        sheet.value(1, 0, foot);
        int head = 3;
        int columns = table.heads().size();
        double[] widths = new double[columns];
        for (int c = 0; c < columns; c++) {
            sheet.value(head, c, table.heads().get(c));
            widths[c] = table.heads().get(c).length();
        }
        sheet.range(head, 0, head, columns - 1)
                .style()
                .bold()
                .fillColor("EBEDF0")
                .wrapText(true)
                .set();
        for (int r = 0; r < table.rows().size(); r++) {
            for (int c = 0; c < columns; c++) {
                String cell = table.rows().get(r).get(c);
                widths[c] = Math.max(widths[c], cell.length());
                if (cell.matches("-?\\d{1,15}(\\.\\d+)?")) {
                    sheet.value(head + 1 + r, c, Double.parseDouble(cell));
                } else if (!cell.isEmpty()) {
                    sheet.value(head + 1 + r, c, cell);
                }
            }
        }
        for (int c = 0; c < columns; c++) {
            sheet.width(c, Math.min(WIDEST, widths[c] + 2));
        }
        sheet.freezePane(0, head + 1);
        sheet.repeatRows(head);
        sheet.pageOrientation("landscape");
        sheet.setFitToPage(true);
        sheet.fitToHeight((short) 0);
        sheet.footer(foot.replace("&", "&&"), Position.LEFT, 8);
    }

    /** The same archive without the hour at which it was made. */
    private static byte[] timeless(byte[] archive) throws IOException {
        // By its directory: the library's streamed sizes are not what a reader of streams expects.
        Path file = Files.createTempFile("tubwright", ".xlsx");
        ByteArrayOutputStream bytes = new ByteArrayOutputStream();
        try {
            Files.write(file, archive);
            try (ZipFile in = new ZipFile(file.toFile());
                    ZipOutputStream out = new ZipOutputStream(bytes)) {
                for (ZipEntry each : in.stream().toList()) {
                    ZipEntry entry = new ZipEntry(each.getName());
                    entry.setTimeLocal(NO_TIME);
                    out.putNextEntry(entry);
                    byte[] content = in.getInputStream(each).readAllBytes();
                    if (each.getName().equals("docProps/core.xml")) {
                        content = new String(content, StandardCharsets.UTF_8)
                                .replaceAll("<dcterms:created[^>]*>[^<]*</dcterms:created>", "")
                                .getBytes(StandardCharsets.UTF_8);
                    }
                    out.write(content);
                    out.closeEntry();
                }
            }
        } finally {
            Files.delete(file);
        }
        return bytes.toByteArray();
    }
}
