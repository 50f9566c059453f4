// SPDX-License-Identifier: Apache-2.0
package tubwright.desk.command;

import java.nio.file.Path;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.concurrent.Callable;
import java.util.concurrent.CountDownLatch;
import java.util.concurrent.TimeUnit;
import picocli.CommandLine.Command;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;
import tubwright.desk.console.Terminal;
import tubwright.desk.console.Terminal.Look;
import tubwright.desk.page.OpenProject;
import tubwright.desk.web.PageServer;
import tubwright.desk.work.UserMistake;

/** {@code tubwright page}: the bench in the browser. */
@Command(
        name = "page",
        description = {
            "Serve a design to the browser on this machine: see the tub, change a ply, watch the twist. Follows the design"
                    + " file as it is edited. Ends with Ctrl-C."
        },
        synopsisHeading = "Usage: ",
        parameterListHeading = "%n",
        optionListHeading = "%n",
        footer = {
            "",
            "Open the printed address whole: what follows # lets you in, and nobody else.",
            "",
            "Example:",
            "  tubwright page examples/larkspur"
        })
final class PageCommand implements Callable<Integer> {
    /** How much coarser a quick bench's mesh is. */
    private static final double QUICK = 2;

    private final Terminal terminal;

    @Parameters(paramLabel = "DIR", description = "Folder of the design, or its file.")
    private Path place;

    @Option(names = "--port", paramLabel = "PORT", description = "Port to listen at; default: any that is free.")
    private int port;

    @Option(
            names = "--mesh",
            paramLabel = "SIZE",
            description = "Mesh size with its unit, e.g. \"20 mm\", instead of the design's own.")
    private Optional<String> mesh = Optional.empty();

    @Option(names = "--quick", description = "Work on a mesh twice as coarse.")
    private boolean quick;

    @Option(
            names = {"-h", "--help"},
            usageHelp = true,
            description = "Print this help.")
    private boolean help;

    PageCommand(Terminal terminal) {
        this.terminal = terminal;
    }

    @Override
    public Integer call() throws Exception {
        if (port < 0 || port > 65535) {
            throw new UserMistake("--port " + port + ": a port lies between 1 and 65535, or is 0 for any");
        }
        OptionalDouble given = MeshSize.of(mesh);
        double coarser = quick ? QUICK : 1;
        CountDownLatch end = new CountDownLatch(1);
        CountDownLatch closed = new CountDownLatch(1);
        Thread farewell = new Thread(
                () -> {
                    end.countDown();
                    try {
                        // A solution under way cannot be stopped in the middle; nobody needs to wait for it.
                        closed.await(2, TimeUnit.SECONDS);
                    } catch (InterruptedException e) {
                        Thread.currentThread().interrupt();
                    }
                },
                "tubwright-page-farewell");
        Runtime.getRuntime().addShutdownHook(farewell);
        try (OpenProject project = new OpenProject(place, own -> coarser * given.orElse(own), Version.text());
                PageServer server = new PageServer(project, port)) {
            terminal.print("");
            terminal.print("  " + terminal.look(Look.STRONG, server.address()));
            terminal.print("");
            terminal.print(
                    "  " + project.view().tub() + " lies on the bench. Open the address in a browser on this machine;");
            terminal.print("  Ctrl-C puts everything away.");
            if (quick) {
                terminal.print(
                        "  A mesh twice as coarse: for a quick look. The page marks every number that comes of it.");
            }
            if (!PageServer.hasPage()) {
                terminal.say(
                        "tubwright: the page itself was not built: Node.js 20.19 or newer with npm was not found at"
                                + " set-up.");
                terminal.say(
                        "    Install it (Debian, Ubuntu: apt-get install nodejs npm) and start this command again.");
            }
            terminal.out().flush();
            end.await();
        } finally {
            closed.countDown();
        }
        return ExitCode.DONE;
    }
}
