// SPDX-License-Identifier: Apache-2.0
package tubwright.desk.page;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import tools.jackson.core.JacksonException;
import tools.jackson.databind.JsonNode;
import tools.jackson.databind.json.JsonMapper;
import tubwright.desk.answer.StudyAnswer;
import tubwright.desk.export.RunFolder;
import tubwright.desk.work.UserMistake;
import tubwright.engine.design.Design;
import tubwright.engine.design.DesignFile;
import tubwright.engine.design.text.DesignError;
import tubwright.engine.design.text.Tree;
import tubwright.fleet.Blueprint;
import tubwright.fleet.Row;
import tubwright.fleet.findings.Findings;
import tubwright.fleet.plan.StudyPlan;

/** The studies of a project as {@code tubwright study} left them, and their designs put into the file. */
final class StudiesBook {
    private static final JsonMapper MAPPER = JsonMapper.builder().build();

    private final OpenProject project;
    private final String version;

    StudiesBook(OpenProject project, String version) {
        this.project = project;
        this.version = version;
    }

    /** What one of them left, with the plan that it follows now. */
    private record Left(StudyPlan plan, JsonNode answer, boolean current) {}

    /** All that were run and can still be read. */
    List<StudyView> list() {
        Design design = project.workings().design();
        List<StudyView> views = new ArrayList<>();
        for (String name : StudyPlan.names(project.folder().resolve(StudyPlan.FOLDER))) {
            left(design, name).ifPresent(left -> views.add(view(design, left)));
        }
        return views;
    }

