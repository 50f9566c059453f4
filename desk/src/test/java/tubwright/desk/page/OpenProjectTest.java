// SPDX-License-Identifier: Apache-2.0
package tubwright.desk.page;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertNotEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import java.util.concurrent.BlockingQueue;
import java.util.concurrent.LinkedBlockingQueue;
import java.util.concurrent.TimeUnit;
import java.util.function.Supplier;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.TestInstance;
import org.junit.jupiter.api.io.TempDir;
import tubwright.desk.work.UserMistake;
import tubwright.engine.design.Template;

/** A project on the bench: drafts answer within bounds that the exact answer keeps, tabs do not meet, edits are followed. */
@TestInstance(TestInstance.Lifecycle.PER_CLASS)
class OpenProjectTest {
    private static final String DESIGNED = "as designed";

    @TempDir
    static Path folder;

    private OpenProject project;
    private final BlockingQueue<Happening> told = new LinkedBlockingQueue<>();

    @BeforeAll
    void open() throws IOException {
        Files.writeString(folder.resolve("tub.yaml"), Template.text("Trial"));
        project = new OpenProject(folder, size -> 3 * size, "test");
        project.hear(told::add);
    }

    @AfterAll
    void close() {
        project.close();
    }

    private static DraftView.ChangeRequest off(String owner, int place) {
        return new DraftView.ChangeRequest(
                owner, place, Optional.of(0), Optional.empty(), Optional.empty(), Optional.empty());
    }

    private LedgerView.OwnerView someZone() {
        return await(() -> project.ledger(DESIGNED)).owners().stream()
                .filter(o -> !o.patch() && o.stack().layers().size() > 4)
                .findFirst()
                .orElseThrow();
    }

    private static int firstPly(LedgerView.OwnerView owner) {
        List<TubView.LayerView> layers = owner.stack().layers();
        for (int i = 0; i < layers.size(); i++) {
            if (layers.get(i).kind() == TubView.LayerKind.CLOTH || layers.get(i).kind() == TubView.LayerKind.TAPE) {
                return i + 1;
            }
        }
        throw new AssertionError("no ply in " + owner);
    }

    private <T> T await(Supplier<Optional<T>> what) {
        // A busy machine takes its time; what does not come at all is what fails.
        long end = System.nanoTime() + 300_000_000_000L;
        while (System.nanoTime() < end) {
            Optional<T> is = what.get();
            if (is.isPresent()) {
                return is.get();
            }
            try {
                told.poll(100, TimeUnit.MILLISECONDS);
            } catch (InterruptedException e) {
                Thread.currentThread().interrupt();
            }
        }
        throw new AssertionError("it did not come");
    }

    @Test
    void aPlyLessWeighsLessAndTheExactAnswerLiesWithinTheBoundsGivenAtOnce() {
        LedgerView.OwnerView zone = someZone();
        DraftView begun = project.openDraft(DESIGNED);
        assertTrue(begun.exact() && begun.words().isEmpty());
        DraftView draft = project.change(begun.id(), List.of(off(zone.name(), firstPly(zone))));
        double ply = zone.area() * zone.stack().layers().get(firstPly(zone) - 1).thickness();
        double density = (begun.mass() - draft.mass()) / ply;
        assertTrue(density > 1000 && density < 2500, "carbon in resin, kg/m³: " + density);
        assertTrue(draft.stiffness().high() < begun.stiffness().low());
        DraftView exact = await(() -> Optional.of(project.draft(begun.id())).filter(DraftView::exact));
        assertTrue(
                exact.stiffness().low() >= draft.stiffness().low() * (1 - 1e-6)
                        && exact.stiffness().high() <= draft.stiffness().high() * (1 + 1e-6),
                () -> exact.stiffness() + " within " + draft.stiffness());
        DraftView back = project.undo(begun.id());
        assertEquals(begun.mass(), back.mass(), 1e-12);
        assertTrue(back.canRedo() && !back.canUndo() && back.words().isEmpty());
        assertEquals(draft.mass(), project.redo(begun.id()).mass(), 1e-12);
    }

