// SPDX-License-Identifier: Apache-2.0
package tubwright.desk.page;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.attribute.BasicFileAttributes;

/**
 * Looks a few times a second whether a file has changed, and says so once it has stood still between two looks. Looking
 * rather than being told works on every file system and with every editor's way of saving, also when the file is put in
 * place of another or is gone for a moment.
 */
final class FileWatch implements AutoCloseable {
    private static final long PAUSE = 150;

    private final Path file;
    private final Runnable changed;
    private final Thread thread;

    private record Look(long size, long time, Object key) {}

    /** Begins to look. */
    FileWatch(Path file, Runnable changed) {
        this.file = file;
        this.changed = changed;
        Look before = look();
        thread = Thread.ofVirtual().name("tubwright-watch").start(() -> watch(before));
    }

    private void watch(Look first) {
        Look told = first;
        Look last = first;
        try {
            while (true) {
                Thread.sleep(PAUSE);
                Look now = look();
                if (!now.equals(told) && now.equals(last)) {
                    told = now;
                    changed.run();
                }
                last = now;
            }
        } catch (InterruptedException e) {
            Thread.currentThread().interrupt();
        }
    }

    private Look look() {
        try {
            BasicFileAttributes is = Files.readAttributes(file, BasicFileAttributes.class);
            return new Look(is.size(), is.lastModifiedTime().toMillis(), String.valueOf(is.fileKey()));
        } catch (IOException e) {
            return new Look(-1, 0, "");
        }
    }

    @Override
    public void close() {
        thread.interrupt();
    }
}
