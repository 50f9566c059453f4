// SPDX-License-Identifier: Apache-2.0
package tubwright.fleet;

/** Hears of every row and may stop the rest. Asked and told by one thread at a time. */
public interface Watch {
    /** A row is there. What it throws ends the run. */
    void done(Row row);

    /** Whether to stop. Asked often; designs begun may be given up. */
    default boolean stop() {
        return false;
    }
}
