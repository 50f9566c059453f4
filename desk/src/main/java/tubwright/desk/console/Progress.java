// SPDX-License-Identifier: Apache-2.0
package tubwright.desk.console;

import java.time.Duration;
import tubwright.desk.text.Figures;

/**
 * One line that says what is being done: rewritten in place while a person watches. Where nobody does (a pipe, a log) work of
 * less than a minute says nothing, longer work a line a minute. Silent once closed. Safe for use by several threads.
 */
public final class Progress implements AutoCloseable {
    private static final String WIPE = "\r\u001b[2K";
    private static final char[] WHEEL = {'|', '/', '-', '\\'};

    private static final Duration TURN = Duration.ofMillis(120);
    /** Nothing longer than this passes without a line in a log. */
    private static final Duration PATIENCE = Duration.ofMinutes(1);

    private final Terminal terminal;
    private final Duration every;
    private final long start = System.nanoTime();
    private final Thread clock;
    private final Thread farewell = new Thread(this::stopped, "tubwright-farewell");
    private String stage = "";
    private int turn;
    private boolean closed;

    /** Begins; nothing is shown until the first {@link #stage}. */
    public Progress(Terminal terminal) {
        this(terminal, terminal.live() ? TURN : PATIENCE);
    }

    /** @param every how often something is shown */
    Progress(Terminal terminal, Duration every) {
        this.terminal = terminal;
        this.every = every;
        clock = Thread.ofPlatform().daemon().name("tubwright-progress").start(this::tick);
        if (terminal.live()) {
            Runtime.getRuntime().addShutdownHook(farewell);
        }
    }

    /** From here on the process, told to stop, says so itself and answers with what it has. */
    public void endsByItself() {
        if (terminal.live()) {
            try {
                Runtime.getRuntime().removeShutdownHook(farewell);
            } catch (IllegalStateException e) {
                // The process is already ending.
            }
        }
    }

    /** Says what is being done now. */
    public synchronized void stage(String words) {
        stage = words;
        draw();
    }

    /** Seconds since the beginning. */
    public double seconds() {
        return (System.nanoTime() - start) / 1e9;
    }

    @Override
    public void close() {
        done();
    }

    /** Takes the line away; nothing more is shown. */
    public synchronized void done() {
        if (!closed && terminal.live() && !stage.isEmpty()) {
            terminal.err().print(WIPE);
            terminal.err().flush();
        }
        closed = true;
        clock.interrupt();
        if (terminal.live()) {
            try {
                Runtime.getRuntime().removeShutdownHook(farewell);
            } catch (IllegalStateException e) {
                // The process is already ending, and the farewell finds the line closed.
            }
        }
    }

    /** Runs when the process is told to stop in the middle. */
    private synchronized void stopped() {
        if (!closed) {
            closed = true;
            terminal.err().print(WIPE);
            terminal.say("tubwright: stopped; nothing was written.");
        }
    }

    private void tick() {
        try {
            while (true) {
                Thread.sleep(every);
                synchronized (this) {
                    if (closed) {
                        return;
                    }
                    turn++;
                    draw();
                    log();
                }
            }
        } catch (InterruptedException e) {
            Thread.currentThread().interrupt();
        }
    }

    private void log() {
        if (!terminal.live() && !stage.isEmpty()) {
            terminal.say("  " + stage + "  " + Figures.elapsed(seconds()));
        }
    }

    private void draw() {
        if (closed || !terminal.live() || stage.isEmpty()) {
            return;
        }
        String line = "  " + WHEEL[turn % WHEEL.length] + " " + stage + "  " + Figures.elapsed(seconds());
        String shown = terminal.shown(line);
        // Never wider than a narrow window: a wrapped line cannot be wiped.
        terminal.err().print(WIPE + (shown.length() > 78 ? shown.substring(0, 78) : shown));
        terminal.err().flush();
    }
}
