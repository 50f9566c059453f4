// SPDX-License-Identifier: Apache-2.0
package tubwright.engine.structure;

/** Seconds spent by kind of work, added to as the work is done. For progress lines and benchmarks; not thread-safe. */
public final class StepTimes {
    /** Shape to mesh. */
    public double mesh;
    /** Ties, bars, laminates. */
    public double build;
    /** Pattern and element matrices. */
    public double assembly;
    /** Order of elimination and layout of the factor. */
    public double ordering;

    public double factorisation;
    /** Back-substitutions, reactions and residuals. */
    public double solve;
    /** Energies, sections, masses. */
    public double answers;
    /** Buckling and vibration, with their own assemblies and factorisations. */
    public double stability;
    /** Number of factorisations. */
    public int factorisations;
    /** Entries of the latest factor. */
    public long factorEntries;
}
