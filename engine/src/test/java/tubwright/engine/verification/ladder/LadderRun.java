// SPDX-License-Identifier: Apache-2.0
package tubwright.engine.verification.ladder;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Set;
import java.util.TreeSet;
import java.util.function.Predicate;
import java.util.stream.Collectors;

/**
 * What one run of the tests found, as a text file of tab-separated lines: check, curve, ran.
 *
 * @param findings by key
 * @param curves by key
 * @param tests the tests that ran, class#method
 */
record LadderRun(Map<String, Finding> findings, Map<String, Curve> curves, Set<String> tests) {
    /** Where a run of the tests leaves its findings. */
    static final Path FILE = Checkouts.ROOT.resolve("engine/target/verification/run.tsv");

    /** Findings of one family in the order of their names. */
    List<Finding> of(Family family) {
        return findings.values().stream()
                .filter(f -> f.family() == family)
                .sorted(Comparator.comparing(Finding::key))
                .toList();
    }

    /** Curves of one family by plot, in the order of their titles. */
    Map<String, List<Curve>> plots(Family family) {
        return curves.values().stream()
                .filter(c -> c.family() == family)
                .sorted(Comparator.comparing(Curve::key))
                .collect(Collectors.groupingBy(Curve::plot, LinkedHashMap::new, Collectors.toList()));
    }

    /** The same findings without the list of tests that ran, which differs from run to run. */
    LadderRun withoutTests() {
        return new LadderRun(findings, curves, Set.of());
    }

    /**
     * This run laid over an earlier one: test classes that ran now count as they came out now, those that did not as they
     * came out then, if they are still there.
     */
    LadderRun over(LadderRun earlier, Predicate<String> stillThere) {
        Set<String> ran = tests.stream().map(LadderRun::classOf).collect(Collectors.toSet());
        Predicate<String> keep = test -> !ran.contains(classOf(test)) && stillThere.test(classOf(test));
        Map<String, Finding> allFindings = new LinkedHashMap<>(findings);
        earlier.findings.values().stream().filter(f -> keep.test(f.test())).forEach(f -> allFindings.put(f.key(), f));
        Map<String, Curve> allCurves = new LinkedHashMap<>(curves);
        earlier.curves.values().stream().filter(c -> keep.test(c.test())).forEach(c -> allCurves.put(c.key(), c));
        return new LadderRun(allFindings, allCurves, tests);
    }

    private static String classOf(String test) {
        return test.substring(0, test.indexOf('#'));
    }

    void write(Path file) throws IOException {
        List<String> lines = new ArrayList<>();
        for (Finding f : findings.values()) {
            lines.add(String.join(
                    "\t",
                    "check",
                    f.family().name(),
                    f.name(),
                    f.mesh(),
                    f.source(),
                    f.mark().name(),
                    number(f.reference()),
                    number(f.ours()),
                    number(f.tolerance()),
                    String.format(Locale.ROOT, "%.3f", f.order()),
                    f.test()));
        }
        for (Curve c : curves.values()) {
            lines.add(String.join(
                    "\t",
                    "curve",
                    c.family().name(),
                    c.plot(),
                    c.label(),
                    Arrays.stream(c.sizes()).mapToObj(Integer::toString).collect(Collectors.joining(" ")),
                    Arrays.stream(c.deviations())
                            .mapToObj(d -> String.format(Locale.ROOT, "%.6e", d))
                            .collect(Collectors.joining(" ")),
                    c.test()));
        }
        tests.forEach(t -> lines.add("ran\t" + t));
        lines.sort(Comparator.naturalOrder());
        Files.createDirectories(file.getParent());
        Files.writeString(file, String.join("\n", lines) + "\n");
    }

    static LadderRun read(Path file) throws IOException {
        Map<String, Finding> findings = new LinkedHashMap<>();
        Map<String, Curve> curves = new LinkedHashMap<>();
        Set<String> tests = new TreeSet<>();
        for (String line : Files.readAllLines(file)) {
            String[] cell = line.split("\t", -1);
            switch (cell[0]) {
                case "check" -> {
                    Finding f = new Finding(
                            Family.valueOf(cell[1]),
                            cell[2],
                            cell[3],
                            cell[4],
                            Mark.valueOf(cell[5]),
                            Double.parseDouble(cell[6]),
                            Double.parseDouble(cell[7]),
                            Double.parseDouble(cell[8]),
                            Double.parseDouble(cell[9]),
                            cell[10]);
                    findings.put(f.key(), f);
                }
                case "curve" -> {
                    Curve c = new Curve(
                            Family.valueOf(cell[1]),
                            cell[2],
                            cell[3],
                            Arrays.stream(cell[4].split(" "))
                                    .mapToInt(Integer::parseInt)
                                    .toArray(),
                            Arrays.stream(cell[5].split(" "))
                                    .mapToDouble(Double::parseDouble)
                                    .toArray(),
                            cell[6]);
                    curves.put(c.key(), c);
                }
                default -> tests.add(cell[1]);
            }
        }
        return new LadderRun(findings, curves, tests);
    }

    /** Ten digits: what differs between processors is left out. */
    private static String number(double v) {
        return String.format(Locale.ROOT, "%.9e", v == 0 ? 0.0 : v);
    }
}
