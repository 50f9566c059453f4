// SPDX-License-Identifier: Apache-2.0
/**
 * What the commands ask of the engine, and the engine's answers made ready for the reader. The commands know the {@link
 * tubwright.desk.work.Workbench} only, so that they can be tried without an engine.
 */
package tubwright.desk.work;
