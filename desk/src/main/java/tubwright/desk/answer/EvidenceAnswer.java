// SPDX-License-Identifier: Apache-2.0
package tubwright.desk.answer;

import java.util.List;
import java.util.Optional;

/**
 * Everything a sceptic may ask of a tub, gathered. Holds no time of its making: the same inputs give the same dossier.
 *
 * @param tub name
 * @param by who designs it; "" where it is not said
 * @param inputs what it was made from, each with its fingerprint
 * @param mesh in words
 * @param run stiffness, mass, cases and margins
 * @param damage a patch moved over the tub
 * @param crush structures that crush; empty where the design has none
 * @param rules what it was held against; empty where the design names none
 * @param tests what the logbook and the design say of tests
 * @param verification how the program was checked
 * @param gaps what is not covered
 * @param version of the program
 */
public record EvidenceAnswer(
        String tub,
        String by,
        List<Input> inputs,
        String mesh,
        RunAnswer run,
        DamageAnswer damage,
        Optional<CrushAnswer> crush,
        Optional<RulesAnswer> rules,
        List<Test> tests,
        List<Family> verification,
        List<String> gaps,
        String version) {
    /** Printed on every page. */
    public static final String CAUTION =
            "Computed from what was given; no proof and no approval. The sanctioning body, local codes and licensed engineers"
                    + " decide. Proof-test before anybody drives.";

    public EvidenceAnswer {
        inputs = List.copyOf(inputs);
        tests = List.copyOf(tests);
        verification = List.copyOf(verification);
        gaps = List.copyOf(gaps);
    }

    /**
     * A file it was made from.
     *
     * @param name of the file
     * @param fingerprint SHA-256, 64 hexadecimal digits
     */
    public record Input(String name, String fingerprint) {}

    /**
     * A test.
     *
     * @param when stamp; "" where it is not known
     * @param what was tested and what was found beside what was foretold
     */
    public record Test(String when, String what) {}

    /**
     * A family of checks of the program against the outside.
     *
     * @param name of the family
     * @param checks how many
     * @param worst largest deviation as a share of what was allowed
     */
    public record Family(String name, int checks, double worst) {}

    /** Fingerprint of the design, sixteen digits. */
    public String fingerprint() {
        return inputs.getFirst().fingerprint().substring(0, 16);
    }

    /** How many checks against the outside there are. */
    public int checks() {
        return verification.stream().mapToInt(Family::checks).sum();
    }
}