    @Test
    void aCoreOfAnotherMaterialWeighsWhatItsDensitySaysAndTheExactAnswerLiesWithinTheBounds() {
        LedgerView ledger = await(() -> project.ledger(DESIGNED));
        LedgerView.OwnerView zone =
                ledger.owners().stream().filter(o -> core(o) > 0).findFirst().orElseThrow();
        TubView.LayerView was = zone.stack().layers().get(core(zone) - 1);
        double density = core(ledger, was.material()).density();
        LedgerView.CoreView other = ledger.cores().stream()
                .filter(c -> c.density() > 1.2 * density)
                .findFirst()
                .orElseThrow();
        DraftView begun = project.openDraft(DESIGNED);
        DraftView draft = project.change(
                begun.id(),
                List.of(new DraftView.ChangeRequest(
                        zone.name(),
                        core(zone),
                        Optional.empty(),
                        Optional.empty(),
                        Optional.empty(),
                        Optional.of(other.name()))));
        double more = (other.density() - density) * was.thickness() * zone.area();
        assertEquals(begun.mass() + more, draft.mass(), 1e-6 * begun.mass());
        assertTrue(draft.words().getFirst().contains(other.name()), draft.words()::toString);
        assertEquals(
                other.name(),
                draft.edited().getFirst().layers().get(core(zone) - 1).material());
        DraftView exact = await(() -> Optional.of(project.draft(begun.id())).filter(DraftView::exact));
        assertTrue(
                exact.stiffness().low() >= draft.stiffness().low() * (1 - 1e-6)
                        && exact.stiffness().high() <= draft.stiffness().high() * (1 + 1e-6),
                () -> exact.stiffness() + " within " + draft.stiffness());
        UserMistake none = assertThrows(
                UserMistake.class,
                () -> project.change(
                        begun.id(),
                        List.of(new DraftView.ChangeRequest(
                                zone.name(),
                                core(zone),
                                Optional.empty(),
                                Optional.empty(),
                                Optional.empty(),
                                Optional.of("cork")))));
        assertTrue(none.getMessage().contains(other.name()), none.getMessage());
    }

    /** Place of its core, or 0. */
    private static int core(LedgerView.OwnerView owner) {
        List<TubView.LayerView> layers = owner.stack().layers();
        for (int i = 0; i < layers.size(); i++) {
            if (layers.get(i).kind() == TubView.LayerKind.HONEYCOMB
                    || layers.get(i).kind() == TubView.LayerKind.FOAM) {
                return i + 1;
            }
        }
        return 0;
    }

    private static LedgerView.CoreView core(LedgerView ledger, String name) {
        return ledger.cores().stream()
                .filter(c -> c.name().equals(name))
                .findFirst()
                .orElseThrow();
    }

    @Test
    void twoTabsDoNotSeeEachOthersDrafts() {
        LedgerView.OwnerView zone = someZone();
        DraftView mine = project.openDraft(DESIGNED);
        DraftView yours = project.openDraft(DESIGNED);
        project.change(mine.id(), List.of(off(zone.name(), firstPly(zone))));
        assertTrue(project.draft(yours.id()).words().isEmpty());
        assertEquals(yours.massBefore(), project.draft(yours.id()).mass(), 1e-12);
    }

    @Test
    void whatCannotBeLaidIsRefusedInWordsAndLeavesTheDraftAsItWas() {
        LedgerView.OwnerView zone = someZone();
        String id = project.openDraft(DESIGNED).id();
        List<DraftView.ChangeRequest> all = java.util.stream.IntStream.rangeClosed(
                        1, zone.stack().layers().size())
                .mapToObj(i -> off(zone.name(), i))
                .toList();
        UserMistake bare = assertThrows(UserMistake.class, () -> project.change(id, all));
        assertTrue(bare.getMessage().contains("without a ply"), bare.getMessage());
        assertThrows(UserMistake.class, () -> project.change(id, List.of(off(zone.name(), 99))));
        assertThrows(UserMistake.class, () -> project.change(id, List.of(off("no such zone", 1))));
        assertThrows(UserMistake.class, () -> project.undo(id));
        assertTrue(project.draft(id).words().isEmpty());
    }

