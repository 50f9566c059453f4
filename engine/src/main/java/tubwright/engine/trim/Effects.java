// SPDX-License-Identifier: Apache-2.0
package tubwright.engine.trim;

/** What the change of one candidate does to a compliance: half way between what strains and what stresses say. */
final class Effects {
    private final LightenProblem problem;
    private final int[] siteOf;

    Effects(LightenProblem problem) {
        this.problem = problem;
        siteOf = new int[problem.masses.length];
        for (int s = 0; s + 1 < problem.offset.length; s++) {
            java.util.Arrays.fill(siteOf, problem.offset[s], problem.offset[s + 1], s);
        }
    }

    /** The site of a candidate. */
    int site(int candidate) {
        return siteOf[candidate];
    }

    /**
     * Compliance that each candidate adds in place of the present one, J.
     *
     * @param gramians of the present strains by piece
     */
    double[] of(int[] choice, double[][] gramians) {
        return between(choice, gramians, 0.5, 0.5);
    }

    /** Half of what strains and stresses leave open between them; zero for the present candidates, J. */
    double[] leftOpen(int[] choice, double[][] gramians) {
        return between(choice, gramians, -0.5, 0.5);
    }

    double[] between(int[] choice, double[][] gramians, double ofStrains, double ofStresses) {
        double[] strain = new double[siteOf.length];
        double[] stress = new double[siteOf.length];
        for (int p = 0; p < problem.pieces.size(); p++) {
            Piece piece = problem.pieces.get(p);
            double[] c = piece.stiffness()[piece.combination(choice)];
            piece.majorant(piece.stiffness(), gramians[p], choice, problem.offset, -1, strain);
            piece.majorant(piece.flexibility(), piece.stresses(c, gramians[p]), choice, problem.offset, 1, stress);
        }
        double[] result = new double[siteOf.length];
        for (int j = 0; j < result.length; j++) {
            int own = problem.offset[siteOf[j]] + choice[siteOf[j]];
            result[j] = ofStrains * (strain[j] - strain[own]) + ofStresses * (stress[j] - stress[own]);
        }
        return result;
    }
}
