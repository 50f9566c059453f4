// SPDX-License-Identifier: Apache-2.0
package tubwright.desk.page;

import java.util.List;
import java.util.Optional;
import tubwright.desk.picture.EnergyScale;
import tubwright.engine.response.CaseAnswer;
import tubwright.engine.response.VariantAnswer;

/** What the engine answered, as the page is told it. */
final class AnswerViews {
    /** Parts named in the list of shares. */
    private static final int PARTS = 12;

    /** Places named in the list of reserve factors. */
    private static final int RESERVES = 60;

    private AnswerViews() {}

    static AnswerView of(VariantAnswer answer, String revision, String stamp) {
        return new AnswerView(
                answer.variant(),
                revision,
                answer.construction(),
                stamp,
                answer.cases().stream()
                        .anyMatch(c -> Double.isFinite(c.stiffness().error())),
                answer.mass().whole().mass(),
                Surface.pieces(answer.mass()),
                answer.cases().stream().map(AnswerViews::of).toList(),
                answer.reserves().envelope().stream()
                        .limit(RESERVES)
                        .map(r -> new AnswerView.ReserveView(
                                r.load(),
                                r.zone(),
                                r.mode().isEmpty() ? r.check() : r.mode() + " (" + r.check() + ")",
                                r.ply(),
                                r.place(),
                                r.value(),
                                r.firstCrack(),
                                r.local()))
                        .toList());
    }

    private static AnswerView.CaseView of(CaseAnswer answer) {
        double error = answer.stiffness().error();
        return new AnswerView.CaseView(
                answer.name(),
                kind(answer),
                answer.stiffness().value(),
                Double.isFinite(error) ? Optional.of(error) : Optional.empty(),
                answer.stiffnessAtHardpoints(),
                answer.load(),
                answer.frontStation(),
                answer.rearStation(),
                answer.includes(),
                answer.twistLine().map(t -> new AnswerView.TwistView(t.stations(), t.angles(), t.slopes())),
                answer.energy().stream()
                        .limit(PARTS)
                        .map(e -> new AnswerView.ShareView(e.name(), e.share()))
                        .toList());
    }

    private static AnswerView.Kind kind(CaseAnswer answer) {
        return switch (answer.kind()) {
            case TORSION -> AnswerView.Kind.TORSION;
            case BENDING -> AnswerView.Kind.BENDING;
        };
    }

    /**
     * The fields of one case.
     *
     * @param name by which the page knows the variant
     */
    static byte[] fields(String name, VariantAnswer answer, CaseAnswer of, String revision) {
        double[] u = of.fields().displacements();
        int nodes = answer.mesh().nodeCount();
        double[] moved = new double[3 * nodes];
        double largest = 0;
        for (int n = 0; n < nodes; n++) {
            System.arraycopy(u, 6 * n, moved, 3 * n, 3);
            largest = Math.max(
                    largest,
                    Math.sqrt(
                            Math.pow(moved[3 * n], 2) + Math.pow(moved[3 * n + 1], 2) + Math.pow(moved[3 * n + 2], 2)));
        }
        EnergyScale scale = EnergyScale.of(answer.mesh(), of.fields().energyDensities());
        return new BinaryDocument(new FieldsView(name, revision, of.name(), scale.low(), scale.high(), largest))
                .floats("displacements", moved)
                .floats("energy", of.fields().energyDensities())
                .bytes();
    }

    /** The answer's case of a name. */
    static Optional<CaseAnswer> named(VariantAnswer answer, String name) {
        List<CaseAnswer> cases = answer.cases();
        return cases.stream().filter(c -> c.name().equals(name)).findFirst();
    }
}
