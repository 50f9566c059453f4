// SPDX-License-Identifier: Apache-2.0
package tubwright.desk.answer;

import java.util.List;
import java.util.Optional;
import tubwright.engine.rig.Estimate;
import tubwright.engine.rig.Series;
import tubwright.engine.rig.TorsionReading;

/**
 * What torsion tests of one tub have to tell, gathered for the console, the JSON document and the page.
 *
 * @param title what the page is about: the folder's name
 * @param version of the program
 * @param tests one a file of readings, in the order given
 * @param predicted twist line of the last run, if there is one with a torsion case
 */
public record RigAnswer(String title, String version, List<TorsionReading> tests, Optional<Predicted> predicted) {
    public RigAnswer {
        tests = List.copyOf(tests);
    }

    /**
     * What the last run said.
     *
     * @param variant whose
     * @param stiffness N·m/rad
     * @param stations x, m
     * @param perTorque angle over torque, rad/(N·m), as computed: against the design's own zero
     */
    public record Predicted(String variant, double stiffness, double[] stations, double[] perTorque) {
        /** Angle over torque at a station against that at the held one, positive when turning with the torque. */
        public double against(double x, double held) {
            return Math.abs(at(x) - at(held));
        }

        /** Angle over torque at a station, between the points by a straight line, at the ends kept. */
        public double at(double x) {
            int n = stations.length;
            if (x <= stations[0]) {
                return perTorque[0];
            }
            for (int i = 0; i + 1 < n; i++) {
                if (x <= stations[i + 1]) {
                    double share = (x - stations[i]) / (stations[i + 1] - stations[i]);
                    return perTorque[i] + share * (perTorque[i + 1] - perTorque[i]);
                }
            }
            return perTorque[n - 1];
        }
    }

    /**
     * Hub-to-hub stiffness split into tub and suspension.
     *
     * @param suspension N·m/rad
     * @param expanded half-width of its 95 % interval, N·m/rad; the two tests taken as independent
     * @param tubShare share of the hub-to-hub flexibility that is the tub's
     */
    public record Split(double suspension, double expanded, double tubShare) {}

    /** The first test of the tub alone. */
    public Optional<TorsionReading> tub() {
        return tests.stream().filter(t -> !t.readings().setup().hubToHub()).findFirst();
    }

    /** The first test from hub to hub. */
    public Optional<TorsionReading> hubs() {
        return tests.stream().filter(t -> t.readings().setup().hubToHub()).findFirst();
    }

    /** Why a test from hub to hub cannot be split, where there is one and it cannot; in words. */
    public Optional<String> notSplit() {
        if (hubs().isEmpty() || split().isPresent()) {
            return Optional.empty();
        }
        if (tub().isEmpty()) {
            return Optional.of(
                    "A test from hub to hub alone reads tub, pick-ups, links and hubs in series as one stiffness;"
                            + " nothing in it tells one from another. Test the tub alone as well, held and loaded at its hardpoints,"
                            + " and give both files.");
        }
        Estimate tub = tub().get().best();
        Estimate whole = hubs().get().best();
        return Optional.of("From hub to hub it reads "
                + (whole.stiffness() >= tub.stiffness()
                        ? "as stiff as the tub alone, or stiffer"
                        : "hardly softer than the tub alone")
                + ": what lies between them is within the uncertainty of the two tests, so it cannot be told from rigid and no"
                + " stiffness is given. Springs in series are softer than each of them: were both held and loaded at the same"
                + " stations?");
    }

    /** Tub and suspension told apart, where both were tested and their flexibilities differ by more than chance. */
    public Optional<Split> split() {
        if (tub().isEmpty() || hubs().isEmpty()) {
            return Optional.empty();
        }
        Estimate tub = tub().get().best();
        Estimate whole = hubs().get().best();
        // 1/K_hubs − 1/K_tub must stand out of its own 95 % interval; U(1/K) = U(K)/K².
        double between = 1 / whole.stiffness() - 1 / tub.stiffness();
        double uncertain = Math.hypot(
                whole.expanded() / (whole.stiffness() * whole.stiffness()),
                tub.expanded() / (tub.stiffness() * tub.stiffness()));
        if (between <= uncertain) {
            return Optional.empty();
        }
        double suspension = Series.without(whole.stiffness(), tub.stiffness());
        double u = Series.uncertaintyWithout(whole.stiffness(), whole.expanded(), tub.stiffness(), tub.expanded());
        return Optional.of(new Split(suspension, u, whole.stiffness() / tub.stiffness()));
    }
}
