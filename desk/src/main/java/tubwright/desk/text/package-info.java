// SPDX-License-Identifier: Apache-2.0
/**
 * How numbers, units and words look wherever the desk shows them: rounding to the error, grouping, conversions. Knows
 * nothing of tubs.
 */
package tubwright.desk.text;
