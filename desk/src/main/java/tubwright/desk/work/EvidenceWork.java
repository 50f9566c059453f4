// SPDX-License-Identifier: Apache-2.0
package tubwright.desk.work;

import java.io.BufferedReader;
import java.io.IOException;
import java.io.InputStream;
import java.io.InputStreamReader;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.security.MessageDigest;
import java.security.NoSuchAlgorithmException;
import java.util.ArrayList;
import java.util.HexFormat;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.TreeMap;
import java.util.function.BooleanSupplier;
import tubwright.desk.answer.CrushAnswer;
import tubwright.desk.answer.DamageAnswer;
import tubwright.desk.answer.EvidenceAnswer;
import tubwright.desk.answer.RulesAnswer;
import tubwright.desk.answer.RunAnswer;
import tubwright.engine.design.Design;
import tubwright.engine.safety.crush.CrushStructure;
import tubwright.engine.safety.damage.Degree;
import tubwright.engine.safety.rules.Finding;
import tubwright.engine.safety.rules.RuledTub;
import tubwright.engine.strength.Check;

/** Gathers the dossier of a design: runs it, moves a patch over it, crushes it, holds it against its rules. */
public final class EvidenceWork {
    private static final String VERIFICATION = "/tubwright/verification/findings.tsv";

    private EvidenceWork() {}

    /**
     * What is asked.
     *
     * @param meshSize m; empty for the design's own
     * @param quick whether to be content with coarser meshes
     * @param size diameter of the moving patch, m
     * @param positions how many places it visits
     * @param tests lines of the logbook about tests
     */
    public record Request(
            OptionalDouble meshSize, boolean quick, double size, int positions, List<EvidenceAnswer.Test> tests) {
        public Request {
            tests = List.copyOf(tests);
        }
    }

    /** Gathers it. */
    public static EvidenceAnswer gather(
            Design design, Request request, String version, Workbench.Listener listener, BooleanSupplier stop) {
        Design.Variant variant = design.asDesigned();
        RunAnswer run = EngineWorkbench.of(design)
                .run(
                        new Workbench.Request(
                                List.of(Design.AS_DESIGNED),
                                List.of(),
                                request.meshSize,
                                request.quick,
                                false,
                                Optional.empty(),
                                "",
                                version),
                        listener);
        DamageAnswer damage = DamageWork.damage(
                design,
                new DamageWork.Request(
                        new TrimWork.Request(
                                Optional.of(Design.AS_DESIGNED), Optional.empty(), request.meshSize, request.quick),
                        request.size,
                        Optional.empty(),
                        Optional.of(Degree.HOLE),
                        request.positions,
                        0),
                "",
                version,
                listener,
                stop);
        Optional<CrushAnswer> crush = variant.crush().isEmpty()
                ? Optional.empty()
                : Optional.of(new CrushAnswer(
                        design.name(),
                        variant.crush().stream().map(CrushAnswer.Each::of).toList(),
                        "",
                        version));
        double size = request.meshSize.orElse(variant.tub().meshSize()) * (request.quick ? 2 : 1);
        Optional<RulesAnswer> rules = variant.rules().isEmpty()
                ? Optional.empty()
                : Optional.of(RulesWork.answer(design, size, "", version, listener));
        return new EvidenceAnswer(
                design.name(),
                design.by().orElse(""),
                inputs(design),
                String.format(
                        Locale.ROOT,
                        "finest mesh %.0f mm, damage and pushes %.0f mm",
                        1e3
                                * run.main().cases().stream()
                                        .flatMap(c -> c.stiffness().samples().stream())
                                        .mapToDouble(s -> s.meshSize())
                                        .min()
                                        .orElse(size),
                        1e3 * size),
                run,
                damage,
                crush,
                rules,
                tests(variant, request.tests),
                verification(),
                gaps(run, crush, rules),
                version);
    }

    /** The design and the rule files beside it, with SHA-256. */
    private static List<EvidenceAnswer.Input> inputs(Design design) {
        List<EvidenceAnswer.Input> inputs = new ArrayList<>();
        inputs.add(new EvidenceAnswer.Input(
                design.file().getFileName().toString(), sha(design.text().getBytes(StandardCharsets.UTF_8))));
        Path folder = design.file().toAbsolutePath().getParent();
        for (String name : ruleFiles(design)) {
            try {
                inputs.add(new EvidenceAnswer.Input(name, sha(Files.readAllBytes(folder.resolve(name)))));
            } catch (IOException e) {
                throw new UncheckedIOException(folder.resolve(name) + " cannot be read", e);
            }
        }
        return inputs;
    }

    /** Files of rules that the design names, beside it. */
    public static List<String> ruleFiles(Design design) {
        return design.asDesigned().rules().stream()
                .map(RuledTub::file)
                .flatMap(Optional::stream)
                .distinct()
                .sorted()
                .toList();
    }

    private static String sha(byte[] bytes) {
        try {
            return HexFormat.of().formatHex(MessageDigest.getInstance("SHA-256").digest(bytes));
        } catch (NoSuchAlgorithmException e) {
            throw new IllegalStateException("every Java has SHA-256", e);
        }
    }

