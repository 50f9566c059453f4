// SPDX-License-Identifier: Apache-2.0
package tubwright.desk.command;

import java.io.PrintWriter;
import java.util.ArrayList;
import java.util.List;
import java.util.stream.Stream;
import picocli.CommandLine;
import picocli.CommandLine.Command;
import picocli.CommandLine.Help.Ansi;
import picocli.CommandLine.Option;
import tubwright.desk.console.Terminal;
import tubwright.desk.work.Workbench;
import tubwright.engine.quantity.NearestName;

/** The command line. */
@Command(
        name = "tubwright",
        versionProvider = Version.class,
        description = {
            "Says how stiff a monocoque will be in torsion, where along its length it twists and what it weighs, before a"
                    + " mould is cut."
        },
        synopsisHeading = "",
        customSynopsis = {},
        commandListHeading = "%nCommands:%n",
        optionListHeading = "%nOptions:%n",
        footer = {
            "",
            "Examples:",
            "  tubwright new mytub              begin a design that runs as it stands",
            "  tubwright check mytub            read it, check it, say it in words",
            "  tubwright run mytub              compute it and write the report",
            "  tubwright run mytub --json       the answer as JSON, for other programs",
            "  tubwright ledger mytub           what every ply weighs and what it is worth",
            "  tubwright what-if mytub --drop \"flank=3\"   the tub without that ply",
            "  tubwright page mytub             the bench in the browser",
            "  tubwright lighten mytub          the lightest layup that keeps the stiffness",
            "  tubwright exchange mytub         mass against stiffness, as a curve",
            "  tubwright enough mytub           how stiff the tub must be for the car's balance",
            "  tubwright study mytub narrow     many designs of one tub, as studies/narrow.yaml says",
            "  tubwright drape mytub            every ply laid on its mould, and its pattern",
            "  tubwright cure mytub             every laminate through its cures",
            "  tubwright kit mytub              nests, material bought against used, hours, calendar, costs",
            "  tubwright pack mytub             what an outside shop needs to quote and to build",
            "  tubwright built mytub FILE       a tub as it was built, against the plan",
            "  tubwright crush mytub            what the nose takes out of an impact",
            "  tubwright punch mytub --laminate skin ...   what a hard body needs to get through a panel",
            "  tubwright rules mytub            clause by clause against rule sets",
            "  tubwright evidence mytub         a dossier for scrutineers, PDF and HTML",
            "",
            "Help on one command:  tubwright run --help"
        })
public final class Cli {
    @Option(
            names = {"-V", "--version"},
            versionHelp = true,
            description = "Print the version.")
    private boolean version;

    @Option(
            names = {"-h", "--help"},
            usageHelp = true,
            description = "Print this help.")
    private boolean help;

    private Cli() {}

    /**
     * Runs one command.
     *
     * @param terminal where to print
     * @param bench the engine
     * @param arguments as typed
     * @return one of {@link ExitCode}
     */
    public static int run(Terminal terminal, Workbench bench, String... arguments) {
        CommandLine line = new CommandLine(new Cli())
                .addSubcommand(new RunCommand(terminal, bench))
                .addSubcommand(new LedgerCommand(terminal))
                .addSubcommand(new WhatIfCommand(terminal))
                .addSubcommand(new LightenCommand(terminal))
                .addSubcommand(new PageCommand(terminal))
                .addSubcommand(new ExchangeCommand(terminal))
                .addSubcommand(new EnoughCommand(terminal))
                .addSubcommand(new StudyCommand(terminal))
                .addSubcommand(new CabinCommand(terminal))
                .addSubcommand(new DrapeCommand(terminal))
                .addSubcommand(new MouldsCommand(terminal))
                .addSubcommand(new CureCommand(terminal))
                .addSubcommand(new KitCommand(terminal))
                .addSubcommand(new PackCommand(terminal))
                .addSubcommand(new BuiltCommand(terminal))
                .addSubcommand(new DamageCommand(terminal))
                .addSubcommand(new SpreadCommand(terminal))
                .addSubcommand(new CrushCommand(terminal))
                .addSubcommand(new PunchCommand(terminal))
                .addSubcommand(new RulesCommand(terminal))
                .addSubcommand(new EvidenceCommand(terminal))
                .addSubcommand(new CheckCommand(terminal, bench))
                .addSubcommand(new NewCommand(terminal, bench))
                .addSubcommand(new MaterialsCommand(terminal, bench))
                .addSubcommand(new SchemaCommand(terminal, bench))
                .addSubcommand(new CommandLine(new RigCommand())
                        .addSubcommand(new RigPlanCommand(terminal))
                        .addSubcommand(new RigReadCommand(terminal))
                        .addSubcommand(new RigExplainCommand(terminal))
                        .addSubcommand(new RigPredictCommand(terminal))
                        .addSubcommand(new RigRecordCommand(terminal))
                        .addSubcommand(new RigSpecimensCommand(terminal))
                        .addSubcommand(new RigScaleCommand(terminal)));
        Ansi ansi = terminal.colour() ? Ansi.ON : Ansi.OFF;
        line.setOut(new PrintWriter(terminal.out(), true));
        line.setErr(new PrintWriter(terminal.err(), true));
        line.setUsageHelpWidth(80);
        for (CommandLine each : all(line)) {
            each.setColorScheme(CommandLine.Help.defaultColorScheme(ansi));
            each.setExecutionExceptionHandler((trouble, _, _) -> Trouble.tell(terminal, trouble));
            each.setParameterExceptionHandler((mistake, _) -> misunderstood(terminal, mistake));
        }
        if (arguments.length == 0) {
            line.usage(line.getOut(), ansi);
            return ExitCode.USAGE;
        }
        try {
            int code = line.execute(arguments);
            terminal.out().flush();
            return code;
        } catch (OutOfMemoryError | StackOverflowError e) {
            return Trouble.tell(terminal, e);
        }
    }

    private static List<CommandLine> all(CommandLine line) {
        List<CommandLine> result = new ArrayList<>();
        result.add(line);
        line.getSubcommands().values().forEach(each -> result.addAll(all(each)));
        return result;
    }

    private static int misunderstood(Terminal terminal, CommandLine.ParameterException mistake) {
        CommandLine line = mistake.getCommandLine();
        String message = mistake.getMessage();
        if (mistake instanceof CommandLine.UnmatchedArgumentException unmatched) {
            String word = unmatched.getUnmatched().getFirst();
            boolean command = !line.getSubcommands().isEmpty() && !word.startsWith("-");
            List<String> known = command
                    ? List.copyOf(line.getSubcommands().keySet())
                    : line.getCommandSpec().options().stream()
                            .flatMap(o -> Stream.of(o.names()))
                            .toList();
            message = (command ? "there is no command \"" : "not understood: \"") + word + "\""
                    + NearestName.of(word, known)
                            .map(n -> "; did you mean \"" + n + "\"?")
                            .orElse("");
        }
        terminal.say(terminal.look(Terminal.Look.BAD, "tubwright: ") + message);
        terminal.say("    " + line.getCommandSpec().qualifiedName() + " --help says what it takes");
        return ExitCode.USAGE;
    }
}
