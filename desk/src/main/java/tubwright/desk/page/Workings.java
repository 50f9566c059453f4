// SPDX-License-Identifier: Apache-2.0
package tubwright.desk.page;

import java.time.Instant;
import java.time.temporal.ChronoUnit;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.concurrent.CancellationException;
import java.util.concurrent.CompletableFuture;
import java.util.concurrent.CompletionException;
import java.util.concurrent.ConcurrentHashMap;
import java.util.function.BooleanSupplier;
import java.util.function.Consumer;
import java.util.function.DoubleUnaryOperator;
import tubwright.desk.work.TrimWork;
import tubwright.desk.work.UserMistake;
import tubwright.engine.design.Design;
import tubwright.engine.response.CaseAnswer;
import tubwright.engine.response.Progress;
import tubwright.engine.response.Study;
import tubwright.engine.response.VariantAnswer;
import tubwright.engine.structure.Case;
import tubwright.engine.structure.Tub;
import tubwright.engine.trim.Layup;
import tubwright.numerics.solver.Solvers;

/**
 * Everything computed from the design file as it stood at one moment: surfaces at once, answers of all variants soon,
 * the ledger as it fills. Thrown away as a whole when the file changes. Safe for use by several threads.
 */
final class Workings implements AutoCloseable {
    private final Design design;
    private final String revision;
    private final DoubleUnaryOperator meshSize;
    private final Queue queue;
    private final Consumer<Happening> hear;
    private final Map<String, CompletableFuture<Surface>> surfaces = new ConcurrentHashMap<>();
    private final Map<String, VariantAnswer> answers = new ConcurrentHashMap<>();
    private final Map<String, AnswerView> views = new ConcurrentHashMap<>();
    private final Map<String, CompletableFuture<Trial>> trials = new ConcurrentHashMap<>();
    private final Map<String, LedgerBook> books = new ConcurrentHashMap<>();
    private final Map<String, String> troubles = new ConcurrentHashMap<>();
    private volatile boolean closed;

    /**
     * @param meshSize gives the mesh size to work on, m, for the design's own
     * @param queue does the computing
     * @param hear is told what has become ready
     */
    Workings(Design design, String revision, DoubleUnaryOperator meshSize, Queue queue, Consumer<Happening> hear) {
        this.design = design;
        this.revision = revision;
        this.meshSize = meshSize;
        this.queue = queue;
        this.hear = hear;
    }

    /** Queues what the page will want: the design as written first, then what it is compared with, then the ledger. */
    void begin() {
        String first = design.asDesigned().name();
        queue.add(Queue.Want.NOW, () -> {
            try {
                surface(first);
            } catch (RuntimeException fault) {
                // Told to whoever asks for the surface.
            }
        });
        answer(first, Queue.Want.SOON);
        trial(first, Queue.Want.SOON);
        design.variants().stream().skip(1).forEach(v -> answer(v.name(), Queue.Want.SOON));
    }

    Design design() {
        return design;
    }

    String revision() {
        return revision;
    }

    /** The surface of a variant, meshed now if need be. */
    Surface surface(String name) {
        Design.Variant variant = variant(name);
        CompletableFuture<Surface> mine = new CompletableFuture<>();
        CompletableFuture<Surface> first = surfaces.putIfAbsent(name, mine);
        if (first == null) {
            try {
                mine.complete(Surface.of(name, variant, revision, meshSize(name)));
            } catch (RuntimeException fault) {
                mine.completeExceptionally(design.explain(fault));
            }
        }
        return joined(first == null ? mine : first);
    }

    /** The mesh size a variant is worked on with, m. */
    double meshSize(String name) {
        return meshSize.applyAsDouble(variant(name).tub().meshSize());
    }

    /** Answers that are ready, in the order of the design. */
    List<AnswerView> answers() {
        List<AnswerView> ready = new ArrayList<>();
        design.variants().forEach(v -> Optional.ofNullable(views.get(v.name())).ifPresent(ready::add));
        return ready;
    }

    /**
     * Takes over what a whole run came to; gives it as the page is told it. Fields of a mesh that is not the page's are
     * left where they are: the surface has no places for them.
     */
    List<AnswerView> take(List<VariantAnswer> computed, String stamp) {
        List<AnswerView> taken = new ArrayList<>();
        for (VariantAnswer answer : computed) {
            AnswerView view = AnswerViews.of(answer, revision, stamp);
            if (surface(answer.variant()).structure().mesh().nodeCount()
                    == answer.mesh().nodeCount()) {
                answers.put(answer.variant(), answer);
            }
            views.put(answer.variant(), view);
            taken.add(view);
        }
        tell(Happening.What.ANSWERS, "");
        return taken;
    }

    /** Why a variant has no answer, where it has none. */
    Optional<String> trouble(String variant) {
        return Optional.ofNullable(troubles.get(variant));
    }

    /** Every variant that has no answer, and why, in the order of the design. */
    List<ProjectView.TroubleView> troubles() {
        return design.variants().stream()
                .filter(v -> troubles.containsKey(v.name()))
                .map(v -> new ProjectView.TroubleView(v.name(), troubles.get(v.name())))
                .toList();
    }

