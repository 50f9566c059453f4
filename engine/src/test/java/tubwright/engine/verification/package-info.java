// SPDX-License-Identifier: Apache-2.0
/**
 * The verification ladder: elements held against patch tests, closed forms and published benchmarks. Every number names
 * its source beside it.
 */
package tubwright.engine.verification;
