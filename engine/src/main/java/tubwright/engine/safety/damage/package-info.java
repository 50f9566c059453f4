// SPDX-License-Identifier: Apache-2.0
/** Patch away: removes or weakens any patch and says what the rest carries, one patch or thousands. */
package tubwright.engine.safety.damage;
