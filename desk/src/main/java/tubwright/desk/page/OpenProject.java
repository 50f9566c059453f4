// SPDX-License-Identifier: Apache-2.0
package tubwright.desk.page;

import java.nio.file.Files;
import java.nio.file.Path;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.UUID;
import java.util.concurrent.CancellationException;
import java.util.concurrent.CopyOnWriteArrayList;
import java.util.function.Consumer;
import java.util.function.DoubleUnaryOperator;
import tubwright.desk.answer.RunAnswer;
import tubwright.desk.logbook.Logbook;
import tubwright.desk.work.UserMistake;
import tubwright.engine.design.Design;

/**
 * A project folder with its design file, open on the bench: read anew whenever the file changes, worked on by any number
 * of tabs. The file is the only place where a design lives; what is kept here can be lost. Safe for use by several
 * threads.
 */
public final class OpenProject implements AutoCloseable {
    /** Most drafts remembered; tabs that were closed leave theirs behind. */
    private static final int DRAFTS = 40;

    private final Path file;
    private final String version;
    private final DoubleUnaryOperator meshSize;
    private final Queue queue = new Queue();
    private final List<Consumer<Happening>> hearers = new CopyOnWriteArrayList<>();
    private final Map<String, Draft> drafts = new LinkedHashMap<>();
    private final Logbook logbook;
    private final FileWatch watch;
    private final StoredRuns stored;
    private final WholeRun run;
    private final ExchangeBook exchange;
    private final ModesBook modes;
    private final TestBook tests;
    private final HitBook hits;
    private final LayBook laying;
    private final StudiesBook studies;
    private Snapshot snapshot;
    private Workings workings;

    /**
     * Opens.
     *
     * @param place folder of the design, or its file
     * @param meshSize gives the mesh size to work on, m, for the design's own
     * @param version of the program
     */
    public OpenProject(Path place, DoubleUnaryOperator meshSize, String version) {
        Path given = place.toAbsolutePath().normalize();
        file = Files.isDirectory(given) ? given.resolve(Design.FILE_NAME) : given;
        this.meshSize = meshSize;
        this.version = version;
        snapshot = Snapshot.of(file);
        if (snapshot.design().isEmpty() && !Files.exists(file)) {
            throw snapshot.trouble().orElseThrow();
        }
        logbook = Logbook.open(folder().resolve("runs"));
        stored = new StoredRuns(logbook, meshSize, queue);
        run = new WholeRun(this, stored, queue, version, this::tell);
        exchange = new ExchangeBook(this, queue, version, this::tell);
        modes = new ModesBook(this, queue, this::tell);
        tests = new TestBook(this, logbook, queue, version, this::tell);
        hits = new HitBook(this);
        laying = new LayBook(this, queue, version, this::tell);
        studies = new StudiesBook(this, version);
        snapshot.design().ifPresent(this::work);
        watch = new FileWatch(file, this::reread);
    }

    /** The folder the design lies in. */
    public Path folder() {
        return file.getParent();
    }

    /** Tells {@code hearer} of everything that happens, until what is returned is run. */
    public Runnable hear(Consumer<Happening> hearer) {
        hearers.add(hearer);
        return () -> hearers.remove(hearer);
    }

    private void tell(Happening happening) {
        hearers.forEach(h -> h.accept(happening));
    }

    private synchronized void work(Design design) {
        Workings before = workings;
        workings = new Workings(design, snapshot.revision(), meshSize, queue, this::tell);
        if (before != null) {
            before.close();
        }
        workings.begin();
        if (!drafts.isEmpty()) {
            Workings now = workings;
            Thread.ofVirtual().name("tubwright-carry").start(() -> carry(now));
        }
    }

    /** Looks at the file as it now is. */
    private void reread() {
        Snapshot now = Snapshot.of(file);
        synchronized (this) {
            if (now.revision().equals(snapshot.revision())) {
                return;
            }
            snapshot = now;
            now.design().ifPresent(this::work);
        }
        tell(new Happening(Happening.What.PROJECT, now.revision(), ""));
    }

    private void carry(Workings now) {
        Map<String, Draft> all;
        synchronized (this) {
            all = Map.copyOf(drafts);
        }
        for (Draft draft : all.values()) {
            String id = draft.id();
            try {
                Trial trial = now.trial(draft.variant());
                synchronized (this) {
                    if (workings != now) {
                        return;
                    }
                }
                draft.carry(trial, now.revision());
            } catch (CancellationException changedAgain) {
                // Whoever works on the file as it is by now carries them on.
                return;
            } catch (RuntimeException gone) {
                synchronized (this) {
                    drafts.remove(id);
                }
            }
            tell(new Happening(Happening.What.DRAFT, now.revision(), id));
        }
    }

