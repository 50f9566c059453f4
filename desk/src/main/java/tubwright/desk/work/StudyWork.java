// SPDX-License-Identifier: Apache-2.0
package tubwright.desk.work;

import java.nio.file.Path;
import java.util.Optional;
import tubwright.desk.answer.StudyAnswer;
import tubwright.engine.design.Design;
import tubwright.fleet.Campaign;
import tubwright.fleet.Elsewhere;
import tubwright.fleet.FleetException;
import tubwright.fleet.LocalCores;
import tubwright.fleet.RowStore;
import tubwright.fleet.StudyRunner;
import tubwright.fleet.findings.StudyRun;
import tubwright.fleet.plan.StudyPlan;

/** Runs a design's studies. */
public final class StudyWork {
    private StudyWork() {}

    /**
     * Where and with what.
     *
     * @param workers designs at a time on this machine; 0 for one on each core
     * @param master address of an engine on other machines; empty for this one
     */
    public record Request(int workers, Optional<String> master) {}

    /** Where a design's rows are kept. */
    public static Path store(Design design) {
        return design.file().toAbsolutePath().getParent().resolve("runs").resolve("rows");
    }

    /** Runs a study; ends early when the listener says so, with what is there. */
    public static StudyAnswer run(
            Design design, StudyPlan plan, Request request, String version, StudyRun.Listener listener) {
        try (RowStore store = RowStore.open(store(design));
                StudyRunner runner = runner(request)) {
            return new StudyAnswer(design.name(), StudyRun.run(design, plan, store, runner, listener), version);
        } catch (FleetException told) {
            throw new UserMistake(told.getMessage());
        }
    }

    private static StudyRunner runner(Request request) {
        if (request.master.isEmpty()) {
            return request.workers > 0 ? new LocalCores(request.workers) : new LocalCores();
        }
        return Elsewhere.found()
                .orElseThrow(
                        () -> new UserMistake("--master needs the part of the program for clusters, which is not built"
                                + "\n    build it with: ./mvnw -DskipTests -pl fleet-spark -am package"
                                + " (docs/how-to/send-a-study-to-a-cluster.md);"
                                + "\n    leave --master out for this machine"))
                .at(request.master.get());
    }

    /** How far it is, in words. */
    public static String words(String variant, Campaign.Count count, double seconds) {
        StringBuilder words = new StringBuilder(variant + ": " + (count.all() - count.left()) + " of " + count.all());
        if (count.known() > 0) {
            words.append(", ").append(count.known()).append(" known before");
        }
        if (count.failed() > 0) {
            words.append(", ").append(count.failed()).append(" impossible");
        }
        if (count.done() > 0 && count.left() > 0) {
            words.append(", about ")
                    .append(tubwright.desk.text.Figures.elapsed(seconds / count.done() * count.left()))
                    .append(" to go");
        }
        return words.toString();
    }
}