    /** Fields of one case. */
    byte[] fields(String name, String loading) {
        VariantAnswer answer = Optional.ofNullable(answers.get(variant(name).name()))
                .orElseThrow(() -> new UserMistake(trouble(name).orElse("\"" + name + "\" is still being computed")));
        CaseAnswer of = AnswerViews.named(answer, loading)
                .orElseThrow(() -> new UserMistake("there is no case \"" + loading + "\" in \"" + name + "\""));
        return AnswerViews.fields(name, answer, of, revision);
    }

    /** The variant solved and kept at hand; waits for it. */
    Trial trial(String name) {
        return joined(trial(variant(name).name(), Queue.Want.NOW));
    }

    /** The ledger of a variant, as far as it has come. */
    Optional<LedgerView> ledger(String name) {
        trial(variant(name).name(), Queue.Want.NOW);
        return Optional.ofNullable(books.get(name)).map(LedgerBook::view);
    }

    private void answer(String name, Queue.Want want) {
        queue.add(want, () -> {
            if (closed || answers.containsKey(name)) {
                return;
            }
            try {
                VariantAnswer own = solve(variant(name).tub(), meshSize(name), () -> closed);
                answers.put(name, own);
                String stamp = Instant.now().truncatedTo(ChronoUnit.SECONDS).toString();
                // A whole run may have been quicker, and knows more.
                views.putIfAbsent(name, AnswerViews.of(own, revision, stamp));
                tell(Happening.What.ANSWERS, "");
            } catch (CancellationException stopped) {
                // The file has changed; nobody waits for this any more.
            } catch (RuntimeException fault) {
                troubles.put(name, design.explain(fault).getMessage());
                tell(Happening.What.ANSWERS, name);
            }
        });
    }

    /**
     * Answers all cases of a tub on the one mesh that the page draws.
     *
     * @param meshSize m
     * @param cancelled asked now and then
     * @throws CancellationException where it said so
     */
    static VariantAnswer solve(Tub tub, double meshSize, BooleanSupplier cancelled) {
        Progress untilCancelled = new Progress() {
            @Override
            public void step(String variant, String step, double meshSize, int done, int all) {}

            @Override
            public boolean cancelled() {
                return cancelled.getAsBoolean();
            }
        };
        Study study = new Study(Solvers.best(), List.of(meshSize / tub.meshSize()), untilCancelled);
        return study.answer(List.of(tub)).getFirst();
    }

    private CompletableFuture<Trial> trial(String name, Queue.Want want) {
        CompletableFuture<Trial> mine = new CompletableFuture<>();
        CompletableFuture<Trial> first = trials.putIfAbsent(name, mine);
        if (first != null) {
            return first;
        }
        queue.add(want, () -> {
            if (closed) {
                mine.completeExceptionally(new CancellationException("the design has changed"));
                return;
            }
            try {
                Case loading = TrimWork.leadingCase(variant(name).tub());
                Trial trial =
                        new Trial(surface(name), loading, Layup.of(variant(name).tub()));
                LedgerBook book = new LedgerBook(name, revision, trial);
                books.put(name, book);
                mine.complete(trial);
                tell(Happening.What.LEDGER, name);
                queue.add(Queue.Want.LATER, () -> prepare(name, book));
                if (closed) {
                    trial.close();
                }
            } catch (RuntimeException fault) {
                mine.completeExceptionally(fault instanceof UserMistake ? fault : design.explain(fault));
            }
        });
        return mine;
    }

    private void prepare(String name, LedgerBook book) {
        try {
            book.prepare(() -> {
                if (closed) {
                    throw new CancellationException("the design has changed");
                }
                tell(Happening.What.LEDGER, name);
            });
            fill(name, book);
        } catch (CancellationException stopped) {
            // The file has changed; the ledger goes with it.
        }
    }

    /** One row of the ledger, and then the next after whatever is more wanted. */
    private void fill(String name, LedgerBook book) {
        try {
            if (!closed && book.answerNext()) {
                tell(Happening.What.LEDGER, name);
                queue.add(Queue.Want.LATER, () -> fill(name, book));
            }
        } catch (CancellationException stopped) {
            // The file has changed; the ledger goes with it.
        }
    }

    /** A variant of the design. */
    Design.Variant variant(String name) {
        return design.variant(name)
                .orElseThrow(() ->
                        new UserMistake("there is no variant \"" + name + "\"; there are: " + design.variantNames()));
    }

    private void tell(Happening.What what, String subject) {
        if (!closed) {
            hear.accept(new Happening(what, revision, subject));
        }
    }

    private static <T> T joined(CompletableFuture<T> future) {
        try {
            return future.join();
        } catch (CompletionException wrapped) {
            throw wrapped.getCause() instanceof RuntimeException fault ? fault : wrapped;
        }
    }

    @Override
    public void close() {
        closed = true;
        trials.values()
                .forEach(f -> f.whenComplete((trial, _) -> {
                    if (trial != null) {
                        trial.close();
                    }
                }));
    }
}
