// SPDX-License-Identifier: Apache-2.0
package tubwright.engine.verification.ladder;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.util.LinkedHashMap;
import java.util.Map;
import java.util.TreeSet;
import org.junit.platform.engine.support.descriptor.MethodSource;
import org.junit.platform.launcher.TestExecutionListener;
import org.junit.platform.launcher.TestIdentifier;
import org.junit.platform.launcher.TestPlan;

/** Keeps what the checks of one run found, and writes it to a file when the last test is done. */
public final class Recording implements TestExecutionListener {
    /** Off where tests run over and over in one process, as under mutation. */
    private static final boolean OFF = "off".equals(System.getProperty("tubwright.ladder"));

    private static final Map<String, Finding> FINDINGS = new LinkedHashMap<>();
    private static final Map<String, Curve> CURVES = new LinkedHashMap<>();
    private static final TreeSet<String> TESTS = new TreeSet<>();
    private static String test = "";

    /** Test under way, class#method. */
    static synchronized String test() {
        return test;
    }

    static synchronized void keep(Finding finding) {
        if (OFF) {
            return;
        }
        Finding other = FINDINGS.put(finding.key(), finding);
        if (other != null) {
            throw new AssertionError("two checks are called " + finding.key());
        }
    }

    static synchronized void keep(Curve curve) {
        if (OFF) {
            return;
        }
        Curve other = CURVES.put(curve.key(), curve);
        if (other != null) {
            throw new AssertionError("two curves are called " + curve.key());
        }
    }

    @Override
    public void executionStarted(TestIdentifier identifier) {
        identifier.getSource().ifPresent(source -> {
            if (source instanceof MethodSource method) {
                begin(method.getClassName() + "#" + method.getMethodName());
            }
        });
    }

    private static synchronized void begin(String name) {
        test = name;
        TESTS.add(name);
    }

    @Override
    public void testPlanExecutionFinished(TestPlan plan) {
        synchronized (Recording.class) {
            TESTS.removeIf(name -> name.startsWith(CommittedReportTest.class.getName() + "#"));
            if (OFF || TESTS.isEmpty()) {
                return;
            }
            try {
                new LadderRun(FINDINGS, CURVES, TESTS).write(LadderRun.FILE);
            } catch (IOException e) {
                throw new UncheckedIOException("cannot write " + LadderRun.FILE, e);
            }
        }
    }
}
