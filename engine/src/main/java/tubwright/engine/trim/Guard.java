// SPDX-License-Identifier: Apache-2.0
package tubwright.engine.trim;

/**
 * A factor that something in the layup protects: what it is in a load case with and without that.
 *
 * @param load name of the case
 * @param before factor on the case's loads as designed
 * @param after the same with the entry given up
 * @param what gives way then: a check and its ply, or a mode
 */
public record Guard(String load, double before, double after, String what) {}
