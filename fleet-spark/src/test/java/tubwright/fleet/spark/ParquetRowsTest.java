// SPDX-License-Identifier: Apache-2.0
package tubwright.fleet.spark;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;

import java.nio.ByteBuffer;
import java.nio.charset.StandardCharsets;
import java.util.List;
import java.util.Random;
import org.junit.jupiter.api.Test;
import tubwright.fleet.Row;

/** Rows on their way back. */
class ParquetRowsTest {
    private static final List<String> READINGS = List.of("mass", "torsional stiffness", "lightest mass at 11 kN·m/deg");

    @Test
    void everyNumberComesBackToTheBitAndEveryReasonToTheLetter() {
        long seed = 20_261_126;
        System.out.println("seed " + seed);
        Random random = new Random(seed);
        List<Row> rows = new java.util.ArrayList<>();
        for (int i = 0; i < 300; i++) {
            double[] values = random.doubles(3)
                    .map(x -> (x - 0.5) * Math.pow(10, random.nextInt(600) - 300))
                    .toArray();
            values[0] = i == 7 ? Double.MIN_VALUE : i == 8 ? -0.0 : values[0];
            rows.add(
                    i % 10 == 3
                            ? Row.failed("k" + i, READINGS, "line 3: größer als\n\t2 mm")
                            : Row.done("k" + i, READINGS, values));
        }
        assertEquals(rows, ParquetRows.read(ParquetRows.write(READINGS, rows)));
        assertEquals(List.of(), ParquetRows.read(ParquetRows.write(READINGS, List.of())));
    }

    /** Apache Parquet format: a file begins and ends with these four letters, the length of the footer before the last. */
    @Test
    void itIsTheFormatThatOthersRead() {
        byte[] file = ParquetRows.write(READINGS, List.of(Row.done("k", READINGS, new double[] {1, 2, 3})));
        assertEquals("PAR1", new String(file, 0, 4, StandardCharsets.US_ASCII));
        assertEquals("PAR1", new String(file, file.length - 4, 4, StandardCharsets.US_ASCII));
        int footer = ByteBuffer.wrap(file, file.length - 8, 4)
                .order(java.nio.ByteOrder.LITTLE_ENDIAN)
                .getInt();
        assertEquals(true, footer > 0 && footer < file.length - 12);
        assertThrows(RuntimeException.class, () -> ParquetRows.read(new byte[20]));
    }
}