    /** Tests that the design states, then those of the logbook. */
    private static List<EvidenceAnswer.Test> tests(Design.Variant variant, List<EvidenceAnswer.Test> logged) {
        List<EvidenceAnswer.Test> tests = new ArrayList<>();
        for (CrushStructure each : variant.crush()) {
            each.sections().stream()
                    .map(s -> s.data().name() + ": " + s.data().provenance())
                    .distinct()
                    .map(w -> new EvidenceAnswer.Test("", "crush of " + w))
                    .filter(t -> !tests.contains(t))
                    .forEach(tests::add);
            if (each.bears().isPresent()) {
                tests.add(new EvidenceAnswer.Test(
                        "",
                        String.format(
                                Locale.ROOT,
                                "mounts of %s bore %.1f kN: %s",
                                each.name(),
                                1e-3 * each.bears().getAsDouble(),
                                each.bearsFrom())));
            }
        }
        for (RuledTub rules : variant.rules()) {
            new TreeMap<>(rules.places()).forEach((name, place) -> {
                if (!place.tested().source().isEmpty()) {
                    tests.add(new EvidenceAnswer.Test("", rules.name() + ", " + name + ": " + tested(place.tested())));
                }
            });
        }
        tests.addAll(logged);
        return tests;
    }

    private static String tested(RuledTub.Tested tested) {
        List<String> words = new ArrayList<>();
        tested.bending().ifPresent(v -> words.add(String.format(Locale.ROOT, "EI %.0f N·m²", v)));
        tested.punched().ifPresent(v -> words.add(String.format(Locale.ROOT, "punched at %.1f kN", 1e-3 * v)));
        tested.carried().ifPresent(v -> words.add(String.format(Locale.ROOT, "a point bore %.1f kN", 1e-3 * v)));
        return String.join(", ", words) + " (" + tested.source() + ")";
    }

    /** The program's own verification, by family; empty where it did not come with this build. */
    private static List<EvidenceAnswer.Family> verification() {
        try (InputStream in = EvidenceWork.class.getResourceAsStream(VERIFICATION)) {
            if (in == null) {
                return List.of();
            }
            Map<String, double[]> families = new TreeMap<>();
            BufferedReader reader = new BufferedReader(new InputStreamReader(in, StandardCharsets.UTF_8));
            for (String line = reader.readLine(); line != null; line = reader.readLine()) {
                String[] cells = line.split("\t");
                if (cells[0].equals("check")) {
                    double[] sum = families.computeIfAbsent(cells[1], k -> new double[2]);
                    double reference = Double.parseDouble(cells[6]);
                    double deviation = Math.abs(Double.parseDouble(cells[7]) - reference);
                    double allowed = Double.parseDouble(cells[8]) * (reference == 0 ? 1 : Math.abs(reference));
                    sum[0]++;
                    // Bounds hold by sense, not by a tolerance: they have no share.
                    sum[1] = Math.max(sum[1], Double.isFinite(deviation / allowed) ? deviation / allowed : 0);
                }
            }
            List<EvidenceAnswer.Family> result = new ArrayList<>();
            families.forEach((name, sum) -> result.add(
                    new EvidenceAnswer.Family(name.toLowerCase(Locale.ROOT).replace('_', ' '), (int) sum[0], sum[1])));
            return result;
        } catch (IOException e) {
            throw new UncheckedIOException(VERIFICATION + " cannot be read", e);
        }
    }

    /** What nobody has looked at, as far as this program can tell. */
    private static List<String> gaps(RunAnswer run, Optional<CrushAnswer> crush, Optional<RulesAnswer> rules) {
        List<String> gaps = new ArrayList<>();
        run.main().reserves().notChecked().stream()
                .map(Check.NotChecked::toString)
                .forEach(gaps::add);
        crush.ifPresent(c -> c.structures()
                .forEach(s -> s.lines().stream()
                        .flatMap(l -> l.needs().stream())
                        .distinct()
                        .forEach(n -> gaps.add("crush of " + s.structure().name() + " not checked: needs " + n))));
        if (crush.isEmpty()) {
            gaps.add("impact not checked: needs \"crush\" in the design");
        }
        rules.ifPresent(r -> r.sets()
                .forEach(s -> s.findings().stream()
                        .filter(f -> f.verdict() == Finding.Verdict.NOT_CHECKED)
                        .forEach(f -> gaps.add(s.set().name() + ", "
                                + f.clause().number() + " not checked: needs " + String.join("; ", f.needs())))));
        if (rules.isEmpty()) {
            gaps.add("no rule set was held against this tub: needs \"rules\" in the design");
        }
        gaps.add("crash beyond one dimension: oblique hits, rollover, what flies off");
        gaps.add("tearing that goes on from a hole, and buckling with a patch gone, in this dossier");
        gaps.add("fatigue, creep, fire, ageing, moisture and temperature beyond what the design states");
        gaps.add("what the shop did: voids, wrinkles, bonds, cure; repairs; wear in service");
        gaps.add("brackets, bolts, belts, seats, fuel cell and everything the model does not hold");
        gaps.add("the driver: loads on a body, room to get out");
        return gaps;
    }
}
