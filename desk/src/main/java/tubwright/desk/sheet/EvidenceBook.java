// SPDX-License-Identifier: Apache-2.0
package tubwright.desk.sheet;

import static tubwright.desk.text.Conversions.perDegree;
import static tubwright.desk.text.Figures.fixed;
import static tubwright.desk.text.Figures.significant;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import tubwright.desk.answer.CrushAnswer;
import tubwright.desk.answer.CrushWords;
import tubwright.desk.answer.DamageAnswer;
import tubwright.desk.answer.EvidenceAnswer;
import tubwright.desk.answer.Reading;
import tubwright.desk.answer.ReserveTwins;
import tubwright.desk.answer.ReserveWords;
import tubwright.desk.answer.RulesAnswer;
import tubwright.desk.answer.RunAnswer;
import tubwright.desk.report.EvidencePictures;
import tubwright.engine.material.Material;
import tubwright.engine.material.Property;
import tubwright.engine.quantity.Quantity;
import tubwright.engine.response.Reserve;
import tubwright.engine.response.ReserveTable;
import tubwright.engine.safety.crush.CrushRun;
import tubwright.engine.safety.crush.CrushVerdicts;
import tubwright.engine.safety.damage.DamageMap;
import tubwright.engine.safety.rules.Finding;
import tubwright.engine.safety.rules.PanelTest;

/** The dossier on paper. The caution stands at the foot of every page. */
public final class EvidenceBook {
    private static final String GAP = " ";
    private static final int ROWS = 30;
    private static final float ROW = 13;

    private final EvidenceAnswer answer;
    private final Paper paper;

    private EvidenceBook(EvidenceAnswer answer, Paper paper) {
        this.answer = answer;
        this.paper = paper;
    }

    /** The PDF file. */
    public static byte[] write(EvidenceAnswer answer) {
        String foot =
                answer.tub() + "   -   fingerprint " + answer.fingerprint() + "   -   Tubwright " + answer.version();
        try (Paper paper = new Paper(answer.tub() + ": evidence", foot, EvidenceAnswer.CAUTION)) {
            new EvidenceBook(answer, paper).all();
            return paper.done();
        }
    }

    private void all() {
        paper.title(answer.tub() + ": evidence");
        paper.paragraph((answer.by().isEmpty() ? "" : answer.by() + ". ")
                + "What was relied on, what came out, what was tested, and what nobody has looked at.");
        paper.paragraph(RunAnswer.CAUTION);
        inputs();
        summary();
        verification();
        materials();
        cases();
        margins();
        damage();
        answer.crush().ifPresent(this::crush);
        answer.rules().ifPresent(this::rules);
        tests();
        paper.heading("What is not covered");
        paper.paragraph("No pass, any of it.");
        answer.gaps().forEach(g -> paper.paragraph("•  " + g));
    }

    private void inputs() {
        paper.heading("What this was made from");
        paper.paragraph("The same files give the same dossier, byte for byte. " + answer.mesh() + ".");
        List<List<String>> rows = rows("file", "SHA-256");
        answer.inputs().forEach(i -> rows.add(List.of(i.name(), i.fingerprint())));
        paper.table(new float[] {0.24f, 0.76f}, rows, ROW);
    }

    private void summary() {
        RunAnswer run = answer.run();
        paper.heading("The tub");
        Reading.torsion(run.main())
                .ifPresent(t -> paper.paragraph("Torsional stiffness "
                        + significant(perDegree(t.stiffness().value()), 4, GAP) + " ± "
                        + significant(perDegree(t.stiffness().error()), 2, GAP) + " N·m/deg between x = "
                        + fixed(1e3 * t.frontStation(), 0, GAP) + " mm and " + fixed(1e3 * t.rearStation(), 0, GAP)
                        + " mm; the band is the mesh's alone."));
        paper.paragraph("Mass " + significant(run.main().mass().whole().mass(), 4, GAP) + " kg.");
        for (RunAnswer.Target target : run.targets()) {
            paper.paragraph("Target " + target.what() + ": " + (target.atLeast() ? "at least " : "at most ")
                    + significant(target.limit(), 4, GAP) + " " + target.unit() + "; is "
                    + significant(target.value(), 4, GAP) + ".");
        }
        run.warnings().forEach(w -> paper.paragraph("!  " + w));
    }

