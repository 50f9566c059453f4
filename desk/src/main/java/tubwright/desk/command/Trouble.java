// SPDX-License-Identifier: Apache-2.0
package tubwright.desk.command;

import java.io.IOException;
import java.io.PrintWriter;
import java.io.StringWriter;
import java.io.UncheckedIOException;
import java.nio.file.AccessDeniedException;
import java.nio.file.DirectoryNotEmptyException;
import java.nio.file.FileAlreadyExistsException;
import java.nio.file.FileSystemException;
import java.nio.file.Files;
import java.nio.file.NoSuchFileException;
import java.nio.file.NotDirectoryException;
import java.nio.file.Path;
import java.nio.file.ReadOnlyFileSystemException;
import java.util.Locale;
import java.util.Optional;
import java.util.concurrent.CancellationException;
import tubwright.desk.console.Terminal;
import tubwright.desk.console.Terminal.Look;
import tubwright.desk.work.UserMistake;
import tubwright.engine.design.text.DesignError;
import tubwright.engine.material.MaterialException;
import tubwright.engine.quantity.QuantityException;
import tubwright.engine.rig.ReadingsException;
import tubwright.engine.shape.ShapeException;
import tubwright.engine.structure.StructureException;

/** Turns whatever went wrong into one message and an exit code. */
final class Trouble {
    private Trouble() {}

    /** Tells the user about {@code trouble} and returns the exit code. */
    static int tell(Terminal terminal, Throwable trouble) {
        Throwable cause = trouble;
        while ((cause instanceof UncheckedIOException || cause instanceof java.util.concurrent.ExecutionException)
                && cause.getCause() != null) {
            cause = cause.getCause();
        }
        if (cause instanceof CancellationException) {
            say(terminal, "stopped; nothing was written.");
            return ExitCode.STOPPED;
        }
        Optional<String> message = mistake(cause);
        if (message.isPresent()) {
            say(terminal, message.get());
            return ExitCode.WRONG_INPUT;
        }
        say(terminal, "a fault of the program, not of your design: " + brief(cause) + "\n    " + log(trouble));
        return ExitCode.OUR_FAULT;
    }

    /** What to tell about things the user can put right; empty for the program's own faults. */
    private static Optional<String> mistake(Throwable cause) {
        return switch (cause) {
            case DesignError e -> Optional.of(e.getMessage());
            case ReadingsException e -> Optional.of(e.getMessage());
            case UserMistake e -> Optional.of(e.getMessage());
            case StructureException e ->
                Optional.of(e.getMessage() + (e.remedy().isEmpty() ? "" : "\n    " + e.remedy()));
            case ShapeException e -> Optional.of(e.getMessage());
            case MaterialException e -> Optional.of(e.getMessage());
            case QuantityException e -> Optional.of(e.getMessage());
            case IOException e -> Optional.of(explain(e));
            case ReadOnlyFileSystemException _ -> Optional.of("the disk can only be read, not written to");
            case OutOfMemoryError _ ->
                Optional.of("not enough memory for a mesh this fine.\n    Use a larger --mesh, or give Java more with"
                        + " TUBWRIGHT_JAVA_OPTIONS=-Xmx12g");
            default -> Optional.empty();
        };
    }

    /** An error of the file system in words. */
    static String explain(IOException e) {
        String file = e instanceof FileSystemException f && f.getFile() != null ? f.getFile() : "";
        String said = e instanceof FileSystemException f && f.getReason() != null
                ? f.getReason()
                : e.getMessage() == null ? "" : e.getMessage();
        String lower = said.toLowerCase(Locale.ROOT);
        if (lower.contains("no space left") || lower.contains("not enough space") || lower.contains("quota")) {
            return "the disk is full" + (file.isEmpty() ? "" : " (writing " + file + ")")
                    + "; nothing was left half-written.\n    Make room, or write elsewhere with --out.";
        }
        return switch (e) {
            case NoSuchFileException _ -> file + ": there is no such file or folder";
            case AccessDeniedException _ -> file + ": not allowed to read or write here";
            case DirectoryNotEmptyException _ ->
                file
                        + " is not empty and holds no run of ours, so it is left alone.\n    Choose another folder with --out.";
            case NotDirectoryException _ -> file + " is a file, not a folder";
            case FileAlreadyExistsException _ -> file + " is there already";
            default ->
                (file.isEmpty() ? "" : file + ": ")
                        + (said.isEmpty() ? e.getClass().getSimpleName() : said);
        };
    }

    private static void say(Terminal terminal, String message) {
        String[] lines = message.split("\n");
        terminal.say(terminal.look(Look.BAD, "tubwright: ") + lines[0]);
        for (int i = 1; i < lines.length; i++) {
            terminal.say(lines[i]);
        }
    }

    private static String brief(Throwable cause) {
        String message = cause.getMessage();
        String name = cause.getClass().getSimpleName();
        return message == null
                ? name
                : name + ": " + message.lines().findFirst().orElse("");
    }

    /** Writes the whole story to a file and says where. */
    private static String log(Throwable trouble) {
        StringWriter story = new StringWriter();
        story.append("Tubwright ").append(Version.text()).append(", Java ");
        story.append(Runtime.version().toString())
                .append(", ")
                .append(System.getProperty("os.name"))
                .append('\n');
        trouble.printStackTrace(new PrintWriter(story, true));
        try {
            Path file = Files.createTempFile("tubwright-", ".log");
            Files.writeString(file, story.toString());
            return "The details are in " + file + "; please report them.";
        } catch (IOException e) {
            return "The details could not be written: " + explain(e);
        }
    }
}
