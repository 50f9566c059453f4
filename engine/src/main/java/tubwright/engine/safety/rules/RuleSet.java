// SPDX-License-Identifier: Apache-2.0
package tubwright.engine.safety.rules;

import java.util.List;
import tubwright.engine.material.Provenance;

/**
 * What a sanctioning body asks, in the words and figures of one edition. Reading it here stands for nothing: the official text
 * in force and its scrutineers decide.
 *
 * @param name for the reader
 * @param about what it covers and what of it is left out
 * @param source the text and its edition
 * @param year of the edition
 * @param clauses in its order
 */
public record RuleSet(String name, String about, String source, int year, List<Clause> clauses) {
    public RuleSet {
        clauses = List.copyOf(clauses);
    }

    /**
     * One clause.
     *
     * @param number as the text numbers it
     * @param says what it asks, in our words
     * @param provenance of its figures
     * @param byTest whether the text wants it shown by a physical test
     * @param demand what is held against the tub
     */
    public record Clause(String number, String says, Provenance provenance, boolean byTest, Demand demand) {}

    /** What a clause asks for. */
    public sealed interface Demand {}

    /**
     * Panels in bending as stiff as tubes: the sum of their EI.
     *
     * @param places whose panels count, each as high as the design says
     * @param bending N·m²
     * @param flat whether panels count as flat; where not, the true section may be stiffer than said here
     */
    public record Bends(List<String> places, double bending, boolean flat) implements Demand {
        public Bends {
            places = List.copyOf(places);
        }
    }

    /**
     * A flat punch through the panel.
     *
     * @param place where
     * @param force at least, N
     * @param diameter of the punch, m
     */
    public record Punched(String place, double force, double diameter) implements Demand {}

    /**
     * Every point of a place carries a force in any direction.
     *
     * @param place whose points
     * @param force at least, N, each
     */
    public record Carries(String place, double force) implements Demand {}

    /**
     * A force on a pad or at points.
     *
     * @param place where
     * @param force aft, right and up, N
     * @param pad its size along x, y and z, m; not numbers where it pushes at points
     * @param moves at most along the force, m; infinite where nothing is said
     * @param hold s; not a number where nothing is said
     */
    public record Pushed(String place, double[] force, double[] pad, double moves, double hold) implements Demand {}

    /**
     * An impact, by a crush structure of the design hit there.
     *
     * @param stop what comes and what it must keep to
     */
    public record Stopped(Stop stop) implements Demand {}

    /** Unidirectional plies lie between others, and none next to a core. */
    public record PliesEnclosed() implements Demand {}

    /**
     * Panels bend across nearly as stiffly as along.
     *
     * @param places whose panels
     * @param share at least, of the stiffness along
     */
    public record BendsAcross(List<String> places, double share) implements Demand {
        public BendsAcross {
            places = List.copyOf(places);
        }
    }

    /**
     * What cannot be computed here.
     *
     * @param needs what would show it
     */
    public record Shown(String needs) implements Demand {}
}
