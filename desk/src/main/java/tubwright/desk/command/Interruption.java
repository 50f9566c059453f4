// SPDX-License-Identifier: Apache-2.0
package tubwright.desk.command;

import java.util.concurrent.CountDownLatch;
import java.util.concurrent.TimeUnit;

/**
 * Lets a search end with what it has when the process is told to stop (Ctrl-C, or a plain kill): the process waits until
 * the answer is out.
 */
final class Interruption implements AutoCloseable {
    /** Longer than one solution takes; then the process goes all the same. */
    private static final long PATIENCE = 120;

    private final CountDownLatch told = new CountDownLatch(1);
    private final Thread hook = new Thread(this::await, "tubwright-last-answer");
    private volatile boolean asked;

    Interruption() {
        Runtime.getRuntime().addShutdownHook(hook);
    }

    /** Whether somebody asked to stop. */
    boolean asked() {
        return asked;
    }

    private void await() {
        asked = true;
        try {
            if (!told.await(PATIENCE, TimeUnit.SECONDS)) {
                System.err.println("tubwright: no answer in time; nothing was written.");
            }
        } catch (InterruptedException e) {
            Thread.currentThread().interrupt();
        }
    }

    /** The answer is out, or there will be none. */
    @Override
    public void close() {
        told.countDown();
        if (!asked) {
            try {
                Runtime.getRuntime().removeShutdownHook(hook);
            } catch (IllegalStateException e) {
                // The process is ending at this very moment.
            }
        }
    }
}
