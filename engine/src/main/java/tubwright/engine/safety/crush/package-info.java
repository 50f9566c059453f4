// SPDX-License-Identifier: Apache-2.0
/**
 * Crush in one dimension: what noses and side structures take out of an impact, section by section; drop tests read; the energy
 * that goes into punching a panel through.
 */
package tubwright.engine.safety.crush;
