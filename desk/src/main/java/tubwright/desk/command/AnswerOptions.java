// SPDX-License-Identifier: Apache-2.0
package tubwright.desk.command;

import picocli.CommandLine.Option;

/** How a command answers: for a person or for a program. */
final class AnswerOptions {
    @Option(names = "--json", description = "Print one JSON document and nothing else on standard output.")
    private boolean json;

    @Option(
            names = {"-h", "--help"},
            usageHelp = true,
            description = "Print this help.")
    private boolean help;

    /** Whether a program reads it. */
    boolean json() {
        return json;
    }
}
