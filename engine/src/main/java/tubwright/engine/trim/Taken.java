// SPDX-License-Identifier: Apache-2.0
package tubwright.engine.trim;

import java.util.List;

/** Takes every choice that keeps to the rows: the plain mixed-integer programme. */
record Taken(LightenProblem problem) implements Search.Judge {
    @Override
    public List<Row> rows(double[] mixture) {
        return List.of();
    }

    @Override
    public Search.Verdict judge(int[] choice) {
        return new Search.Verdict(true, List.of(), false);
    }

    @Override
    public boolean takesAll() {
        return true;
    }

    @Override
    public Search.Blur blur(double[] mixture) {
        return new Search.Blur(new double[problem.sites.size()], problem.masses);
    }
}
