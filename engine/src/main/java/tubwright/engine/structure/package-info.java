// SPDX-License-Identifier: Apache-2.0
/**
 * The finite-element model: shell and bar elements, elastic ties for joints and hardpoints, assembly, cases, solutions.
 * Knows meshes and laminates; knows nothing of design documents or reports.
 */
package tubwright.engine.structure;
