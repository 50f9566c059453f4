// SPDX-License-Identifier: Apache-2.0
package tubwright.desk.page;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Arrays;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.concurrent.CompletableFuture;
import java.util.concurrent.ConcurrentHashMap;
import java.util.concurrent.ExecutionException;
import java.util.concurrent.TimeUnit;
import java.util.concurrent.TimeoutException;
import java.util.function.DoubleUnaryOperator;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import tools.jackson.core.JacksonException;
import tools.jackson.databind.json.JsonMapper;
import tubwright.desk.logbook.Logbook;
import tubwright.desk.work.UserMistake;
import tubwright.engine.design.Design;
import tubwright.engine.design.text.DesignError;
import tubwright.engine.response.CaseAnswer;
import tubwright.engine.response.VariantAnswer;

/**
 * Runs of other days: what they answered and the design file as it stood, out of the logbook, so that they can be laid
 * beside what there is now. Tubs of such a run are named {@code run 12: aluminium}; no variant can be, for its name has no
 * colon. Safe for use by several threads.
 */
final class StoredRuns implements AutoCloseable {
    private static final String ANSWERS = "answers";
    private static final String DESIGN = "design";

    /** Most of them whose fields are kept at hand. */
    private static final int SOLVED = 6;

    private static final Pattern NAME = Pattern.compile("run (\\d{1,18}): (.+)");

    private final Logbook logbook;
    private final DoubleUnaryOperator meshSize;
    private final JsonMapper mapper = JsonMapper.builder().build();
    private final Map<String, byte[]> surfaces = new ConcurrentHashMap<>();
    /** What was solved anew of them, the latest used last. */
    private final Map<String, CompletableFuture<VariantAnswer>> solved = new LinkedHashMap<>(8, 0.75f, true) {
        @Override
        protected boolean removeEldestEntry(Map.Entry<String, CompletableFuture<VariantAnswer>> eldest) {
            return size() > SOLVED;
        }
    };

    private final Queue queue;
    private volatile boolean closed;

    /**
     * @param meshSize gives the mesh size to draw and to solve on, m, for the design's own
     * @param queue does the solving
     */
    StoredRuns(Logbook logbook, DoubleUnaryOperator meshSize, Queue queue) {
        this.logbook = logbook;
        this.meshSize = meshSize;
        this.queue = queue;
    }

    /** Writes a run into the logbook. */
    void keep(String words, String revision, List<AnswerView> answers, String design) {
        logbook.add(
                Logbook.Kind.RUN, words, revision, Map.of(ANSWERS, mapper.writeValueAsString(answers), DESIGN, design));
    }

    /** The runs that can be laid beside others, newest first. */
    List<StoredView> list() {
        return logbook.entriesWith(ANSWERS).stream()
                .map(e -> new StoredView(
                        e.id(),
                        e.stamp(),
                        e.words(),
                        e.revision(),
                        answers(e.id()).stream().map(AnswerView::variant).toList()))
                .toList();
    }

    /** What a run answered, each variant under the name by which its tub is asked for; none where it cannot be read. */
    List<AnswerView> answers(long run) {
        try {
            return logbook.enclosure(run, ANSWERS)
                    .map(text -> Arrays.stream(mapper.readValue(text, AnswerView[].class))
                            .map(a -> named(a, name(run, a.variant())))
                            .toList())
                    .orElseThrow(() -> new UserMistake("the logbook has no run " + run));
        } catch (JacksonException ofAnotherVersion) {
            return List.of();
        }
    }

    /** Whether a name is that of a stored run's tub. */
    static boolean isName(String name) {
        return NAME.matcher(name).matches();
    }

    /** The surface of a stored run's tub, drawn from the design as it stood then. */
    byte[] surface(String name) {
        return surfaces.computeIfAbsent(name, n -> {
            Past past = past(n);
            return Surface.of(n, past.variant(), past.revision(), meshSize(past))
                    .bytes();
        });
    }

    /**
     * The fields of a case of a stored run's tub, which is solved anew for it from the design as it stood then, on the mesh
     * that it is drawn on; waits until that is done.
     */
    byte[] fields(String name, String loading) {
        Past past = past(name);
        VariantAnswer answer = solved(name, past);
        CaseAnswer of = AnswerViews.named(answer, loading)
                .orElseThrow(() -> new UserMistake("there is no case \"" + loading + "\" in \"" + name + "\""));
        return AnswerViews.fields(name, answer, of, past.revision());
    }

    private VariantAnswer solved(String name, Past past) {
        CompletableFuture<VariantAnswer> future;
        synchronized (solved) {
            CompletableFuture<VariantAnswer> before = solved.get(name);
            if (before == null || before.isCompletedExceptionally()) {
                CompletableFuture<VariantAnswer> mine = new CompletableFuture<>();
                solved.put(name, mine);
                queue.add(Queue.Want.SOON, () -> solve(past, mine));
                before = mine;
            }
            future = before;
        }
        while (true) {
            try {
                return future.get(200, TimeUnit.MILLISECONDS);
            } catch (TimeoutException waiting) {
                if (closed) {
                    throw new UserMistake("the project is being put away");
                }
            } catch (ExecutionException fault) {
                throw new UserMistake(
                        name + " cannot be solved: " + fault.getCause().getMessage());
            } catch (InterruptedException stopped) {
                Thread.currentThread().interrupt();
                throw new UserMistake("the project is being put away");
            }
        }
    }

    private void solve(Past past, CompletableFuture<VariantAnswer> future) {
        try {
            future.complete(Workings.solve(past.variant().tub(), meshSize(past), () -> closed));
        } catch (RuntimeException fault) {
            future.completeExceptionally(past.design().explain(fault));
        }
    }

    private double meshSize(Past past) {
        return meshSize.applyAsDouble(past.variant().tub().meshSize());
    }

    /** A variant as it was. */
    private record Past(Design design, Design.Variant variant, String revision) {}

    private Past past(String name) {
        Matcher parts = NAME.matcher(name);
        if (!parts.matches()) {
            throw new IllegalArgumentException(name);
        }
        String text = logbook.enclosure(Long.parseLong(parts.group(1)), DESIGN)
                .orElseThrow(() -> new UserMistake("the logbook has no run " + parts.group(1)));
        try {
            Path file = Files.createTempFile("tubwright-", ".yaml");
            try {
                Files.writeString(file, text);
                Design design = Design.read(file);
                Design.Variant variant = design.variant(parts.group(2))
                        .orElseThrow(() -> new UserMistake("there is no \"" + name + "\" in the logbook"));
                return new Past(design, variant, Snapshot.revision(text));
            } catch (DesignError grown) {
                throw new UserMistake(
                        "the design of " + name
                                + " was written for another version of the program; its numbers can be compared, its tub not shown");
            } finally {
                Files.deleteIfExists(file);
            }
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    @Override
    public void close() {
        closed = true;
    }

    private static String name(long run, String variant) {
        return "run " + run + ": " + variant;
    }

    private static AnswerView named(AnswerView a, String name) {
        return new AnswerView(
                name,
                a.revision(),
                a.construction(),
                a.stamp(),
                a.extrapolated(),
                a.mass(),
                a.pieces(),
                a.cases(),
                a.reserves());
    }
}
