// SPDX-License-Identifier: Apache-2.0
/**
 * Many designs computed: each the same design document with a few values changed, each giving one row of numbers.
 *
 * <p>A {@link tubwright.fleet.Job} says what is common to all: the document, the variant, the mesh and the
 * {@link tubwright.fleet.Reading readings}. A {@link tubwright.fleet.Point} is one design of it: the values that differ,
 * and a key that is a digest of the whole design and of how it is computed, so that equal keys mean equal rows. A
 * {@link tubwright.fleet.Computation} turns points into {@link tubwright.fleet.Row rows}: a pure function on one thread,
 * to the bit the same wherever it runs, that never throws for what is wrong with a design. A
 * {@link tubwright.fleet.StudyRunner} decides where: {@link tubwright.fleet.LocalCores} on this machine. Rows go into a
 * {@link tubwright.fleet.RowStore}, which a {@link tubwright.fleet.Campaign} asks first, so that no design is computed
 * twice.
 *
 * <h2>How a distributed engine plugs in</h2>
 *
 * It implements {@link tubwright.fleet.StudyRunner#run}. Jobs, points and rows are texts of one line ({@code line()} and
 * {@code of(line)} of each record), with nothing of this machine in them: ship the job's line to every worker once, and
 * the lines of the points as the data to be spread. There {@code new Computation(Job.of(line))} is made once a process,
 * may be shared between threads, and {@code computation.row(Point.of(line), () -> false).line()} is the row to send
 * back. Each call keeps to one thread, so give every core of a worker one task. A lost row may be computed again anywhere.
 * Rows that come back are handed to {@link tubwright.fleet.Watch#done} from the thread that called {@code run}; the
 * caller puts them into the store, where a second row of the same key changes nothing. What stops the engine itself (a
 * master that does not answer) is thrown as a {@link tubwright.fleet.FleetException}; rows handed over before are kept.
 *
 * <p>The packages below: {@code plan} reads a study and lays out its points, {@code sample} fills spaces,
 * {@code statistics} says what numbers tell, {@code findings} runs a study from end to end. This package knows of none of
 * them.
 */
package tubwright.fleet;