    private void verification() {
        paper.heading("How the program was checked");
        if (answer.verification().isEmpty()) {
            paper.paragraph("The verification report did not come with this build; see docs/verification.");
            return;
        }
        paper.paragraph(answer.checks() + " values from outside (closed forms, published benchmarks, handbooks, open"
                + " measurements) in " + answer.verification().size()
                + " families; docs/verification lists them one by one, with what they do not show.");
        List<List<String>> rows = rows("family", "checks", "worst, of what was allowed");
        answer.verification()
                .forEach(f -> rows.add(List.of(
                        f.name(),
                        Integer.toString(f.checks()),
                        String.format(Locale.ROOT, "%.0f %%", 100 * f.worst()))));
        paper.table(new float[] {0.5f, 0.2f, 0.3f}, rows, ROW);
    }

    private void materials() {
        paper.heading("Materials and where their values come from");
        for (Material material : answer.run().materials()) {
            List<List<String>> rows = rows(material.name(), "value", "source and trust");
            for (Property property : Property.values()) {
                material.properties()
                        .find(property)
                        .ifPresent(v -> rows.add(List.of(
                                property.key(),
                                new Quantity(v.si(), property.dimension()).toString(),
                                v.provenance().toString())));
            }
            paper.table(new float[] {0.24f, 0.14f, 0.62f}, rows, ROW);
        }
    }

    private void cases() {
        paper.heading("Cases");
        answer.run().main().cases().forEach(c -> paper.paragraph("•  " + c.name() + ": stiffness"));
        answer.run().main().reserves().loads().forEach((n, s) -> paper.paragraph("•  " + n + ": " + s));
    }

    private void margins() {
        ReserveTable table = answer.run().main().reserves();
        paper.heading("Margins");
        if (table.loads().isEmpty()) {
            paper.paragraph("The design has no load cases: no margin was looked at.");
            return;
        }
        paper.paragraph(ReserveWords.ASIDE + " " + table.strengths());
        EvidencePictures.margins(answer.run()).forEach(this::picture);
        List<List<String>> rows = rows("reserve", "case", "where", "what gives way");
        for (Reserve row :
                ReserveTwins.joined(table.envelope()).stream().limit(ROWS).toList()) {
            rows.add(List.of(ReserveWords.value(row), row.load(), row.zone(), ReserveWords.what(row)));
        }
        paper.table(new float[] {0.1f, 0.18f, 0.27f, 0.45f}, rows, ROW);
    }

    private void damage() {
        DamageAnswer.PerVariant variant = answer.damage().variants().getFirst();
        paper.heading("If a patch is torn out");
        paper.paragraph(String.format(
                Locale.ROOT,
                "A hole of %.0f mm moved over the whole tub, %d positions. Half of them cost no more than %s %% of the torsional"
                        + " stiffness. %s",
                1e3 * answer.damage().size(),
                variant.patches().size(),
                significant(100 * variant.usualLoss(), 2, GAP),
                DamageAnswer.ASIDE));
        EvidencePictures.damage(variant).forEach(this::picture);
        List<List<String>> rows = rows("at", "zone", "torsion lost", "reserve before", "after");
        variant.weakest().stream()
                .limit(12)
                .forEach(p -> rows.add(List.of(
                        p.patch().name(),
                        p.patch().region(),
                        DamageAnswer.lost(p),
                        factor(DamageAnswer.before(p)),
                        factor(DamageMap.reserve(p)))));
        paper.table(new float[] {0.3f, 0.26f, 0.16f, 0.14f, 0.14f}, rows, ROW);
    }

    private static String factor(double value) {
        return value > 100 ? "> 100" : String.format(Locale.ROOT, "%.2f", value);
    }

