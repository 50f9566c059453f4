// SPDX-License-Identifier: Apache-2.0
package tubwright.desk.picture;

import tubwright.engine.make.mould.Draft;
import tubwright.engine.make.mould.PieceFace;

/** A piece alone, coloured by its draft. */
public final class DraftPicture {
    /** From this draft on all is pale, rad. */
    public static final double PLENTY = Math.toRadians(15);

    /** From this undercut on all is darkest, rad. */
    private static final double WORST = Math.toRadians(-5);

    private DraftPicture() {}

    /** The picture. */
    public static TubPicture.Picture of(PieceFace face, Draft draft, View.From from, int width) {
        double[] levels = new double[draft.ofElement().length];
        for (int i = 0; i < levels.length; i++) {
            levels[i] = level(draft.ofElement()[i]);
        }
        return new TubPicture(face.alone()).levels(levels, from, false, width);
    }

    /** Place of a draft on the ramp, 0 to 1. */
    public static double level(double draft) {
        return Math.clamp((PLENTY - draft) / (PLENTY - WORST), 0.0, 1.0);
    }
}
