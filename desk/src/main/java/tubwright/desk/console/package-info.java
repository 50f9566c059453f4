// SPDX-License-Identifier: Apache-2.0
/**
 * The short answer on a terminal: what it can show, live progress, tables, bars and small charts in characters.
 */
package tubwright.desk.console;
