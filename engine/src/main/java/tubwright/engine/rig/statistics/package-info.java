// SPDX-License-Identifier: Apache-2.0
/**
 * The statistics of a test bench: straight lines and polynomials fitted by least squares with their standard errors,
 * measurement uncertainty after the GUM, and tolerance factors for material allowables. Knows nothing of tubs.
 */
package tubwright.engine.rig.statistics;
