// SPDX-License-Identifier: Apache-2.0
package tubwright.desk.page;

import java.util.concurrent.PriorityBlockingQueue;
import java.util.concurrent.atomic.AtomicLong;

/**
 * What is to be computed, the most wanted first, one piece of work at a time: the solver spreads each over all cores by
 * itself.
 */
final class Queue implements AutoCloseable {
    private final PriorityBlockingQueue<Work> waiting = new PriorityBlockingQueue<>();
    private final AtomicLong counter = new AtomicLong();
    private final Thread thread;

    /** How soon something is wanted. */
    enum Want {
        /** Somebody pressed a button. */
        NOW,
        /** The first thing the page shows. */
        SOON,
        /** Made ready beforehand. */
        LATER
    }

    private record Work(Want want, long number, Runnable task) implements Comparable<Work> {
        @Override
        public int compareTo(Work other) {
            int byWant = want.compareTo(other.want);
            return byWant != 0 ? byWant : Long.compare(number, other.number);
        }
    }

    Queue() {
        thread = Thread.ofPlatform().daemon().name("tubwright-bench").start(this::work);
    }

    /** Adds work; it handles its own faults. */
    void add(Want want, Runnable task) {
        waiting.add(new Work(want, counter.getAndIncrement(), task));
    }

    private void work() {
        try {
            while (true) {
                waiting.take().task.run();
            }
        } catch (InterruptedException e) {
            Thread.currentThread().interrupt();
        }
    }

    @Override
    public void close() {
        waiting.clear();
        thread.interrupt();
        try {
            // A factorisation cannot be interrupted; its memory must not be taken away under it.
            thread.join();
        } catch (InterruptedException e) {
            Thread.currentThread().interrupt();
        }
    }
}
