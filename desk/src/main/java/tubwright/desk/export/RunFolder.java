// SPDX-License-Identifier: Apache-2.0
package tubwright.desk.export;

import java.io.IOException;
import java.io.OutputStream;
import java.nio.file.DirectoryNotEmptyException;
import java.nio.file.Files;
import java.nio.file.NotDirectoryException;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;
import java.util.Comparator;
import java.util.List;
import java.util.concurrent.CancellationException;
import java.util.stream.Stream;

/**
 * A run's folder. Everything is written into a hidden folder beside it and moved into place at the end, so that what is
 * there is always whole: the old run until the new one is complete.
 */
public final class RunFolder implements AutoCloseable {
    /** The file by which a run's folder is known as ours. */
    public static final String ANSWER = "answer.json";

    private final Path target;
    private final Path draft;
    private final boolean newParent;
    private final Thread sweeper = new Thread(this::sweep, "tubwright-sweeper");
    private boolean moved;
    private boolean swept;

    private RunFolder(Path target, Path draft, boolean newParent) {
        this.target = target;
        this.draft = draft;
        this.newParent = newParent;
    }

    /**
     * Begins a run's folder.
     *
     * @param target where it will be
     * @throws DirectoryNotEmptyException if something is there that is not a run's folder
     * @throws IOException if the place cannot be written to
     */
    public static RunFolder begin(Path target) throws IOException {
        Path place = target.toAbsolutePath().normalize();
        if (Files.exists(place)) {
            if (!Files.isDirectory(place)) {
                throw new NotDirectoryException(place.toString());
            }
            if (!Files.exists(place.resolve(ANSWER)) && !isEmpty(place)) {
                throw new DirectoryNotEmptyException(place.toString());
            }
        }
        Path parent = place.getParent();
        boolean newParent = !Files.exists(parent);
        Files.createDirectories(parent);
        Path draft = Files.createDirectory(
                parent.resolve(".draft-" + ProcessHandle.current().pid() + "-" + System.nanoTime()));
        RunFolder folder = new RunFolder(place, draft, newParent);
        try {
            Runtime.getRuntime().addShutdownHook(folder.sweeper);
        } catch (IllegalStateException e) {
            // Told to stop already: whoever still writes an answer then has the process wait for it.
        }
        return folder;
    }

    /** Where the folder will be. */
    public Path target() {
        return target;
    }

    /** Writes a text file, UTF-8. */
    public void text(String name, String content) throws IOException {
        Files.writeString(place(name), content);
    }

    /** Opens a file to write to; the caller closes it. */
    public OutputStream open(String name) throws IOException {
        return new java.io.BufferedOutputStream(Files.newOutputStream(place(name)), 1 << 16);
    }

    /** Copies files into a folder of the run, by their paths below {@code root}. */
    public void copy(Path root, List<Path> files, String into) throws IOException {
        for (Path file : files) {
            Path below = root.toAbsolutePath().relativize(file.toAbsolutePath());
            Path name = below.startsWith("..") ? file.getFileName() : below;
            Files.copy(file, place(into + "/" + name), StandardCopyOption.REPLACE_EXISTING);
        }
    }

    /** Puts the finished folder in place of whatever run was there. */
    public synchronized void finish() throws IOException {
        if (swept) {
            throw new CancellationException();
        }
        Path old = null;
        if (Files.exists(target)) {
            old = target.resolveSibling(draft.getFileName() + "-old");
            Files.move(target, old);
        }
        try {
            Files.move(draft, target, StandardCopyOption.ATOMIC_MOVE);
            moved = true;
        } catch (IOException e) {
            if (old != null) {
                Files.move(old, target);
            }
            throw e;
        }
        if (old != null) {
            delete(old);
        }
    }

    /** Sweeps away a draft that was not finished. */
    @Override
    public void close() {
        sweep();
        try {
            Runtime.getRuntime().removeShutdownHook(sweeper);
        } catch (IllegalStateException e) {
            // The machine is already going down and the hook runs by itself.
        }
    }

    /** Also run when the process is told to stop: from then on nothing is written any more. */
    private synchronized void sweep() {
        if (!moved && !swept) {
            swept = true;
            delete(draft);
            if (newParent) {
                try {
                    Files.deleteIfExists(draft.getParent());
                } catch (IOException e) {
                    // Somebody else has put something there meanwhile: it stays.
                }
            }
        }
    }

    private synchronized Path place(String name) throws IOException {
        if (swept) {
            throw new CancellationException();
        }
        Path file = draft.resolve(name);
        Files.createDirectories(file.getParent());
        return file;
    }

    private static boolean isEmpty(Path folder) throws IOException {
        try (Stream<Path> files = Files.list(folder)) {
            return files.findAny().isEmpty();
        }
    }

    private static void delete(Path folder) {
        try (Stream<Path> files = Files.walk(folder)) {
            for (Path each : files.sorted(Comparator.reverseOrder()).toList()) {
                Files.deleteIfExists(each);
            }
        } catch (IOException e) {
            // What cannot be swept away is hidden and harmless; the run itself has been told of its own trouble.
        }
    }
}