    /** What has been computed from the file as it could last be read. */
    synchronized Workings workings() {
        if (workings == null) {
            throw snapshot.trouble().map(t -> (RuntimeException) t).orElseThrow();
        }
        return workings;
    }

    /** The project in words. */
    public synchronized ProjectView view() {
        Optional<Design> design = Optional.ofNullable(workings).map(Workings::design);
        return new ProjectView(
                design.map(Design::name).orElse(folder().getFileName().toString()),
                design.map(d -> (d.by().map(b -> b + ". ").orElse("")
                                        + d.notes().map(String::strip).orElse(""))
                                .strip())
                        .orElse(""),
                folder().getFileName().toString(),
                file.getFileName().toString(),
                snapshot.revision(),
                design.map(ProjectWords::variants).orElse(List.of()),
                design.map(d -> ProjectWords.targets(d.asDesigned().targets())).orElse(List.of()),
                design.map(d -> d.warnings().stream().map(Object::toString).toList())
                        .orElse(List.of()),
                snapshot.trouble().map(ProjectWords::problem),
                Optional.ofNullable(workings).map(Workings::troubles).orElse(List.of()),
                logbook.trouble(),
                version,
                RunAnswer.CAUTION);
    }

    /** The surface of a variant or of a stored run's, {@link TubView} with arrays. */
    public byte[] tub(String variant) {
        return StoredRuns.isName(variant)
                ? stored.surface(variant)
                : workings().surface(variant).bytes();
    }

    /** The fields of a case of a variant or of a stored run's, {@link FieldsView} with arrays. */
    public byte[] fields(String variant, String loading) {
        return StoredRuns.isName(variant)
                ? stored.fields(variant, loading)
                : workings().fields(variant, loading);
    }

    /** The answers that are ready. */
    public List<AnswerView> answers() {
        return workings().answers();
    }

    /** The ledger of a variant as far as it has come; empty while the variant is being solved. */
    public Optional<LedgerView> ledger(String variant) {
        return workings().ledger(variant);
    }

    /** How far the whole run has come. */
    public RunView run() {
        return run.view();
    }

    /** Begins a whole run of all variants: mesh error, report, run folder. */
    public RunView startRun() {
        return run.start();
    }

    /** Stops it. */
    public RunView stopRun() {
        return run.stop();
    }

    /** The runs that the logbook remembers, newest first. */
    public List<StoredView> runs() {
        return stored.list();
    }

    /** What one of them answered. */
    public List<AnswerView> runAnswers(long run) {
        return stored.answers(run);
    }

    /** The curve of mass against stiffness that was drawn last. */
    public ExchangeView exchange() {
        return exchange.view();
    }

    /** How far the next one has come. */
    public RunView exchangeWork() {
        return exchange.work();
    }

    /** Begins to draw one. */
    public RunView startExchange(ExchangeView.ExchangeRequest asked) {
        return exchange.start(asked);
    }

    /** Ends it with the points there are. */
    public RunView stopExchange() {
        return exchange.stop();
    }

    /** Lays the layup of a point of the curve into a draft, in one step. */
    public DraftView lay(String id, int point) {
        return moved(find(id), d -> d.lay(exchange.layup(point, d.variant(), d.revision())));
    }

    /** The buckling and vibration shapes found last. */
    public ModesView modes() {
        return modes.view();
    }

    /** How far the search for the next has come. */
    public RunView modesWork() {
        return modes.work();
    }

    /** Begins to look for those of a variant. */
    public RunView startModes(String variant) {
        return modes.start(workings().variant(variant).name());
    }

    /** Takes a patch away and says what the rest carries; the first one waits until the tub is solved. */
    public HitView hit(HitView.HitRequest asked) {
        return hits.hit(asked);
    }

    /** The studies that were run. */
    public List<StudyView> studies() {
        return studies.list();
    }

    /** Puts a design of a study into the file as a variant. */
    public DraftView.KeptView openPoint(StudyView.OpenPointRequest asked) {
        DraftView.KeptView kept = studies.open(asked);
        String revision = view().revision();
        logbook.add(
                Logbook.Kind.CHOICE,
                kept.message() + ": design " + (asked.point() + 1) + " of study " + asked.study(),
                revision);
        tell(new Happening(Happening.What.LOGBOOK, revision, ""));
        reread();
        return kept;
    }

    /** Stops looking. */
    public RunView stopModes() {
        return modes.stop();
    }

    /** One of them with its movement, {@link ModesView.ShapeView} with an array. */
    public byte[] shape(String variant, int number) {
        return modes.shape(variant, number);
    }

    /** The plies laid last. */
    public LayView laying() {
        return laying.view();
    }

    /** How far laying has come. */
    public RunView layingWork() {
        return laying.work();
    }

