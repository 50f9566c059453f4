// SPDX-License-Identifier: Apache-2.0
package tubwright.fleet;

import java.io.IOException;
import java.nio.ByteBuffer;
import java.nio.channels.FileChannel;
import java.nio.channels.FileLock;
import java.nio.channels.OverlappingFileLockException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardOpenOption;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.HashMap;
import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.zip.CRC32;

/**
 * Rows by what they are the answer to, in one file that only grows: a line for each, closed with a check sum, so that what
 * a killed process or a full disk left half written is known for what it is and cut off. One process at a time.
 */
public final class RowStore implements AutoCloseable {
    /** How long a row may be written and not yet forced to the disk, ns. */
    private static final long UNFORCED = 200_000_000;

    /** The file's name. */
    public static final String FILE_NAME = "rows.tsv";

    private final Path file;
    private final FileChannel channel;
    private final FileLock lock;
    private final Map<String, Map<String, Double>> values = new HashMap<>();
    private final Map<String, List<Row>> failures = new HashMap<>();
    private long end;
    private long forced = System.nanoTime() - UNFORCED;

    private RowStore(Path file, FileChannel channel, FileLock lock) {
        this.file = file;
        this.channel = channel;
        this.lock = lock;
    }

    /**
     * Opens a store, or begins one.
     *
     * @param folder made if need be
     * @throws FleetException if it cannot be written or another process has it open
     */
    public static RowStore open(Path folder) {
        Path file = folder.resolve(FILE_NAME);
        FileChannel channel = null;
        try {
            Files.createDirectories(folder);
            channel = FileChannel.open(
                    file, StandardOpenOption.CREATE, StandardOpenOption.READ, StandardOpenOption.WRITE);
            FileLock lock = locked(channel, file);
            RowStore store = new RowStore(file, channel, lock);
            store.read();
            return store;
        } catch (IOException | RuntimeException broken) {
            closeQuietly(channel);
            if (broken instanceof FleetException told) {
                throw told;
            }
            throw new FleetException(
                    file + ": the rows cannot be read or written: " + broken.getMessage(),
                    "is there room, and may you write there?");
        }
    }

    private static FileLock locked(FileChannel channel, Path file) throws IOException {
        FileLock lock;
        try {
            lock = channel.tryLock();
        } catch (OverlappingFileLockException here) {
            lock = null;
        }
        if (lock == null) {
            throw new FleetException(
                    file + ": another study of this design is under way", "wait for it, or end it with Ctrl-C");
        }
        return lock;
    }

    private static void closeQuietly(FileChannel channel) {
        try {
            if (channel != null) {
                channel.close();
            }
        } catch (IOException e) {
            // The first fault is the one to tell.
        }
    }

    private void read() throws IOException {
        ByteBuffer whole = ByteBuffer.allocate(Math.toIntExact(channel.size()));
        while (whole.hasRemaining() && channel.read(whole) >= 0) {
            // until it is all there
        }
        byte[] bytes = Arrays.copyOf(whole.array(), whole.position());
        int from = 0;
        for (int i = 0; i < bytes.length; i++) {
            if (bytes[i] == '\n') {
                Optional<Row> row = checked(new String(bytes, from, i - from, StandardCharsets.UTF_8));
                from = i + 1;
                // A bad line among good ones is a fault of the disk: its design is computed again.
                row.ifPresent(this::remember);
            }
        }
        end = from;
        if (from < bytes.length) {
            channel.truncate(from);
        }
        channel.position(end);
    }

    private static Optional<Row> checked(String line) {
        int tab = line.lastIndexOf('\t');
        if (tab < 0 || !line.substring(tab + 1).equals(sum(line.substring(0, tab)))) {
            return Optional.empty();
        }
        try {
            return Optional.of(Row.of(line.substring(0, tab)));
        } catch (IllegalArgumentException none) {
            return Optional.empty();
        }
    }

    private static String sum(String line) {
        CRC32 crc = new CRC32();
        crc.update(line.getBytes(StandardCharsets.UTF_8));
        return String.format("%08x", crc.getValue());
    }

    private void remember(Row row) {
        if (row.ok()) {
            Map<String, Double> known = values.computeIfAbsent(row.key(), _ -> new LinkedHashMap<>());
            double[] numbers = row.values();
            for (int i = 0; i < numbers.length; i++) {
                known.putIfAbsent(row.readings().get(i), numbers[i]);
            }
        } else {
            failures.computeIfAbsent(row.key(), _ -> new ArrayList<>()).add(row);
        }
    }

    /** The row of a point with these readings, if all are known, or if the design is known to fail with as many of them. */
    public synchronized Optional<Row> find(String key, List<String> readings) {
        Map<String, Double> known = values.getOrDefault(key, Map.of());
        if (known.keySet().containsAll(readings)) {
            return Optional.of(Row.done(
                    key, readings, readings.stream().mapToDouble(known::get).toArray()));
        }
        Set<String> asked = new HashSet<>(readings);
        return failures.getOrDefault(key, List.of()).stream()
                .filter(f -> asked.equals(new HashSet<>(f.readings())))
                .findFirst()
                .map(f -> Row.failed(key, readings, f.reason().orElseThrow()));
    }

    /**
     * Adds a row and has it written before returning, so that a killed process loses none; a power cut may cost those of the
     * last fifth of a second, since to wait for the disk at every row would hold up a cluster. One that is known already
     * changes nothing.
     *
     * @throws FleetException if it cannot be written; the file then holds what it held before
     */
    public synchronized void add(Row row) {
        if (find(row.key(), row.readings()).isPresent()) {
            return;
        }
        String line = row.line();
        ByteBuffer bytes = StandardCharsets.UTF_8.encode(line + "\t" + sum(line) + "\n");
        long length = bytes.remaining();
        try {
            while (bytes.hasRemaining()) {
                channel.write(bytes);
            }
            if (System.nanoTime() - forced >= UNFORCED) {
                channel.force(false);
                forced = System.nanoTime();
            }
        } catch (IOException full) {
            cut();
            throw new FleetException(
                    file + ": a finished row cannot be written: " + full.getMessage(),
                    "make room on the disk, then run the same study again; all rows before this one are kept");
        }
        end += length;
        remember(row);
    }

    private void cut() {
        try {
            channel.truncate(end);
            channel.position(end);
        } catch (IOException e) {
            // The check sum tells the half line from a whole one when the file is next read.
        }
    }

    /** Number of designs with values. */
    public synchronized int size() {
        return values.size();
    }

    @Override
    public synchronized void close() {
        try {
            channel.force(false);
            lock.release();
            channel.close();
        } catch (IOException e) {
            throw new FleetException(file + ": cannot be closed: " + e.getMessage(), "");
        }
    }
}
