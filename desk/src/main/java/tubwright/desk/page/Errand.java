// SPDX-License-Identifier: Apache-2.0
package tubwright.desk.page;

import java.io.IOException;
import java.util.concurrent.CancellationException;
import java.util.function.Consumer;
import tubwright.desk.work.UserMistake;

/**
 * Long work of one kind, started from the page: says how far it is, can be stopped, and is done at most once at a time.
 * Safe for use by several threads.
 */
final class Errand {
    private final String name;
    private final Happening.What what;
    private final Queue queue;
    private final Consumer<Happening> hear;
    private RunView view = RunView.NONE;
    private boolean stop;
    private long start;

    /** What is done. */
    @FunctionalInterface
    interface Work {
        /**
         * Does it.
         *
         * @return how it ended, in words
         * @throws CancellationException where it was stopped and nothing came of it
         */
        String run(Steps steps) throws IOException;
    }

    /** Of work under way: what it says and what it is told. */
    interface Steps {
        /**
         * Says what is done now, and ends the work here if it is to stop.
         *
         * @param share done, 0 to 1
         * @throws CancellationException where it is to stop
         */
        void step(String words, double share);

        /** Says what is done now, as far along as before, and goes on whatever was asked. */
        void stage(String words);

        /** Whether to stop. */
        boolean stopping();

        /** Ends the work here if it is to stop. */
        default void check() {
            if (stopping()) {
                throw new CancellationException("stopped");
            }
        }
    }

    /**
     * Nothing asked for yet.
     *
     * @param name told when a second is refused: "a run"
     * @param what happens whenever it gets on
     * @param queue does it
     * @param hear is told
     */
    Errand(String name, Happening.What what, Queue queue, Consumer<Happening> hear) {
        this.name = name;
        this.what = what;
        this.queue = queue;
        this.hear = hear;
    }

    synchronized RunView view() {
        return view.state() == RunView.State.WORKING
                ? new RunView(view.state(), view.words(), view.share(), seconds())
                : view;
    }

    /** Begins, unless one is under way. */
    RunView start(Work work) {
        synchronized (this) {
            if (view.state() == RunView.State.WORKING) {
                throw new UserMistake(name + " is under way; stop it first");
            }
            stop = false;
            start = System.nanoTime();
        }
        set(RunView.State.WORKING, "waiting for its turn", 0);
        queue.add(Queue.Want.NOW, () -> run(work));
        return view();
    }

    /** Asks it to stop; it does before its next step. */
    synchronized RunView stop() {
        stop = true;
        return view();
    }

    private synchronized boolean stopping() {
        return stop;
    }

    private void run(Work work) {
        Steps steps = new Steps() {
            @Override
            public void step(String words, double share) {
                check();
                set(RunView.State.WORKING, words, share);
            }

            @Override
            public void stage(String words) {
                set(RunView.State.WORKING, words, view().share());
            }

            @Override
            public boolean stopping() {
                return Errand.this.stopping();
            }
        };
        try {
            steps.check();
            set(RunView.State.DONE, work.run(steps), 1);
        } catch (CancellationException stopped) {
            set(RunView.State.STOPPED, "stopped; nothing was written", 0);
        } catch (IOException | RuntimeException fault) {
            set(RunView.State.FAILED, String.valueOf(fault.getMessage()), 0);
        }
    }

    private void set(RunView.State state, String words, double share) {
        synchronized (this) {
            view = new RunView(state, words, share, seconds());
        }
        hear.accept(new Happening(what, "", ""));
    }

    private double seconds() {
        return (System.nanoTime() - start) * 1e-9;
    }
}