    @Test
    void theLedgerFillsWithBoundsBelowTheNominalAndIsSortedByWhatIsLost() {
        LedgerView ledger = await(() -> project.ledger(DESIGNED).filter(l -> l.ready() >= 1));
        assertTrue(ledger.rows().size() > 5);
        double before = Double.NEGATIVE_INFINITY;
        for (LedgerView.RowView row : ledger.rows()) {
            assertTrue(row.mass() > 0, row.toString());
            assertTrue(row.left().low() <= row.left().high(), row.toString());
            assertTrue(row.lostPerKilogram() >= before, "sorted");
            before = row.lostPerKilogram();
        }
    }

    @Test
    void aPointOfTheCurveLaidIntoADraftWeighsAndHoldsWhatTheCurveSays() {
        await(() -> project.ledger(DESIGNED));
        project.startExchange(new ExchangeView.ExchangeRequest(DESIGNED, 0.6, 0.95, 3, 6));
        assertThrows(
                UserMistake.class,
                () -> project.startExchange(new ExchangeView.ExchangeRequest(DESIGNED, 0.6, 0.95, 3, 6)));
        finished(project::exchangeWork, RunView.State.DONE);
        ExchangeView curve = project.exchange();
        assertEquals(3, curve.points().size());
        String id = project.openDraft(DESIGNED).id();
        for (int k = 0; k < 3; k++) {
            ExchangeView.PointView point = curve.points().get(k);
            assertTrue(point.bound() <= point.mass(), point.toString());
            DraftView laid = project.lay(id, k);
            assertEquals(point.mass(), laid.mass(), 1e-9 * point.mass(), "the same plies weigh the same");
            assertTrue(
                    laid.stiffness().high() >= point.reached().low() * (1 - 1e-6)
                            && laid.stiffness().low() <= point.reached().high() * (1 + 1e-6),
                    () -> laid.stiffness() + " and " + point.reached());
            assertTrue(laid.canUndo(), "one step back is the layup before");
        }
        assertThrows(UserMistake.class, () -> project.lay(id, 3));
        project.startExchange(new ExchangeView.ExchangeRequest(DESIGNED, 0.5, 0.99, 40, 600));
        project.stopExchange();
        finished(project::exchangeWork, RunView.State.STOPPED);
        assertEquals(curve, project.exchange(), "one that is stopped before its first point leaves the one before");
    }

    private void finished(Supplier<RunView> work, RunView.State how) {
        RunView ended = await(() -> Optional.of(work.get()).filter(w -> w.state() != RunView.State.WORKING));
        assertEquals(how, ended.state(), ended::words);
    }

    @Test
    void bucklingAndVibrationAreFoundWithTheirMovementAndTheBareTubsFirstFrequencyIsThatOfATub() {
        project.startModes(DESIGNED);
        finished(project::modesWork, RunView.State.DONE);
        List<ModesView.ShapeView> shapes = project.modes().shapes();
        ModesView.ShapeView first = shapes.stream()
                .filter(s -> s.what() == ModesView.ShapeKind.FREE)
                .findFirst()
                .orElseThrow();
        // Common practice, no source: bare composite tubs have their first modes between some tens and some hundreds of
        // Hz.
        assertTrue(first.value() > 10 && first.value() < 1000, first.toString());
        for (ModesView.ShapeView shape : shapes) {
            assertTrue(project.shape(DESIGNED, shape.number()).length > 1000, shape.toString());
            assertTrue(shape.value() > 0 && !shape.part().isEmpty(), shape.toString());
        }
        assertThrows(UserMistake.class, () -> project.shape(DESIGNED, shapes.size()));
        assertThrows(UserMistake.class, () -> project.startModes("no such variant"));
    }

