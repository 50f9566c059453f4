// SPDX-License-Identifier: Apache-2.0
package tubwright.desk.page;

import java.util.concurrent.CancellationException;
import java.util.concurrent.locks.ReadWriteLock;
import java.util.concurrent.locks.ReentrantReadWriteLock;
import java.util.function.DoubleConsumer;
import java.util.function.Supplier;
import tubwright.engine.structure.Case;
import tubwright.engine.trim.Layup;
import tubwright.engine.trim.LoadedTub;
import tubwright.engine.trim.WhatIf;
import tubwright.numerics.solver.Solvers;

/** One variant, solved under its leading case and kept at hand, so that changes of its layup are answered at once. */
final class Trial implements AutoCloseable {
    /** How near the bounds of an exact answer lie, relative to the stiffness. */
    private static final double EXACT = 1e-6;

    private final LoadedTub tub;
    private final WhatIf whatIf;
    /** Any number may ask; whoever closes waits until they are done, for the factor lies outside Java's care. */
    private final ReadWriteLock lock = new ReentrantReadWriteLock();

    private boolean closed;

    /**
     * Solves.
     *
     * @param surface the variant's
     * @param layup the variant's
     */
    Trial(Surface surface, Case loading, Layup layup) {
        tub = LoadedTub.solve(surface.structure(), loading, layup, Solvers.best());
        whatIf = new WhatIf(tub);
    }

    LoadedTub tub() {
        return tub;
    }

    Layup nominal() {
        return tub.nominal();
    }

    /** Nominal stiffness between the hardpoints, N·m/rad or N/m. */
    double stiffness() {
        return tub.stiffness(tub.compliance());
    }

    /** Nominal mass, kg. */
    double mass() {
        return tub.mass(tub.nominal());
    }

    /**
     * Makes ready for every question, so that each is answered in milliseconds.
     *
     * @param progress hears the share done; may stop it by a {@link CancellationException}
     */
    void prepare(DoubleConsumer progress) {
        whileOpen(() -> whatIf.prepare(progress));
    }

    /** Proved bounds at once. */
    WhatIf.Answer ask(Layup layup) {
        return whileOpen(() -> whatIf.ask(layup));
    }

    /** The exact answer, which takes its time. */
    WhatIf.Answer solve(Layup layup) {
        return whileOpen(() -> whatIf.solve(layup, EXACT));
    }

    private <A> A whileOpen(Supplier<A> question) {
        lock.readLock().lock();
        try {
            if (closed) {
                throw new CancellationException("the design has changed");
            }
            return question.get();
        } finally {
            lock.readLock().unlock();
        }
    }

    @Override
    public void close() {
        lock.writeLock().lock();
        try {
            if (!closed) {
                closed = true;
                whatIf.close();
                tub.close();
            }
        } finally {
            lock.writeLock().unlock();
        }
    }
}
