// SPDX-License-Identifier: Apache-2.0
/**
 * Answers: torsional and bending stiffness with their mesh error, the twist line, energy by part, mass properties.
 * Knows structures and solutions; knows nothing of files or reports.
 */
package tubwright.engine.response;
