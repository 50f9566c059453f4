// SPDX-License-Identifier: Apache-2.0
package tubwright.engine.cabin;

import java.util.List;
import tubwright.engine.cabin.Body.Length;

/**
 * A driver who lies or sits in the tub, in side view: hips, torso and head along one line, legs of two links to the heels.
 *
 * <p>The hip joint lies 86 mm above the seat and 137 mm before the back for a sitting height of 884 mm and in proportion
 * (three and five inches and four tenths of a 50th percentile crash dummy); knee joints lie 51 mm behind the knee's front
 * and below its top (SAE J1100, L48): both read in a secondary source. Arms are left out: elbows want room of their own.
 *
 * @param people whom the percentile counts
 * @param share percentile over 100
 * @param hip x and z of the hip joint, m
 * @param back angle of the torso aft of upright, rad
 * @param heels x and z of the heels, m
 * @param feetApart middle to middle of the two feet, m
 * @param clothing thickness of what is worn, m, on every side
 */
public record Driver(
        Body.People people,
        double share,
        double[] hip,
        double back,
        double[] heels,
        double feetApart,
        double clothing) {
    private static final double HIP_UP = 0.0864 / 0.8839;
    private static final double HIP_FORWARD = 0.1372 / 0.8839;
    private static final double KNEE = 0.051;

    /** Angle between sole and shin; where the shin begins, as a share of it; shoulders over chest in depth: no source. */
    private static final double SOLE = Math.toRadians(110);

    private static final double ANKLE = 0.2;
    private static final double ROUNDED = 2 / 3.0;

    /** Where on the torso the hips' breadth gives way to the shoulders', above the hip joint (SAE J1100, W3). */
    private static final double WAIST = 0.254;

    /** A length of this driver, m. */
    public double length(Length length) {
        return Body.of(people).at(length, share);
    }

    /** Hip joint to knee joint, m. */
    public double thigh() {
        return length(Length.BUTTOCK_KNEE) - HIP_FORWARD * length(Length.SITTING_HEIGHT) - KNEE;
    }

    /** Knee joint to sole, m. */
    public double shank() {
        return length(Length.KNEE_HEIGHT) - KNEE;
    }

    /** How much further the legs would reach than the heels are, m; negative where they do not reach. */
    public double reach() {
        return thigh() + shank() - Math.hypot(hip[0] - heels[0], hip[1] - heels[1]);
    }

    /** x and z of the knee joint, above the line from hip to heel, m; on the line where the legs do not reach. */
    public double[] knee() {
        double dx = heels[0] - hip[0];
        double dz = heels[1] - hip[1];
        double d = Math.hypot(dx, dz);
        double along = Math.clamp((thigh() * thigh() - shank() * shank() + d * d) / (2 * d), 0, d);
        double up = Math.sqrt(Math.max(0, thigh() * thigh() - along * along));
        // The normal that points upward.
        double nx = -dz / d;
        double nz = dx / d;
        double sign = nz < 0 ? -1 : 1;
        return reach() < 0
                ? new double[] {hip[0] + dx * thigh() / (thigh() + shank()), hip[1] + dz * thigh() / (thigh() + shank())
                }
                : new double[] {hip[0] + along * dx / d + sign * up * nx, hip[1] + along * dz / d + sign * up * nz};
    }

    /** A point of the torso's line, x and z, m, so far above the hip joint. */
    public double[] onBack(double above) {
        return new double[] {hip[0] + above * Math.sin(back), hip[1] + above * Math.cos(back)};
    }

    /** Hip joint to shoulder, m. */
    public double shoulder() {
        return length(Length.SHOULDER_HEIGHT) - HIP_UP * length(Length.SITTING_HEIGHT);
    }

    /** Hip joint to crown, m. */
    public double crown() {
        return (1 - HIP_UP) * length(Length.SITTING_HEIGHT);
    }

    /** Feet, shins, thighs, hips, shoulders: what must be inside. The head, which looks out, is not among them. */
    public List<Solid> limbs() {
        double[] knee = knee();
        double hips = length(Length.HIP_BREADTH) / 2;
        double feet = (feetApart + length(Length.FOOT_BREADTH)) / 2;
        double knees = (hips + feet) / 2;
        double dx = knee[0] - heels[0];
        double dz = knee[1] - heels[1];
        double d = Math.hypot(dx, dz);
        double foot = length(Length.FOOT);
        double tilt = Math.sin(SOLE - Math.PI / 2);
        double rise = Math.cos(SOLE - Math.PI / 2);
        double[] toe = {heels[0] + foot * (-rise * dz - tilt * dx) / d, heels[1] + foot * (rise * dx - tilt * dz) / d};
        double[] ankle = {heels[0] + ANKLE * dx, heels[1] + ANKLE * dz};
        double[] waist = onBack(WAIST);
        double[] top = onBack(shoulder());
        double chest = length(Length.CHEST_DEPTH) / 2;
        return List.of(
                limb("feet", heels, toe, feet, feet, 0.04),
                limb("shins", ankle, knee, feet, knees, 0.045),
                limb("thighs", knee, hip, knees, hips, length(Length.THIGH) / 2),
                limb("hips", hip, waist, hips, hips, chest),
                limb(
                        "shoulders",
                        waist,
                        top,
                        length(Length.SHOULDER_BREADTH) / 2,
                        length(Length.SHOULDER_BREADTH) / 2,
                        ROUNDED * chest));
    }

    /** The head, bare. */
    public Solid head() {
        double depth = length(Length.HEAD_LENGTH);
        return limb(
                "head",
                onBack(crown() - 1.15 * depth),
                onBack(crown()),
                length(Length.HEAD_BREADTH) / 2,
                length(Length.HEAD_BREADTH) / 2,
                depth / 2);
    }

    private Solid limb(String name, double[] a, double[] b, double wideA, double wideB, double depth) {
        return new Solid(
                name,
                new double[] {a[0], 0, a[1]},
                new double[] {b[0], 0, b[1]},
                new double[] {wideA + clothing, wideB + clothing},
                depth + clothing,
                false);
    }
}