    /** Begins to lay the plies of a variant. */
    public RunView startLaying(String variant) {
        return laying.start(workings().variant(variant).name());
    }

    /** Stops laying. */
    public RunView stopLaying() {
        return laying.stop();
    }

    /** One ply with where it lies, {@link LayView.PlyView} with arrays. */
    public byte[] ply(String variant, int number) {
        return laying.ply(variant, number);
    }

    /** Files of the project that may hold readings of a torsion test. */
    public List<TestView.FileView> readings() {
        return tests.files();
    }

    /** A torsion test as it was read. */
    public TestView test(String file, boolean withoutBedIn) {
        return tests.read(file, withoutBedIn);
    }

    /** The test explained last. */
    public ExplainedView explained() {
        return tests.view();
    }

    /** How far the next explanation has come. */
    public RunView testWork() {
        return tests.work();
    }

    /** Begins to explain a test. */
    public RunView startTest(TestView.ExplainRequest asked) {
        return tests.start(asked);
    }

    /** Stops explaining. */
    public RunView stopTest() {
        return tests.stop();
    }

    /** Keeps what was learnt as the project's calibration. */
    public ExplainedView keepTest() {
        return tests.keep();
    }

    /** The logbook, newest first. */
    public List<LogView> log() {
        return logbook.entries().stream()
                .map(e -> new LogView(e.id(), e.stamp(), e.kind().word(), e.words(), e.revision()))
                .toList();
    }

    /** Writes a line into the logbook. */
    public void note(String words) {
        if (words.isBlank() || words.length() > 2000) {
            throw new UserMistake("a note has between 1 and 2000 characters");
        }
        String revision = view().revision();
        logbook.add(Logbook.Kind.NOTE, words.strip(), revision);
        tell(new Happening(Happening.What.LOGBOOK, revision, ""));
    }

    /** Begins a draft. */
    public DraftView openDraft(String variant) {
        Workings now = workings();
        String id = UUID.randomUUID().toString();
        Draft draft = new Draft(id, variant, now.revision(), now.trial(variant));
        synchronized (this) {
            drafts.put(id, draft);
            if (drafts.size() > DRAFTS) {
                drafts.remove(drafts.keySet().iterator().next());
            }
        }
        return draft.view();
    }

    /** A draft as it is. */
    public DraftView draft(String id) {
        return find(id).view();
    }

    /** Makes changes in one step. */
    public DraftView change(String id, List<DraftView.ChangeRequest> changes) {
        return moved(find(id), d -> d.change(changes));
    }

    /** One step back. */
    public DraftView undo(String id) {
        return moved(find(id), Draft::undo);
    }

    /** One step forth again. */
    public DraftView redo(String id) {
        return moved(find(id), Draft::redo);
    }

    /**
     * Puts a draft into the design file.
     *
     * @param name of the variant to add; empty to change the variant it departs from
     */
    public DraftView.KeptView keep(String id, String name) {
        Draft draft = find(id);
        Workings now = workings();
        if (draft.words().isEmpty()) {
            throw new UserMistake("the draft changes nothing");
        }
        if (!draft.revision().equals(now.revision())) {
            throw new UserMistake(
                    "the draft is still being carried over to the file as it now is; try again in a moment");
        }
        DraftView.KeptView kept = Keeping.keep(now.design(), draft.variant(), name.strip(), draft.layup());
        if (kept.kept()) {
            logbook.add(Logbook.Kind.CHOICE, kept.message() + ": " + String.join("; ", draft.words()), now.revision());
            tell(new Happening(Happening.What.LOGBOOK, now.revision(), ""));
        }
        reread();
        return kept;
    }

    private DraftView moved(Draft draft, Consumer<Draft> move) {
        move.accept(draft);
        DraftView view = draft.view();
        if (!view.exact()) {
            queue.add(Queue.Want.SOON, () -> settle(draft, view.step()));
        }
        return view;
    }

    /** The exact answer follows the bounds, unless the draft has moved on. */
    private void settle(Draft draft, int step) {
        try {
            if (draft.view().step() == step && draft.solve()) {
                tell(new Happening(
                        Happening.What.DRAFT,
                        draft.view().revision(),
                        draft.view().id()));
            }
        } catch (CancellationException | UserMistake changed) {
            // The file has changed under it; the draft is being carried over.
        }
    }

    private synchronized Draft find(String id) {
        Draft draft = drafts.get(id);
        if (draft == null) {
            throw new UserMistake("this draft is no longer known; begin another");
        }
        return draft;
    }

    @Override
    public void close() {
        watch.close();
        stored.close();
        run.stop();
        exchange.stop();
        modes.stop();
        tests.stop();
        laying.stop();
        synchronized (this) {
            if (workings != null) {
                workings.close();
            }
        }
        logbook.close();
        queue.close();
    }
}
