// SPDX-License-Identifier: Apache-2.0
/**
 * Survival of a hit: what a tub carries when a patch of it is gone, what crush structures take, what goes through a panel.
 * Knows structures, strengths and materials; knows nothing of design documents, files or reports.
 */
package tubwright.engine.safety;
