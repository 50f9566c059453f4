// SPDX-License-Identifier: Apache-2.0
package tubwright.fleet.spark;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import org.apache.parquet.ParquetReadOptions;
import org.apache.parquet.column.page.PageReadStore;
import org.apache.parquet.conf.PlainParquetConfiguration;
import org.apache.parquet.example.data.Group;
import org.apache.parquet.example.data.simple.SimpleGroup;
import org.apache.parquet.example.data.simple.convert.GroupRecordConverter;
import org.apache.parquet.hadoop.ParquetFileReader;
import org.apache.parquet.hadoop.ParquetWriter;
import org.apache.parquet.hadoop.example.ExampleParquetWriter;
import org.apache.parquet.hadoop.metadata.CompressionCodecName;
import org.apache.parquet.io.ColumnIOFactory;
import org.apache.parquet.io.MessageColumnIO;
import org.apache.parquet.io.RecordReader;
import org.apache.parquet.schema.LogicalTypeAnnotation;
import org.apache.parquet.schema.MessageType;
import org.apache.parquet.schema.PrimitiveType.PrimitiveTypeName;
import org.apache.parquet.schema.Types;
import tubwright.fleet.Row;

/**
 * Rows as a Parquet file in memory and back, every number to the bit. Columns: {@code key}, {@code reason} (only of a design
 * that failed), and {@code value_0}, {@code value_1}... in SI units; the footer's entry {@value #READINGS} names what these
 * are, one a line.
 */
final class ParquetRows {
    static final String READINGS = "tubwright.readings";
    private static final String KEY = "key";
    private static final String REASON = "reason";

    private ParquetRows() {}

    /**
     * Writes rows.
     *
     * @param readings of every row, in this order
     * @param rows none with other readings
     */
    static byte[] write(List<String> readings, List<Row> rows) {
        MessageType schema = schema(readings.size());
        MemoryFile file = new MemoryFile();
        try (ParquetWriter<Group> writer = ExampleParquetWriter.builder(file)
                .withType(schema)
                .withExtraMetaData(Map.of(READINGS, String.join("\n", readings)))
                .withConf(new PlainParquetConfiguration())
                .withCompressionCodec(CompressionCodecName.UNCOMPRESSED)
                .build()) {
            for (Row row : rows) {
                if (!row.readings().equals(readings)) {
                    throw new IllegalArgumentException("a row reads " + row.readings() + ", not " + readings);
                }
                Group group = new SimpleGroup(schema);
                group.add(KEY, row.key());
                row.reason().ifPresent(reason -> group.add(REASON, reason));
                double[] values = row.values();
                for (int i = 0; i < values.length; i++) {
                    group.add(column(i), values[i]);
                }
                writer.write(group);
            }
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
        return file.bytes();
    }

    /**
     * Reads rows.
     *
     * @throws IllegalArgumentException if these bytes are no such file
     */
    static List<Row> read(byte[] bytes) {
        List<Row> rows = new ArrayList<>();
        try (ParquetFileReader reader = ParquetFileReader.open(
                new MemoryFile(bytes),
                ParquetReadOptions.builder(new PlainParquetConfiguration()).build())) {
            String names = reader.getFileMetaData().getKeyValueMetaData().get(READINGS);
            if (names == null) {
                throw new IllegalArgumentException("a Parquet file without " + READINGS);
            }
            List<String> readings = names.isEmpty() ? List.of() : List.of(names.split("\n"));
            MessageType schema = reader.getFileMetaData().getSchema();
            MessageColumnIO columns = new ColumnIOFactory().getColumnIO(schema);
            for (PageReadStore pages = reader.readNextRowGroup(); pages != null; pages = reader.readNextRowGroup()) {
                RecordReader<Group> records = columns.getRecordReader(pages, new GroupRecordConverter(schema));
                for (long i = 0; i < pages.getRowCount(); i++) {
                    rows.add(row(records.read(), readings));
                }
            }
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
        return rows;
    }

    private static Row row(Group group, List<String> readings) {
        String key = group.getString(KEY, 0);
        if (group.getFieldRepetitionCount(REASON) > 0) {
            return Row.failed(key, readings, group.getString(REASON, 0));
        }
        double[] values = new double[readings.size()];
        for (int i = 0; i < values.length; i++) {
            values[i] = group.getDouble(column(i), 0);
        }
        return Row.done(key, readings, values);
    }

    private static String column(int reading) {
        return "value_" + reading;
    }

    private static MessageType schema(int readings) {
        Types.GroupBuilder<MessageType> builder = Types.buildMessage()
                .required(PrimitiveTypeName.BINARY)
                .as(LogicalTypeAnnotation.stringType())
                .named(KEY)
                .optional(PrimitiveTypeName.BINARY)
                .as(LogicalTypeAnnotation.stringType())
                .named(REASON);
        for (int i = 0; i < readings; i++) {
            builder = builder.optional(PrimitiveTypeName.DOUBLE).named(column(i));
        }
        return builder.named("row");
    }
}
