// SPDX-License-Identifier: Apache-2.0
package tubwright.desk.answer;

import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import tubwright.engine.trim.Lightened;

/**
 * The lightest layup found for stiffness targets, and what is proved of it.
 *
 * @param tub name
 * @param variant name
 * @param goals stiffness targets, in the order of the bounds in {@code found}
 * @param massBefore kg
 * @param found the result
 * @param changes zones, patches and joints that change, in words and as stacks
 * @param margin by which targets were passed, share of them
 * @param notLookedAt what nothing was asked of: strength, buckling, vibration
 * @param alone zones without a neighbour in their piece, for which the rules between neighbours say nothing
 * @param massTarget most the design allows, kg, if it says so
 * @param scatter what hangs on the material data, if that was asked
 * @param foretold the lightest as its makers build it, where a test has told how they do
 * @param unknowns of the mesh
 * @param version of the program
 */
public record LightenAnswer(
        String tub,
        String variant,
        List<Goal> goals,
        double massBefore,
        Lightened found,
        List<Change> changes,
        double margin,
        List<String> notLookedAt,
        List<String> alone,
        OptionalDouble massTarget,
        Optional<Scatter> scatter,
        Optional<ForetoldTub> foretold,
        int unknowns,
        String version) {
    public LightenAnswer {
        goals = List.copyOf(goals);
        changes = List.copyOf(changes);
        notLookedAt = List.copyOf(notLookedAt);
        alone = List.copyOf(alone);
    }

    /** What of this is proved and what was only checked, in a sentence. */
    public String trust() {
        String verified = found.verified().isEmpty()
                ? ""
                : ", and of the chosen layup alone, by solving it whole: "
                        + String.join(
                                "; ",
                                found.verified().stream().map(f -> f.words()).toList());
        return "Proved for this mesh: the stiffness between hardpoints, and that no choice among the candidates that keeps"
                + " the rules and the stiffness targets is lighter than the bound. Solved anew but not proved: stiffness"
                + " between sections" + verified + ".";
    }

    /** Why the search ended, in a sentence. */
    public String ending() {
        return switch (found.ended()) {
            case PROVED -> "Nothing among the candidates is lighter.";
            case GAP -> "The gap asked for was reached.";
            case BUDGET -> "The solutions allowed were used up.";
            case TIME -> "The time was up; more of it (--time) narrows the gap.";
            case STOPPED -> "Stopped before its time: this is the best found so far, and its bound holds.";
        };
    }

    /**
     * What hangs on the material data: the search repeated with all stiffness lower and higher by a share.
     *
     * @param share by which
     * @param lowMass kg with softer material
     * @param highMass kg with stiffer material
     * @param firm zones whose choice stays the same
     * @param loose the others
     * @param byMaterial the same with one material softer at a time, heaviest first
     */
    public record Scatter(
            double share,
            double lowMass,
            double highMass,
            List<String> firm,
            List<String> loose,
            List<OfMaterial> byMaterial) {
        public Scatter {
            firm = List.copyOf(firm);
            loose = List.copyOf(loose);
            byMaterial = List.copyOf(byMaterial);
        }
    }

    /**
     * What hangs on one material being softer.
     *
     * @param what "stiffness of ud-as4-3502"
     * @param mass kg of the lightest layup found then; empty where no layup meets the targets
     * @param changed zones whose choice is another then
     */
    public record OfMaterial(String what, OptionalDouble mass, List<String> changed) {
        public OfMaterial {
            changed = List.copyOf(changed);
        }
    }

    /**
     * One stiffness target.
     *
     * @param loading name of the case
     * @param unit in which stiffness is told
     * @param least what is asked, between loaded and held hardpoints; N·m/rad or N/m
     * @param before stiffness before, the same way
     * @param sectionBefore read between skin sections
     * @param sectionAfter the same for the new layup, solved anew
     */
    public record Goal(
            String loading,
            StiffnessUnit unit,
            double least,
            double before,
            double sectionBefore,
            double sectionAfter) {}

    /**
     * What changes.
     *
     * @param zone name of the zone, patch or joint
     * @param words what the laminator leaves out
     * @param before orientation code
     * @param after orientation code
     * @param mass given back, kg
     */
    public record Change(String zone, String words, String before, String after, double mass) {}
}