    private void crush(CrushAnswer crush) {
        for (CrushAnswer.Each each : crush.structures()) {
            paper.heading("Crush: " + each.structure().name());
            paper.paragraph(CrushWords.impact(each.structure()) + ".");
            each.whole().ifPresent(a -> {
                paper.paragraph(CrushWords.outcome(a) + ".");
                curve(a);
            });
            each.apart().ifPresent(a -> CrushWords.apart(each.structure(), a).forEach(paper::paragraph));
            List<List<String>> rows = rows("limit", "found", "reserve", "comes to");
            for (CrushVerdicts.Line l : each.lines()) {
                rows.add(List.of(
                        l.limit(),
                        l.found(),
                        Double.isFinite(l.reserve()) ? String.format(Locale.ROOT, "%.2f", l.reserve()) : "",
                        l.verdict().words()));
            }
            paper.table(new float[] {0.44f, 0.26f, 0.1f, 0.2f}, rows, ROW);
            each.structure().sections().stream()
                    .map(CrushWords::section)
                    .distinct()
                    .forEach(paper::paragraph);
        }
        paper.paragraph(CrushAnswer.ASIDE);
    }

    /** Crush force over stroke. */
    private void curve(CrushRun.Answer a) {
        float height = 120;
        float bottom = paper.room(height + 34) + 20;
        float left = Paper.MARGIN + 36;
        float width = Paper.WIDTH - 60;
        double stroke = a.stroke();
        double most = 1.15 * a.peakForce();
        paper.line(left, bottom, left + width, bottom, 0.6f, 0.3f);
        paper.line(left, bottom, left, bottom + height, 0.6f, 0.3f);
        List<CrushRun.Moment> h = a.history();
        for (int i = 0; i + 1 < h.size(); i++) {
            paper.line(
                    left + (float) (width * h.get(i).stroke() / stroke),
                    bottom + (float) (height * h.get(i).force() / most),
                    left + (float) (width * h.get(i + 1).stroke() / stroke),
                    bottom + (float) (height * h.get(i + 1).force() / most),
                    1.2f,
                    0.1f);
        }
        for (int i = 0; i <= 4; i++) {
            float x = left + width * i / 4;
            paper.line(x, bottom, x, bottom - 3, 0.5f, 0.3f);
            paper.label(x, bottom - 12, fixed(1e3 * stroke * i / 4, 0, GAP) + (i == 4 ? " mm" : ""));
            float y = bottom + height * i / 4;
            paper.line(left, y, left - 3, y, 0.5f, 0.3f);
            paper.label(left - 18, y - 2, fixed(1e-3 * most * i / 4, 1, GAP) + (i == 4 ? " kN" : ""));
        }
    }

    private void rules(RulesAnswer rules) {
        for (RulesAnswer.Held held : rules.sets()) {
            paper.heading("Rules: " + held.set().name());
            paper.paragraph(held.set().source() + ". " + held.set().about() + " " + held.count());
            for (Finding f : held.findings()) {
                paper.paragraph(f.clause().number() + "  " + f.clause().says() + " ["
                        + f.clause().provenance().trust().mark() + "]: "
                        + (f.found().isEmpty() ? "" : f.found() + ". ")
                        + RulesAnswer.comesTo(f).toUpperCase(Locale.ROOT).substring(0, 1)
                        + RulesAnswer.comesTo(f).substring(1) + ".");
            }
            for (PanelTest p : held.panels()) {
                paper.paragraph("Test panel of " + p.laminate() + ", foretold: " + p.words() + ".");
            }
        }
        paper.paragraph(RulesAnswer.ASIDE);
    }

    private void tests() {
        paper.heading("Tests done");
        if (answer.tests().isEmpty()) {
            paper.paragraph("None on record. The first tub goes on a rig before it is driven.");
        }
        answer.tests().forEach(t -> paper.paragraph("•  " + (t.when().isEmpty() ? "" : t.when() + "  ") + t.what()));
    }

    private void picture(EvidencePictures.Plate plate) {
        paper.picture(
                plate.png(),
                plate.picture().image().width(),
                plate.picture().image().height());
        paper.paragraph(plate.caption());
    }

    private static List<List<String>> rows(String... heads) {
        List<List<String>> rows = new ArrayList<>();
        rows.add(List.of(heads));
        return rows;
    }
}
