// SPDX-License-Identifier: Apache-2.0
package tubwright.engine.verification.ladder;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.io.IOException;
import java.nio.file.Files;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import java.util.stream.Stream;
import org.junit.jupiter.api.Assumptions;
import org.junit.jupiter.api.Test;

/** The report in docs/verification is the one the tests just run would write. Runs after all other tests. */
class CommittedReportTest {
    private static final double SAME = 1e-6;
    private static final String REMEDY = "write the report again, as CONTRIBUTING.md says, and look at what changed";

    @Test
    void thePagesAreThoseOfTheirFindings() throws IOException {
        Map<String, String> expected = new TreeMap<>(ReportPages.of(LadderRun.read(WriteReport.FINDINGS)));
        var stale = new ArrayList<String>();
        for (var page : expected.entrySet()) {
            var file = WriteReport.FOLDER.resolve(page.getKey());
            if (!Files.exists(file)
                    || !Files.readString(file).replace("\r\n", "\n").equals(page.getValue())) {
                stale.add(page.getKey());
            }
        }
        assertEquals(List.of(), stale, REMEDY);
    }

    @Test
    void theFindingsAreThoseOfThisRun() throws IOException {
        Assumptions.assumeTrue(Files.exists(LadderRun.FILE), "no tests have run");
        LadderRun run = LadderRun.read(LadderRun.FILE);
        LadderRun committed = LadderRun.read(WriteReport.FINDINGS);
        var differences = new ArrayList<String>();
        run.findings().forEach((key, now) -> {
            Finding then = committed.findings().get(key);
            if (then == null) {
                differences.add("new: " + key);
            } else if (!same(now, then)) {
                differences.add(key + ": " + then.ours() + " in the report, " + now.ours() + " now");
            }
        });
        run.curves().forEach((key, now) -> {
            Curve then = committed.curves().get(key);
            if (then == null || !same(now, then)) {
                differences.add("curve: " + key);
            }
        });
        committed.findings().forEach((key, then) -> {
            if (!run.findings().containsKey(key) && shouldHaveRun(then.test(), run)) {
                differences.add("gone: " + key);
            }
        });
        committed.curves().forEach((key, then) -> {
            if (!run.curves().containsKey(key) && shouldHaveRun(then.test(), run)) {
                differences.add("gone: curve " + key);
            }
        });
        assertEquals(List.of(), differences, REMEDY);
    }

    /** In a run of a few tests only theirs are missed; a test that no longer exists is missed always. */
    private static boolean shouldHaveRun(String test, LadderRun run) {
        return run.tests().contains(test) || !exists(test);
    }

    private static boolean exists(String test) {
        String[] names = test.split("#");
        try {
            return Stream.of(Class.forName(names[0], false, CommittedReportTest.class.getClassLoader())
                            .getDeclaredMethods())
                    .anyMatch(m -> m.getName().equals(names[1]));
        } catch (ClassNotFoundException e) {
            return false;
        }
    }

    private static boolean same(Finding a, Finding b) {
        double scale = Math.max(Math.abs(a.reference()), Math.abs(a.ours()));
        boolean order = Double.isNaN(a.order()) == Double.isNaN(b.order()) && !(Math.abs(a.order() - b.order()) > 0.05);
        return close(a.reference(), b.reference(), scale)
                && close(a.ours(), b.ours(), scale)
                && close(a.tolerance(), b.tolerance(), a.tolerance())
                && order
                && a.source().equals(b.source())
                && a.mark() == b.mark();
    }

    private static boolean close(double a, double b, double scale) {
        return Math.abs(a - b) <= SAME * scale;
    }

    private static boolean same(Curve a, Curve b) {
        if (!java.util.Arrays.equals(a.sizes(), b.sizes())) {
            return false;
        }
        for (int i = 0; i < a.sizes().length; i++) {
            if (Math.abs(a.deviations()[i] - b.deviations()[i]) > 2 * SAME) {
                return false;
            }
        }
        return true;
    }
}
