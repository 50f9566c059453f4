// SPDX-License-Identifier: Apache-2.0
package tubwright.desk.command;

import java.util.List;
import java.util.Optional;
import java.util.concurrent.Callable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;
import tubwright.desk.console.MaterialSummary;
import tubwright.desk.console.Terminal;
import tubwright.desk.work.UserMistake;
import tubwright.desk.work.Workbench;
import tubwright.engine.material.Material;
import tubwright.engine.quantity.NearestName;

/** {@code tubwright materials}: prints the shipped library. */
@Command(
        name = "materials",
        description = {
            "Print the shipped materials; with a NAME, every value of that one with where it comes from and how far to"
                    + " trust it."
        },
        synopsisHeading = "Usage: ",
        parameterListHeading = "%n",
        optionListHeading = "%n",
        footer = {"", "Examples:", "  tubwright materials", "  tubwright materials ud-as4-8552"})
final class MaterialsCommand implements Callable<Integer> {
    private final Terminal terminal;
    private final Workbench bench;

    @Parameters(paramLabel = "NAME", arity = "0..1", description = "Name of a material.")
    private Optional<String> name = Optional.empty();

    @Option(
            names = {"-h", "--help"},
            usageHelp = true,
            description = "Print this help.")
    private boolean help;

    MaterialsCommand(Terminal terminal, Workbench bench) {
        this.terminal = terminal;
        this.bench = bench;
    }

    @Override
    public Integer call() {
        List<Material> all = bench.materials();
        if (name.isEmpty()) {
            MaterialSummary.list(all).forEach(terminal::print);
            return ExitCode.DONE;
        }
        String wanted = name.get();
        Material material = all.stream()
                .filter(m -> m.name().equals(wanted))
                .findFirst()
                .orElseThrow(() -> new UserMistake("there is no material \"" + wanted + "\""
                        + NearestName.of(
                                        wanted, all.stream().map(Material::name).toList())
                                .map(n -> "; did you mean \"" + n + "\"?")
                                .orElse("; tubwright materials lists them")));
        MaterialSummary.one(terminal, material).forEach(terminal::print);
        return ExitCode.DONE;
    }
}