    private Optional<Left> left(Design design, String name) {
        Path file = project.folder().resolve("runs").resolve("study-" + name).resolve(RunFolder.ANSWER);
        if (!Files.isRegularFile(file)) {
            return Optional.empty();
        }
        try {
            JsonNode answer = MAPPER.readTree(Files.readString(file));
            StudyPlan plan = StudyPlan.read(design, name, version);
            return matches(plan, answer)
                    ? Optional.of(new Left(plan, answer, current(plan, answer)))
                    : Optional.empty();
        } catch (JacksonException | DesignError unreadable) {
            // Broken off, or of a study that is being rewritten: there is nothing to show.
            return Optional.empty();
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    /** Whether the answer is about what the plan now varies and reads. */
    private static boolean matches(StudyPlan plan, JsonNode answer) {
        List<String> varied = answer.path("varied")
                .valueStream()
                .map(v -> v.path("name").asString(""))
                .toList();
        List<String> readings =
                answer.path("readings").valueStream().map(r -> r.asString("")).toList();
        return varied.equals(plan.variations().stream().map(v -> v.name()).toList())
                && readings.equals(plan.readings().stream().map(r -> r.text()).toList())
                && answer.path("variants").size() == plan.parts().size();
    }

    private static boolean current(StudyPlan plan, JsonNode answer) {
        for (int v = 0; v < plan.parts().size(); v++) {
            JsonNode points = answer.path("variants").path(v).path("points");
            List<tubwright.fleet.Point> planned = plan.parts().get(v).points();
            for (int p = 0; p < planned.size(); p++) {
                String key = points.path(p).path("key").asString("");
                if (!key.isEmpty() && !key.equals(planned.get(p).key())) {
                    return false;
                }
            }
        }
        return true;
    }

    private static double[] shares(JsonNode point) {
        return point.path("shares")
                .valueStream()
                .mapToDouble(JsonNode::asDouble)
                .toArray();
    }

    private static Findings.OfVariant findings(StudyPlan.Part part, JsonNode variant) {
        List<Findings.OfPoint> points = new ArrayList<>();
        for (JsonNode point : variant.path("points")) {
            String reason = point.path("reason").asString("");
            double[] values = point.path("values")
                    .valueStream()
                    .mapToDouble(JsonNode::asDouble)
                    .toArray();
            String key = point.path("key").asString("");
            Row row = values.length == 0
                    ? Row.failed(key, part.job().readings(), reason)
                    : Row.done(key, part.job().readings(), values);
            points.add(new Findings.OfPoint(shares(point), Optional.of(row), new double[0]));
        }
        List<Integer> front =
                variant.path("front").valueStream().map(JsonNode::asInt).toList();
        return new Findings.OfVariant(
                part.variant(), points, Optional.empty(), List.of(), List.of(), List.of(), front, Optional.empty());
    }

    private static StudyView view(Design design, Left left) {
        StudyPlan plan = left.plan;
        List<Findings.OfVariant> variants = new ArrayList<>();
        for (int v = 0; v < plan.parts().size(); v++) {
            variants.add(
                    findings(plan.parts().get(v), left.answer.path("variants").path(v)));
        }
        StudyAnswer answer = new StudyAnswer(design.name(), new Findings(plan, variants, true), "");
        List<StudyAnswer.Column> columns = answer.columns();
        List<StudyView.AxisView> axes = new ArrayList<>();
        plan.variations()
                .forEach(v -> axes.add(new StudyView.AxisView(
                        v.name(), v.unit(), true, v.words().orElse(List.of()))));
        columns.forEach(c ->
                axes.add(new StudyView.AxisView(c.name(), c.unit().equals("1") ? "" : c.unit(), false, List.of())));
        List<StudyView.RowsView> rows = new ArrayList<>();
        for (int v = 0; v < variants.size(); v++) {
            List<StudyView.StudyPointView> points = new ArrayList<>();
            for (int p = 0; p < variants.get(v).points().size(); p++) {
                points.add(point(plan, columns, variants.get(v), v, p));
            }
            rows.add(new StudyView.RowsView(variants.get(v).variant(), points));
        }
        return new StudyView(
                plan.name(),
                plan.text().about().orElse(""),
                left.current,
                left.answer.path("complete").asBoolean(false),
                axes,
                rows);
    }

    private static StudyView.StudyPointView point(
            StudyPlan plan, List<StudyAnswer.Column> columns, Findings.OfVariant variant, int v, int p) {
        Findings.OfPoint point = variant.points().get(p);
        Optional<String> reason = point.row().flatMap(Row::reason);
        int varied = plan.variations().size();
        double[] numbers = new double[varied + (reason.isPresent() ? 0 : columns.size())];
        for (int i = 0; i < numbers.length; i++) {
            numbers[i] = i < varied
                    ? plan.variations().get(i).number(point.shares()[i])
                    : columns.get(i - varied).byVariant().get(v)[p];
        }
        return new StudyView.StudyPointView(numbers, variant.front().contains(p), reason.orElse(""));
    }

    /**
     * Puts a design of a study into the file as a variant.
     *
     * @throws UserMistake where there is none, or the file is no longer the one it was computed from
     */
    DraftView.KeptView open(StudyView.OpenPointRequest asked) {
        String name = asked.name() == null ? "" : asked.name().strip();
        Keeping.checkName(name);
        Design design = project.workings().design();
        if (!StudyPlan.names(project.folder().resolve(StudyPlan.FOLDER)).contains(asked.study())) {
            throw new UserMistake("there is no study \"" + asked.study() + "\"");
        }
        Left left = left(design, asked.study())
                .filter(Left::current)
                .orElseThrow(() -> new UserMistake("design or study have changed since; run the study again"));
        List<String> names =
                left.plan.parts().stream().map(StudyPlan.Part::variant).toList();
        int v = names.indexOf(asked.variant());
        JsonNode point = left.answer.path("variants").path(v).path("points").path(asked.point());
        if (v < 0 || point.path("values").isEmpty()) {
            throw new UserMistake("the study has no such design");
        }
        StudyPlan.Part part = left.plan.parts().get(v);
        Tree.Mapping differs =
                new Blueprint(part.job()).differs(part.point(shares(point)).patches());
        DesignFile.of(design).withVariant(name, differs).save();
        return new DraftView.KeptView(true, "kept as variant \"" + name + "\"", Optional.empty(), Optional.empty());
    }
}
