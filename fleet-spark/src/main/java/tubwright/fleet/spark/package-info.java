// SPDX-License-Identifier: Apache-2.0
/**
 * Studies on the machines of a cluster, through Apache Spark's own standalone mode: an optional part of the program, found by
 * {@link tubwright.fleet.Elsewhere} when it lies on the class path.
 *
 * <p>Points travel as lines of text, a parcel of them a task; the job they share goes once to each worker. A task sends its
 * rows back as one small Parquet file, which is read where the study was asked for and told to the study's watch, so that
 * they come into the same store as rows of this machine. What a lost worker had in hand the engine gives to another. This
 * package knows {@code tubwright.fleet} and nothing above it.
 */
package tubwright.fleet.spark;
