// SPDX-License-Identifier: Apache-2.0
/** A study run from end to end, and what its rows tell. */
package tubwright.fleet.findings;
