// SPDX-License-Identifier: Apache-2.0
package tubwright.desk.work;

import java.util.stream.Collectors;
import tubwright.desk.answer.PunchAnswer;
import tubwright.engine.design.Design;
import tubwright.engine.laminate.Laminate;
import tubwright.engine.safety.crush.PunchedPanel;

/** Sends hard bodies against panels of a design's laminates. */
public final class PunchWork {
    private PunchWork() {}

    /**
     * One body against one laminate.
     *
     * @throws UserMistake where there is no such variant or laminate
     */
    public static PunchAnswer punch(
            Design design,
            TrimWork.Request request,
            String name,
            PunchedPanel.Body body,
            PunchedPanel.Known known,
            String stamp,
            String version) {
        Design.Variant variant = TrimWork.variant(design, request);
        return new PunchAnswer(
                design.name(),
                variant.name(),
                name,
                body,
                PunchedPanel.of(laminate("--laminate", variant, name), body, known),
                stamp,
                version);
    }

    /** A laminate by its name. */
    static Laminate laminate(String option, Design.Variant variant, String name) {
        Laminate laminate = variant.tub().laminates().get(name);
        if (laminate == null) {
            throw new UserMistake(option + " " + name + ": there is no such laminate in variant '" + variant.name()
                    + "'; there are "
                    + variant.tub().laminates().keySet().stream().sorted().collect(Collectors.joining(", ")));
        }
        return laminate;
    }
}