    @Test
    void aWholeRunOnFinerMeshesIsRememberedAndLeavesTheFieldsOnTheMeshThatIsShown() {
        await(() -> Optional.of(project.answers()).filter(a -> !a.isEmpty()));
        project.startRun();
        finished(project::run, RunView.State.DONE);
        assertTrue(project.answers().getFirst().extrapolated());
        String loading = project.view().variants().getFirst().cases().getFirst();
        assertEquals(count("nodes", project.tub(DESIGNED)), count("displacements", project.fields(DESIGNED, loading)));
        StoredView stored = project.runs().getFirst();
        assertEquals("run " + stored.id() + ": " + DESIGNED, stored.names().getFirst());
        assertEquals(
                project.answers().getFirst().mass(),
                project.runAnswers(stored.id()).getFirst().mass());
        assertEquals(
                count("nodes", project.tub(DESIGNED)),
                count("nodes", project.tub(stored.names().getFirst())));
    }

    /** How many numbers an array of a binary document has. */
    private static int count(String array, byte[] document) {
        String head = new String(document, java.nio.charset.StandardCharsets.ISO_8859_1);
        java.util.regex.Matcher found = java.util.regex.Pattern.compile(
                        "\"name\":\"" + array + "\",\"type\":\"FLOAT32\",\"count\":(\\d+)")
                .matcher(head);
        assertTrue(found.find(), array);
        return Integer.parseInt(found.group(1));
    }

    /** A shaft of 573 N·m a degree between two stations, read a little late on the way down. */
    private static String readings(String test) {
        StringBuilder text = new StringBuilder("test, " + test + """

                held station, 2000 mm
                loaded station, 300 mm
                gauge, front right, 300 mm, z, 500 mm, 0 mm
                gauge, front left, 300 mm, z, -500 mm, 0 mm
                gauge, rear right, 2000 mm, z, 500 mm, 0 mm
                gauge, rear left, 2000 mm, z, -500 mm, 0 mm
                cycle, torque [N·m], front right [mm], front left [mm], rear right [mm], rear left [mm]
                """);
        double[][] steps = {{0, 0}, {200, 0}, {400, 0}, {600, 0}, {400, 4}, {200, 4}, {0, 4}};
        for (double[] step : steps) {
            double angle = Math.toRadians((step[0] + step[1]) / 573);
            text.append(String.format(
                    java.util.Locale.ROOT, "1, %.0f, %.4f, %.4f, 0, 0%n", step[0], 500 * angle, -500 * angle));
        }
        return text.toString();
    }

    @Test
    void aTestIsReadFromTheProjectsFolderAloneAndWhatCannotBeExplainedIsRefused() throws IOException {
        Files.writeString(folder.resolve("first.csv"), readings("tub only"));
        Files.writeString(Files.createDirectories(folder.resolve("rig")).resolve("hubs.csv"), readings("hub to hub"));
        Files.writeString(folder.resolve("shopping.csv"), "bread, 2\n");
        Files.writeString(folder.resolve("half.csv"), "gauge, left\n");
        List<String> files =
                project.readings().stream().map(TestView.FileView::file).toList();
        assertEquals(List.of("first.csv", "half.csv", "rig/hubs.csv"), files, "no list of other things");
        TestView test = project.test("first.csv", false);
        assertEquals(7, test.steps().size());
        assertEquals(Math.toDegrees(573), test.estimates().getFirst().stiffness(), 0.01 * Math.toDegrees(573));
        assertEquals(1, test.loops().size());
        // 4 N·m late is 4/573 of a degree wide.
        assertEquals(Math.toRadians(4 / 573.0), test.loops().getFirst().width(), 1e-6);
        UserMistake none = assertThrows(UserMistake.class, () -> project.test("shopping.csv", false));
        assertTrue(none.getMessage().contains("shopping.csv"), none.getMessage());
        UserMistake half = assertThrows(UserMistake.class, () -> project.test("half.csv", false));
        assertTrue(half.getMessage().contains("half.csv:1"), half.getMessage());
        for (String outside : new String[] {"../first.csv", "tub.yaml", "/etc/passwd"}) {
            assertThrows(UserMistake.class, () -> project.test(outside, false), outside);
        }
        UserMistake hubs = assertThrows(
                UserMistake.class,
                () -> project.startTest(new TestView.ExplainRequest("rig/hubs.csv", false, DESIGNED)));
        assertTrue(hubs.getMessage().contains("hub to hub"), hubs.getMessage());
        assertThrows(UserMistake.class, project::keepTest);
        assertEquals("", project.explained().file());
    }

