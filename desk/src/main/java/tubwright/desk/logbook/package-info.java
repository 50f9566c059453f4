// SPDX-License-Identifier: Apache-2.0
/**
 * What was done in a project and when: runs, choices, tests, notes, in a small database inside the project's folder. An
 * aid to memory: no design lives here, and losing it loses none. Knows nothing of tubs.
 */
package tubwright.desk.logbook;
