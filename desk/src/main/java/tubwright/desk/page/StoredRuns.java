// SPDX-License-Identifier: Apache-2.0
package tubwright.desk.page;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Arrays;
import java.util.List;
import java.util.Map;
import java.util.concurrent.ConcurrentHashMap;
import java.util.function.DoubleUnaryOperator;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import tools.jackson.core.JacksonException;
import tools.jackson.databind.json.JsonMapper;
import tubwright.desk.logbook.Logbook;
import tubwright.desk.work.UserMistake;
import tubwright.engine.design.Design;
import tubwright.engine.design.text.DesignError;

/**
 * Runs of other days: what they answered and the design file as it stood, out of the logbook, so that they can be laid
 * beside what there is now. Tubs of such a run are named {@code run 12: aluminium}; no variant can be, for its name has no
 * colon. Safe for use by several threads.
 */
final class StoredRuns {
    private static final String ANSWERS = "answers";
    private static final String DESIGN = "design";
    private static final Pattern NAME = Pattern.compile("run (\\d{1,18}): (.+)");

    private final Logbook logbook;
    private final DoubleUnaryOperator meshSize;
    private final JsonMapper mapper = JsonMapper.builder().build();
    private final Map<String, byte[]> surfaces = new ConcurrentHashMap<>();

    /**
     * @param meshSize gives the mesh size to draw on, m, for the design's own
     */
    StoredRuns(Logbook logbook, DoubleUnaryOperator meshSize) {
        this.logbook = logbook;
        this.meshSize = meshSize;
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
        return surfaces.computeIfAbsent(name, this::drawn);
    }

    private byte[] drawn(String name) {
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
                Design.Variant variant = Design.read(file)
                        .variant(parts.group(2))
                        .orElseThrow(() -> new UserMistake("there is no \"" + name + "\" in the logbook"));
                return Surface.of(
                                name,
                                variant,
                                Snapshot.revision(text),
                                meshSize.applyAsDouble(variant.tub().meshSize()))
                        .bytes();
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