    @Test
    void aDraftIsKeptAsAVariantWithEveryOtherLineOfTheFileAsItWas() throws IOException {
        Path file = folder.resolve("tub.yaml");
        String text = Files.readString(file);
        LedgerView.OwnerView zone = someZone();
        String id = project.openDraft(DESIGNED).id();
        assertThrows(UserMistake.class, () -> project.keep(id, "nothing"));
        project.change(id, List.of(off(zone.name(), firstPly(zone))));
        try {
            DraftView.KeptView kept = project.keep(id, "less of it");
            assertTrue(kept.kept(), kept.message());
            String now = Files.readString(file);
            List<String> lines = now.lines().toList();
            assertTrue(text.lines().allMatch(lines::contains), "comments and order stay");
            ProjectView view = project.view();
            assertTrue(view.variants().stream().anyMatch(v -> v.name().equals("less of it")), view.toString());
            assertTrue(project.log().getFirst().words().contains("less of it"));
        } finally {
            Files.writeString(file, text);
        }
        await(() -> Optional.of(project.view()).filter(v -> v.revision().equals(Snapshot.revision(text))));
    }

    @Test
    void aFileThatChangedMeanwhileIsLeftAloneAndBothTextsAreShown() throws IOException {
        Path file = folder.resolve("tub.yaml");
        String text = Files.readString(file);
        LedgerView.OwnerView zone = someZone();
        String id = project.openDraft(DESIGNED).id();
        project.change(id, List.of(off(zone.name(), firstPly(zone))));
        String theirs = text + "# a colleague was here\n";
        try {
            Files.writeString(file, theirs);
            DraftView.KeptView kept = project.keep(id, "too late");
            assertTrue(!kept.kept() && kept.theirs().orElse("").equals(theirs), kept.message());
            assertTrue(kept.ours().orElse("").contains("too late"));
            assertEquals(theirs, Files.readString(file));
        } finally {
            Files.writeString(file, text);
        }
        await(() -> Optional.of(project.view()).filter(v -> v.revision().equals(Snapshot.revision(text))));
    }

    @Test
    void aDraftIsCarriedOverAFileThatChangesAgainBeforeItHasBeenSolved() throws IOException {
        Path file = folder.resolve("tub.yaml");
        String text = Files.readString(file);
        LedgerView.OwnerView zone = someZone();
        String id = project.openDraft(DESIGNED).id();
        List<String> words =
                project.change(id, List.of(off(zone.name(), firstPly(zone)))).words();
        try {
            Files.writeString(file, text.replace("tub: Trial", "tub: Trial Three"));
            await(() -> Optional.of(project.view()).filter(v -> v.tub().equals("Trial Three")));
        } finally {
            Files.writeString(file, text);
        }
        DraftView draft = await(() -> Optional.of(project.draft(id))
                .filter(d -> d.note().isPresent() && d.revision().equals(Snapshot.revision(text))));
        assertEquals(words, draft.words());
        assertTrue(project.undo(id).words().isEmpty());
    }

    @Test
    void anEditOfTheFileIsFollowedAndAnErrorInItIsShownWithItsLine() throws IOException {
        Path file = folder.resolve("tub.yaml");
        String text = Files.readString(file);
        String before = project.view().revision();
        await(() -> Optional.of(project.answers()).filter(a -> !a.isEmpty()));
        try {
            Files.writeString(file, text.replace("tub: Trial", "tub: Trial Two"));
            ProjectView now =
                    await(() -> Optional.of(project.view()).filter(v -> v.tub().equals("Trial Two")));
            assertNotEquals(before, now.revision());
            Files.writeString(file, text.replace("tub: Trial", "tbu: Trial"));
            ProjectView broken = await(
                    () -> Optional.of(project.view()).filter(v -> v.problem().isPresent()));
            assertTrue(broken.problem().get().line() > 0, broken.problem().toString());
            assertEquals("Trial Two", broken.tub(), "what could last be read stays");
        } finally {
            Files.writeString(file, text);
        }
        await(() -> Optional.of(project.view()).filter(v -> v.tub().equals("Trial")));
    }
}
