// SPDX-License-Identifier: Apache-2.0
/**
 * The commands a person types, and what happens when they go wrong: one message, an exit code, nothing half-written.
 */
package tubwright.desk.command;
